# Ratios and paired changes over strata by R's package survey, for values drawn by a seed. Prints a line for each case:
# strata; for each its size, whether it is a finite population of so many plots (0: no), plots, values x, values y; then
# the combined ratio of y over x and its se, the mean of y less x and its se, and that change's 95 % limits on plots less
# strata. Usage: Rscript ratios.R
suppressMessages(library(survey))
set.seed(20260505)
for (case in 1:40) {
  strata <- sample(1:4, 1)
  finite <- case %% 4 == 0
  line <- strata
  rows <- NULL
  sizes <- round(runif(strata, 5, 90), 1)
  for (h in seq_len(strata)) {
    n <- sample(3:12, 1)
    x <- round(rgamma(n, 2, 0.05), 1)
    y <- round(x * runif(n, 0.5, 1.5) + rpois(n, 3), 1)
    x[1] <- 0  # a plot on which the one was not found
    population <- if (finite) n * sample(2:9, 1) else 0
    line <- c(line, sizes[h], population, n, x, y)
    rows <- rbind(rows, data.frame(h, x, y, w = sizes[h] / n, population))
  }
  design <- if (finite) svydesign(~1, strata = ~h, weights = ~w, fpc = ~population, data = rows) else
    svydesign(~1, strata = ~h, weights = ~w, data = rows)
  ratio <- svyratio(~y, ~x, design)
  change <- svymean(~I(y - x), design)
  limits <- confint(change, df = degf(design))
  cat(paste(c("case", sprintf("%.17g", c(line, coef(ratio), SE(ratio), coef(change), SE(change), limits))), collapse = "\t"),
      "\n", sep = "")
}
