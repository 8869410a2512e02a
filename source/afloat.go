package source

var afloat = []Work{
	{Key: "divergence", Title: "Divergence theorem: the integrals of a body from its surface", Where: "any text on vector analysis"},
	{Key: "schwarz", Author: "G. Schwarz", Title: "Estimating the dimension of a model", Where: "Annals of Statistics 6, 1978"},
	{Key: "hinkley", Author: "D. V. Hinkley", Title: "Inference in two-phase regression", Where: "Journal of the American Statistical Association 66, 1971"},
	{Key: "ukpandi-draught", Title: "Draught surveys (measurement of bulk cargoes)", Where: "UK P&I Club, Bulk Matters / carefully to carry"},
	{Key: "unece-19", Title: "Code of Uniform Standards and Procedures for the Performance of Draught Surveys of Coal Cargoes", Where: "United Nations, ECE/ENERGY/19, 1992"},
}
