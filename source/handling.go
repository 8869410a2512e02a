package source

var handling = []Work{
	{Key: "propeller-weights", Title: "Weights of two large bronze propellers on show, by their plates"},
	{Key: "wire-rope-practice", Title: "Wire rope operating practices: load on the legs of a sling by their angle", Where: "riggers' handbooks and charts"},
	{Key: "navedtra-14251", Title: "Steelworker, Volume 2 (NAVEDTRA 14251)", Where: "US Naval Education and Training"},
	{Key: "asce-7", Title: "ASCE/SEI 7, Minimum Design Loads for Buildings and Other Structures", Where: "American Society of Civil Engineers 2010"},
	{Key: "ibc-2012", Title: "International Building Code 2012", Where: "International Code Council"},
}
