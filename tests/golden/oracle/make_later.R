# A second visit to the invented cruise, invented too, four years on. Rscript make_later.R
# No random numbers: every 7th tree is gone, the others grew 0.2 to 1.0 in, some points gained a tree.
# Point A 3 was not found again and B 9 is new: neither may be in a paired figure.
pt <- read.csv("cruise_points.csv"); tr <- read.csv("cruise_trees.csv")
i <- seq_len(nrow(tr)); tr$dbh_in <- round(tr$dbh_in + 0.2 * (1 + (i * 3) %% 5), 1)
gone <- i %% 7 == 3 | (tr$stand == "C" & i %% 5 == 0)         # the cut was heavier in C
new <- pt[seq_len(nrow(pt)) %% 4 == 1, ]
grown <- data.frame(stand = new$stand, point = new$point, species = rep(c("WO", "RM", "HI"), length.out = nrow(new)), dbh_in = 4 + 0.3 * seq_len(nrow(new)))
later <- rbind(tr[!gone, c("stand", "point", "species", "dbh_in")], grown, data.frame(stand = "B", point = 9, species = c("WO", "SM"), dbh_in = c(14.2, 6.1)))
later <- later[!(later$stand == "A" & later$point == 3), ]
later <- later[order(later$stand, later$point), ]
points <- rbind(pt[!(pt$stand == "A" & pt$point == 3), c("stand", "point")], data.frame(stand = "B", point = 9)); points <- points[order(points$stand, points$point), ]
points$tally <- sapply(seq_len(nrow(points)), function(k) sum(later$stand == points$stand[k] & later$point == points$point[k]))
write.csv(points, "later_points.csv", row.names = FALSE, quote = FALSE); write.csv(later, "later_trees.csv", row.names = FALSE, quote = FALSE)
