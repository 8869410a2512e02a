package source

var choice = []Work{
	{Key: "land-doig", Author: "Land, A. H. and Doig, A. G.", Title: "An Automatic Method of Solving Discrete Programming Problems", Where: "Econometrica 28, 1960"},
	{Key: "petersen-1967", Author: "Petersen, C. C.", Title: "Computational Experience with Variants of the Balas Algorithm", Where: "Management Science 13(9), 1967; data in OR-Library, mknap1"},
}
