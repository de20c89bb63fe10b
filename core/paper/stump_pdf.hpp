#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.hpp"
#include "core/handoff/stump_check.hpp"
#include "core/paper/page.hpp"

namespace oaklight {

class Drawing;

/// The pages of a stump check: cautions first, the figures, then what sends somebody out again
/// (hung, standing, unclear, not looked at), what was cut without a mark, what was hurt, and last
/// what was found as marked.
///
/// list_sha256  of the check's CSV, printed on each page; "" without one
/// assumes      a PaperApplication lives
std::vector<Drawing> stump_pages(const StumpCheck& check, const std::optional<StumpAudit>& audit,
                                 const std::string& list_sha256, PaperSize paper);

/// The same as the bytes of a PDF. Errors and assumptions as packet_pdf.
Result<std::string> stump_pdf(const StumpCheck& check, const std::optional<StumpAudit>& audit,
                              const std::string& list_sha256, PaperSize paper);

}  // namespace oaklight
