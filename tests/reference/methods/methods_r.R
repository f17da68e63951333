# Every check value once more, with base R, by other ways than methods_scipy.py where there are any: > methods_r.csv
# Reads what is asked from check-values.tsv, and not what is expected.
ties <- 1 + 1e-12

# JSON of plain numbers, texts, lists and objects, read as R.
from_json <- function(text) {
  for (swap in list(c("[[{]", "list("), c("[]}]", ")"), c('":', '"='), c("null", "NULL"), c("true", "TRUE"), c("false", "FALSE")))
    text <- gsub(swap[1], swap[2], text)
  eval(parse(text = text))
}
chance <- function(text) eval(parse(text = text))
numbers <- function(list) unlist(list)

critical <- function(n, g, a) { # smallest count whose upper tail is at most a; NA where none is
  ok <- which(pbinom((0:n) - 1, n, g, lower.tail = FALSE) <= a * ties)
  if (length(ok)) ok[1] - 1 else NA
}
largest <- function(n, p, b) sum(pbinom(0:n, n, p) <= b * ties) - 1
at <- function(g, share) g + (1 - g) * share
root <- function(f, low, high) if (f(low) == 0) low else uniroot(f, c(low, high), tol = 1e-14, maxiter = 10000)$root
span <- function(low, high) if (is.na(low) || low > high) NULL else c(low, high)

# 1. Below chance, and both directions
low_tail <- function(n, right, g) pbinom(right, n, chance(g))
alarm_count <- function(n, g, level) largest(n, chance(g), level)
directed_range <- function(n, g, margin, beta) {
  g <- chance(g)
  high <- largest(n, at(g, margin), beta)
  if (high < n * g) NULL else span(critical(n, g * (1 - margin), beta), high)
}
directed_tails <- function(n, right, g, margin, beta) {
  within <- directed_range(n, g, margin, beta)
  g <- chance(g)
  list(p_upper = sum(dbinom(0:right, n, at(g, margin))), p_lower = sum(dbinom(right:n, n, g * (1 - margin))),
    ruled_out = !is.null(within) && right >= within[1] && right <= within[2])
}
upper_limit <- function(x, n, tail) if (x == n) 1 else root(function(p) pbinom(x, n, p) - tail, 0, 1)
lower_limit <- function(x, n, tail) if (x == 0) 0 else root(function(p) pbinom(x - 1, n, p, lower.tail = FALSE) - tail, 0, 1)
limit_constrained <- function(n, right, g, beta) {
  g <- chance(g)
  (upper_limit(max(right, ceiling(n * g - 1e-9)), n, beta) - g) / (1 - g)
}
guess <- c(triangle = 1/3, tetrad = 1/3, "3-afc" = 1/3, "duo-trio" = 1/2, "2-afc" = 1/2)
judge <- function(n, right, g, alpha, margin, beta, directed, alarm = 0.01) {
  if (pbinom(right, n, g) <= alarm * ties) return("alarm")
  shown <- pbinom(right - 1, n, g, lower.tail = FALSE) <= alpha * ties
  out <- largest(n, at(g, margin), beta) >= n * g - 1e-9 && pbinom(right, n, at(g, margin)) <= beta * ties &&
    (!directed || pbinom(right - 1, n, g * (1 - margin), lower.tail = FALSE) <= beta * ties)
  if (shown && out) "shown, within margin" else if (shown) "shown" else if (out) "ruled out" else "inconclusive"
}
verdict <- function(protocol, n, right, alpha, margin, beta, alarm) judge(n, right, guess[[protocol]], alpha, margin, beta, grepl("afc", protocol), alarm)

# 2. Preference
preference_range <- function(n, m, beta) {
  out <- which(pbinom(0:n, n, .5 + m) <= beta * ties & pbinom((0:n) - 1, n, .5 - m, lower.tail = FALSE) <= beta * ties) - 1
  if (length(out)) range(out) else NULL
}
same_twice <- function(n, same) binom.test(same, n, alternative = "greater")$p.value

# 3. Few people, many sets: by the number of people who can tell.
people_needed <- function(m, beta) ceiling(log(beta) / log(1 - m) - 1e-12)
power_cap <- function(n, m, beta) min(1, beta / exp(n * log1p(-m)))
add <- function(a, b) { # the sum of two counts: polynomials multiplied
  sum <- numeric(length(a) + length(b) - 1)
  for (i in seq_along(a)) sum[i - 1 + seq_along(b)] <- sum[i - 1 + seq_along(b)] + a[i] * b
  sum
}
all_or_nothing <- function(groups, m) Reduce(add, lapply(groups, function(group) {
  sets <- sapply(group$sets, function(s) s[[1]])
  g <- sapply(group$sets, function(s) chance(s[[2]]))
  total <- numeric(group$people * sum(sets) + 1)
  for (able in 0:group$people) { # they are right in all sets; the others guess in theirs
    guessed <- Reduce(add, Map(function(r, p) dbinom(0:(r * (group$people - able)), r * (group$people - able), p), sets, g))
    to <- able * sum(sets) + seq_along(guessed)
    total[to] <- total[to] + dbinom(able, group$people, m) * guessed
  }
  total
}))
alike <- function(groups, m) Reduce(add, unlist(lapply(groups, function(group) lapply(group$sets, function(s)
  dbinom(0:(s[[1]] * group$people), s[[1]] * group$people, at(chance(s[[2]]), m)))), recursive = FALSE))
below <- function(pmf, x) sum(pmf[seq_len(x + 1)])
above <- function(pmf, x) if (x <= 0) 1 else sum(pmf[-seq_len(x)])
by_guessing <- function(groups) sum(sapply(groups, function(group) group$people * sum(sapply(group$sets, function(s) s[[1]] * chance(s[[2]])))))
all_or_nothing_tail <- function(groups, right, share) below(all_or_nothing(groups, share), right)
few_people_largest <- function(groups, margin, beta) {
  ok <- cumsum(all_or_nothing(groups, margin)) <= beta * ties & cumsum(alike(groups, margin)) <= beta * ties
  s <- sum(ok) - 1
  if (s >= by_guessing(groups) - 1e-9) s else NULL
}
few_people_limit <- function(groups, right, beta) {
  s <- max(right, ceiling(by_guessing(groups) - 1e-9))
  max(root(function(m) below(all_or_nothing(groups, m), s) - beta, 0, 1), root(function(m) below(alike(groups, m), s) - beta, 0, 1))
}

# 4. Preference inside sets of three cups
set_choice <- function(aab, abb, for_b) { # over the number of B cups among the sets AAB
  i <- 0:aab
  upper <- sum(dbinom(i, aab, 1/3) * pbinom(for_b - i - 1, abb, 2/3, lower.tail = FALSE))
  lower <- sum(dbinom(i, aab, 1/3) * pbinom(for_b - i, abb, 2/3))
  list(upper = upper, lower = lower, two_sided = min(1, 2 * min(upper, lower)))
}

# 5. d-prime, from the printed forms of the psychometric functions
int <- function(f, a, b) integrate(f, a, b, rel.tol = 1e-11, abs.tol = 1e-13, subdivisions = 2000)$value
correct <- function(protocol, d) switch(protocol,
  "2-afc" = pnorm(d / sqrt(2)),
  "3-afc" = int(function(z) dnorm(z) * pnorm(z + d)^2, -9, 9),
  "duo-trio" = 1 - pnorm(d / sqrt(2)) - pnorm(d / sqrt(6)) + 2 * pnorm(d / sqrt(2)) * pnorm(d / sqrt(6)),
  triangle = 2 * int(function(z) (pnorm(-z * sqrt(3) + d * sqrt(2/3)) + pnorm(-z * sqrt(3) - d * sqrt(2/3))) * dnorm(z), 0, 9),
  tetrad = 1 - 2 * int(function(z) dnorm(z) * (2 * pnorm(z) * pnorm(z - d) - pnorm(z - d)^2), -9, 9))
discriminators_at <- function(protocol, d) (correct(protocol, d) - guess[[protocol]]) / (1 - guess[[protocol]])
dprime <- function(protocol, p) root(function(d) correct(protocol, d) - p, 1e-9, 8)
dprime_at <- function(protocol, share) dprime(protocol, at(guess[[protocol]], share))
largest_at_dprime <- function(protocol, n, d, beta) largest(n, correct(protocol, d), beta)
dprime_limit <- function(protocol, n, right, beta) {
  g <- guess[[protocol]]
  dprime(protocol, qbeta(1 - beta, max(right, ceiling(n * g - 1e-9)) + 1, n - max(right, ceiling(n * g - 1e-9))))
}

# 6. The same people in several panels
people_interval <- function(groups, right, level) {
  tail <- (1 - level) / 2
  s <- max(right, ceiling(by_guessing(groups) - 1e-9))
  ends <- function(spread) c(
    if (above(spread(groups, 0), right) >= tail) 0 else root(function(m) above(spread(groups, m), right) - tail, 0, 1),
    root(function(m) below(spread(groups, m), s) - tail, 0, 1))
  a <- ends(all_or_nothing)
  b <- ends(alike)
  list(low = min(a[1], b[1]), high = max(a[2], b[2]), low_alike = b[1], high_alike = b[2])
}
person_t <- function(people, level) {
  tasks <- unique(unlist(lapply(people, names)))
  right <- sum(sapply(people, function(person) sum(sapply(person, function(xn) xn[[1]]))))
  sets <- sapply(tasks, function(task) sum(sapply(people, function(person) if (is.null(person[[task]])) 0 else person[[task]][[2]])))
  surplus <- function(d) {
    p <- sapply(tasks, correct, d)
    sapply(people, function(person) sum(sapply(names(person), function(task) person[[task]][[1]] - person[[task]][[2]] * p[[task]])))
  }
  t <- function(d) unname(t.test(surplus(d))$statistic)
  sums <- function(d) Reduce(add, lapply(tasks, function(task) dbinom(0:sets[[task]], sets[[task]], correct(task, d))))
  bound <- qt((1 + level) / 2, length(people) - 1)
  tail <- (1 - level) / 2
  estimate <- root(function(d) sum(surplus(d)), 0, 8)
  t_low <- if (t(0) <= bound) 0 else root(function(d) t(d) - bound, 0, estimate)
  t_high <- root(function(d) t(d) + bound, estimate, 8)
  exact_low <- if (above(sums(0), right) >= tail) 0 else root(function(d) above(sums(d), right) - tail, 0, estimate)
  exact_high <- root(function(d) below(sums(d), right) - tail, estimate, 8)
  list(estimate = estimate, t_low = t_low, t_high = t_high, exact_low = exact_low, exact_high = exact_high,
    low = min(t_low, exact_low), high = max(t_high, exact_high), p_guessing = above(sums(0), right))
}

# 7. Lab values of several runs
critical_difference <- function(s_r, n1, n2, s_run, separate) qnorm(.975) * sqrt(s_r^2 / n1 + s_r^2 / n2 + if (separate) 2 * s_run^2 else 0)
false_difference <- function(ratio, n) pchisq(qchisq(.95, 1) * (1 / n) / (ratio^2 + 1 / n), 1, lower.tail = FALSE)
components <- function(runs) { # aov's table
  n <- length(runs[[1]])
  table <- anova(lm(y ~ run, data.frame(y = numbers(runs), run = factor(rep(seq_along(runs), each = n)))))
  within <- table[2, "Mean Sq"]
  run <- max(0, (table[1, "Mean Sq"] - within) / n)
  list(s_r = sqrt(within), s_run = sqrt(run), s_between = sqrt(within + run), df_r = table[2, "Df"], df_run = table[1, "Df"])
}
run_means_cd <- function(run_means, level) qt((1 + level) / 2, length(run_means) - 1) * sqrt(2 * var(numbers(run_means)))
paired_runs <- function(a, b) {
  t <- t.test(numbers(a), numbers(b), paired = TRUE)
  list(mean = unname(t$estimate), se = t$stderr, low = t$conf.int[1], high = t$conf.int[2], p = t$p.value)
}

# 8. Several split batches
brew_t <- function(y) {
  fit <- lm(y ~ 1, data.frame(y = numbers(y)))
  mean <- predict(fit, data.frame(z = 0), interval = "confidence")
  following <- predict(fit, data.frame(z = 0), interval = "prediction")
  list(mean = mean[1], sd = sd(numbers(y)), low = mean[2], high = mean[3], next_low = following[2], next_high = following[3],
    p = summary(fit)$coefficients[1, 4])
}
hartung_knapp <- function(y, v) {
  y <- numbers(y)
  v <- numbers(v)
  k <- length(y)
  excess <- function(tau2) deviance(lm(y ~ 1, weights = 1 / (v + tau2))) - (k - 1)
  tau2 <- if (excess(0) <= 0) 0 else root(excess, 0, 100)
  fit <- lm(y ~ 1, weights = 1 / (v + tau2))
  mean <- unname(coef(fit))
  se <- sqrt(max(1, deviance(fit) / (k - 1)) / sum(1 / (v + tau2)))
  bound <- qt(.975, k - 1)
  reach <- bound * sqrt(se^2 + tau2)
  list(tau2 = tau2, mean = mean, se = se, low = mean - bound * se, high = mean + bound * se, p = 2 * pt(-abs(mean) / se, k - 1),
    next_low = mean - reach, next_high = mean + reach)
}
sign <- function(brews, same) binom.test(same, brews)$p.value
sign_flip <- function(y) mean(abs(as.matrix(expand.grid(rep(list(c(-1, 1)), length(y)))) %*% numbers(y)) >= abs(sum(numbers(y))) - 1e-9)
at_least_u_brews <- function(p, u) min(1, (length(p) - u + 1) * sort(numbers(p))[u])
share_of_brews <- function(brews, found, level) list(low = lower_limit(found, brews, 1 - level), high = upper_limit(found, brews, 1 - level))

# 9. Known-difference control
control_power <- function(protocol, n, d, alpha) {
  c <- critical(n, guess[[protocol]], alpha)
  list(critical = c, power = sum(dbinom(c:n, n, correct(protocol, d))))
}
control_tasters <- function(protocol, d, alpha, power) {
  p <- correct(protocol, d)
  good <- sapply(1:300, function(n) { c <- critical(n, guess[[protocol]], alpha); !is.na(c) && pbinom(c - 1, n, p, lower.tail = FALSE) >= power })
  list(first = which(good)[1], always = max(which(!good)) + 1)
}
against_control <- function(only_control, only_test) binom.test(c(only_control, only_test), alternative = "greater")$p.value

# 10. Equivalence of lab means
equivalence <- function(d, se, bound, tail, margin) list(low = d - bound * se, high = d + bound * se,
  p = max(tail((margin - d) / se), tail((margin + d) / se)), equivalent = d - bound * se > -margin && d + bound * se < margin)
equivalence_known <- function(d, n1, n2, s_r, margin, alpha, s_run, separate) {
  se <- sqrt(s_r^2 / n1 + s_r^2 / n2 + if (separate) 2 * s_run^2 else 0)
  c(list(se = se), equivalence(d, se, qnorm(1 - alpha), function(z) pnorm(-z), margin))
}
equivalence_estimated <- function(a, b, margin, alpha, others) {
  groups <- lapply(c(list(a, b), others), numbers)
  sample <- factor(rep(seq_along(groups), lengths(groups)))
  fit <- lm(numbers(groups) ~ sample)
  s_r <- summary(fit)$sigma
  df <- fit$df.residual
  d <- mean(groups[[1]]) - mean(groups[[2]])
  se <- s_r * sqrt(1 / length(groups[[1]]) + 1 / length(groups[[2]]))
  c(list(d = d, s_r = s_r, df = df), equivalence(d, se, qt(1 - alpha, df), function(t) pt(-t, df), margin))
}
smallest_margin <- function(n1, n2, s_r, df = NULL, alpha) qt(1 - alpha, if (is.null(df)) Inf else df) * s_r * sqrt(1 / n1 + 1 / n2)
equivalence_power <- function(n1, n2, s_r, margin, d, alpha) {
  se <- s_r * sqrt(1 / n1 + 1 / n2)
  room <- margin - qnorm(1 - alpha) * se
  int(function(x) dnorm(x, d, se), -room, room)
}

# 11. Likelihood and Bayes: the integral of p^x (1 - p)^(n - x) is an incomplete beta function.
likelihood_ratio <- function(n, right, g, margin) {
  p <- at(chance(g), margin)
  exp(right * log(p / chance(g)) + (n - right) * log((1 - p) / (1 - chance(g))))
}
mixture <- function(n, x, g, low, high, against) {
  ends <- at(g, c(low, high))
  one <- at(g, against)
  between <- if (x > n * ends[2]) diff(pbeta(ends, x + 1, n - x + 1)) else -diff(pbeta(ends, x + 1, n - x + 1, lower.tail = FALSE))
  exp(lbeta(x + 1, n - x + 1) - x * log(one) - (n - x) * log1p(-one)) * between / diff(ends)
}
bayes_factor <- function(n, right, g, low, high) mixture(n, right, chance(g), low, high, 0)

# 12. Looking early: one ballot at a time.
path <- function(looks, p, stops) {
  alive <- 1
  stopped <- 0
  for (n in 1:max(looks)) {
    alive <- c(alive * (1 - p), 0) + c(0, alive * p)
    if (n %in% looks) {
      hit <- stops(n, 0:n)
      stopped <- stopped + sum(alive[hit])
      alive[hit] <- 0
    }
  }
  stopped
}
path_to <- function(looks, p, criticals) path(looks, p, function(n, x) { c <- criticals[match(n, looks)]; !is.na(c) & x >= c })
true_alpha <- function(looks, g, alpha) { looks <- numbers(looks); path_to(looks, chance(g), sapply(looks, critical, chance(g), alpha)) }
looks_level <- function(looks, g, alpha) {
  looks <- numbers(looks)
  g <- chance(g)
  levels <- unique(sort(unlist(lapply(looks, function(n) pbinom((0:n) - 1, n, g, lower.tail = FALSE)))))
  levels <- rev(levels[levels <= alpha * ties])
  for (level in levels) { # from the largest down
    criticals <- sapply(looks, critical, g, level)
    true <- path_to(looks, g, criticals)
    if (true <= alpha * ties) return(list(level = level, criticals = as.list(criticals), true_alpha = true))
  }
}
any_time_count <- function(n, g, alpha) {
  x <- 0:n
  ok <- x[sapply(x, function(i) i >= n * chance(g) && mixture(n, i, chance(g), 0, 1, 0) >= 1 / alpha)]
  if (length(ok)) ok[1] else NULL
}
any_time_alpha <- function(n, g, alpha) path_to(1:n, chance(g), sapply(1:n, function(k) { c <- any_time_count(k, g, alpha); if (is.null(c)) NA else c }))
true_beta <- function(looks, g, margin, beta) {
  looks <- numbers(looks)
  g <- chance(g)
  high <- sapply(looks, largest, at(g, margin), beta)
  path(looks, at(g, margin), function(n, x) { h <- high[match(n, looks)]; h >= n * g - 1e-9 & x <= h })
}
any_time_similar_count <- function(n, g, margin, beta) {
  ok <- which(sapply(0:n, function(x) mixture(n, x, chance(g), 0, margin, margin)) >= 1 / beta) - 1
  if (length(ok) && max(ok) >= n * chance(g) - 1e-9) max(ok) else NULL
}
any_time_beta <- function(n, g, margin, beta) {
  high <- sapply(1:n, function(k) { h <- any_time_similar_count(k, g, margin, beta); if (is.null(h)) -1 else h })
  path(1:n, at(chance(g), margin), function(k, x) x <= high[k])
}

# 13. Missing and double ballots
missing_ballots <- function(n, right, missing, g, alpha, margin, beta) {
  g <- chance(g)
  counted <- judge(n, right, g, alpha, margin, beta, FALSE)
  filled <- sapply(0:missing, function(j) judge(n + missing, right + j, g, alpha, margin, beta, FALSE))
  turned <- which(filled != counted) - 1
  list(counted = counted, all_wrong = filled[1], all_right = filled[missing + 1], turned_by = as.list(turned), robust = length(turned) == 0)
}
best_of_doubles <- function(n_single, doubles, g, alpha) { # one less the chance that all three fall short
  g <- chance(g)
  x <- 0:n_single
  short <- pbinom(critical(n_single + doubles, g, alpha) - x - 1, doubles, g)^2
  1 - sum(dbinom(x, n_single, g) * ifelse(x < critical(n_single, g, alpha), short, 0))
}

say <- function(value) {
  if (is.null(value)) "null"
  else if (is.list(value) || length(value) > 1) paste0("[", paste(sapply(value, function(v) if (is.na(v)) "null" else format(v)), collapse = " "), "]")
  else if (is.logical(value)) tolower(value)
  else if (is.character(value)) if (grepl(",", value)) paste0('"', value, '"') else value
  else if (value == round(value) && abs(value) < 1e9) sprintf("%d", as.integer(value))
  else sprintf("%.12g", value)
}
cat("# ", R.version.string, "\n# Every row of check-values.tsv, recomputed. Printed by methods_r.R\nid,part,value\n", sep = "")
for (line in grep("^d", readLines("check-values.tsv"), value = TRUE)) {
  cells <- strsplit(line, "\t")[[1]]
  answer <- do.call(if (cells[2] == "missing") missing_ballots else get(cells[2]), from_json(cells[3]))
  if (is.list(answer) && !is.null(names(answer))) for (part in names(answer)) cat(cells[1], ",", part, ",", say(answer[[part]]), "\n", sep = "")
  else cat(cells[1], ",,", say(answer), "\n", sep = "")
}
