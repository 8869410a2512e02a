# Reference for afloat.trend: base R only. Rscript trend.R > trend.json
# 1: the Nile at Aswan, 1871 to 1970 (datasets::Nile; Cobb, Biometrika 65, 1978): a step, tried at every year.
# 2: a made log of 96 monthly readings, 17 t of scatter (set.seed), level and then 8 t a year from month 40: a trend from a date, at that date.
y <- as.numeric(datasets::Nile)
n <- length(y)
tries <- 4:(n - 2)
rss <- sapply(tries, function(i) sum(resid(lm(y ~ as.numeric(seq_len(n) >= i)))^2))
i <- tries[which.min(rss)]
m <- summary(lm(y ~ as.numeric(seq_len(n) >= i)))
set.seed(7)
x <- (0:95) / 12
w <- 3350 + 8 * pmax(x - 40 / 12, 0) + rnorm(96, sd = 17)
w <- round(w, 2)
h <- summary(lm(w ~ pmax(x - 40 / 12, 0)))
num <- function(v) paste(format(v, digits = 15, trim = TRUE), collapse = ", ")
cat(sprintf('{"tool": "%s",\n "nile": [%s],\n "first_year_after": %d, "level": %s, "step": %s, "step_se": %s, "rss": %s,\n "log": [%s],\n "hinge_level": %s, "hinge_slope": %s, "hinge_slope_se": %s, "hinge_rss": %s}\n',
  R.version.string, num(y), 1870 + i, num(m$coefficients[1, 1]), num(m$coefficients[2, 1]), num(m$coefficients[2, 2]), num(min(rss)),
  num(w), num(h$coefficients[1, 1]), num(h$coefficients[2, 1]), num(h$coefficients[2, 2]), num(sum(h$residuals^2))))
