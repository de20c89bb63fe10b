# Tract files estimated a second time: read with sqlite3 and computed by R's package survey, with nothing of ours.
# Prints a line for each figure: file, area, figure, mean, se, degrees of freedom by Satterthwaite and by plots less stands,
# 95 % limits by the one and 90 % limits by the other, total, its se, plots on which it was found.
# Usage: Rscript survey.R TRACT.gpkg ...      (Debian: r-cran-survey, sqlite3)
suppressMessages(library(survey))
options(survey.lonely.psu = "fail", warn = 2)
for (file in commandArgs(trailingOnly = TRUE)) {
  read <- function(sql) read.csv(pipe(sprintf("sqlite3 -readonly -header -csv '%s' \"%s\"", file, sql)),
                                 colClasses = c(uid = "character"), stringsAsFactors = FALSE)
  stands <- read("select uid, name, area_ac from stand where deleted = 0")
  cruises <- read("select uid, * from cruise where deleted = 0")
  plots <- read("select uid, stand_uid, cruise_uid from plot where deleted = 0 and status in ('measured', 'empty')")
  trees <- read("select uid, plot_uid, units, species_fia, dbh_tenths, status, stems, edge_count from tree where deleted = 0")
  young <- read("select uid, plot_uid, height_class, count from regen where deleted = 0")
  cruise <- cruises[1, ]
  stopifnot(nrow(cruises) == 1)
  k <- pi / 576                       # square feet of a stem by its diameter in inches, squared
  hectare <- 1 / 0.40468564224        # acres
  inches <- function(tenths, units) ifelse(units == "us", tenths / 10, tenths / 25.4)
  acres <- function(area) if (cruise$units == "us") area else area * hectare
  least <- if (is.na(cruise$min_dbh_tenths)) 0 else inches(cruise$min_dbh_tenths, cruise$units)
  trees$dbh <- inches(trees$dbh_tenths, trees$units)
  trees <- trees[trees$dbh >= least - 1e-9, ]
  trees$each <- if (cruise$design == "point") {
    (if (cruise$units == "us") cruise$factor else cruise$factor * 4.356) / (k * trees$dbh^2)
  } else if (is.na(cruise$small_area)) {
    rep(1 / acres(cruise$plot_area), nrow(trees))
  } else {
    ifelse(trees$dbh < inches(cruise$small_below_tenths, cruise$units) - 1e-9,
           1 / acres(cruise$small_area), 1 / acres(cruise$plot_area))
  }
  trees$trees <- trees$each * trees$stems * trees$edge_count
  trees$ba <- trees$trees * k * trees$dbh^2
  live <- trees$status == "live"
  class <- 2 * floor((trees$dbh + 1 + 1e-9) / 2)  # 2-inch class c holds [c - 1, c + 1)
  groups <- list(live = live, dead = !live)
  for (s in unique(trees$species_fia[live])) groups[[paste0("species.", s)]] <- live & trees$species_fia == s
  for (c in unique(class[live])) groups[[paste0("class.", c)]] <- live & class == c
  on_plots <- function(values, of) {
    sums <- tapply(values, of, sum)[plots$uid]
    as.numeric(ifelse(is.na(sums), 0, sums))  # a plot without such a tree holds zero of it
  }
  plots <- plots[plots$stand_uid %in% stands$uid, ]
  z <- data.frame(row.names = seq_len(nrow(plots)))
  for (g in names(groups)) for (figure in c("ba", "trees")) {
    z[[paste0(g, ".", figure)]] <- on_plots(trees[[figure]][groups[[g]]], trees$plot_uid[groups[[g]]])
  }
  if (!is.na(cruise$regen_area)) for (h in unique(young$height_class)) {
    z[[paste0("young.", h)]] <- on_plots(young$count[young$height_class == h], young$plot_uid[young$height_class == h]) /
      acres(cruise$regen_area)
  }
  names <- colnames(z)
  plots <- cbind(plots, z)
  cruised <- stands[stands$uid %in% plots$stand_uid, ]
  counts <- table(plots$stand_uid)
  plots$w <- cruised$area_ac[match(plots$stand_uid, cruised$uid)] / as.numeric(counts[plots$stand_uid])
  emit <- function(...) cat(paste(sapply(list(file, ...), function(x) if (is.numeric(x)) sprintf("%.17g", x) else x), collapse = "\t"), "\n", sep = "")
  every <- make.formula(names)
  by_stand <- lapply(cruised$uid, function(u) SE(svymean(every, svydesign(~1, weights = ~w, data = plots[plots$stand_uid == u, ]))))
  n <- as.numeric(counts[cruised$uid])
  figures <- function(area, rows, design, own) {
    m <- svymean(every, design)
    total <- svytotal(every, design)
    plain <- degf(design)
    at_90 <- confint(m, level = 0.90, df = plain)
    errors <- as.numeric(SE(m))
    total_errors <- as.numeric(SE(total))
    share <- if (is.null(own)) cruised$area_ac / sum(cruised$area_ac) else 1
    for (i in seq_along(names)) {
      g <- if (is.null(own)) share^2 * sapply(by_stand, function(se) se[i]^2) else by_stand[[own]][i]^2
      free <- (if (is.null(own)) n else n[own]) - 1
      satterthwaite <- if (sum(g) > 0) min(plain, sum(g)^2 / sum(g^2 / free)) else plain
      half <- qt(0.975, satterthwaite) * errors[i]
      emit(area, names[i], coef(m)[[i]], errors[i], satterthwaite, plain, coef(m)[[i]] - half, coef(m)[[i]] + half,
           at_90[i, 1], at_90[i, 2], coef(total)[[i]], total_errors[i], sum(plots[rows, names[i]] > 0))
    }
    if (coef(m)[["live.trees"]] > 0) {
      r <- svyratio(~live.ba, ~live.trees, design)
      qmd <- sqrt(as.numeric(coef(r)) / k)
      emit(area, "qmd", qmd, qmd / 2 * as.numeric(SE(r)) / as.numeric(coef(r)))
    }
  }
  for (i in seq_len(nrow(cruised))) {
    rows <- plots$stand_uid == cruised$uid[i]
    figures(cruised$name[i], rows, svydesign(~1, weights = ~w, data = plots[rows, ]), i)
  }
  whole <- svydesign(~1, strata = ~stand_uid, weights = ~w, data = plots)
  figures("all", TRUE, whole, NULL)
  if (cruise$design == "fixed" && is.na(cruise$small_area)) {
    plots$tiles <- cruised$area_ac[match(plots$stand_uid, cruised$uid)] / acres(cruise$plot_area)
    m <- svymean(~live.ba, svydesign(~1, strata = ~stand_uid, fpc = ~tiles, data = plots))
    emit("all", "finite", as.numeric(coef(m)), as.numeric(SE(m)))
  }
  if (nrow(cruised) > 1) {
    anywhere <- svydesign(~1, weights = rep(sum(cruised$area_ac) / nrow(plots), nrow(plots)), data = plots)
    m <- svymean(~live.ba, postStratify(anywhere, ~stand_uid, data.frame(stand_uid = cruised$uid, Freq = cruised$area_ac)))
    emit("all", "post_stratified", as.numeric(coef(m)), as.numeric(SE(m)))
  }
}
