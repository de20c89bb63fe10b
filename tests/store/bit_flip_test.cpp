// One bit of a tract file flips, anywhere: the check tells it, or not one cell is other than it
// was.
#include <cstdlib>

#include "core/store/sqlite_handle.hpp"
#include "tests/store/store_fixture.hpp"

namespace oaklight::test {
namespace {

/// How many; a thousand and more by hand: OAKLIGHT_FLIPS=5000 test_store --gtest_filter='BitFlip.*'
int flips() {
  const char* text = std::getenv("OAKLIGHT_FLIPS");
  return text == nullptr ? 250 : std::atoi(text);
}

class BitFlip : public StoreTest {
 protected:
  /// Every kind of record, removed ones, a form that was changed, and a history of all that.
  BitFlip() {
    TractStore store = make();
    TractData data = sample_records(store.ids(), true);
    EXPECT_TRUE(worked(store.apply(as_action(data, "import"))));
    EXPECT_TRUE(worked(store.apply(as_action(sample_records(store.ids(), false), "import more"))));
    for (int i = 0; i < 400; ++i) {
      clock_.ms += 12'345;
      Tree tree = data.trees[0];
      tree.id = store.ids().next_id<TreeTag>();
      tree.facts.note = "tree " + std::to_string(i);
      EXPECT_TRUE(worked(store.apply({"tally", {tree}})));
      if (i % 7 == 0) {
        EXPECT_TRUE(worked(store.undo()));
      }
      if (i % 9 == 0) {
        EXPECT_TRUE(worked(store.apply({"remove", {Remove{tree.id}}})) || i % 7 == 0);
      }
    }
    EXPECT_TRUE(worked(store.set_form_text("tally.form.json", R"({"version": "1 + ours"})")));
  }

  /// Every cell of every table, the list of tables among them.
  std::vector<store::Row> cells(const std::string& name) {
    auto db = store::SqliteHandle::open(folder_ / name, store::Use::read_only);
    std::vector<store::Row> all;
    const auto keep = [&](const store::Row& row) -> Status {
      all.push_back(row);
      return Done{};
    };
    std::vector<std::string> tables;
    EXPECT_TRUE(
        worked(db->each("SELECT type, name, tbl_name, sql FROM sqlite_schema ORDER BY rowid", {},
                        [&](const store::Row& row) -> Status {
                          all.push_back(row);
                          if (row[0] == store::Value{std::string("table")})
                            tables.push_back(std::get<std::string>(row[1]));
                          return Done{};
                        })));
    for (const std::string& table : tables) {
      EXPECT_TRUE(worked(db->each(
          "SELECT rowid, * FROM " + store::quoted_name(table) + " ORDER BY rowid", {}, keep)));
    }
    return all;
  }
};

TEST_F(BitFlip, ChangesNoCellUnnoticed) {
  const std::string whole = bytes_of(folder_ / "woods.gpkg");
  const auto before = cells("woods.gpkg");
  int told = 0;
  int harmless = 0;
  for (int i = 0; i < flips(); ++i) {
    std::string damaged = whole;
    const std::size_t at = chance_() % whole.size();
    const unsigned bit = 1U << (chance_() % 8);
    damaged[at] = static_cast<char>(static_cast<unsigned char>(damaged[at]) ^ bit);
    write_bytes(folder_ / "damaged.gpkg", damaged);
    const auto store = TractStore::open(folder_ / "damaged.gpkg", OpenMode::read_only, context());
    const auto report = store ? store->check() : Result<CheckReport>(store.error());
    if (!report || !report->problems.empty()) {
      ++told;
      continue;
    }
    ++harmless;
    EXPECT_TRUE(cells("damaged.gpkg") == before) << "byte " << at << " bit " << bit;
  }
  RecordProperty("told", told);
  RecordProperty("harmless", harmless);
  EXPECT_GT(told, flips() / 2) << harmless << " in bytes that hold nothing";
}

}  // namespace
}  // namespace oaklight::test
