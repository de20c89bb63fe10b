# Writes the Lansing Woods stem map from an installed R package as a CSV. The map is data of others under their own
# licence (README.md): write it to a scratch folder, never into this repository.
# Needs Debian's r-base-core and r-cran-spatstat.data. Usage: Rscript extract.R lansing.csv
out <- commandArgs(trailingOnly = TRUE)
if (length(out) != 1) stop("Usage: Rscript extract.R FILE.csv", call. = FALSE)
suppressPackageStartupMessages(library(spatstat.data))
map <- unclass(lansing)  # a plain list: no further package is needed to read it
side <- map$window$units$multiplier
stopifnot(map$n == 2251, side == 924, all(map$window$xrange == c(0, 1)), all(map$window$yrange == c(0, 1)))
stems <- data.frame(x_ft = sprintf("%.3f", map$x * side), y_ft = sprintf("%.3f", map$y * side),
                    species = as.character(map$marks))
write.csv(stems, out, row.names = FALSE, quote = FALSE)
