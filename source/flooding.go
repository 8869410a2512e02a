package source

var flooding = []Work{
	{Key: "torricelli", Title: "Torricelli's law of efflux", Where: "any text on fluid mechanics"},
	{Key: "hole-table", Title: "Flow through holes in a ship's side, table of damage-control practice (coefficient 1, US gallons a minute)", Where: "public naval training table"},
}
