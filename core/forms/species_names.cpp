#include "core/forms/species_names.hpp"

#include <algorithm>

#include "core/base/number_text.hpp"
#include "core/forms/csv_file.hpp"
#include "core/forms/near_word.hpp"

namespace oaklight {
namespace {

/// One spelling for all ways to write a name: lower case, single blanks, plain apostrophes.
std::string plain_name(std::string_view text) {
  constexpr std::string_view kCurlyApostrophe = "\xE2\x80\x99";
  std::string plain;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text.substr(i).starts_with(kCurlyApostrophe)) {
      plain += '\'';
      i += kCurlyApostrophe.size() - 1;
    } else if (text[i] == ' ' || text[i] == '-' || text[i] == '_' || text[i] == '\t') {
      if (!plain.empty() && plain.back() != ' ') plain += ' ';
    } else {
      plain += text[i];
    }
  }
  return lower_case(trimmed(plain));
}

bool all_digits(std::string_view text) {
  return !text.empty() &&
         std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

Error unknown(std::string what, std::string fix) {
  return {ErrorCode::unknown_species, std::move(what), "", std::move(fix)};
}

}  // namespace

SpeciesNames::SpeciesNames(const SpeciesTable& table) {
  // The order is that of find(): what was put in first keeps the name.
  for (const Species& s : table.rows()) add(s.plants_symbol, s.code);
  for (const Species& s : table.rows()) {
    common_[s.code.fia] = s.common_name;
    add(s.common_name, s.code);
  }
  for (const Species& s : table.rows()) add(s.scientific_name, s.code);
  for (const Species& s : table.rows()) {
    for (const std::string& name : s.local_names) add_local(name, s.code);
  }
}

void SpeciesNames::add(std::string_view name, SpeciesCode code) {
  if (!name.empty()) names_.emplace(plain_name(name), code);
}

void SpeciesNames::add_local(std::string_view name, SpeciesCode code) {
  const auto bracket = name.find('(');
  std::string remark;
  if (bracket != std::string_view::npos) {
    remark = std::string(name.substr(bracket + 1, name.find(')', bracket) - bracket - 1));
  }
  const std::string plain = plain_name(name.substr(0, bracket));
  if (!plain.empty()) locals_[plain].push_back({code, remark});
}

Error SpeciesNames::many(std::string_view typed, const std::vector<Local>& locals) const {
  std::string names;
  for (const Local& local : locals) {
    if (!names.empty()) names += &local == &locals.back() ? " or " : ", ";
    names += common_name(local.code) + " (" + std::to_string(local.code.fia) + ")";
    if (!local.remark.empty()) names += " [" + local.remark + "]";
  }
  const bool one = locals.size() == 1;
  return unknown(
      "\"" + std::string(typed) + "\" " +
          (one ? "is a name that is not sure: " : "is a name of more than one species: ") + names +
          ".",
      one ? "Write the common name or the code, if that is the one."
          : "Write the common name or the code of the one that was meant.");
}

Result<SpeciesCode> SpeciesNames::find(std::string_view typed) const {
  const std::string_view text = trimmed(typed);
  if (all_digits(text)) {
    const auto code = whole_from_text(text);
    if (code && *code <= 99'999 && common_.count(static_cast<int>(*code))) {
      return SpeciesCode{static_cast<int>(*code)};
    }
    return unknown("There is no species with the code " + std::string(text) + ".",
                   "Look it up in species.csv, or write the common name.");
  }
  const std::string plain = plain_name(text);
  if (const auto found = names_.find(plain); found != names_.end()) return found->second;
  if (const auto found = locals_.find(plain); found != locals_.end()) {
    const auto& locals = found->second;
    if (locals.size() == 1 && locals.front().remark.empty()) return locals.front().code;
    return many(text, locals);
  }
  std::vector<std::string_view> all;
  for (const auto& [name, code] : names_) all.push_back(name);
  for (const auto& [name, codes] : locals_) all.push_back(name);
  return unknown("Species \"" + std::string(text) + "\" is unknown.",
                 did_you_mean(near_words(plain, all),
                              "Write the FIA code, the PLANTS symbol or the common name; 999 is an "
                              "unknown tree."));
}

std::string SpeciesNames::common_name(SpeciesCode code) const {
  const auto found = common_.find(code.fia);
  return found == common_.end() ? std::string() : found->second;
}

}  // namespace oaklight
