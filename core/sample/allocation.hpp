#pragma once

#include <span>
#include <vector>

#include "core/units/units.hpp"

namespace oaklight {

// How plots are shared out among stands. Sizes are acres or any other measure in one unit; spreads
// are standard deviations between plots (or coefficients of variation). Lists run stand by stand.

/// By size: plots * size / total size, not rounded. Source: Cochran 1977, chapter 5 (from memory).
[[nodiscard]] std::vector<double> proportional_shares(double plots, std::span<const double> sizes);

/// By size times spread, which gives the smallest error of the mean: not rounded. By size alone
/// when all spreads are 0. Source: Neyman's allocation, Cochran 1977, section 5.5 (from memory).
[[nodiscard]] std::vector<double> neyman_shares(double plots, std::span<const double> sizes,
                                                std::span<const double> spreads);

/// Error of the mean over stands that such a sharing gives; plots need not be whole.
[[nodiscard]] double allocation_se(std::span<const double> sizes, std::span<const double> sds,
                                   std::span<const double> plots);

/// The coefficient of variation from which plots over all stands are reckoned: the stands' own,
/// weighted by their shares. With Neyman's allocation the shares are those of the TOTAL (acres
/// times mean); shares of the acres give too few plots where rich and poor stands differ.
///
/// shares   any positive weights, e.g. acres * mean
/// source   derived from Cochran 1977, section 5.5
[[nodiscard]] Percent weighted_cv(std::span<const double> shares, std::span<const Percent> cvs);

}  // namespace oaklight
