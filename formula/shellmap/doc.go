// Package shellmap maps a quantity over a developed surface (x along, y across, m) from scattered readings of it: a Gaussian process with a
// constant mean and a Matern 3/2 kernel whose ranges along and across differ. It knows nothing of plates.
//
// Up to [ExactMost] readings the posterior is exact. Beyond, readings closer together than an eighth of a range are pooled, and each place is
// worked out from its [Neighbours] nearest pooled readings alone (Vecchia's approximation, as Stein, Chi and Welty 2004 and Datta et al. 2016 use
// it). What is left out can only make the posterior wider than the exact one, up to the pooling, which moves a reading by at most an eighth of a
// range. 120 000 readings over a shell of 270 m take some seconds.
//
// Sources: C. E. Rasmussen and C. K. I. Williams, Gaussian Processes for Machine Learning, MIT Press 2006, algorithm 2.1 and eq. 4.17;
// A. V. Vecchia, J. R. Statist. Soc. B 50 (1988) 297.
package shellmap
