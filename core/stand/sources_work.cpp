#include "core/stand/source_lists.hpp"

namespace oaklight {
namespace {

constexpr auto kRead = SourceStatus::retrieved;
constexpr auto kWorkedOut = SourceStatus::derived;
constexpr auto kRecalled = SourceStatus::from_memory;

void add_crowns(std::vector<SourceNote>& notes) {
  notes.push_back(
      {"light",
       "Light of a crop tree",
       "The share of its crown's edge that no neighbour crowds, and how many of its four sides are "
       "free. What a person saw looking up decides; where nobody looked, the crowns' sizes and the "
       "distance do. Where four radii were taped, or on a stem map, the edge is measured by "
       "bearing; on a card each free side is a quarter.",
       "A side at which nobody looked is unknown, not free.",
       {{"law of cosines", "core/release/crown_contact.hpp", kWorkedOut, ""},
        {"numerical: signs at every degree, extremes between them, halving",
         "core/release/crown_shape.hpp", kWorkedOut, "For crowns that are no circles."}}});
  notes.push_back(
      {"crown_width",
       "Width of a crown",
       "Taped radii first; then the curve fitted to those taped in the stand; then the book: the "
       "ground that the stocking "
       "guide gives a tree of this size, as a circle, and for how far a crown may reach 3.12 + "
       "1.829 D ft, that of an open-grown tree.",
       "The book's are for oak and hickory. A crown drawn from the equation of its species holds "
       "from 5 in of DBH; thinner trees are drawn in proportion.",
       {{"Krajicek, Brinkman and Gingrich 1961, Forest Science 7(1):35-42",
         "core/measure/crown_width.hpp", kRecalled, ""},
        {"upland_oak_stocking (Gingrich 1967, coefficients from memory)",
         "core/measure/crown_width.hpp", kRecalled, ""},
        {"Bechtold 2003, Southern Journal of Applied Forestry 27(4):269-278",
         "core/measure/crown_width.hpp", kRecalled, "For the pictures."}}});
  notes.push_back(
      {"years_to_look",
       "When to look again",
       "The gap that the work opened over twice the yearly growth of a crown.",
       "The gap is not measured: it is taken as the crowded crown of the tree that went.",
       {{"Trimble and Tryon 1966, Journal of Forestry 64:104-108", "core/release/closing.hpp",
         kRecalled, ""}}});
}

void add_lists(std::vector<SourceNote>& notes) {
  notes.push_back(
      {"tree_list",
       "Trees of a list",
       "Counted tree by tree on the marking walk: a list is a census of what was marked, and has "
       "no "
       "error of sampling. DBH, logs and positions are as recorded.",
       "",
       {{"Product of a standing tree", "core/measure/product.hpp", kWorkedOut,
         "From which size a tree is which product say the rules that the list names."}}});
  notes.push_back(
      {"after_release",
       "After the work",
       "Before, from plots, less the marked trees over the acres that the walk covered.",
       "Two samples: where more is marked than the plots let one expect, nothing is told.",
       {{"Trees on the lists `cut` and `trained` are gone afterwards",
         "core/handoff/owner_part.hpp", kWorkedOut, ""}}});
  notes.push_back(
      {"practice_record",
       "Practice record",
       "Acres, trees and basal area before, removed and left, by the classes of the practice's "
       "sheet.",
       "The current state sheet governs.",
       {{"USDA NRCS, Forest Stand Improvement (666) specifications",
         "core/handoff/practice_record.hpp", kRead, ""}}});
  notes.push_back({"distance",
                   "Distances and areas",
                   "On the ellipsoid of WGS 84, by the reference implementation of geodesics.",
                   "As exact as the positions: a poor fix moves a plot by more.",
                   {{"Karney 2013", "core/place/geodesy.hpp", kRead, ""}}});
}

void add_later(std::vector<SourceNote>& notes) {
  notes.push_back({"crew_hours",
                   "Hours of a cruise",
                   "Minutes at each plot, and one spacing of the grid walked for each; the spacing "
                   "is the root of "
                   "the acres over the plots. Ways from the truck are not in it.",
                   "15 minutes a plot and 100 ft a minute unless told.",
                   {{"find the centre, tally, write: common practice 10-25",
                     "core/sample/plan_cruise.hpp", SourceStatus::common_practice, ""}}});
  notes.push_back({"plot_advice",
                   "Factor or plot size advised",
                   "The usual basal area factor with a tally nearest to 6 trees a point, and the "
                   "usual plot size "
                   "that holds nearest to 10 trees of the mean diameter.",
                   "From the stand's basal area and mean diameter, measured or usual.",
                   {{"Kentucky forestry class slides", "core/sample/plan_cruise.hpp", kRead, ""},
                    {"6 to 15 trees a plot are common practice", "core/sample/plan_cruise.hpp",
                     SourceStatus::common_practice, ""}}});
  notes.push_back(
      {"stump_dbh",
       "DBH from a stump",
       "Over bark at height h: DBH (1 + flare (4.5 - h) / (h + 1)), h in feet; under bark, that "
       "times the bark's share. The range is that of most trees of the kind.",
       "It is no measurement: the range is wide.",
       {{"Raile 1982, Estimating stump volume, USDA Forest Service Research Paper NC-224",
         "core/measure/stump_dbh.hpp", kRecalled, "The flare is from memory."}}});
  notes.push_back(
      {"audit",
       "Audit by sample",
       "The least number to look at so that, with so few wrong ones found, no more than the "
       "claimed "
       "share of all is wrong, at the confidence told; and the greatest share that may be wrong "
       "after what was found.",
       "One-sided. Exact for a list of known length (hypergeometric).",
       {{"acceptance sampling by attributes for an isolated lot", "core/sample/audit.hpp",
         kWorkedOut, "Checked against SciPy."}}});
  notes.push_back(
      {"paired_change",
       "Change between two visits",
       "Each plot's later value less its earlier one; the mean of these differences with its own "
       "error. It is never put together from the errors of the two visits.",
       "Plots that both visits went to, by label; count points are left out.",
       {{"Freese 1962, Elementary forest sampling, USDA Agriculture Handbook 232",
         "core/sample/paired.hpp", kRead, "Checked against R package survey."}}});
  notes.push_back(
      {"growth_difference",
       "Growth of released trees beside others",
       "Mean of the released less mean of the others, with an error that lets their spreads "
       "differ.",
       "The trees were not drawn by lot: released trees were chosen because they were good.",
       {{"Welch 1947, Biometrika 34:28-35", "core/sample/mean_difference.hpp", kRecalled,
         "Checked against R's t.test."}}});
}

}  // namespace

void add_work_notes(std::vector<SourceNote>& notes) {
  add_crowns(notes);
  add_lists(notes);
  add_later(notes);
}

}  // namespace oaklight
