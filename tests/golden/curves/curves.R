# Fits of the invented trees in trees.csv by R: lm for crown widths, nls for heights. Run in this folder:
#   Rscript curves.R > curves.tsv
# The trees were invented by make_trees.R; nobody measured them.
trees <- read.csv("trees.csv")
out <- function(name, x) cat(sprintf("%s\t%.12g\n", name, x))
widths <- trees[!is.na(trees$width_ft), ]
line <- lm(width_ft ~ dbh_in, data = widths)
out("width_n", nrow(widths))
out("width_a", coef(line)[[1]])
out("width_b", coef(line)[[2]])
out("width_sd", summary(line)$sigma)
out("width_at_15", predict(line, data.frame(dbh_in = 15))[[1]])
heights <- trees[!is.na(trees$height_ft), ]
start <- coef(lm(log(height_ft - 4.5) ~ I(1 / (dbh_in + 1)), data = heights))
curve <- nls(height_ft ~ 4.5 + exp(a + b / (dbh_in + 1)), data = heights,
             start = list(a = start[[1]], b = start[[2]]), control = list(tol = 1e-7))
out("height_n", nrow(heights))
out("height_a", coef(curve)[["a"]])
out("height_b", coef(curve)[["b"]])
out("height_sd", summary(curve)$sigma)
out("height_at_15", predict(curve, data.frame(dbh_in = 15))[[1]])
