package source

var outlook = []Work{
	{Key: "nist-handbook", Author: "NIST/SEMATECH", Title: "e-Handbook of Statistical Methods", Where: "chapter 8, Assessing Product Reliability"},
	{Key: "bayes-reliability", Author: "Martz, H. F. and Waller, R. A.", Title: "Bayesian Reliability Analysis", Where: "Wiley, 1982", Memory: true},
	{Key: "barlow-hunter", Author: "Barlow, R. and Hunter, L.", Title: "Optimum Preventive Maintenance Policies", Where: "Operations Research 8, 1960"},
}
