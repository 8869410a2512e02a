package source

var water = []Work{
	{Key: "unesco-44", Author: "N. P. Fofonoff and R. C. Millard", Title: "Algorithms for computation of fundamental properties of seawater", Where: "UNESCO Technical Papers in Marine Science 44 (1983)"},
	{Key: "saunders-1990", Author: "P. M. Saunders", Title: "The international temperature scale of 1990, ITS-90", Where: "WOCE Newsletter 10 (1990)"},
}
