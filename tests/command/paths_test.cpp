// No text of a file is ever taken for a path: names that climb out of their folder, or begin at its
// root, are names.
#include <gtest/gtest.h>

#include <filesystem>
#include <optional>
#include <set>

#include "core/store/tract_store.hpp"
#include "tests/command/program.hpp"

namespace oaklight::test {
namespace {

namespace fs = std::filesystem;

std::set<std::string> files_in(const fs::path& folder) {
  std::set<std::string> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    files.insert(fs::relative(entry.path(), folder).string());
  }
  return files;
}

void replace_all(std::string& text, const std::string& from, const std::string& to) {
  for (auto at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
}

/// The demo files, their tract and stands named after places in the file system.
void copy_with_bad_names(const fs::path& to) {
  fs::create_directory(to);
  for (const auto& entry : fs::directory_iterator(demo_plots())) {
    const auto ending = entry.path().extension();
    if (ending != ".csv" && ending != ".geojson") continue;
    std::string text = bytes_of(entry.path());
    replace_all(text, "Upland", "../../../Upland");
    replace_all(text, "Cove", "/tmp/oaklight_cove/../Cove");
    replace_all(text, "Whetrock Hollow", "../../Whetrock Hollow");
    write_bytes(to / entry.path().filename(), text);
  }
}

TEST(Paths, NamesThatClimbStayNames) {
  const TempDir root;
  const fs::path deep = root / "a/b/c";
  fs::create_directories(deep);
  const fs::path tract = deep / "woods.gpkg";
  copy_with_bad_names(deep / "files");
  const std::string file = tract.string();
  ASSERT_EQ(oaklight("import " + file + " " + (deep / "files").string()).exit_code, 0);
  ASSERT_EQ(oaklight("recommend " + file).exit_code, 0);
  const auto before = files_in(root.path());
  const std::string out = (deep / "out").string();
  for (const std::string& words :
       {"packet " + file + " --for logger --out " + out,
        "packet " + file + " --for owner --out " + out, "stumps " + file + " --out " + out,
        "sheet " + file + " " + out + "/sheets.pdf", "estimate " + file,
        "design " + file + " --cruise Next --error 40", "route " + file + " --out " + out,
        "check " + file}) {
    const Ran ran = oaklight(words);
    EXPECT_EQ(ran.exit_code, 0) << words << ran.errors;
  }
  int made = 0;
  for (const std::string& path : files_in(root.path())) {
    if (before.contains(path)) continue;
    ++made;
    EXPECT_TRUE(path.starts_with("a/b/c/out") || path.starts_with("a/b/c/woods.gpkg")) << path;
  }
  EXPECT_GT(made, 10);
  EXPECT_FALSE(fs::exists("/tmp/oaklight_cove"));
}

TEST(Paths, AFormOfAnyNameIsReadAndWrittenNowhere) {
  const TempDir root;
  const fs::path deep = root / "a/b/c";
  fs::create_directories(deep);
  SystemClock clock;
  auto made = TractStore::create(deep / "woods.gpkg", {clock, system_random(), "test"});
  ASSERT_TRUE(made);
  std::optional<TractStore> store(std::move(made.value()));
  // A path that is none of the forms names no file, and makes none.
  for (const char* path : {"../../evil.csv", "/tmp/evil.csv", "species/../../../evil.csv"}) {
    const Status set = store->set_form_text(path, "text");
    ASSERT_FALSE(set) << path;
    EXPECT_EQ(set.error().code, ErrorCode::missing_rule);
  }
  // The file that a form names for a record is a word for messages.
  auto form = store->form_text("tally.form.json").value();
  replace_all(form, "trees.csv", "../../../trees.csv");
  ASSERT_TRUE(store->set_form_text("tally.form.json", form));
  store.reset();
  const auto before = files_in(root.path());
  ASSERT_EQ(
      oaklight("import " + (deep / "woods.gpkg").string() + " " + demo_plots().string()).exit_code,
      0);
  for (const std::string& path : files_in(root.path())) {
    EXPECT_TRUE(before.contains(path) || path.starts_with("a/b/c/woods.gpkg")) << path;
  }
}

TEST(Paths, APacketIsNotWrittenThroughALink) {
  const DemoTract demo;
  const fs::path out = demo.folder / "out";
  fs::create_directory(out);
  write_bytes(demo.folder / "precious", "mine");
  // What a half-made file is called; whoever can write in the folder might have put a link there.
  fs::create_symlink(demo.folder / "precious", out / "logger.csv.part");
  const Ran made = oaklight("packet " + demo.tract + " --for logger --out " + out.string());
  EXPECT_EQ(bytes_of(demo.folder / "precious"), "mine");
  EXPECT_EQ(made.exit_code, 0) << made.errors;
  EXPECT_TRUE(fs::is_regular_file(fs::symlink_status(out / "logger.csv")));
  EXPECT_FALSE(fs::exists(fs::symlink_status(out / "logger.csv.part")));
}

}  // namespace
}  // namespace oaklight::test
