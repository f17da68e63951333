# Critical values of Cochran's and Grubbs' tests as ISO 5725-2 uses them.
# Cochran: exact for the largest of p variances to within the first Bonferroni bound, C = 1/(1 + (p-1)/F), F = qf(1 - alpha/p, n-1, (p-1)(n-1)).
# cochran-sim: the same by simulation, 400 000 sets.
# Grubbs, one value, either end: G = (p-1)/sqrt(p) * sqrt(t^2/(p-2+t^2)), t = qt(1 - alpha/(2p), p-2).
# Grubbs, two values at one end: quantile alpha/2 of the ratio of sums of squares, by simulation, 4 000 000 samples of p normal values.
# Run: Rscript outliers.R > outliers.csv   (about a minute)
set.seed(5725)
cat("# ", R.version.string, "; seed 5725\n", sep = "")
cat("test,p,n,alpha,value\n")
out <- function(test, p, n, alpha, v) cat(test, ",", p, ",", n, ",", alpha, ",", format(v, digits = 10), "\n", sep = "")
for (alpha in c(0.05, 0.01)) {
  for (p in c(2:12, 15, 20)) for (n in 2:6) {
    f <- qf(1 - alpha / p, n - 1, (p - 1) * (n - 1)); out("cochran", p, n, alpha, 1 / (1 + (p - 1) / f))
  }
  for (p in c(3:20, 30)) { t <- qt(1 - alpha / (2 * p), p - 2); out("grubbs", p, 0, alpha, (p - 1) / sqrt(p) * sqrt(t^2 / (p - 2 + t^2))) }
}
for (p in c(2, 4, 8)) for (n in c(2, 4)) {
  v <- matrix(rchisq(400000 * p, n - 1), ncol = p); c <- do.call(pmax, as.data.frame(v)) / rowSums(v)
  for (alpha in c(0.05, 0.01)) out("cochran-sim", p, n, alpha, unname(quantile(c, 1 - alpha)))
}
for (p in 4:12) {
  r <- c()
  for (block in 1:8) {
    x <- matrix(rnorm(500000 * p), ncol = p); rows <- seq_len(nrow(x))
    s0 <- rowSums((x - rowMeans(x))^2); y <- x
    for (k in 1:2) y[cbind(rows, max.col(y, ties.method = "first"))] <- -Inf
    keep <- is.finite(y); y[!keep] <- 0
    m <- rowSums(y) / (p - 2)
    r <- c(r, (rowSums(y^2) - (p - 2) * m^2) / s0)
  }
  for (alpha in c(0.05, 0.01)) out("grubbs2", p, 0, alpha, unname(quantile(r, alpha / 2)))
}
