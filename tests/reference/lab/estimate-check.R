# Intervals for measured over estimated bitterness, by simulation of every error, 4 000 000 draws; not by the formula under test.
# Each half: estimate 32 IBU, standard uncertainty 3.2, errors of the two estimates correlated 0.9; laboratory means 25 and 21.5 of two
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
show("ratio A", 25 / 32 / (1 + ea + (la + bias) / 25))
show("ratio B", 21.5 / 32 / (1 + eb + (lb + bias) / 21.5))
show("relative", 21.5 / 25 * exp(lb / 21.5 - la / 25 - eb + ea))
t <- t.test(c(25.1, 24.9), c(21.4, 21.8), var.equal = TRUE)$conf.int
cat("t half-width,", format((t[2] - t[1]) / 2, digits = 12), ",\n", sep = "")
