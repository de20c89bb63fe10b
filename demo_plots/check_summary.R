# The same summary by a general survey library, for check_summary.py --r. Not part of any build.
# Needs R with package survey (Debian: r-base-core r-cran-survey).
# Usage: Rscript check_summary.R FOLDER > r.tsv && python3 check_summary.py --r r.tsv FOLDER
suppressMessages(library(survey))
folder <- commandArgs(trailingOnly = TRUE)[1]
get <- function(name) read.csv(file.path(folder, name), check.names = FALSE)
stands <- get("stands.csv"); plots <- get("plots.csv"); trees <- get("trees.csv")
plots <- plots[plots$status %in% c("measured", "empty"), ]
trees$n <- trees$stems * trees$edge_count
trees$ba <- 10 * trees$n
trees$tpa <- 10 / (pi / 576 * trees$dbh_in^2) * trees$n
live <- trees$status != "dead"
key <- function(d) paste(d$stand, d$plot)
by_plot <- function(rows, column) {
  sums <- tapply(trees[[column]][rows], key(trees)[rows], sum)[key(plots)]
  ifelse(is.na(sums), 0, sums)  # a plot without such a tree holds zero of it
}
oak <- grepl("oak", trees$species)
cells <- list(ba = list(live, "ba"), tpa = list(live, "tpa"), ba.oak = list(live & oak, "ba"),
              ba.dead = list(!live, "ba"))
for (s in sort(unique(trees$species[live]))) {
  cells[[paste0("ba.species.", s)]] <- list(live & trees$species == s, "ba")
  cells[[paste0("tpa.species.", s)]] <- list(live & trees$species == s, "tpa")
}
n <- table(plots$stand)
plots$w <- stands$acres[match(plots$stand, stands$stand)] / as.numeric(n[plots$stand])
emit <- function(stand, figure, value) cat(sprintf("%s\t%s\t%.15g\n", stand, figure, value))
for (name in names(cells)) {
  plots$z <- by_plot(cells[[name]][[1]], cells[[name]][[2]])
  design <- svydesign(ids = ~1, strata = ~stand, weights = ~w, data = plots)
  if (sum(plots$z) == 0) next
  m <- svymean(~z, design); total <- svytotal(~z, design)
  emit("tract", paste0(name, ".mean"), coef(m)); emit("tract", paste0(name, ".se"), SE(m))
  each <- svyby(~z, ~stand, design, svymean)
  for (i in seq_len(nrow(each))) if (each$z[i] > 0) {
    emit(each$stand[i], paste0(name, ".mean"), each$z[i]); emit(each$stand[i], paste0(name, ".se"), each$se[i])
  }
  if (name %in% c("ba", "tpa", "ba.oak", "ba.dead")) {
    emit("tract", paste0(name, ".total"), coef(total)); emit("tract", paste0(name, ".total_se"), SE(total))
    w <- stands$acres / sum(stands$acres)
    g <- w^2 * (each$se[match(stands$stand, each$stand)])^2
    df <- sum(g)^2 / sum(g^2 / (as.numeric(n[stands$stand]) - 1))
    emit("tract", paste0(name, ".df"), df); emit("tract", paste0(name, ".t"), qt(0.975, df))
    for (i in seq_len(nrow(each))) {
      t <- qt(0.975, as.numeric(n[each$stand[i]]) - 1)
      emit(each$stand[i], paste0(name, ".t"), t)
      emit(each$stand[i], paste0(name, ".half"), t * each$se[i])
    }
  }
}
