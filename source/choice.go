package source

var choice = []Work{
	{Key: "land-doig", Author: "Land, A. H. and Doig, A. G.", Title: "An Automatic Method of Solving Discrete Programming Problems", Where: "Econometrica 28, 1960"},
	{Key: "petersen-1967", Author: "Petersen, C. C.", Title: "Computational Experience with Variants of the Balas Algorithm", Where: "Management Science 13(9), 1967; data in OR-Library, mknap1"},
	{Key: "raiffa-1968", Author: "Raiffa, H.", Title: "Decision Analysis", Where: "Addison-Wesley, 1968"},
	{Key: "borda", Author: "Borda, J.-C. de", Title: "Mémoire sur les élections au scrutin", Where: "Histoire de l'Académie royale des sciences for 1781, Paris 1784"},
	{Key: "condorcet", Author: "Condorcet, M. J. A. N. de Caritat de", Title: "Essai sur l'application de l'analyse à la probabilité des décisions rendues à la pluralité des voix", Where: "Paris 1785"},
	{Key: "mcda-guide", Author: "HM Treasury and DESNZ", Title: "Use of Multi-Criteria Decision Analysis in options appraisal of economic cases", Where: "supplementary guidance to the Green Book, 2024"},
	{Key: "mca-manual", Author: "Department for Communities and Local Government", Title: "Multi-criteria analysis: a manual", Where: "2009"},
	{Key: "roc-weights", Author: "Barron, F. H. and Barrett, B. E.", Title: "Decision Quality Using Ranked Attribute Weights", Where: "Management Science 42, 1996"},
	{Key: "sois-vessels", Author: "US National Park Service", Title: "The Secretary of the Interior's Standards for Historic Vessel Preservation Projects", Where: "1990"},
	{Key: "birge-louveaux", Author: "Birge, J. R. and Louveaux, F.", Title: "Introduction to Stochastic Programming", Where: "Springer, 1997"},
	{Key: "sinha-zoltners", Author: "Sinha, P. and Zoltners, A. A.", Title: "The multiple-choice knapsack problem", Where: "Operations Research 27, 1979"},
	{Key: "caroe-schultz", Author: "Carøe, C. C. and Schultz, R.", Title: "Dual decomposition in stochastic integer programming", Where: "Operations Research Letters 24, 1999"},
}
