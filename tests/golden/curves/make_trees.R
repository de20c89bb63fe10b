# How the trees of trees.csv were invented: 36 stems, sizes at random, with scatter. Rscript make_trees.R > trees.csv
set.seed(20260704)
dbh <- round(runif(36, 5, 26), 1)
width <- round(4 + 1.35 * dbh + rnorm(36, 0, 3), 1)
height <- round(4.5 + exp(4.75 - 7.5 / (dbh + 1)) + rnorm(36, 0, 5), 1)
width[c(3, 17)] <- NA
height[c(5, 9, 30)] <- NA
write.csv(data.frame(dbh_in = dbh, width_ft = width, height_ft = height), quote = FALSE, row.names = FALSE, na = "")
