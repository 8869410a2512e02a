package source

var coating = []Work{
	{Key: "spreading-table", Title: "Coverage and spreading rate: table of theoretical spreading rates by solids and dry film, and loss factors", Where: "public sheet of a paint makers' association"},
	{Key: "tsr-losses", Title: "Theoretical spreading rate and application losses: dry film lost in the blast profile", Where: "public notes of a paint maker"},
	{Key: "wmo-8", Author: "World Meteorological Organization", Title: "Guide to meteorological instruments and methods of observation", Where: "WMO-No. 8"},
	{Key: "iso-8502-4", Title: "ISO 8502-4, Preparation of steel substrates: guidance on the estimation of the probability of condensation prior to paint application"},
	{Key: "iso-19840", Title: "ISO 19840, Paints and varnishes: measurement of, and acceptance criteria for, the thickness of dry films on rough surfaces"},
	{Key: "imo-pspc", Author: "International Maritime Organization", Title: "Performance standard for protective coatings", Where: "resolution MSC.215(82)"},
	{Key: "sspc-pa2", Author: "Society for Protective Coatings", Title: "Paint application standard no. 2: procedure for determining conformance to dry coating thickness requirements", Where: "SSPC-PA 2, 2015"},
}
