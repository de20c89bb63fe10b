# Writes the longleaf pine stem map from an installed R package as a CSV: x, y in metres, DBH in centimetres (Platt,
# Evans and Rathbun 1988). Data of others under their own licence: write it to a scratch folder, never here.
# Needs Debian's r-base-core and r-cran-spatstat.data. Usage: Rscript longleaf.R longleaf.csv
out <- commandArgs(trailingOnly = TRUE)
if (length(out) != 1) stop("Usage: Rscript longleaf.R FILE.csv", call. = FALSE)
suppressPackageStartupMessages(library(spatstat.data))
map <- unclass(longleaf)
stopifnot(map$n == 584)
write.csv(data.frame(x = map$x, y = map$y, dbh = map$marks), out, row.names = FALSE, quote = FALSE)
