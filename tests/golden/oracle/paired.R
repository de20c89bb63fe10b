# Expected paired changes between the invented cruise and its second visit, from R package survey: mean and total of the
# points' own differences, and the change of the mean diameter by the delta method over both visits at once.
# Rscript paired.R  -> expected_paired.json   (Debian: r-base-core r-cran-survey r-cran-jsonlite)
suppressMessages({library(survey); library(jsonlite)})
options(survey.lonely.psu = "fail"); K <- pi/576
st <- read.csv("cruise_stands.csv")
visit <- function(points, trees) { pt <- read.csv(points)[, c("stand", "point")]; tr <- read.csv(trees)
  k <- paste(tr$stand, tr$point); s <- function(v) { x <- tapply(v, k, sum)[paste(pt$stand, pt$point)]; x[is.na(x)] <- 0; as.numeric(x) }
  guide <- tr$dbh_in >= 2; t <- 10/(K*tr$dbh_in^2)
  pt$ba <- s(rep(10, nrow(tr))); pt$tpa <- s(t)
  # upland oak guide: (-0.0507 trees + 0.1698 sum of DBH + 0.0317 sum of DBH squared) / 10, an acre
  pt$stocking <- s(ifelse(guide, t*(-0.0507 + 0.1698*tr$dbh_in + 0.0317*tr$dbh_in^2)/10, 0)); pt }
a <- visit("cruise_points.csv", "cruise_trees.csv"); b <- visit("later_points.csv", "later_trees.csv")
m <- merge(a, b, by = c("stand", "point"), suffixes = c("1", "2")); m <- merge(m, st[, c("stand", "acres")])
m <- m[order(m$stand, m$point), ]; nh <- table(m$stand); m$w <- m$acres/as.numeric(nh[m$stand])
for (v in c("ba", "tpa", "stocking")) m[[paste0("d_", v)]] <- m[[paste0(v, "2")]] - m[[paste0(v, "1")]]
qmd <- function(des) { x <- svytotal(~ba1+tpa1+ba2+tpa2, des)
  q <- svycontrast(x, list(d = quote(sqrt(ba2/(0.00545415391248228*tpa2)) - sqrt(ba1/(0.00545415391248228*tpa1)))))
  stopifnot(isTRUE(all.equal(K, 0.00545415391248228))); list(change = as.numeric(coef(q)), se = as.numeric(SE(q))) }
figures <- function(d, des) { out <- lapply(setNames(nm = c("ba", "tpa", "stocking")), function(v) {
    f <- as.formula(paste0("~d_", v)); x <- svymean(f, des); tt <- svytotal(f, des)
    h <- split(d[[paste0("d_", v)]], d$stand); W <- sapply(split(d$acres, d$stand), `[`, 1); W <- W/sum(W); g <- W^2*sapply(h, var)/sapply(h, length)
    stopifnot(isTRUE(all.equal(as.numeric(SE(x)), sqrt(sum(g)))))
    one <- t.test(d[[paste0(v, "2")]], d[[paste0(v, "1")]], paired = TRUE)        # the same by another road, one stand
    if (length(h) == 1) stopifnot(isTRUE(all.equal(as.numeric(one$stderr), as.numeric(SE(x)))))
    w <- function(z) sum(W*sapply(split(z, d$stand), mean))
    # what two separate errors would claim: a trap, never an answer of ours
    sep <- sqrt(sum(W^2*(sapply(split(d[[paste0(v, "1")]], d$stand), var) + sapply(split(d[[paste0(v, "2")]], d$stand), var))/sapply(h, length)))
    df <- sum(g)^2/sum(g^2/(sapply(h, length)-1)); tq <- qt(.975, df); mm <- as.numeric(coef(x)); se <- as.numeric(SE(x))
    list(before = w(d[[paste0(v, "1")]]), after = w(d[[paste0(v, "2")]]), change = mm, se = se, df = df, lo = mm-tq*se, hi = mm+tq*se,
         total = as.numeric(coef(tt)), total_se = as.numeric(SE(tt)), separate_se_wrong = sep) })
  out$qmd <- qmd(des); out$pairs <- nrow(d); out }
des <- svydesign(ids = ~1, strata = ~stand, weights = ~w, data = m)
out <- list(made_with = paste0("R ", R.version$major, ".", R.version$minor, ", survey ", packageVersion("survey")), all = figures(m, des))
for (s in st$stand) { d <- m[m$stand == s, ]; d$w <- d$acres/nrow(d); out[[s]] <- figures(d, svydesign(ids = ~1, weights = ~w, data = d)) }
# Two groups of trees and pairs of readings: Student's sleep data (Student 1908, Biometrika 6:1-25), as R gives them.
tt <- function(x) list(difference = as.numeric(if (length(x$estimate) == 2) x$estimate[1]-x$estimate[2] else x$estimate), se = as.numeric(x$stderr), df = as.numeric(x$parameter), lo = x$conf.int[1], hi = x$conf.int[2])
g1 <- sleep$extra[sleep$group == 1]; g2 <- sleep$extra[sleep$group == 2]
out$sleep <- list(group1 = g1, group2 = g2, welch = tt(t.test(g2, g1)), paired = tt(t.test(g2, g1, paired = TRUE)), uneven = tt(t.test(g2, g1[1:6])))
write_json(out, "expected_paired.json", pretty = TRUE, auto_unbox = TRUE, digits = 12)
