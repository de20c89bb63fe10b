// A file of each step that ever was, as it lies in tests/versions, is opened and keeps everything.
#include <algorithm>
#include <fstream>
#include <map>

#include "tests/store/store_fixture.hpp"
#include "tests/support/places.hpp"

namespace oaklight::test {
namespace {

namespace fs = std::filesystem;

class Versions : public StoreTest, public testing::WithParamInterface<int> {
 protected:
  static std::string number(int step) {
    const std::string digits = std::to_string(step);
    return "v" + std::string(4 - digits.size(), '0') + digits;
  }
  void SetUp() override {
    const std::string dump = bytes_of(source_path("tests/versions/" + number(GetParam()) + ".sql"));
    ASSERT_FALSE(dump.empty());
    raw_sql(dump);
  }
  /// Each row of each table of ours, its columns by name; those that are NULL are left out, as a
  /// column that the file did not have yet.
  std::map<std::string, std::vector<std::string>> rows() {
    std::map<std::string, std::vector<std::string>> found;
    for (const std::string& table :
         raw_sql("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%'"
                 " AND name NOT LIKE 'gpkg%' AND name <> 'meta' ORDER BY name")) {
      std::string row = "''";
      for (const std::string& column :
           raw_sql("SELECT name FROM pragma_table_info('" + table + "') ORDER BY name"))
        row += " || ifnull('" + column + "=' || quote(nullif(" + column + ", NULL)) || ';', '')";
      for (const std::string& text :
           raw_sql("SELECT " + row + " FROM " + table + " ORDER BY rowid"))
        found[table].push_back(without_null(text));
    }
    return found;
  }
  static std::string without_null(std::string text) {
    for (std::size_t end = text.find("=NULL;"); end != std::string::npos;
         end = text.find("=NULL;")) {
      const std::size_t before = text.rfind(';', end);
      const std::size_t begin = before == std::string::npos ? 0 : before + 1;
      text.erase(begin, end + 6 - begin);
    }
    return text;
  }
};

TEST_P(Versions, IsBroughtUpToDateWithEveryRecordAndLine) {
  const auto before = rows();
  {
    const auto opened = TractStore::open(folder_ / "woods.gpkg", OpenMode::read_write, context());
    ASSERT_TRUE(worked(opened));
    const auto report = opened->check();
    ASSERT_TRUE(worked(report));
    for (const Error& problem : report->problems) ADD_FAILURE() << to_text(problem);
  }
  const auto after = rows();
  for (const auto& [table, lines] : before) {
    const auto there = after.find(table);
    ASSERT_NE(there, after.end()) << table;
    EXPECT_EQ(there->second, lines) << table;
  }
}

TEST_P(Versions, KeepsACopyThatIsTheOldFile) {
  const auto before = rows();
  ASSERT_TRUE(worked(TractStore::open(folder_ / "woods.gpkg", OpenMode::read_write, context())));
  const fs::path kept = folder_ / ("woods.before-step-" + std::to_string(GetParam() + 1) + ".gpkg");
  if (!fs::exists(kept)) {
    const auto newest = raw_sql("SELECT value FROM meta WHERE key = 'step'");
    EXPECT_EQ(newest, std::vector<std::string>{std::to_string(GetParam())})
        << "brought up, no copy";
    return;
  }
  fs::remove(folder_ / "woods.gpkg");
  fs::rename(kept, folder_ / "woods.gpkg");
  EXPECT_EQ(rows(), before);
  EXPECT_EQ(raw_sql("SELECT value FROM meta WHERE key = 'step'"),
            std::vector<std::string>{std::to_string(GetParam())});
}

TEST_P(Versions, IsReadAndWorkedOn) {
  if (GetParam() < 2) GTEST_SKIP() << "a file of step 1 has no table for records";
  TractStore store = open();
  const TractData data = store.load().value();
  EXPECT_EQ(data.tract.name, "Cold Hollow");
  EXPECT_EQ(data.trees.size(), 1U) << "the other one was removed";
  EXPECT_EQ(data.stands.size(), 2U);
  EXPECT_EQ(data.plots.size(), 2U);
  EXPECT_EQ(data.walk_trees.size(), 2U);
  EXPECT_EQ(data.stumps.size(), GetParam() < 4 ? 0U : 1U);
  EXPECT_EQ(data.acorn_counts.size(), GetParam() < 5 ? 0U : 1U);
  const auto history = store.history(10).value();
  ASSERT_EQ(history.size(), GetParam() < 3 ? 0U : 2U);
  if (history.empty()) return;
  EXPECT_EQ(history[0].label, "remove a tree");
  ASSERT_TRUE(worked(store.undo())) << "what the older program did";
  EXPECT_EQ(store.load().value().trees.size(), 2U);
  ASSERT_TRUE(worked(store.undo()));
  EXPECT_EQ(store.load().value().plots.size(), 0U);
  ASSERT_TRUE(worked(store.redo()));
  ASSERT_TRUE(worked(store.redo()));
  EXPECT_EQ(difference(store.load().value(), data), "");
  EXPECT_TRUE(store.check().value().problems.empty());
}

std::vector<int> steps() {
  std::vector<int> found;
  for (const auto& entry : fs::directory_iterator(source_path("tests/versions"))) {
    const std::string name = entry.path().filename();
    if (name.size() == 9 && name.front() == 'v' && name.ends_with(".sql"))
      found.push_back(std::stoi(name.substr(1, 4)));
  }
  std::sort(found.begin(), found.end());
  return found;
}

INSTANTIATE_TEST_SUITE_P(Step, Versions, testing::ValuesIn(steps()),
                         [](const auto& step) { return std::to_string(step.param); });

// A step without a dump is a step whose upgrade nobody tried.
TEST(VersionDumps, ThereIsOneForEachStep) {
  std::size_t schema = 0;
  for (const auto& entry : fs::directory_iterator(source_path("schema"))) {
    const std::string name = entry.path().filename();
    if (name.ends_with(".sql") && name.starts_with("0")) ++schema;
  }
  EXPECT_EQ(steps().size(), schema) << "tests/versions/make.py N > tests/versions/vNNNN.sql";
}

}  // namespace
}  // namespace oaklight::test
