package source

var flooding = []Work{
	{Key: "torricelli", Title: "Torricelli's law of efflux", Where: "any text on fluid mechanics"},
	{Key: "water-measurement", Title: "Water Measurement Manual", Where: "US Bureau of Reclamation, 3rd ed. 2001"},
	{Key: "rosenbrock", Author: "J. G. Verwer, E. J. Spee, J. G. Blom, W. Hundsdorfer", Title: "A second-order Rosenbrock method applied to photochemical dispersion problems", Where: "SIAM Journal on Scientific Computing 20 (1999) 1456-1480"},
	{Key: "hole-table", Title: "Flow through holes in a ship's side, table of damage-control practice (coefficient 1, US gallons a minute)", Where: "public naval training table"},
	{Key: "ufc-dry-docks", Title: "UFC 4-213-10, Design: Graving Drydocks", Where: "US Department of Defense 2002, change 1 2012"},
	{Key: "solas-permeability", Title: "International Convention for the Safety of Life at Sea, chapter II-1, permeability of spaces", Where: "IMO"},
	{Key: "cfr-172", Title: "46 CFR 172.240, permeability of spaces", Where: "US Code of Federal Regulations"},
	{Key: "derrett-permeability", Author: "D. R. Derrett", Title: "Ship Stability for Masters and Mates", Where: "chapter on bilging and permeability"},
	{Key: "b31.3", Title: "ASME B31.3, Process Piping", Where: "American Society of Mechanical Engineers"},
	{Key: "asme-viii", Title: "ASME Boiler and Pressure Vessel Code, Section VIII, Division 1", Where: "American Society of Mechanical Engineers"},
	{Key: "iso-898-1", Title: "ISO 898-1, Mechanical properties of fasteners made of carbon steel and alloy steel: bolts, screws and studs", Where: "International Organization for Standardization"},
	{Key: "roark", Author: "W. C. Young, R. G. Budynas", Title: "Roark's Formulas for Stress and Strain", Where: "7th ed., chapter on flat plates"},
	{Key: "data-handbook", Author: "J. Carvill", Title: "Mechanical Engineer's Data Handbook", Where: "Butterworth-Heinemann 1993, loaded flat plates"},
}
