package source

var gland = []Work{
	{Key: "root-cause", Author: "R. Keith Mobley", Title: "Root Cause Failure Analysis", Where: "Newnes 1999, chapter on packing and seals"},
	{Key: "stern-box", Title: "TM 55-1905-223-24-18-2, technical manual, landing craft utility: stern tube stuffing box", Where: "US Army, task: replace packing material (1 in square packing, butt cut, approximately 18 rings)"},
}
