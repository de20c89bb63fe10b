# Quantiles, audits and shares by R's own distributions, for cases drawn by a seed. Prints a line for each: what, its
# inputs, the answer. Usage: Rscript quantiles.R
set.seed(20260504)
emit <- function(what, ...) cat(paste(c(what, sprintf("%.17g", c(...))), collapse = "\t"), "\n", sep = "")
for (i in 1:200) {
  level <- round(runif(1, 0.5, 0.995), 3)
  df <- if (i %% 2) sample(1:200, 1) else round(runif(1, 1, 60), 4)
  emit("t", level, df, qt(0.5 + level / 2, df))
}
for (level in c(0.5, 0.8, 0.9, 0.95, 0.99, 0.999)) emit("normal", level, qnorm(0.5 + level / 2))
within <- function(chance, level) chance <= (1 - level) * (1 + 1e-12)
for (i in 1:100) {
  list <- sample(20:3000, 1); allowed <- sample(0:3, 1); bound <- sample(c(1, 2, 5, 10, 20), 1)
  level <- sample(c(0.8, 0.9, 0.95, 0.99), 1)
  wrong <- min(list, floor(round(bound * list / 100, 9)) + 1)
  size <- allowed + 1
  while (size < list && !within(phyper(allowed, wrong, list - wrong, size), level)) size <- size + 1
  emit("audit_list", list, allowed, bound, level, size)
  size <- allowed + 1
  while (!within(pbinom(allowed, size, bound / 100), level)) size <- size + 1
  emit("audit_open", allowed, bound, level, size)
  looked <- sample(5:min(200, list), 1); found <- sample(0:4, 1)
  may <- found:(list - looked + found)
  emit("share_list", list, looked, found, level, 100 * max(may[!within(phyper(found, may, list - may, looked), level)]) / list)
  emit("share_open", looked, found, level, 100 * qbeta(level, found + 1, looked - found))
}
for (i in 1:100) {
  n <- sample(2:80, 1); k <- sample(1:n, 1); level <- sample(c(0.8, 0.9, 0.95), 1)
  limits <- suppressWarnings(prop.test(k, n, conf.level = level, correct = FALSE))$conf.int  # Wilson's score interval
  emit("wilson", n, k, level, 100 * limits[1], 100 * limits[2])
  emit("none_found", n, level, 100 * qbeta(level, 1, n))
}
