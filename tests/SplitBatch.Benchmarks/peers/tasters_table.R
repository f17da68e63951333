# Tasters needed by vectorised R: 5 alphas, 4 powers, 5 shares, triangle, every n to 2000. Prints the milliseconds of each round.
alphas <- c(0.2, 0.1, 0.05, 0.01, 0.001)
powers <- c(0.8, 0.9, 0.95, 0.99)
shares <- c(0.1, 0.2, 0.3, 0.4, 0.5)
n <- 1:2000

tasters <- function() {
  right <- shares + (1 - shares) / 3
  do.call(rbind, lapply(alphas, function(alpha) {
    critical <- qbinom(alpha, n, 1 / 3, lower.tail = FALSE) + 1
    power <- sapply(right, function(p) pbinom(critical - 1, n, p, lower.tail = FALSE))
    do.call(rbind, lapply(powers, function(target) {
      reached <- power >= target
      cbind(alpha, target, shares, apply(reached, 2, function(r) which(r)[1]), apply(reached, 2, function(r) max(0, which(!r)) + 1))
    }))
  }))
}

for (i in 1:6) {
  start <- proc.time()[["elapsed"]]
  for (j in 1:3) tasters()
  cat(1000 * (proc.time()[["elapsed"]] - start) / 3, "\n")
}
