package source

var outlook = []Work{
	{Key: "nist-handbook", Author: "NIST/SEMATECH", Title: "e-Handbook of Statistical Methods", Where: "chapter 8, Assessing Product Reliability"},
	{Key: "bayes-reliability", Author: "Martz, H. F. and Waller, R. A.", Title: "Bayesian Reliability Analysis", Where: "Wiley, 1982", Memory: true},
	{Key: "barlow-hunter", Author: "Barlow, R. and Hunter, L.", Title: "Optimum Preventive Maintenance Policies", Where: "Operations Research 8, 1960"},
	{Key: "raiffa-schlaifer", Author: "Raiffa, H. and Schlaifer, R.", Title: "Applied Statistical Decision Theory", Where: "Harvard, 1961"},
	{Key: "evsi-regression", Author: "Strong, M., Oakley, J. and Brennan, A.", Title: "Estimating the Expected Value of Sample Information Using the Probabilistic Sensitivity Analysis Sample", Where: "Medical Decision Making 35, 2015"},
}
