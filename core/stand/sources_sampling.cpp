#include "core/stand/source_lists.hpp"

namespace oaklight {
namespace {

constexpr auto kRead = SourceStatus::retrieved;
constexpr auto kWorkedOut = SourceStatus::derived;
constexpr auto kRecalled = SourceStatus::from_memory;
constexpr std::string_view kCountMeasure = "core/sample/count_measure.hpp";
constexpr std::string_view kStocking = "core/measure/stocking.hpp";
constexpr std::string_view kStratified = "core/sample/stratified.hpp";

void add_stand(std::vector<SourceNote>& notes) {
  notes.push_back(
      {"crown_competition",
       "Crown competition factor",
       "The ground that the trees' crowns would cover if each stood in the open, in percent: "
       "0.0175 "
       "+ 0.0205 D + 0.0060 D x D for each live tree of 2 in and more, D its DBH in inches, times "
       "the trees an acre that it stands for. 100 is the B line.",
       "As stocking: made for upland oak and hickory.",
       {{"Krajicek, Brinkman and Gingrich 1961, Forest Science 7(1):35-42", kStocking, kRecalled,
         "Within 0.6 % of the ground under open-grown crowns of 3.12 + 1.829 D ft."}}});
  notes.push_back(
      {"stocking_lines",
       "A line and B line",
       "Basal area of a stand of the same mean diameter at a stocking of 100 % (A), and at a crown "
       "competition of 100 % (B); the arithmetic mean diameter is taken as -0.259 + 0.973 QMD.",
       "Mean diameters of 3 to 15 in are printed; beyond them to 22 in the equations are run.",
       {{"AMD = -0.259 + 0.973 QMD", kStocking, kRecalled,
         "Two published B lines are met within 0.6 ft2/ac."}}});
  notes.push_back(
      {"dbh_class",
       "Diameter classes",
       "A tree belongs to the class whose lower edge it reaches and whose upper edge it does not: "
       "9.0 to 10.9 in is 10 in, of the classes of 2 in.",
       "",
       {{"standard cruise practice", "core/measure/dbh_class.hpp", kRecalled, ""}}});
  notes.push_back(
      {"young_trees",
       "Young trees",
       "Stems counted on the small plots of the seedling count, by height, over the ground of one "
       "such plot. Mean over all plots, those without one as 0.",
       "Says nothing of where they stand.",
       {{"Sander, Johnson and Watt 1976", "core/model/tract.hpp", kRecalled,
         "For the height of 4.5 ft."}}});
  notes.push_back(
      {"regeneration_stocking",
       "Plots stocked with a young oak",
       "The share of the seedling plots with at least one oak of any height; limits by Wilson's "
       "score interval. Over several stands the stands' shares weigh by their acres.",
       "It hangs on the size of the plots: never compare shares from plots of different sizes.",
       {{"Wilson 1927, Journal of the American Statistical Association 22:209-212",
         "core/sample/share.hpp", kRecalled, "Checked against R."}}});
  notes.push_back(
      {"plots_occupied",
       "Share of plots with a species",
       "Plots on which at least one live tree of the species is in, over all plots; limits by "
       "Wilson's score interval. Of none found, the share that may still hold it is 1 - (1 - "
       "confidence) to the power 1/n.",
       "It hangs on the kind and size of the plots, and is left out where stands differ in them.",
       {{"Wilson 1927, Journal of the American Statistical Association 22:209-212",
         "core/sample/share.hpp", kRecalled, "Checked against R."}}});
}

void add_methods(std::vector<SourceNote>& notes) {
  notes.push_back(
      {"double_sampling",
       "Count points and measure points",
       "On every point trees are counted by species, which gives the basal area; on each k-th "
       "point "
       "they are measured. Volume, trees and stocking are basal area on all points times their "
       "ratio to basal area on the measured ones. The two errors, in percent, add as squares; "
       "their "
       "degrees of freedom are weighed by the variance that each brings. A species with fewer than "
       "10 measured trees, or on one measured point, takes the ratio of all live trees.",
       "The measured points must be chosen by rule, not for their trees. With two or three of them "
       "the error itself is hardly known. Species need not add up to the whole exactly.",
       {{"Bruce 1961", kCountMeasure, kRecalled, ""},
        {"Gove, Gregoire, Ducey and Lynch 2020, Forest Ecosystems 7", kCountMeasure, kRead,
         "For the form of the error."},
        {"Satterthwaite 1946", "core/sample/group_tally.hpp", kRecalled,
         "For the degrees of freedom of the sum."}}});
  notes.push_back(
      {"mixed_designs",
       "Two designs on the same plots",
       "Where a stand was cruised by one design for thick trees and by another for thin ones at "
       "the "
       "same places, a tree counts in the design of the thick trees from its smallest tree up, and "
       "below that in the other; a plot's value is the sum of both.",
       "Both designs must have been worked at each place, with the same labels.",
       {{"two designs with different smallest trees", "core/sample/stand_sample.hpp", kWorkedOut,
         ""}}});
  notes.push_back({"finite_population",
                   "Correction for the share that was measured",
                   "The error of a mean of fixed plots shrinks by the root of 1 - n / N, N the "
                   "plots that would "
                   "tile the stand.",
                   "Only where it was asked for, and only for fixed plots that are a draw from a "
                   "tiling. Points "
                   "have no such number.",
                   {{"Freese 1962", "core/sample/estimate.hpp", kRead, ""}}});
  notes.push_back(
      {"post_strata",
       "Plots sorted into stands afterwards",
       "Plots laid out over the whole tract fall into stands by chance. The mean is that of the "
       "stands by their acres; the error adds to that of proportional sampling what the chance "
       "numbers of plots cost.",
       "Keep at least 10 plots in a stand. Only where it was asked for.",
       {{"Cochran 1977, formula 5A.42", kStratified, kRecalled,
         "Within 0.6 % of R package survey, which takes a residual form."}}});
}

}  // namespace

void add_sampling_notes(std::vector<SourceNote>& notes) {
  add_stand(notes);
  add_methods(notes);
}

void add_local_notes(std::vector<SourceNote>& notes) {
  constexpr std::string_view kCurves = "core/measure/local_curves.hpp";
  notes.push_back(
      {"local_curve",
       "Curve fitted here",
       "From 20 trees measured here, over 6 in of DBH at least, a curve is fitted by least "
       "squares: "
       "crown width = a + b D, from four taped radii, of one stand; total height = 4.5 + exp(a + b "
       "/ (D + 1)) "
       "ft, of the tract. One for each species with so many trees, and one for all together. It "
       "goes before "
       "the book for a tree that was not measured itself.",
       "Between the thinnest and the thickest tree measured; beyond, the book's crown stands, and "
       "there is no height.",
       {{"ten a coefficient (common practice in regression)", kCurves,
         SourceStatus::common_practice, "For the number of trees; the span is judgement."},
        {"Krajicek, Brinkman and Gingrich 1961", kCurves, kRecalled,
         "For a straight line of crown width on DBH."},
        {"Wykoff, Crookston and Stage 1982, USDA General Technical Report INT-133", kCurves,
         kRecalled, "For the height curve. Fits are checked against R's lm and nls."}}});
  notes.push_back(
      {"local_volume",
       "Local volume table",
       "Board feet and cords of a tree are read from the table that the owner brought, by species "
       "and DBH; between its lines they run straight. A tree that it does not cover goes by the "
       "book.",
       "The DBHs of the table's lines, and its own log rule. Whether it fits the place is its "
       "maker's word.",
       {{"What a local volume table gives for one tree", kCurves, kWorkedOut, ""}}});
  notes.push_back(
      {"stem_wood",
       "Stem wood",
       "Peeled wood of whole live stems: 0.42 x basal area x total height, the height measured or "
       "by the local curve.",
       "A rule of thumb. Stems without a height of either kind are left out, and the figure is "
       "then "
       "too low.",
       {{"Gevorkiantz and Olsen 1955, USDA Technical Bulletin 1104", "core/measure/cords.hpp",
         kRecalled, ""}}});
}

}  // namespace oaklight
