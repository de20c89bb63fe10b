#pragma once

#include <QString>
#include <string>
#include <vector>

#include "core/base/result.hpp"
#include "core/paper/drawing.hpp"
#include "core/paper/page.hpp"

namespace oaklight {

/// Pages as the bytes of a PDF, typefaces embedded, text in reading order.
///
/// errors   cannot_write when nothing can be painted
/// assumes  a PaperApplication lives
Result<std::string> pages_as_pdf(const std::vector<Drawing>& pages, const QString& title,
                                 PaperSize paper);

}  // namespace oaklight
