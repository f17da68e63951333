# Intervals for measured over estimated bitterness, by simulation of every error, 4 000 000 draws; not by the formula under test.
# Each half: estimate 32 IBU, standard uncertainty 3.2, errors of the two estimates correlated 0.9; laboratory means 26.4 and 23.2 of two
# replicates each, s_r 0.6, s_R 1.5, so the laboratory's own bias has variance 1.5^2 - 0.6^2. A half's errors are
# relative and normal: the measured value is the estimate times the wanted factor times one plus all errors. Between the halves they are
# multiplicative (lognormal).
# Last: the half-width of the 95 % interval of t.test with equal variances.
# Run: Rscript estimate-check.R > estimate-check.csv
set.seed(2026)
cat("# ", R.version.string, "; seed 2026\n", sep = "")
cat("name,low,high\n")
n <- 4e6
z <- rnorm(n); ea <- 0.1 * (sqrt(0.9) * z + sqrt(0.1) * rnorm(n)); eb <- 0.1 * (sqrt(0.9) * z + sqrt(0.1) * rnorm(n))
bias <- rnorm(n, 0, sqrt(1.5^2 - 0.6^2))
la <- rowMeans(matrix(rnorm(2 * n, 0, 0.6), ncol = 2)); lb <- rowMeans(matrix(rnorm(2 * n, 0, 0.6), ncol = 2))
show <- function(name, v) cat(name, ",", paste(format(unname(quantile(v, c(.025, .975))), digits = 7), collapse = ","), "\n", sep = "")
show("ratio A", 26.4 / 32 / (1 + ea + (la + bias) / 26.4))
show("ratio B", 23.2 / 32 / (1 + eb + (lb + bias) / 23.2))
show("relative", 23.2 / 26.4 * exp(lb / 23.2 - la / 26.4 - eb + ea))
t <- t.test(c(26.5, 26.3), c(23.0, 23.4), var.equal = TRUE)$conf.int
cat("t half-width,", format((t[2] - t[1]) / 2, digits = 12), ",\n", sep = "")
