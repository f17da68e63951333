# Psychometric functions by R's adaptive quadrature (integrate), and by another route where there is one.
# Run in this folder: Rscript psychometric.R
# Triangle: also as the chance that the squared distance of the odd cup wins, through the noncentral F distribution.
pc <- list(
  "triangle" = function(d) 2 * integrate(function(z) (pnorm(-z * sqrt(3) + d * sqrt(2/3)) + pnorm(-z * sqrt(3) - d * sqrt(2/3))) * dnorm(z), 0, Inf, rel.tol = 1e-12, abs.tol = 0)$value,
  "duo-trio" = function(d) {
    # X, Y the reference and its match, W the other: |X - Y| < |X - W|. Two-dimensional, over D = X - Y and E = X - W, given X.
    integrate(Vectorize(function(x) dnorm(x) * integrate(Vectorize(function(y) dnorm(y) * {
      r <- abs(x - y); pnorm(x - r - d) + pnorm(-(x + r - d)) }), -9, 9, rel.tol = 1e-9)$value), -9, 9, rel.tol = 1e-9)$value },
  "tetrad" = function(d) 1 - 2 * integrate(function(z) dnorm(z) * (2 * pnorm(z) * pnorm(z - d) - pnorm(z - d)^2), -Inf, Inf, rel.tol = 1e-12, abs.tol = 0)$value,
  "paired directional" = function(d) pnorm(d / sqrt(2)),
  "3-AFC" = function(d) integrate(function(z) dnorm(z - d) * pnorm(z)^2, -Inf, Inf, rel.tol = 1e-12, abs.tol = 0)$value
)
triangle.F <- function(d) pf(3, 1, 1, ncp = d^2 * 2 / 3, lower.tail = FALSE)
# Same/different and A/not-A with the line drawn where most answers are right (optimize).
pc[["A-not-A"]] <- function(d) optimize(function(k) (pnorm(k) + pnorm(d - k)) / 2, c(-10, 20), maximum = TRUE, tol = 1e-10)$objective
pc[["same-different"]] <- function(d) optimize(function(t)
  (2 * pnorm(t / sqrt(2)) - 1 + pnorm((d - t) / sqrt(2)) + pnorm((-d - t) / sqrt(2))) / 2, c(0, 20), maximum = TRUE, tol = 1e-10)$objective
rows <- do.call(rbind, lapply(names(pc), function(n) do.call(rbind, lapply(c(.25, .5, 1, 1.5, 2, 2.5, 3, 4), function(d)
  data.frame(protocol = n, d = d, pc = sprintf("%.12f", pc[[n]](d)))))))
for (d in c(.25, 1, 2, 3)) cat("triangle by noncentral F", d, triangle.F(d), pc[["triangle"]](d), "\n")
con <- file("psychometric.csv", "w")
writeLines(c(paste0("# ", R.version.string), "# Share of correct answers at d-prime; integrate() and optimize(). Printed by psychometric.R"), con)
write.csv(rows, con, row.names = FALSE, quote = FALSE)
close(con)

# Two-out-of-five by simulation of the grouping with the smallest sum of squares.
set.seed(20260101)
n <- 2e6
groups <- combn(5, 2)
share <- sapply(c(0, .5, 1, 2, 3), function(d) {
  x <- matrix(rnorm(5 * n), n); x[, 1:2] <- x[, 1:2] + d
  total <- rowSums(x)
  between <- apply(groups, 2, function(g) { p <- x[, g[1]] + x[, g[2]]; p^2 / 2 + (total - p)^2 / 3 })
  mean(max.col(between, ties.method = "first") == 1)
})
con <- file("two-out-of-five.csv", "w")
writeLines(c(paste0("# ", R.version.string, ", set.seed(20260101), 2000000 sets each"),
  "# Share of sets in which the right pair is the grouping with the smallest sum of squares. Printed by psychometric.R"), con)
write.csv(data.frame(d = c(0, .5, 1, 2, 3), pc = share), con, row.names = FALSE, quote = FALSE)
close(con)
