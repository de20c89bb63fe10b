#include "tests/published/published_row.hpp"

#include <glob.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <cmath>
#include <fstream>
#include <set>
#include <stdexcept>

#include "core/base/number_text.hpp"
#include "tests/support/results.hpp"

namespace oaklight::test {
namespace {

constexpr std::string_view kHeader = "id\tquantity\tinputs\twant\ttolerance\tunit\tsource\tstatus";
constexpr std::array<std::string_view, 4> kStatuses{"retrieved", "derived", "from memory", "gap"};

std::vector<std::string> split(const std::string& text, char at) {
  std::vector<std::string> parts;
  std::size_t start = 0;
  for (std::size_t end = text.find(at); end != std::string::npos; end = text.find(at, start)) {
    parts.push_back(text.substr(start, end - start));
    start = end + 1;
  }
  parts.push_back(text.substr(start));
  return parts;
}

/// "dbh_in=12;baf=10"; a problem in words when it has another form.
std::string read_inputs(const std::string& text, Inputs& inputs) {
  if (text.empty()) return "";
  for (const std::string& part : split(text, ';')) {
    const auto sign = part.find('=');
    if (sign == std::string::npos || sign == 0) return "input \"" + part + "\" is not name=value";
    if (!inputs.emplace(part.substr(0, sign), part.substr(sign + 1)).second) {
      return "input \"" + part + "\" is given twice";
    }
  }
  return "";
}

/// What is wrong with a line, or nothing.
std::string read_row(const std::string& line, PublishedRow& row) {
  const auto cells = split(line, '\t');
  if (cells.size() != 8) return "has " + std::to_string(cells.size()) + " cells, not 8";
  row.id = cells[0];
  row.quantity = cells[1];
  if (auto problem = read_inputs(cells[2], row.inputs); !problem.empty()) return problem;
  const auto want = number_from_text(cells[3]);
  const auto tolerance = number_from_text(cells[4]);
  if (!want || !tolerance || *tolerance < 0.0) return "needs a number and a tolerance";
  row.want = *want;
  row.tolerance = *tolerance;
  row.unit = cells[5];
  row.source = cells[6];
  row.status = cells[7];
  if (row.id.empty() || row.quantity.empty()) return "has no id or no quantity";
  if (row.source.empty()) return "has no source";
  if (std::find(kStatuses.begin(), kStatuses.end(), row.status) == kStatuses.end()) {
    return "has the unknown status \"" + row.status + "\"";
  }
  return "";
}

/// Sorted. By the C library: the C++ library of mobile/web has no file system.
std::vector<std::string> tsv_files(const std::string& folder) {
  std::vector<std::string> paths;
  glob_t found{};
  if (glob((folder + "/*.tsv").c_str(), 0, nullptr, &found) == 0) {
    paths.assign(found.gl_pathv, found.gl_pathv + found.gl_pathc);
  }
  globfree(&found);
  return paths;
}

void read_file(const std::string& path, const std::string& name, PublishedRows& all) {
  std::ifstream in(path);
  std::string line;
  if (!std::getline(in, line) || line != kHeader) {
    all.problems.push_back(name + ": the first line is not the header");
    return;
  }
  const std::size_t before = all.rows.size();
  for (int number = 2; std::getline(in, line); ++number) {
    PublishedRow row;
    row.place = name + ":" + std::to_string(number);
    const std::string problem = read_row(line, row);
    if (problem.empty()) {
      all.rows.push_back(std::move(row));
    } else {
      all.problems.push_back(row.place + ": " + problem);
    }
  }
  if (all.rows.size() == before) all.problems.push_back(name + ": no rows");
}

/// Every digit: two builds that print alike computed alike.
std::string all_digits(double value) {
  std::array<char, 32> text{};
  return {text.data(), std::to_chars(text.data(), text.data() + text.size(), value).ptr};
}

}  // namespace

double number(const Inputs& inputs, const std::string& name) {
  const auto found = inputs.find(name);
  if (found == inputs.end()) throw std::runtime_error("the row has no input \"" + name + "\"");
  const auto value = number_from_text(found->second);
  if (!value) throw std::runtime_error(name + ": " + value.error().what);
  return *value;
}

std::ostream& operator<<(std::ostream& out, const PublishedRow& row) {
  out << row.place << " " << row.quantity << " (";
  for (const auto& [name, value] : row.inputs) out << name << "=" << value << " ";
  return out << row.unit << "), " << row.source << ", " << row.status;
}

PublishedRows read_published(const std::string& folder, const std::set<std::string>& leave_out) {
  PublishedRows all;
  for (const std::string& path : tsv_files(folder)) {
    const std::string name = path.substr(path.rfind('/') + 1);
    if (!leave_out.contains(name)) read_file(path, name, all);
  }
  std::set<std::string> ids;
  for (const PublishedRow& row : all.rows) {
    if (!ids.insert(row.id).second) all.problems.push_back(row.place + ": the id is used before");
  }
  return all;
}

void expect_well_formed(const PublishedRows& all, const Evaluators& evaluators) {
  EXPECT_GT(all.rows.size(), 0U);
  for (const std::string& problem : all.problems) ADD_FAILURE() << problem;
  std::set<std::string> used;
  for (const PublishedRow& row : all.rows) {
    used.insert(row.quantity);
    EXPECT_TRUE(evaluators.contains(row.quantity)) << "no evaluator: " << row;
  }
  for (const auto& [quantity, evaluator] : evaluators) {
    EXPECT_TRUE(used.contains(quantity)) << "no row asks for " << quantity;
  }
}

void run_row(const PublishedRow& row, const Evaluators& evaluators, const std::string& table) {
  const auto evaluator = evaluators.find(row.quantity);
  ASSERT_NE(evaluator, evaluators.end()) << row;
  const double got = evaluator->second(row.inputs);
  const bool met = std::abs(got - row.want) <= row.tolerance;
  if (row.status == "gap") {
    EXPECT_FALSE(met) << "this gap has closed: " << row;
  } else {
    EXPECT_NEAR(got, row.want, row.tolerance) << row;
  }
  result_table(table,
               {"file", "id", "quantity", "status", "met", "want", "got", "digits", "source"})
      .add({row.place.substr(0, row.place.find(':')), row.id, row.quantity, row.status,
            met ? "met" : "missed", number_text(row.want, 4), number_text(got, 4), all_digits(got),
            row.source});
}

std::string row_name(const testing::TestParamInfo<PublishedRow>& info) {
  std::string name = info.param.id;
  for (char& c : name) {
    if (std::isalnum(static_cast<unsigned char>(c)) == 0) c = '_';
  }
  return name;
}

}  // namespace oaklight::test
