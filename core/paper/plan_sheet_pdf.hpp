#pragma once

#include <string>
#include <vector>

#include "core/base/result.hpp"
#include "core/handoff/plan_sheet.hpp"
#include "core/model/mark.hpp"
#include "core/paper/drawing.hpp"
#include "core/paper/page.hpp"

namespace oaklight {

/// The pages of a plan sheet: cautions, the way in words, a map with the plots and the walk, and a
/// table of bearings and distances.
///
/// data     of the tract; its planned plots are shown
/// walk     the line of the walk, drawn on the map; may be empty
/// assumes  a PaperApplication lives
std::vector<Drawing> plan_sheet_pages(const TractData& data, const std::vector<Position>& walk,
                                      const PlanSheet& sheet, PaperSize paper);

/// The same as the bytes of a PDF. Errors: cannot_write.
Result<std::string> plan_sheet_pdf(const TractData& data, const std::vector<Position>& walk,
                                   const PlanSheet& sheet, PaperSize paper);

}  // namespace oaklight
