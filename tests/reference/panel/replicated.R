# Beta-binomial fits by VGAM, chance-corrected fits by direct maximum likelihood, Bayesian readings by quadrature,
# Fisher's exact test and same/different d-prime. Run in this folder: Rscript replicated.R
suppressMessages(library(VGAM))
versions <- paste0("# ", R.version.string, ", VGAM ", packageVersion("VGAM"))
g10 <- function(x) sprintf("%.12g", x)
put <- function(name, table, note) {
  con <- file(name, "w")
  writeLines(c(versions, paste0("# ", note, " Printed by replicated.R")), con)
  write.csv(table, con, row.names = FALSE, quote = FALSE)
  close(con)
}

# Made-up counts: set name, sets per taster, right answers.
sets <- list(
  a = list(n = rep(4, 20), x = c(4,1,2,0,3,4,1,1,2,4,0,2,3,1,4,2,1,0,3,2), g = 1/3),
  b = list(n = rep(6, 15), x = c(6,2,1,5,3,2,6,4,1,2,3,6,2,0,5), g = 1/2),
  c = list(n = c(2,3,4,4,5,6,3,2,4,6,5,4), x = c(2,1,4,0,2,6,3,0,1,5,5,1), g = 1/3),
  d = list(n = rep(3, 24), x = c(3,0,1,2,3,1,0,2,1,3,3,1,0,0,2,3,1,1,2,0,3,1,2,0), g = 1/10))
tarone <- function(x, n) { p <- sum(x) / sum(n); (sum((x - n * p)^2 / (p * (1 - p))) - sum(n)) / sqrt(2 * sum(n * (n - 1))) }
logC <- function(x, n, mu, theta, g) {
  a <- mu / theta; b <- (1 - mu) / theta
  sum(mapply(function(x, n) { i <- 0:x
    t <- lchoose(n, x) + n * log(1 - g) + lchoose(x, i) + (x - i) * log(g / (1 - g)) + lbeta(a + i, n + b - x) - lbeta(a, b)
    max(t) + log(sum(exp(t - max(t)))) }, x, n))
}
rows <- do.call(rbind, lapply(names(sets), function(s) with(sets[[s]], {
  fit <- vglm(cbind(x, n - x) ~ 1, betabinomial, trace = FALSE, epsilon = 1e-12, maxit = 200)
  k <- Coef(fit)
  best <- NULL
  for (start in list(c(0, -1), c(-1, 0), c(-1, 2))) {
    o <- optim(start, function(q) -logC(x, n, plogis(q[1]), exp(q[2]), g), control = list(reltol = 1e-16, maxit = 5000))
    o <- optim(o$par, function(q) -logC(x, n, plogis(q[1]), exp(q[2]), g), control = list(reltol = 1e-16, maxit = 5000))
    if (is.null(best) || o$value < best$value) best <- o
  }
  data.frame(set = s, n = paste(n, collapse = " "), x = paste(x, collapse = " "), chance = sprintf("%.17g", g),
    mu = g10(k[["mu"]]), gamma = g10(k[["rho"]]), loglik = g10(logLik(fit)),
    binomial = g10(sum(dbinom(x, n, sum(x) / sum(n), log = TRUE))), tarone = g10(tarone(x, n)),
    mu_corrected = g10(plogis(best$par[1])), gamma_corrected = g10(exp(best$par[2]) / (1 + exp(best$par[2]))), loglik_corrected = g10(-best$value))
})))
put("beta-binomial.csv", rows, "Plain form: vglm(betabinomial). Corrected form: optim over logit(mu), log(theta). Made-up counts.")

# Point probabilities, VGAM::dbetabinom.
rows <- do.call(rbind, lapply(list(c(4, .5, .2), c(3, .4, .1), c(8, .7, .45)), function(q)
  data.frame(n = q[1], mu = q[2], gamma = q[3], x = 0:q[1], p = sprintf("%.15g", dbetabinom(0:q[1], q[1], q[2], rho = q[3])))))
put("beta-binomial-pmf.csv", rows, "VGAM::dbetabinom.")

# Bayesian readings: beta prior on the share of discriminators, by integrate().
rows <- do.call(rbind, lapply(list(c(18, 8, 1/3, .3, 1, 1), c(20, 11, 1/3, .3, 1, 1), c(60, 20, 1/3, .2, 1, 9), c(36, 24, 1/2, .25, 2, 2), c(12, 0, 1/3, .3, 1, 1), c(15, 15, 1/10, .5, .5, .5), c(400, 180, 1/3, .2, 1, 1)), function(q) {
  n <- q[1]; x <- q[2]; g <- q[3]; m <- q[4]; a <- q[5]; b <- q[6]
  # On the scale s = sin(t)^2, where the prior's ends are smooth also for a, b of one half.
  f <- function(t, k = 0) { s <- sin(t)^2; s^k * dbinom(x, n, g + (1 - g) * s) * 2 * sin(t)^(2 * a - 1) * cos(t)^(2 * b - 1) / beta(a, b) }
  top <- optimize(f, c(0, pi / 2), maximum = TRUE)$maximum
  int <- function(lo, hi, k = 0) {
    cuts <- sort(unique(pmin(pmax(c(lo, hi, top, top - .05, top + .05, top - .2, top + .2), lo), hi)))
    sum(mapply(function(u, v) if (v > u) integrate(f, u, v, k = k, rel.tol = 1e-11, abs.tol = 0, subdivisions = 1000, stop.on.error = FALSE)$value else 0, head(cuts, -1), tail(cuts, -1))) }
  z <- int(0, pi / 2)
  cdf <- function(s) int(0, asin(sqrt(s))) / z
  qn <- function(p) uniroot(function(s) cdf(s) - p, c(1e-12, 1 - 1e-12), tol = 1e-12)$root
  data.frame(n = n, x = x, chance = sprintf("%.17g", g), margin = m, a = a, b = b, mean = g10(int(0, pi / 2, 1) / z), above = g10(int(asin(sqrt(m)), pi / 2) / z),
    low = g10(qn(.025)), high = g10(qn(.975)), factor = g10(z / dbinom(x, n, g)))
}))
put("bayes.csv", rows, "Posterior of the share of discriminators under a Beta(a, b) prior, by integrate().")

# Fisher's exact test (one-sided), and same/different d-prime by optim on the product of two binomials.
rows <- do.call(rbind, lapply(list(c(40, 50, 15, 50), c(12, 20, 8, 20), c(9, 15, 9, 17), c(30, 60, 10, 55), c(7, 10, 1, 12)), function(q) {
  p <- fisher.test(matrix(c(q[1], q[2] - q[1], q[3], q[4] - q[3]), 2), alternative = "greater")$p.value
  chi <- suppressWarnings(chisq.test(matrix(c(q[1], q[2] - q[1], q[3], q[4] - q[3]), 2), correct = FALSE)$statistic)
  nl <- function(k) { tau <- exp(k[1]); d <- exp(k[2]); h <- pnorm((d - tau) / sqrt(2)) + pnorm((-d - tau) / sqrt(2)); f <- 2 * pnorm(-tau / sqrt(2))
    -dbinom(q[1], q[2], h, log = TRUE) - dbinom(q[3], q[4], f, log = TRUE) }
  o <- optim(c(log(1.5), log(1.5)), nl, control = list(reltol = 1e-15, maxit = 2000)); o <- optim(o$par, nl, hessian = TRUE, control = list(reltol = 1e-15, maxit = 2000))
  d <- exp(o$par[2]); v <- solve(o$hessian)[2, 2]
  data.frame(hits = q[1], different = q[2], alarms = q[3], alike = q[4], p = sprintf("%.14g", p), chi = g10(chi), d_same_different = g10(d), se_same_different = g10(d * sqrt(v)))
}))
put("yes-no.csv", rows, "fisher.test, chisq.test without correction, and same/different d-prime by maximum likelihood.")
