# Prediction for the next batch of a house, by integrating over a grid of mean and scatter: independent of the closed form.
# Model: log(measured / estimated) ~ N(mu, sigma^2) from batch to batch.
# Prior: mu given sigma ~ N(log(1), sigma^2 / 0.5); sigma^2 ~ scaled inverse chi-square, 3 degrees of freedom, scale 0.25^2.
# Run: Rscript calibration.R > calibration.csv
cat("#", R.version.string, "\n")
cat("case,batches,factor,factor_low,factor_high,next_low,next_high\n")

predict_next <- function(y, level = 0.90) {
  n <- length(y)
  mu <- seq(-4, 4, length.out = 4001)
  sigma <- exp(seq(log(0.01), log(8), length.out = 900))
  # Weight of each (mu, sigma), on the grid's own measure: d mu, d log sigma.
  logw <- outer(mu, sigma, function(m, s) {
    like <- if (n == 0) 0 else rowSums(sapply(y, function(v) dnorm(v, m, s, log = TRUE)))
    prior_mu <- dnorm(m, 0, s / sqrt(0.5), log = TRUE)
    # density of sigma^2, times d sigma^2 / d log sigma = 2 sigma^2
    prior_s <- -(3 / 2 + 1) * log(s^2) - 3 * 0.25^2 / (2 * s^2) + log(2 * s^2)
    like + prior_mu + prior_s
  })
  w <- exp(logw - max(logw))
  w <- w / sum(w)
  mu_mass <- rowSums(w)
  ecdf_mu <- cumsum(mu_mass)
  quantile_mu <- function(p) approx(ecdf_mu - mu_mass / 2, mu, p, ties = "ordered")$y
  s_of <- sigma[col(w)]
  m_of <- mu[row(w)]
  keep <- w > 1e-12 * max(w)
  cdf_next <- function(x) sum(w[keep] * pnorm(x, m_of[keep], s_of[keep]))
  quantile_next <- function(p) uniroot(function(x) cdf_next(x) - p, c(-5, 5), tol = 1e-8)$root
  lo <- (1 - level) / 2
  c(exp(sum(w * m_of)), exp(quantile_mu(lo)), exp(quantile_mu(1 - lo)), exp(quantile_next(lo)), exp(quantile_next(1 - lo)))
}

report <- function(name, ratios) {
  out <- predict_next(log(ratios))
  cat(name, length(ratios), paste(sprintf("%.6f", out), collapse = ","), sep = ",")
  cat("\n")
}

report("one", c(0.6))
report("four", c(0.83, 0.79, 0.62, 0.66))
report("near", c(0.95, 1.05, 0.88))
report("twelve", c(0.71, 0.66, 0.80, 0.74, 0.58, 0.69, 0.77, 0.72, 0.63, 0.70, 0.75, 0.68))
