# The same stand table as group.sql with the package survey: Rscript table.R FILE
suppressPackageStartupMessages({library(survey); library(RSQLite)})
db <- dbConnect(SQLite(), commandArgs(TRUE)[1], flags = SQLITE_RO)
trees <- dbGetQuery(db, "SELECT plot_uid, species_fia, dbh_tenths, stems * edge_count AS times FROM tree
                         WHERE deleted = 0 AND status = 'live'")
plots <- dbGetQuery(db, "SELECT p.uid AS plot_uid, s.name AS stand FROM plot AS p JOIN stand AS s ON s.uid = p.stand_uid
                         WHERE p.deleted = 0 AND p.status IN ('measured', 'empty')")
trees$ba <- 10 * trees$times
trees$trees <- trees$ba * 576 / (pi * (trees$dbh_tenths / 10)^2)
cell <- factor(paste(trees$species_fia, 2 * ((trees$dbh_tenths + 10) %/% 20), sep = "|"))
row <- match(trees$plot_uid, plots$plot_uid)
for (stand in sort(unique(plots$stand))) {
  here <- plots$stand == stand
  of <- cumsum(here)  # row of a plot among those of the stand
  mine <- here[row]
  used <- droplevels(cell[mine])
  for (what in c("ba", "trees")) {
    wide <- matrix(0, sum(here), nlevels(used), dimnames = list(NULL, levels(used)))
    sums <- rowsum(trees[[what]][mine], paste(of[row[mine]], as.integer(used)))
    at <- do.call(rbind, strsplit(rownames(sums), " "))
    wide[cbind(as.integer(at[, 1]), as.integer(at[, 2]))] <- sums[, 1]
    design <- svydesign(ids = ~1, weights = rep(1, nrow(wide)), data = data.frame(plot = seq_len(nrow(wide))))
    mean <- svymean(wide, design)
    cat(sprintf("%s|%s|%s|%.12g|%.12g\n", what, stand, levels(used), coef(mean), SE(mean)), sep = "")
  }
}
