package source

var gland = []Work{
	{Key: "root-cause", Author: "R. Keith Mobley", Title: "Root Cause Failure Analysis", Where: "Newnes 1999, chapter on packing and seals"},
	{Key: "stern-box", Title: "TM 55-1905-223-24-18-2, technical manual, landing craft utility: stern tube stuffing box", Where: "US Army, task: replace packing material (1 in square packing, butt cut, approximately 18 rings)"},
	{Key: "denny-1957", Author: "D. F. Denny", Title: "A Force Analysis of the Stuffing-Box Seal", Where: "BHRA report 550, 1957"},
	{Key: "ochonski-1988", Author: "W. Ochonski", Title: "Radial stress distribution and friction forces in a soft-packed stuffing-box seal", Where: "Tribology International 21 (1), 1988, p. 31-38"},
	{Key: "valve-selection", Author: "P. Smith, R. W. Zappe", Title: "Valve Selection Handbook", Where: "5th ed., chapter 2"},
	{Key: "fox-mcdonald", Author: "R. W. Fox, A. T. McDonald", Title: "Introduction to Fluid Mechanics", Where: "chapter 8"},
	{Key: "circular-gap", Title: "Leakage through a circular gap, concentric and eccentric", Where: "texts on hydraulics"},
	{Key: "civil-calculations", Author: "T. G. Hicks", Title: "Handbook of Civil Engineering Calculations", Where: "2nd ed., McGraw-Hill 2007"},
	{Key: "sname-3-51", Title: "Practices and Procedures for the Alignment of Marine Main Propulsion Shafting Systems", Where: "SNAME Technical and Research Bulletin 3-51"},
	{Key: "hetenyi", Author: "M. Hetenyi", Title: "Beams on Elastic Foundation", Where: "University of Michigan Press 1946"},
	{Key: "copper-alloys", Title: "Properties of cast copper alloys", Where: "Copper Development Association"},
}
