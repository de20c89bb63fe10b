#pragma once

#include <string_view>

#include "core/model/mark.hpp"

namespace oaklight {

/// The best product that a tree can be sold or used as, and why not a better one.
struct ProductCall {
  Product product = Product::none;
  std::string_view reason;  ///< one plain sentence
  std::string_view rule;    ///< id of the rule behind it, e.g. "R7.20"
};

/// Product of a standing tree: saw log, else firewood, else pulpwood, else none. Says nothing about
/// whether the tree should be cut, nor whether it is safe to fell.
///
/// species    its min_sawlog_dbh decides; nothing there: never a saw log
/// half_logs  merchantable height; nothing: not recorded, and the DBH alone decides
/// conditions rot, hollows, cracks, metal or a crooked stem leave no saw log
/// source     saw log DBH: federal inventory definition (R7.20; local mills often want more). One
///            8-ft bolt: University of Minnesota Extension, Woodland Stewardship, chapter 2.
///            Pulpwood from 5 in: West Virginia University (R7.22). Firewood from 6 in (R7.27),
///            species that cutters refuse (R7.26), and defects that leave no log: common practice.
[[nodiscard]] ProductCall product_of(const Species& species, Dbh dbh, std::optional<int> half_logs,
                                     Conditions conditions);

}  // namespace oaklight
