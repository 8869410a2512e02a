package source

var money = []Work{
	{Key: "gao-cost-guide", Author: "US Government Accountability Office", Title: "Cost Estimating and Assessment Guide", Where: "GAO-20-195G, 2020"},
	{Key: "optimism-bias", Author: "Mott MacDonald for HM Treasury", Title: "Review of Large Public Procurement in the UK", Where: "2002"},
	{Key: "interest-tables", Author: "Blank, L. and Tarquin, A.", Title: "Engineering Economy", Where: "McGraw-Hill, appendix: compound interest factor tables"},
	{Key: "gao-ship-repair", Author: "US General Accounting Office", Title: "Navy Maintenance: Costs To Overhaul Navy Ships at Private Shipyards", Where: "GAO/NSIAD-86-27, 1986"},
	{Key: "bayes-bootstrap", Author: "Rubin, D. B.", Title: "The Bayesian Bootstrap", Where: "Annals of Statistics 9, 1981"},
	{Key: "sobol-hash", Author: "Burley, B.", Title: "Practical Hash-based Owen Scrambling", Where: "Journal of Computer Graphics Techniques 9(4), 2020; direction numbers of Joe and Kuo, SIAM Journal on Scientific Computing 30, 2008"},
}
