#include <utility>

#include "core/paper/gui_app.hpp"
#include "core/paper/pdf.hpp"
#include "core/paper/tally_sheet.hpp"

namespace oaklight {

Result<std::string> sheet_pdf(const SheetSet& set, PaperSize paper) {
  const auto app = PaperApplication::start();
  if (!app) return app.error();
  std::vector<PdfPage> pages;
  for (SheetPage& sheet : tally_sheets(set, paper)) {
    pages.push_back({std::move(sheet.drawing), sheet.size.width() > sheet.size.height()});
  }
  return pages_as_pdf(
      pages,
      (set.tract.empty() ? QString() : printable(set.tract) + QStringLiteral(": ")) +
          QStringLiteral("tally sheets and crop tree card"),
      paper);
}

}  // namespace oaklight
