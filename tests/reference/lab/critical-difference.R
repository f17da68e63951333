# Critical differences at 95 % from variance components, not from the formulas under test.
# One laboratory: var(mean1 - mean2) = s_r^2 (1/n1 + 1/n2). Two laboratories: plus 2 s_L^2, with s_R^2 = s_L^2 + s_r^2.
# A reference without error: s_L^2 + s_r^2 / n. f = 2.8 / sqrt(2), so that two single results of one laboratory give r = 2.8 s_r.
# Range factors: the 95 % point of the studentised range with infinite degrees of freedom.
# Run: Rscript critical-difference.R > critical-difference.csv
options(digits = 12)
cat("# ", R.version.string, "\n", sep = "")
cat("case,r,R,n1,n2,value\n")
f <- 2.8 / sqrt(2)
out <- function(case, r, R, n1, n2, v) cat(case, ",", r, ",", R, ",", n1, ",", n2, ",", format(v, digits = 12), "\n", sep = "")
for (n1 in c(1, 2, 3, 5)) for (n2 in c(1, 2, 4)) {
  for (pair in list(c(1, 4), c(0.15, 0.16), c(1.2, 3.5))) {
    sr <- pair[1] / 2.8; sL2 <- (pair[2] / 2.8)^2 - sr^2
    out("one", pair[1], pair[2], n1, n2, f * sqrt(sr^2 * (1 / n1 + 1 / n2)))
    out("two", pair[1], pair[2], n1, n2, f * sqrt(2 * sL2 + sr^2 * (1 / n1 + 1 / n2)))
  }
}
for (n in c(1, 2, 3, 6)) for (pair in list(c(1, 4), c(0.15, 0.16))) {
  sr <- pair[1] / 2.8; sL2 <- (pair[2] / 2.8)^2 - sr^2
  out("reference", pair[1], pair[2], n, 0, f * sqrt(sL2 + sr^2 / n))
}
for (n in c(2:12, 20)) out("range", 0, 0, n, 0, qtukey(0.95, n, Inf))
