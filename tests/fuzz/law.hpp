#pragma once

#include <functional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/error.hpp"
#include "core/forms/csv_file.hpp"

namespace oaklight::test {

/// A law that an input made the program break: a finding, like a crash.
class Broken : public std::logic_error {
 public:
  using std::logic_error::logic_error;
};

/// Throws Broken unless it holds.
void require(bool holds, const std::string& law);

/// A refusal says what, where and how to mend it, in UTF-8 that a terminal can show.
void require_told(const Error& refusal);
void require_told(const std::vector<Error>& refusals);

/// The files of a bundle: "@trees.csv", a line end, and the text up to the next line that begins
/// with '@'. One input of a fuzzer holds several files so.
std::vector<NamedText> files_of(std::string_view bundle);

/// The text of one of forms/ out of a bundle ("species/species.csv" by its bare name); where the
/// bundle does not bring it, the program's own.
std::string form_in(const std::vector<NamedText>& bundle, const std::string& path);

/// Random bits that are the same on every run, as ids are made of.
std::function<std::uint64_t()> same_bits();

}  // namespace oaklight::test
