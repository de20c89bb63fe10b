# Writes a stem map from an installed R package as a CSV: x, y in metres, dbh in centimetres. Data of others under
# their own licence (GPL 2 or later): write it to a scratch folder, never here.
#   longleaf   longleaf pine, southern Georgia (Platt, Evans and Rathbun 1988)
#   waka       tropical forest, Gabon (Balinga et al. 2006; Picard et al. 2009)
#   spruces    Norway spruce, Saxony (Stoyan, Kendall and Mecke 1987)
#   cherry     31 felled black cherry, no map: dbh_in, height_ft, volume_ft3 (Ryan, Joiner and Ryan 1976)
# Lansing Woods comes from demo_plots/lansing/extract.R. Needs Debian's r-base-core and r-cran-spatstat.data.
# Usage: Rscript stem_map.R NAME FILE.csv
words <- commandArgs(trailingOnly = TRUE)
if (length(words) != 2) stop("Usage: Rscript stem_map.R NAME FILE.csv", call. = FALSE)
stems <- c(longleaf = 584, waka = 504, spruces = 134, cherry = 31)
name <- match.arg(words[1], names(stems))
if (name == "cherry") {
  # R calls the column Girth; its help page says that it is a diameter.
  table <- data.frame(dbh_in = trees$Girth, height_ft = trees$Height, volume_ft3 = trees$Volume)
} else {
  suppressPackageStartupMessages(library(spatstat.data))
  map <- unclass(get(name))  # a plain list: no further package is needed to read it
  in_cm <- if (name == "spruces") 100 else 1
  table <- data.frame(x = map$x - map$window$xrange[1], y = map$y - map$window$yrange[1], dbh = in_cm * map$marks)
}
stopifnot(nrow(table) == stems[[name]])
write.csv(table, words[2], row.names = FALSE, quote = FALSE)
