#include "core/stand/figure_range.hpp"

#include "core/base/number_text.hpp"

namespace oaklight {
namespace {

std::string stems(int count) { return std::to_string(count) + (count == 1 ? " stem" : " stems"); }

void add_wood(std::vector<OutOfRange>& list, const GroupFigures& live) {
  if (live.board_feet && live.without_board_feet > 0) {
    list.push_back({"board_feet", stems(live.without_board_feet) +
                                      " without logs, or outside the table (DBH 10 to 40 in, 1 to "
                                      "4 logs), left out: the figure is too low"});
  }
  if (live.cords && live.without_cords > 0) {
    list.push_back({"cords", stems(live.without_cords) +
                                 " outside the table (DBH 5 to 22 in), left out: the figure is too "
                                 "low"});
  }
  if (live.stem_wood && live.without_stem > 0) {
    list.push_back({"stem_wood", stems(live.without_stem) +
                                     " without a height, and beyond the DBH of the local curve, "
                                     "left out: the figure is too low"});
  }
}

}  // namespace

std::string beyond_guide(const StandStocking& s) {
  if (!s.qmd) return "";
  std::string words;
  if (!s.fit.diameters) {
    words = "the mean diameter of " + number_text(s.qmd->value, 1) +
            " in lies outside the 3 to 22 in over which the guide is run";
  } else if (!s.fit.printed) {
    words = "the mean diameter of " + number_text(s.qmd->value, 1) +
            " in lies beyond the printed guide, which ends at 15 in";
  }
  if (!s.fit.oak_hickory) {
    words += (words.empty() ? "" : ", and ");
    words += "oaks and hickories hold " + number_text(s.fit.oak_hickory_share.value, 0) +
             " % of the basal area, and the guide is for stands of half or more: a rough guess";
  }
  return words;
}

std::vector<OutOfRange> out_of_range(const AreaEstimate& area, const StandStocking* stocking) {
  std::vector<OutOfRange> list;
  if (area.live.ba.trust == Trust::one_plot) {
    list.push_back({"interval", "a stand has one plot only: no error can be told"});
  } else if (area.live.ba.trust == Trust::two_plots) {
    list.push_back({"interval", "two plots: the error itself is hardly known"});
  } else if (area.live.ba.trust == Trust::few_found) {
    list.push_back({"interval", "trees on fewer than 5 plots: intervals are likely too short"});
  }
  if (stocking != nullptr) {
    if (std::string words = beyond_guide(*stocking); !words.empty()) {
      list.push_back({"stocking", std::move(words)});
    }
  }
  add_wood(list, area.live);
  return list;
}

}  // namespace oaklight
