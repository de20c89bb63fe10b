#pragma once

#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace oaklight::test {

/// A CSV text as rows of cells by column.
using CsvRows = std::vector<std::map<std::string, std::string>>;
CsvRows csv_rows(const std::string& text);

/// The demo tract five years on, invented by rule and without chance: some maples gone, everything
/// else thicker, plot U03 not found again. What a test wants to know of it is told here, so that it
/// can compute the changes by itself.
struct LaterVisit {
  std::string plots, trees;           ///< CSV texts
  std::map<std::string, int> before;  ///< live trees tallied, by "stand/plot": U03 too
  std::map<std::string, int> after;   ///< without U03
};
LaterVisit later_visit();

/// The cards of the demo tract five years on: taken trees are not on them, sides that they left are
/// open, crop trees grew by crop_growth(tag, ...).
std::string later_cards(const std::set<std::string>& taken, const std::set<std::string>& released);

/// Tenths of an inch in five years.
int crop_growth(const std::string& tag, bool released);

}  // namespace oaklight::test
