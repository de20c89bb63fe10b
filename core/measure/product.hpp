#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/model/mark.hpp"

namespace oaklight {

/// The best product that a tree can be sold or used as, and why not a better one.
struct ProductCall {
  Product product = Product::none;
  std::string_view reason;  ///< one plain sentence
  std::string_view rule;    ///< id of the rule behind it, e.g. "R7.20"
};

/// From which size, and in what wood, a tree is a product; the rules of a tract say.
struct ProductLimits {
  Inches pulpwood_from;                     ///< R7.22
  Inches firewood_from;                     ///< R7.27
  std::vector<Condition> no_log;            ///< R7.21
  std::vector<std::string> refused_genera;  ///< R7.26, as firewood; softwoods are refused as well
  std::vector<SpeciesCode> refused;         ///< X7.05, likewise
};

/// Product of a standing tree: saw log, else firewood, else pulpwood, else none. Says nothing about
/// whether the tree should be cut, nor whether it is safe to fell.
///
/// species    its min_sawlog_dbh decides; nothing there: never a saw log
/// half_logs  merchantable height; nothing: not recorded, and the DBH alone decides
/// conditions one of limits.no_log leaves no saw log
/// source     saw log DBH: federal inventory definition (R7.20; local mills often want more). One
///            8-ft bolt: University of Minnesota Extension, Woodland Stewardship, chapter 2. The
///            rest: the rules named in ProductLimits.
[[nodiscard]] ProductCall product_of(const Species& species, Dbh dbh, std::optional<int> half_logs,
                                     Conditions conditions, const ProductLimits& limits);

}  // namespace oaklight
