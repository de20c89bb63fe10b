#pragma once

#include <QString>

#include "core/paper/crown_chart.hpp"

namespace oaklight {

/// By what the crowns of a picture are as wide as they are: measured, the local curve, or their
/// size. A sentence.
[[nodiscard]] QString size_words(const CrownCard& card);

}  // namespace oaklight
