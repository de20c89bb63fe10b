#pragma once

#include <array>

namespace oaklight {

/// One pair of Gauss coefficients (Schmidt semi-normalised) at 2025.0 and their yearly change.
struct GaussPair {
  int degree;
  int order;
  double g;       ///< nT
  double h;       ///< nT
  double g_rate;  ///< nT a year
  double h_rate;  ///< nT a year
};

inline constexpr int kWmmDegree = 12;
inline constexpr double kWmmEpoch = 2025.0;
inline constexpr double kWmmEnd = 2030.0;
/// The model's reference sphere.
inline constexpr double kWmmRadiusMetres = 6'371'200.0;

/// Source: WMM2025 coefficient file of 2024-11-13, NOAA/NCEI and the British Geological Survey,
/// public domain. In order of degree and order.
extern const std::array<GaussPair, 90> kWmm2025;

}  // namespace oaklight
