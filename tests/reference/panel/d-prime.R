# Likelihood intervals of d-prime on the scale of d itself, by optimize() and uniroot() on the log likelihood;
# exact intervals from binom.test(), each end taken back to d by uniroot().
# Run in this folder: Rscript d-prime.R
pc <- list(
  "triangle" = function(d) pf(3, 1, 1, ncp = d^2 * 2 / 3, lower.tail = FALSE),
  "duo-trio" = function(d) 1 - pnorm(d / sqrt(2)) - pnorm(d / sqrt(6)) + 2 * pnorm(d / sqrt(2)) * pnorm(d / sqrt(6)),
  "tetrad" = function(d) 1 - 2 * integrate(function(z) dnorm(z) * (2 * pnorm(z) * pnorm(z - d) - pnorm(z - d)^2), -Inf, Inf, rel.tol = 1e-11, abs.tol = 0)$value,
  "paired directional" = function(d) pnorm(d / sqrt(2)),
  "3-AFC" = function(d) integrate(function(z) dnorm(z - d) * pnorm(z)^2, -Inf, Inf, rel.tol = 1e-11, abs.tol = 0)$value)
rows <- do.call(rbind, lapply(names(pc), function(name) do.call(rbind, lapply(list(c(20, 11, .95), c(30, 24, .95), c(60, 38, .9), c(24, 13, .8)), function(q) {
  f <- pc[[name]]; n <- q[1]; x <- q[2]
  ll <- function(d) { p <- f(d); x * log(p) + (n - x) * log(1 - p) }
  best <- optimize(ll, c(0, 8), maximum = TRUE, tol = 1e-10)$maximum
  floor <- ll(best) - qchisq(q[3], 1) / 2
  low <- if (ll(1e-8) >= floor) 0 else uniroot(function(d) ll(d) - floor, c(1e-8, best), tol = 1e-11)$root
  high <- uniroot(function(d) ll(d) - floor, c(best, 12), tol = 1e-11)$root
  back <- function(p) if (p <= f(0)) 0 else uniroot(function(d) f(d) - p, c(0, 12), tol = 1e-11)$root
  exact <- binom.test(x, n, conf.level = q[3])$conf.int
  data.frame(protocol = name, n = n, x = x, level = q[3], d = sprintf("%.9f", best), low = sprintf("%.9f", low), high = sprintf("%.9f", high), exact_low = sprintf("%.9f", back(exact[1])), exact_high = sprintf("%.9f", back(exact[2])))
}))))
con <- file("d-prime.csv", "w")
writeLines(c(paste0("# ", R.version.string), "# d-prime, its likelihood interval and its exact interval; the triangle through the noncentral F distribution. Printed by d-prime.R"), con)
write.csv(rows, con, row.names = FALSE, quote = FALSE)
close(con)
