#pragma once

#include <gtest/gtest.h>

#include <map>
#include <string>

#include "tests/support/temp_dir.hpp"

namespace oaklight::test {

/// Texts of the files of a cruise by their name, "trees.csv".
using CruiseTexts = std::map<std::string, std::string>;

/// A tract file NAME.gpkg in the folder, imported from these texts, which stay in NAME/ beside it.
/// Where none of them is tract.csv it is a small wood in Ohio.
std::string small_tract(const TempDir& folder, const std::string& name, const CruiseTexts& texts);

/// The text with every run of blanks as one, so that a line of a table is found whatever its
/// widths.
std::string squeezed(const std::string& text);

/// Whether a printed text holds these words, blanks squeezed.
testing::AssertionResult says(const std::string& text, const std::string& words);

}  // namespace oaklight::test
