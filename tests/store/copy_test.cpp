#include "core/base/embedded.hpp"
#include "core/base/sha256.hpp"
#include "tests/store/store_fixture.hpp"

namespace oaklight::test {
namespace {

namespace fs = std::filesystem;

class Copy : public StoreTest {
 protected:
  Copy() {
    data_ = sample_records(store_.ids(), true);
    EXPECT_TRUE(worked(store_.apply(as_action(data_, "import"))));
    EXPECT_TRUE(worked(store_.apply({"remove", {Remove{data_.trees[0].id}}})));
  }
  ErrorCode refuses(const fs::path& target) {
    const auto copied = store_.copy_to(target);
    return copied ? ErrorCode::no_data : copied.error().code;
  }

  TractStore store_ = make();
  TractData data_;
};

TEST_F(Copy, HoldsEverythingTombstonesAndHistoryToo) {
  ASSERT_TRUE(worked(store_.copy_to(folder_ / "copy.gpkg")));
  TractStore copy = open("copy.gpkg");
  EXPECT_EQ(difference(copy.load().value(), store_.load().value()), "");
  EXPECT_EQ(copy.history(10).value().size(), 2U);
  ASSERT_TRUE(worked(copy.undo()));
  EXPECT_EQ(difference(copy.load().value(), data_), "");
}

TEST_F(Copy, IsOneFileThatNeedsNoOther) {
  ASSERT_TRUE(worked(store_.copy_to(folder_ / "copy.gpkg")));
  const std::string bytes = bytes_of(folder_ / "copy.gpkg");
  // SQLite file format 1.3: bytes 18 and 19 are 1 without and 2 with a write-ahead log.
  EXPECT_EQ(bytes.substr(18, 2), "\x01\x01");
  EXPECT_EQ(bytes.substr(68, 4), "GPKG");
  for (const char* left : {"copy.gpkg-wal", "copy.gpkg-journal", "copy.gpkg.new"})
    EXPECT_FALSE(fs::exists(folder_ / left)) << left;
}

TEST_F(Copy, IsMadeFromAFileOpenForLookingToo) {
  const TractStore looker = open("woods.gpkg", OpenMode::read_only);
  ASSERT_TRUE(worked(looker.copy_to(folder_ / "copy.gpkg")));
  EXPECT_EQ(difference(open("copy.gpkg").load().value(), store_.load().value()), "");
}

TEST_F(Copy, NeverTakesThePlaceOfAnotherFile) {
  write_bytes(folder_ / "mine.gpkg", "mine");
  EXPECT_EQ(refuses(folder_ / "mine.gpkg"), ErrorCode::cannot_write);
  EXPECT_EQ(bytes_of(folder_ / "mine.gpkg"), "mine");
  EXPECT_EQ(refuses(folder_ / "woods.gpkg"), ErrorCode::cannot_write);
}

TEST_F(Copy, GoesOnlyToAFolderThatIsThereUnderTheRightEnding) {
  EXPECT_EQ(refuses(folder_ / "nowhere" / "copy.gpkg"), ErrorCode::cannot_write);
  EXPECT_EQ(refuses(folder_ / "copy.db"), ErrorCode::cannot_write);
}

using Forms = StoreTest;

TEST_F(Forms, AreCopiedIntoANewFileWithVersionAndHash) {
  TractStore store = make();
  std::vector<std::string> paths;
  for (const EmbeddedFile& form : embedded_forms()) {
    paths.emplace_back(form.path);
    EXPECT_EQ(store.form_text(form.path).value(), form.text);
    EXPECT_EQ(raw_sql("SELECT sha256 FROM form_file WHERE path = '" + std::string(form.path) +
                      "' AND sha256 = built_in_sha256"),
              std::vector<std::string>{sha256_hex(form.text)});
  }
  ASSERT_FALSE(paths.empty());
  EXPECT_EQ(store.form_paths().value(), paths);
  EXPECT_EQ(raw_sql("SELECT version FROM form_file WHERE path = 'tally.form.json'"),
            std::vector<std::string>{"1"});
  EXPECT_EQ(raw_sql("SELECT version FROM form_file WHERE path = 'species/species.csv'"),
            std::vector<std::string>{"NULL"});
}

TEST_F(Forms, AUsersVersionIsTellableFromTheBuiltInOne) {
  TractStore store = make();
  ASSERT_TRUE(worked(store.set_form_text("tally.form.json", R"({"version": "1 + ours"})")));
  EXPECT_EQ(raw_sql("SELECT version || ' ' || (sha256 = built_in_sha256) FROM form_file"
                    " WHERE path = 'tally.form.json'"),
            std::vector<std::string>{"1 + ours 0"});
  EXPECT_TRUE(store.check().value().problems.empty());
}

}  // namespace
}  // namespace oaklight::test
