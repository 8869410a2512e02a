package source

var plating = []Work{
	{Key: "tb-55-1900-201-45", Author: "US Department of the Army", Title: "Army watercraft survey, appendix E: Notes on inspection and repair of steel hulls, reprinting US Coast Guard NVIC 7-68 of 1968", Where: "Technical Bulletin TB 55-1900-201-45/1"},
	{Key: "class-diminution-table", Title: "Table of diminution of steel plate: 20 % + 1 mm, 25 % and 30 %, with suspect and renew thicknesses", Where: "survey table of one classification society, as used by thickness gauging firms"},
	{Key: "iacs-z10-5", Author: "International Association of Classification Societies", Title: "Unified requirement Z10.5, Hull surveys of double skin bulk carriers"},
	{Key: "inspection-calcs", Title: "The inspector's most important calculations: a study guide for pressure equipment inspectors", Where: "public training notes on API 510 and API 570, 2003"},
	{Key: "jsndi-rough", Title: "Ultrasonic thickness readings on corroded, pitted plate", Where: "Journal of the Japanese Society for Non-Destructive Inspection 53-5 (2004)"},
	{Key: "fieller-1954", Author: "E. C. Fieller", Title: "Some problems in interval estimation", Where: "Journal of the Royal Statistical Society B 16 (1954) 175-185"},
	{Key: "clopper-pearson-1934", Author: "C. J. Clopper and E. S. Pearson", Title: "The use of confidence or fiducial limits illustrated in the case of the binomial", Where: "Biometrika 26 (1934) 404-413"},
	{Key: "wright-1991", Author: "T. Wright", Title: "Exact confidence bounds when sampling from small finite universes", Where: "Lecture Notes in Statistics 66, Springer 1991"},
	{Key: "shibata-1994", Author: "T. Shibata", Title: "Application of extreme value statistics to corrosion", Where: "Journal of Research of the National Institute of Standards and Technology 99 (1994) 327-336"},
	{Key: "laycock-1990", Author: "P. J. Laycock, R. A. Cottis and P. A. Scarf", Title: "Extrapolation of extreme pit depths in space and time", Where: "Journal of the Electrochemical Society 137 (1990) 64-69"},
	{Key: "coles-2001", Author: "S. Coles", Title: "An introduction to statistical modeling of extreme values", Where: "Springer, London 2001"},
	{Key: "hosking-1985", Author: "J. R. M. Hosking, J. R. Wallis and E. F. Wood", Title: "Estimation of the generalized extreme-value distribution by the method of probability-weighted moments", Where: "Technometrics 27 (1985) 251-261"},
	{Key: "tubes-1994", Title: "Extreme value analysis of pits on copper hot water tubes: a sample of 3 % and a return period under 500", Where: "Zairyo-to-Kankyo 43 (1994) 258, and Journal of Research of NIST 99 (1994)"},
	{Key: "stephens-1977", Author: "M. A. Stephens", Title: "Goodness of fit for the extreme value distribution", Where: "Biometrika 64 (1977) 583-588, as SciPy carries its table"},
	{Key: "rasmussen-2006", Author: "C. E. Rasmussen and C. K. I. Williams", Title: "Gaussian processes for machine learning", Where: "MIT Press 2006"},
	{Key: "vecchia-1988", Author: "A. V. Vecchia", Title: "Estimation and model identification for continuous spatial processes", Where: "Journal of the Royal Statistical Society B 50 (1988) 297-312"},
	{Key: "timoshenko-plates", Author: "S. Timoshenko and S. Woinowsky-Krieger", Title: "Theory of plates and shells", Where: "2nd edition, McGraw-Hill 1959"},
}
