#include "core/paper/pdf_language.hpp"

#include <cctype>

namespace oaklight {
namespace {

/// The text from after `begin` to before `end`, from the given place on; nothing when one of them
/// is missing.
std::optional<std::string_view> between(std::string_view text, std::size_t from,
                                        std::string_view begin, std::string_view end) {
  const auto at = text.find(begin, from);
  if (at == std::string_view::npos) return std::nullopt;
  const auto start = at + begin.size();
  const auto stop = text.find(end, start);
  if (stop == std::string_view::npos) return std::nullopt;
  return text.substr(start, stop - start);
}

/// The digits at the start of a text, blanks before them passed over.
std::string digits(std::string_view text) {
  std::string number;
  for (const char c : text) {
    const bool digit = std::isdigit(static_cast<unsigned char>(c)) != 0;
    if (!digit && (!number.empty() || (c != ' ' && c != '\n'))) break;
    if (digit) number += c;
  }
  return number;
}

std::string ten_digits(std::size_t offset) {
  const std::string number = std::to_string(offset);
  return std::string(10 - number.size(), '0') + number;
}

}  // namespace

std::optional<std::string> with_language(std::string pdf, std::string_view language) {
  const auto trailer_at = pdf.rfind("\ntrailer\n");
  if (trailer_at == std::string::npos) return std::nullopt;
  const auto trailer = between(pdf, trailer_at, "<<", ">>");
  const auto table = between(pdf, trailer_at, "startxref\n", "%%EOF");
  if (!trailer || !table) return std::nullopt;
  const auto root = between(*trailer, 0, "/Root ", " 0 R");
  if (!root) return std::nullopt;
  const std::string object = digits(*root) + " 0 obj\n";
  const auto catalog = between(pdf, 0, "\n" + object + "<<", ">>\nendobj");
  if (!catalog || catalog->find("/Catalog") == std::string_view::npos) return std::nullopt;
  const std::string head = object + "<<" + std::string(*catalog) + "/Lang (" +
                           std::string(language) +
                           ")\n/ViewerPreferences << /DisplayDocTitle true >>\n>>\nendobj\n";
  const std::string tail =
      "trailer\n<<" + std::string(*trailer) + "/Prev " + digits(*table) + "\n>>\nstartxref\n";
  const std::size_t object_at = pdf.size();
  const std::size_t xref_at = object_at + head.size();
  pdf += head + "xref\n" + digits(object) + " 1\n" + ten_digits(object_at) + " 00000 n \n" + tail +
         std::to_string(xref_at) + "\n%%EOF\n";
  return pdf;
}

}  // namespace oaklight
