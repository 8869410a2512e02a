# Reference for TestFitAgainstSurvreg: Weibull lives with right censoring by survival::survreg.
# Run: Rscript survreg.R > survreg.json
library(survival)
one <- function(name, failures, survivors) {
  t <- c(failures, survivors)
  d <- c(rep(1, length(failures)), rep(0, length(survivors)))
  m <- survreg(Surv(t, d) ~ 1, dist = "weibull", control = survreg.control(rel.tolerance = 1e-14, maxiter = 200))
  v <- vcov(m)
  scale <- exp(coef(m)[[1]])
  shape <- 1 / m$scale
  sprintf('{"name": "%s", "failures": [%s], "survivors": [%s], "shape": %.12g, "scale": %.12g, "log_likelihood": %.12g, "se_shape": %.9g, "se_scale": %.9g}',
          name, paste(failures, collapse = ", "), paste(survivors, collapse = ", "), shape, scale, m$loglik[1],
          shape * sqrt(v[2, 2]), scale * sqrt(v[1, 1]))
}
cat(sprintf('{"tool": "%s, survival %s",\n"cases": [\n', R.version.string, packageVersion("survival")))
cat(one("glands", c(11.5, 14, 17, 17, 19.2, 23, 26), c(5, 9, 12, 18, 22, 22, 27, 30, 31)), ",\n", sep = "")
cat(one("complete", c(3.1, 4.7, 5.2, 8, 8.8, 9.1, 13, 21), numeric(0)), ",\n", sep = "")
cat(one("early faults", c(0.02, 0.1, 0.15, 0.9, 2, 3.5, 11), c(4, 8, 15, 20, 20)), ",\n", sep = "")
cat(one("one failure", c(12), c(3, 8, 15, 20)), "\n]}\n", sep = "")
