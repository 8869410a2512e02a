// Package extremes is the statistics of the largest: the Gumbel and the generalised extreme value law, fitted by maximum likelihood and by
// probability weighted moments, with profile likelihood for what lies beyond the data. It knows nothing of plates.
//
// Sources: S. Coles, An Introduction to Statistical Modeling of Extreme Values, Springer 2001; J. R. M. Hosking, J. R. Wallis and E. F. Wood,
// Technometrics 27 (1985) 251.
package extremes
