#pragma once

#include <string>
#include <vector>

#include "core/base/result.hpp"
#include "core/paper/sheet_frame.hpp"

namespace oaklight {

/// The sheets that a crew takes into rain instead of a tablet: for each plot its head and a dot
/// tally by species and diameter class, lines for trees told one by one, and seedlings; then the
/// crop tree card with its four sides.
///
/// returns  in the order in which they are printed; what may be written is printed_fields of the
///          form and nothing else
std::vector<SheetPage> tally_sheets(const SheetSet& set, PaperSize paper);

/// The same as a PDF, typefaces embedded.
/// errors   cannot_write when nothing can be painted
/// assumes  as packet_pdf
Result<std::string> sheet_pdf(const SheetSet& set, PaperSize paper);

// The single sheets.
SheetPage plot_sheet(const SheetSet& set, const SheetDress& dress, const std::string& stand,
                     const std::string& plot);
SheetPage line_sheet(const SheetSet& set, const SheetDress& dress, const std::string& stand,
                     const std::string& plot);
SheetPage seedling_sheet(const SheetSet& set, const SheetDress& dress, const std::string& stand,
                         const std::string& plot);
SheetPage card_sheet(const SheetSet& set, const SheetDress& dress);

}  // namespace oaklight
