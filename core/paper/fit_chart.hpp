#pragma once

#include "core/model/local.hpp"
#include "core/model/species.hpp"
#include "core/paper/picture.hpp"

namespace oaklight {

/// A local curve with the trees that it was fitted to: a dot for each, the curve over the DBHs for
/// which it is used, one residual SD to either side, and for crown widths the book's mean beside
/// it. The words under it say number, spread and range.
///
/// curve    as fit_curve made it, its measured trees included
/// assumes  a PaperApplication lives
Drawing draw_fit_chart(const LocalCurve& curve, const SpeciesTable& species,
                       const PictureFrame& frame);

}  // namespace oaklight
