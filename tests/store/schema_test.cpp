// schema/ against the program, the dictionary and the model.
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>

#include "core/base/embedded.hpp"
#include "core/base/sha256.hpp"
#include "core/store/migrate.hpp"
#include "core/store/record_table.hpp"
#include "tests/store/store_fixture.hpp"
#include "tests/support/places.hpp"

namespace oaklight::test {
namespace {

namespace fs = std::filesystem;

const fs::path kSchema = source_path("schema");

class Schema : public StoreTest {
 protected:
  Schema() { make(); }
};

TEST_F(Schema, StepsOfTheProgramAreThoseOfTheFolder) {
  std::set<std::string> files;
  for (const auto& entry : fs::directory_iterator(kSchema)) {
    const std::string name = entry.path().filename().string();
    if (std::regex_match(name, std::regex("\\d{4}_.*"))) files.insert(name);
  }
  ASSERT_FALSE(files.empty());
  std::set<std::string> built_in;
  for (const EmbeddedFile& file : embedded_schema()) {
    built_in.emplace(file.path);
    EXPECT_TRUE(
        std::regex_match(std::string(file.path), std::regex("\\d{4}_[a-z]+(_[a-z]+)+\\.sql")))
        << file.path;
    EXPECT_EQ(file.text, bytes_of(kSchema / std::string(file.path)));
  }
  EXPECT_EQ(built_in, files);
}

TEST_F(Schema, CurrentIsWhatTheStepsMake) {
  std::string made =
      "-- What all steps together make. Made by the test of this name; see README.md.\n";
  for (const std::string& sql :
       raw_sql("SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite\\_%'"
               " ESCAPE '\\' ORDER BY rowid")) {
    made += "\n" + sql + ";\n";
  }
  const fs::path renewed = build_path("current.sql");
  if (made != bytes_of(kSchema / "current.sql")) {
    write_bytes(renewed, made);
    ADD_FAILURE() << "schema/current.sql is not what the steps make. If the steps are right: cp "
                  << renewed << " " << kSchema / "current.sql";
  }
}

/// Lines of released.sha256 that name no such step, or another hash than the step has now.
std::vector<std::string> wrong_releases(const std::string& list, const fs::path& folder) {
  std::vector<std::string> wrong;
  std::istringstream lines(list);
  const std::regex form("([0-9a-f]{64})  (\\d{4}_[a-z_]+\\.sql)");
  for (std::string line; std::getline(lines, line);) {
    if (line.empty() || line[0] == '#') continue;
    std::smatch parts;
    if (!std::regex_match(line, parts, form) || !fs::exists(folder / parts[2].str()) ||
        sha256_hex(bytes_of(folder / parts[2].str())) != parts[1].str())
      wrong.push_back(line);
  }
  return wrong;
}

TEST_F(Schema, ReleasedStepsAreFrozen) {
  ASSERT_TRUE(fs::exists(kSchema / "released.sha256"));
  EXPECT_EQ(wrong_releases(bytes_of(kSchema / "released.sha256"), kSchema),
            std::vector<std::string>{});
}

TEST_F(Schema, AReleasedStepThatChangedIsNoticed) {
  write_bytes(folder_ / "0001_make_it.sql", "-- 0001\n");
  const std::string right = sha256_hex("-- 0001\n") + "  0001_make_it.sql";
  EXPECT_TRUE(wrong_releases("# note\n\n" + right + "\n", folder_.path()).empty());
  for (const std::string& wrong :
       {sha256_hex("-- 1") + "  0001_make_it.sql", sha256_hex("-- 0001\n") + "  0002_gone.sql",
        sha256_hex("-- 0001\n"), std::string("0001_make_it.sql")}) {
    EXPECT_EQ(wrong_releases(wrong + "\n", folder_.path()), std::vector<std::string>{wrong});
  }
}

TEST_F(Schema, EveryColumnIsInTheDictionaryAndNoOther) {
  std::set<std::string> documented;
  const std::string text = bytes_of(kSchema / "README.md");
  const std::regex row("\\| `([a-z_]+\\.[a-z0-9_]+)` \\| ([^|]+) \\|");
  for (auto it = std::sregex_iterator(text.begin(), text.end(), row); it != std::sregex_iterator();
       ++it)
    documented.insert((*it)[1]);

  std::set<std::string> columns;
  const std::set<std::string> common = {"fid", "uid", "deleted", "changed_at", "row_crc"};
  const auto add = [&](const std::string& table, bool record) {
    for (const std::string& column :
         raw_sql("SELECT name FROM pragma_table_info('" + table + "')")) {
      if (!record || common.count(column) == 0) columns.insert(table + "." + column);
    }
  };
  for (const std::string_view table : store::kRecordTables) add(std::string(table), true);
  add("user_action", false);
  add("change", false);
  EXPECT_EQ(documented, columns);
}

TEST_F(Schema, MetaKeysAreInTheDictionary) {
  const std::string text = bytes_of(kSchema / "README.md");
  for (const std::string& key : raw_sql("SELECT key FROM meta"))
    EXPECT_NE(text.find("| `" + key + "` |"), std::string::npos) << key;
}

template <class E>
std::string checked_words(const std::string& column) {
  std::string list = column + " IN (";
  for (const auto& entry : kWords<E>)
    list += (list.back() == '(' ? "'" : ", '") + std::string(entry.word) + "'";
  return list + ")";
}

// A word that the model gains must be let in by a new step.
TEST_F(Schema, ChecksTakeExactlyTheWordsOfTheModel) {
  const auto table = [&](const std::string& name) {
    return raw_sql("SELECT sql FROM sqlite_schema WHERE name = '" + name + "'").front();
  };
  const std::vector<std::pair<std::string, std::string>> wanted = {
      {"stand", checked_words<Goal>("goal")},
      {"plot", checked_words<PlotStatus>("status")},
      {"tree", checked_words<TreeStatus>("status")},
      {"tree", checked_words<CrownClass>("crown_class")},
      {"walk_tree", checked_words<TreeStatus>("status")},
      {"walk_tree", checked_words<CrownClass>("crown_class")},
      {"regen", checked_words<RegenHeight>("height_class")},
      {"contact", checked_words<Seen>("seen")},
      {"mark", checked_words<Verdict>("verdict")},
      {"mark", checked_words<Method>("method")},
      {"mark", checked_words<Product>("product")},
      {"mark", checked_words<Reader>("destination")},
      {"map_line", checked_words<LineKind>("kind")},
      {"stump", checked_words<Finding>("finding")},
      {"stump", checked_words<Wound>("wound")},
      {"stump", checked_words<WoundPlace>("wound_place")},
      {"acorn_year", checked_words<AcornCrop>("crop")}};
  for (const auto& [name, words] : wanted)
    EXPECT_NE(table(name).find(words), std::string::npos) << name << ": " << words;
}

TEST_F(Schema, OwnTablesAreStrictAndFeatureTablesCheckTypesThemselves) {
  const auto features =
      raw_sql("SELECT table_name FROM gpkg_contents WHERE data_type = 'features'");
  const std::set<std::string> layers(features.begin(), features.end());
  std::vector<std::string> tables(store::kRecordTables.begin(), store::kRecordTables.end());
  tables.insert(tables.end(), {"meta", "user_action", "change"});
  for (const std::string& table : tables) {
    const bool strict =
        raw_sql("SELECT strict FROM pragma_table_list('" + table + "')").front() == "1";
    EXPECT_EQ(strict, layers.count(table) == 0) << table;
  }
}

TEST_F(Schema, FeatureTablesRefuseValuesOfAnotherType) {
  {
    TractStore store = open();
    ASSERT_TRUE(worked(store.apply(as_action(sample_records(store.ids(), true), "import"))));
  }
  // Every column of a feature table, set to bytes that no column but geom may hold.
  for (const std::string table : {"tract", "stand", "plot", "walk_tree", "map_line", "stump"}) {
    for (const std::string& column :
         raw_sql("SELECT name FROM pragma_table_info('" + table + "') WHERE name <> 'fid'")) {
      const std::string command = "sqlite3 " + (folder_ / "woods.gpkg").string() + " \"UPDATE " +
                                  table + " SET " + column + " = x'00'\"";
      EXPECT_NE(run_program(command).exit_code, 0) << table << "." << column;
    }
  }
}

Error step_error(const std::vector<EmbeddedFile>& files) {
  const auto steps = store::read_steps(files);
  return steps ? Error{ErrorCode::no_data, "it was read", "", ""} : steps.error();
}

TEST(SchemaSteps, SayWhatTheyDoWhoCanReadOnAndWhatIsLost) {
  const std::vector<EmbeddedFile> files = {
      {"0001_make_it.sql", "-- 0001: makes it.\n-- min_reader: 1\n-- loses: nothing\nSELECT 1;\n"},
      {"0002_add_it.sql", "-- 0002: adds.\n-- min_reader: 1    (why)\n-- loses: a column\n"}};
  const auto steps = store::read_steps(files);
  ASSERT_TRUE(worked(steps));
  ASSERT_EQ(steps->size(), 2U);
  EXPECT_EQ((*steps)[0].what, "makes it.");
  EXPECT_EQ((*steps)[0].sql, files[0].text);
  EXPECT_EQ((*steps)[1].number, 2);
  EXPECT_EQ((*steps)[1].min_reader, 1);
  EXPECT_EQ((*steps)[1].loses, "a column");
}

TEST(SchemaSteps, AreRefusedWithoutTheirThreeLinesOrOutOfOrder) {
  for (const EmbeddedFile& file : std::vector<EmbeddedFile>{
           {"0002_make_it.sql", "-- 0002: a\n-- min_reader: 1\n-- loses: nothing\n"},
           {"0001_make_it.sql", "-- 0002: a\n-- min_reader: 1\n-- loses: nothing\n"},
           {"0001_make_it.sql", "-- 0001:\n-- min_reader: 1\n-- loses: nothing\n"},
           {"0001_make_it.sql", "-- 0001: a\n-- loses: nothing\n"},
           {"0001_make_it.sql", "-- 0001: a\n-- min_reader: 2\n-- loses: nothing\n"},
           {"0001_make_it.sql", "-- 0001: a\n-- min_reader: 0\n-- loses: nothing\n"},
           {"0001_make_it.sql", "-- 0001: a\n-- min_reader: x\n-- loses: nothing\n"},
           {"0001_make_it.sql", "-- 0001: a\n-- min_reader: 1\n-- loses:\n"},
           {"0001_make_it.sql", ""}}) {
    const Error error = step_error({file});
    EXPECT_EQ(error.code, ErrorCode::not_a_choice) << file.text;
    EXPECT_EQ(error.where, "schema/" + std::string(file.path));
  }
}

}  // namespace
}  // namespace oaklight::test
