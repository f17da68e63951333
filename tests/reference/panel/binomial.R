# Exact binomial tails, critical counts, similarity counts, tasters needed and intervals, as base R gives them.
# Run in this folder: Rscript binomial.R
version_line <- paste0("# ", R.version.string, ", stats ", packageVersion("stats"))
put <- function(name, table, note) {
  con <- file(name, "w")
  writeLines(c(version_line, paste0("# ", note, " Printed by binomial.R")), con)
  write.csv(table, con, row.names = FALSE, quote = FALSE)
  close(con)
}
g17 <- function(x) sprintf("%.17g", x)

# Tails, from the middle to far beyond what a panel can show.
rows <- list()
for (n in c(1, 2, 5, 12, 20, 30, 60, 108, 250, 500, 2000)) for (p in c(1/10, 1/3, 1/2, 8/15, 0.9)) {
  k <- unique(round(c(0, 1, n * p * c(.25, .5, .75, .9, 1, 1.1, 1.25, 1.5, 2, 3), n * c(.7, .9), n - 1, n)))
  for (x in k[k >= 0 & k <= n]) rows[[length(rows) + 1]] <- data.frame(
    n = n, p = g17(p), k = x,
    exactly = g17(dbinom(x, n, p)),
    at_least = g17(pbinom(x - 1, n, p, lower.tail = FALSE)),
    at_most = g17(pbinom(x, n, p)),
    log_at_least = g17(pbinom(x - 1, n, p, lower.tail = FALSE, log.p = TRUE)),
    log_at_most = g17(pbinom(x, n, p, log.p = TRUE)))
}
put("tails.csv", do.call(rbind, rows), "Binomial point probabilities and tails, both ends inclusive.")

# Critical counts: smallest k with P(X >= k) <= alpha; n + 1 where none. 'sides' 2 is the paired test at alpha / 2.
# qbinom starts the search; a tie within rounding (n = 1, chance 1/10, alpha 10 %) counts as reached.
critical <- function(n, g, a) {
  k <- pmax(0, qbinom(a, n, g, lower.tail = FALSE) - 1)
  for (i in 1:4) k <- ifelse(pbinom(k - 1, n, g, lower.tail = FALSE) <= a * (1 + 1e-12), k, k + 1)
  stopifnot(all(pbinom(k - 1, n, g, lower.tail = FALSE) <= a * (1 + 1e-12)))
  k
}
rows <- list()
for (s in list(c(1/3, 1), c(1/2, 1), c(1/2, 2), c(1/10, 1))) for (a in c(.1, .05, .01, .001)) {
  n <- 1:500
  k <- sapply(n, function(m) {
    t <- pbinom((0:(m + 1)) - 1, m, s[1], lower.tail = FALSE)
    which(t <= a / s[2] * (1 + 1e-12))[1] - 1
  })
  stopifnot(all(k == critical(n, s[1], a / s[2])))
  rows[[length(rows) + 1]] <- data.frame(n = n, chance = g17(s[1]), sides = s[2], alpha = a, critical = k)
}
put("critical-counts.csv", do.call(rbind, rows), "Smallest count that shows a difference, n = 1..500; n + 1 where there is none.")

# Similarity: largest x with P(X <= x | pc) <= beta; -1 where none.
rows <- list()
for (g in c(1/3, 1/2)) for (pd in c(.2, .3, .4)) for (b in c(.1, .05, .01)) {
  n <- seq(6, 498, 6)
  pc <- pd + g * (1 - pd)
  x <- sapply(n, function(m) sum(pbinom(0:m, m, pc) <= b) - 1)
  rows[[length(rows) + 1]] <- data.frame(n = n, chance = g17(g), pd = pd, beta = b, largest = x)
}
put("similarity-counts.csv", do.call(rbind, rows), "Largest count that rules a share of discriminators out.")

# Tasters needed: first n reaching the power, and one more than the last n that misses it (n up to 4000).
N <- 4000
rows <- list()
for (s in list(c(1/3, 1), c(1/2, 1), c(1/2, 2), c(1/10, 1))) for (a in c(.1, .05, .01, .001)) {
  n <- 1:N
  k <- critical(n, s[1], a / s[2])
  for (pd in c(.1, .2, .3, .4, .5)) {
    pc <- pd + s[1] * (1 - pd)
    w <- pbinom(k - 1, n, pc, lower.tail = FALSE)
    if (s[2] == 2) w <- w + pbinom(n - k, n, pc)
    for (b in c(.2, .1, .05, .01)) {
      ok <- w >= 1 - b
      rows[[length(rows) + 1]] <- data.frame(chance = g17(s[1]), sides = s[2], alpha = a, pd = pd, power = 1 - b,
        first = which(ok)[1], always = max(which(!ok)) + 1)
    }
  }
}
put("tasters-needed.csv", do.call(rbind, rows), "First n reaching the power, and the n from which every n up to 4000 reaches it.")

# Similarity sizes: first n and always n with P(X <= limit | chance) >= power; two-sided both ways.
rows <- list()
for (s in list(c(1/3, 1), c(1/2, 1), c(1/2, 2))) for (pd in c(.2, .3, .4)) for (b in c(.1, .05)) {
  pc <- pd + s[1] * (1 - pd)
  n <- 1:1500
  lim <- sapply(n, function(m) sum(pbinom(0:m, m, pc) <= b) - 1)
  w <- pbinom(lim, n, s[1])
  if (s[2] == 2) w <- w - pbinom(n - lim - 1, n, s[1])
  for (pw in c(.8, .9)) rows[[length(rows) + 1]] <- data.frame(chance = g17(s[1]), sides = s[2], pd = pd, beta = b, power = pw,
    first = which(w >= pw)[1], always = max(which(w < pw)) + 1)
}
put("tasters-needed-similarity.csv", do.call(rbind, rows), "Sizes that rule a margin out when all guess; n up to 1500.")

# Intervals for a share.
rows <- list()
for (n in c(1, 7, 18, 36, 100, 500)) for (k in unique(round(n * c(0, .05, .33, .5, .8, 1)))) for (lev in c(.8, .95, .99)) {
  t <- (1 - lev) / 2
  cp <- binom.test(k, n, conf.level = lev)$conf.int
  wi <- suppressWarnings(prop.test(k, n, conf.level = lev, correct = FALSE))$conf.int  # it warns of small counts
  je <- qbeta(c(t, 1 - t), k + .5, n - k + .5)
  rows[[length(rows) + 1]] <- data.frame(n = n, k = k, level = lev,
    cp_low = g17(if (k == 0) 0 else qbeta(t, k, n - k + 1)), cp_high = g17(if (k == n) 1 else qbeta(1 - t, k + 1, n - k)),
    wilson_low = g17(wi[1]), wilson_high = g17(wi[2]), jeffreys_low = g17(je[1]), jeffreys_high = g17(je[2]))
  stopifnot(max(abs(cp - c(if (k == 0) 0 else qbeta(t, k, n - k + 1), if (k == n) 1 else qbeta(1 - t, k + 1, n - k)))) < 1e-12)
}
put("intervals.csv", do.call(rbind, rows), "Clopper-Pearson (qbeta, equal to binom.test), Wilson (prop.test, no correction), Jeffreys (qbeta).")
