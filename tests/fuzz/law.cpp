#include "tests/fuzz/law.hpp"

#include <cstdint>

#include "core/base/utf8.hpp"
#include "tests/forms/cruise_files.hpp"

namespace oaklight::test {

void require(bool holds, const std::string& law) {
  if (!holds) throw Broken(law);
}

void require_told(const Error& refusal) {
  const std::string all = to_text(refusal);
  require(!refusal.what.empty(), "a refusal says what is wrong: " + all);
  // The line that counts the faults not listed has no place; that nothing is to be undone, no
  // remedy.
  const bool counts = refusal.code == ErrorCode::import_refused;
  const bool nothing_done = refusal.code == ErrorCode::nothing_to_undo;
  require(counts || nothing_done || !refusal.where.empty(), "a refusal says where: " + all);
  require(nothing_done || !refusal.fix.empty(), "a refusal says how to mend it: " + all);
  require(is_utf8(all), "a refusal is readable text");
}

void require_told(const std::vector<Error>& refusals) {
  for (const Error& refusal : refusals) require_told(refusal);
}

std::vector<NamedText> files_of(std::string_view bundle) {
  std::vector<NamedText> files;
  std::size_t at = 0;
  while (at < bundle.size()) {
    auto end = bundle.find("\n@", at);
    end = end == std::string_view::npos ? bundle.size() : end + 1;
    std::string_view part = bundle.substr(at, end - at);
    at = end;
    if (!part.starts_with('@')) continue;
    const auto line_end = part.find('\n');
    if (line_end == std::string_view::npos) continue;
    files.push_back(
        {std::string(part.substr(1, line_end - 1)), std::string(part.substr(line_end + 1))});
  }
  return files;
}

std::string form_in(const std::vector<NamedText>& bundle, const std::string& path) {
  const std::string name = path.substr(path.rfind('/') + 1);
  for (const NamedText& file : bundle) {
    if (file.name == name) return file.text;
  }
  return form_file(path).text;
}

std::function<std::uint64_t()> same_bits() {
  // Knuth's MMIX generator; any would do, as long as each run gives the same ids.
  return [state = std::uint64_t{7}]() mutable {
    return state = state * 6364136223846793005U + 1442695040888963407U;
  };
}

}  // namespace oaklight::test
