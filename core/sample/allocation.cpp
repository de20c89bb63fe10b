#include "core/sample/allocation.hpp"

#include <cmath>
#include <numeric>

namespace oaklight {
namespace {

double sum(std::span<const double> xs) { return std::accumulate(xs.begin(), xs.end(), 0.0); }

}  // namespace

std::vector<double> proportional_shares(double plots, std::span<const double> sizes) {
  const double total = sum(sizes);
  std::vector<double> shares;
  for (const double size : sizes) shares.push_back(plots * size / total);
  return shares;
}

std::vector<double> neyman_shares(double plots, std::span<const double> sizes,
                                  std::span<const double> spreads) {
  std::vector<double> products;
  for (std::size_t h = 0; h < sizes.size(); ++h) products.push_back(sizes[h] * spreads[h]);
  return proportional_shares(plots, sum(products) > 0.0 ? products : sizes);
}

double allocation_se(std::span<const double> sizes, std::span<const double> sds,
                     std::span<const double> plots) {
  const double total = sum(sizes);
  double variance = 0.0;
  for (std::size_t h = 0; h < sizes.size(); ++h) {
    const double part = sizes[h] / total * sds[h];
    variance += part * part / plots[h];
  }
  return std::sqrt(variance);
}

Percent weighted_cv(std::span<const double> shares, std::span<const Percent> cvs) {
  const double total = sum(shares);
  Percent cv;
  for (std::size_t h = 0; h < shares.size(); ++h) cv += shares[h] / total * cvs[h];
  return cv;
}

}  // namespace oaklight
