package source

var outlook = []Work{
	{Key: "nist-handbook", Author: "NIST/SEMATECH", Title: "e-Handbook of Statistical Methods", Where: "chapter 8, Assessing Product Reliability"},
	{Key: "bayes-reliability", Author: "Martz, H. F. and Waller, R. A.", Title: "Bayesian Reliability Analysis", Where: "Wiley, 1982", Memory: true},
}
