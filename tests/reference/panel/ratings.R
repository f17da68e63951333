# Paired ratings: t.test and wilcox.test on made-up ratings. Run in this folder: Rscript ratings.R
g <- function(x) sprintf("%.14g", x)
sets <- list(  # made-up differences B - A without ties in size, where wilcox.test is exact
  a = c(1.2, -0.4, 2.5, 0.7, -1.1, 3.3, 0.2, 1.9, -0.6, 2.2),
  b = c(-0.3, 0.9, -1.4, 2.1, -2.6, 0.5, -3.7, 1.0, -0.2, 0.8, -1.9, 4.4, 0.1, -0.7, 1.6),
  c = seq(0.31, 9, length.out = 24) * rep(c(1, 1, -1), 8))
rows <- do.call(rbind, lapply(names(sets), function(s) { d <- sets[[s]]; t <- t.test(d); w <- wilcox.test(d, exact = TRUE)
  data.frame(set = s, d = paste(sprintf("%.17g", d), collapse = " "), mean = g(mean(d)), low = g(t$conf.int[1]), high = g(t$conf.int[2]),
    t = g(t$statistic), t_p = g(t$p.value), v = g(w$statistic), w_p = g(w$p.value)) }))
con <- file("ratings.csv", "w")
writeLines(c(paste0("# ", R.version.string), "# Made-up differences; t.test and exact wilcox.test. Printed by ratings.R"), con)
write.csv(rows, con, row.names = FALSE, quote = FALSE)
close(con)
p <- c(0.01, 0.04, 0.03, 0.005, 0.2, 0.9)
con <- file("holm.csv", "w")
writeLines(c(paste0("# ", R.version.string), "# p.adjust(method = 'holm'). Printed by ratings.R"), con)
write.csv(data.frame(p = p, adjusted = p.adjust(p, "holm")), con, row.names = FALSE, quote = FALSE)
close(con)
