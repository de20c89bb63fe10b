#include "tests/support/results.hpp"

#include <gtest/gtest.h>
#include <sys/stat.h>

#include <fstream>
#include <map>

#include "tests/support/places.hpp"

namespace oaklight::test {
namespace {

std::map<std::string, ResultTable>& tables() {
  static std::map<std::string, ResultTable> all;
  return all;
}

class WriteTables : public testing::Environment {
 public:
  void TearDown() override {
    if (testing::GTEST_FLAG(filter) != "*") return;
    for (const auto& [name, table] : tables()) table.write();
  }
};
// GoogleTest owns it.
[[maybe_unused]] const testing::Environment* const kWriteTables =
    testing::AddGlobalTestEnvironment(new WriteTables);

std::string line_of(const std::vector<std::string>& cells) {
  std::string line;
  for (const std::string& cell : cells) line += cell + "\t";
  if (!line.empty()) line.back() = '\n';
  return line;
}

}  // namespace

ResultTable::ResultTable(std::string name, std::vector<std::string> columns)
    : name_(std::move(name)), columns_(columns.size()), text_(line_of(columns)) {}

void ResultTable::add(const std::vector<std::string>& cells) {
  EXPECT_EQ(cells.size(), columns_) << name_;
  for (const std::string& cell : cells) {
    EXPECT_EQ(cell.find_first_of("\t\n"), std::string::npos) << name_ << ": " << cell;
  }
  text_ += line_of(cells);
}

void ResultTable::write() const {
  // By the C library: the C++ library of mobile/web has no file system.
  const std::string folder = build_path("results");
  mkdir(folder.c_str(), 0777);
  std::ofstream file(folder + "/" + name_ + ".tsv", std::ios::binary);
  EXPECT_TRUE(file << text_ << std::flush) << "could not write into " << folder;
}

ResultTable& result_table(const std::string& name, const std::vector<std::string>& columns) {
  return tables().try_emplace(name, name, columns).first->second;
}

}  // namespace oaklight::test
