// A packet leaves the house: it holds what its reader needs to know, and nothing else. A word that
// no other text has is put into each field of a tract; what each of the four readers may find of
// them stands here, with its reason.
#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <regex>
#include <set>

#include "core/store/tract_store.hpp"
#include "tests/command/program.hpp"
#include "tests/support/places.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

constexpr std::array<const char*, 4> kReaders = {"logger", "firewood", "standing", "owner"};

/// A word, in which field it stands, who may find it, and why.
struct Canary {
  const char* word;
  const char* field;
  const char* readers;  ///< "all", "none", or names of readers
  const char* why;
};

constexpr Canary kCanaries[] = {
    {"Qtractqa", "tract.name", "all", "says which tract it is"},
    {"Qcountyqb", "tract.county", "all", "for whoever calls an ambulance"},
    {"Qcontactqc", "tract.contact", "all",
     "who answers for the work; asked before anything unclear is cut"},
    {"Qdirectqd", "tract.directions", "all", "for whoever calls an ambulance"},
    {"Qmeetingqe", "tract.meeting_place", "all", "for whoever calls an ambulance"},
    {"Qphoneqf", "tract.phone_place", "all", "for whoever calls an ambulance"},
    {"Qworkqg", "stand.name, with work", "all", "where the work is"},
    {"Qotherqh", "stand.name, without work", "owner", "nobody else works there"},
    {"Qlineqi", "map_line.name", "all", "the map says which line must not be crossed"},
    {"QR1", "walk_tree.tag, to be cut", "all",
     "its tag is how a tree is found, and that it is not his"},
    {"QK2", "walk_tree.tag, to be kept beside it", "all", "must not be cut or hurt"},
    {"QX3", "walk_tree.tag, of a stand without work", "owner", "nobody else works there"},
    {"Qcruiseqj", "cruise.name", "none", "a packet names no cruise"},
    {"Qcrewqk", "cruise.crew", "none", "who measured is between the owner and the crew"},
    {"Qplotql", "plot.label", "none", "plots are no trees of the list"},
    {"Qskipqm", "plot.skip_reason", "none", "a note of the crew"},
    {"Qplotnoteqn", "plot.note", "none", "a note of the crew"},
    {"Qtreenoteqo", "tree.note", "none", "a note of the crew"},
    {"Qtreetagqp", "tree.tag", "none", "trees of plots are not listed"},
    {"Qwalknoteqq", "walk_tree.note", "none", "notes stay in the tract file"},
    {"Qreasonqr", "mark.reason, typed by a person", "owner", "between him and the owner"},
    {"Qversionqs", "mark.rule_version", "all", "says which rules stand behind the list"},
    {"Qstumpqt", "stump.note", "none", "the stump check has a report of its own"},
    {"Qacornqu", "acorn_count.note", "none", "a note of the crew"},
    {"Qsourceqv", "acorn_year.source", "none", "a note of the owner"},
    {"Qdeviceqw", "user_action.device", "none", "whose tablet it was"},
    {"Qlabelqx", "user_action.label", "none", "history stays in the tract file"},
    {"Qformqy", "form_file.text", "none", "the tract's forms stay in the tract file"},
    {"Qundoneqz", "a record that was taken back", "none", "history stays in the tract file"},
};

bool may_find(const Canary& canary, const std::string& reader) {
  const std::string readers = canary.readers;
  return readers == "all" || readers == reader;
}

/// A tract with every canary in its field.
class TractOfCanaries {
 public:
  TractOfCanaries() : tract((folder / "Qfileqfile.gpkg").string()) {
    auto store = TractStore::create(tract, {clock_, system_random(), "Qdeviceqw"}).value();
    ids_ = &store.ids();
    fill();
    EXPECT_TRUE(store.apply({"Qlabelqx", changes_}));
    Stand undone = stand("Qundoneqz");
    EXPECT_TRUE(store.apply({"Qundoneqz", {undone}}));
    EXPECT_TRUE(store.undo());
    auto form = store.form_text("tally.form.json").value();
    form.replace(form.find("\"help\": \"") + 9, 0, "Qformqy ");
    EXPECT_TRUE(store.set_form_text("tally.form.json", form));
  }
  TempDir folder;
  std::string tract;
  std::vector<std::string> uids;

 private:
  template <class Tag>
  Id<Tag> next() {
    const auto id = ids_->next_id<Tag>();
    uids.push_back(to_text(id));
    return id;
  }
  Stand stand(const std::string& name) {
    Stand made;
    made.id = next<StandTag>();
    made.name = name;
    made.acres = Acres{12.0};
    made.walked = Acres{12.0};
    const Ring ring = {at(0), at(1), at(2), at(0)};
    made.boundary = Polygon{ring, {}};
    return made;
  }
  static Position at(int place) {
    constexpr double kLat[] = {39.35, 39.35, 39.36};
    constexpr double kLon[] = {-82.22, -82.20, -82.20};
    return {Degrees{kLat[place % 3]}, Degrees{kLon[place % 3]}};
  }
  WalkTree walked(const Stand& where, const char* tag, int fia) {
    WalkTree tree{next<WalkTreeTag>(), where.id, tag, TreeFacts{SpeciesCode{fia}, dbh_in(9.3)}};
    tree.facts.note = "Qwalknoteqq";
    tree.facts.crown_class = CrownClass::intermediate;
    tree.position = Position{Degrees{39.353}, Degrees{-82.204}};
    tree.slope = Percent{5.0};
    return tree;
  }
  Mark mark(const WalkTree& tree, Verdict verdict, Method method, std::optional<Reader> goes_to) {
    Mark made{.id = next<MarkTag>(), .tree = tree.id, .verdict = verdict, .method = method};
    if (verdict == Verdict::take) made.product = Product::firewood;
    made.destination = goes_to;
    made.reason = "Qreasonqr";
    made.by_hand = true;
    return made;
  }
  void fill() {
    Tract told{"Qtractqa",   "OH",       "Qcountyqb", "Qcontactqc", "Qdirectqd",
               "Qmeetingqe", "Qphoneqf", at(0),       true};
    const Stand work = stand("Qworkqg");
    const Stand other = stand("Qotherqh");
    changes_ = {told, work, other,
                MapLine{next<MapLineTag>(), LineKind::stream, "Qlineqi", false, {at(0), at(2)}}};
    fill_walk(work, other);
    fill_cruise(work);
  }
  void fill_walk(const Stand& work, const Stand& other) {
    const WalkTree cut = walked(work, "QR1", 316);
    const WalkTree wood = walked(work, "QF4", 316);
    const WalkTree killed = walked(work, "QS5", 316);
    WalkTree kept = walked(work, "QK2", 802);
    kept.crop = true;
    const WalkTree far = walked(other, "QX3", 802);
    Mark by_rule = mark(kept, Verdict::keep, Method::none, {});
    by_rule.by_hand = false;
    by_rule.reason = "A crop tree.";
    by_rule.rule_version = "Qversionqs";
    for (const WalkTree& tree : {cut, wood, killed, kept, far}) changes_.emplace_back(tree);
    changes_.emplace_back(mark(cut, Verdict::take, Method::fell, Reader::logger));
    changes_.emplace_back(mark(wood, Verdict::take, Method::fell, Reader::firewood));
    changes_.emplace_back(mark(killed, Verdict::kill_standing, Method::girdle, {}));
    changes_.emplace_back(by_rule);
    changes_.emplace_back(mark(far, Verdict::keep, Method::none, {}));
    Stump stump{.id = next<StumpTag>(), .tree = cut.id, .note = "Qstumpqt"};
    changes_.emplace_back(stump);
    changes_.emplace_back(
        AcornCount{next<AcornCountTag>(), kept.id, 2025, "", TimedCount{30}, "Qacornqu"});
    changes_.emplace_back(
        AcornYear{next<AcornYearTag>(), OakGroup::white, 2025, AcornCrop::good, "Qsourceqv"});
  }
  void fill_cruise(const Stand& work) {
    const Cruise cruise{next<CruiseTag>(), "Qcruiseqj", PointDesign{}, {}, {},
                        "Qcrewqk",         "2026-05-04"};
    changes_.emplace_back(cruise);
    for (const bool skipped : {false, true}) {
      const Plot plot{next<PlotTag>(),
                      work.id,
                      cruise.id,
                      skipped ? "9" : "Qplotql",
                      skipped ? PlotStatus::skipped : PlotStatus::measured,
                      skipped ? "Qskipqm" : "",
                      at(1),
                      {},
                      {},
                      "Qplotnoteqn"};
      changes_.emplace_back(plot);
      if (skipped) continue;
      Tree tree{next<TreeTag>(), plot.id, TreeFacts{SpeciesCode{802}, dbh_in(14.0)}};
      tree.facts.note = "Qtreenoteqo";
      tree.tag = "Qtreetagqp";
      changes_.emplace_back(tree);
    }
  }

  SystemClock clock_;
  IdSource* ids_ = nullptr;
  std::vector<Change> changes_;
};

/// All that one reader's packet says, in whatever file.
std::string words_of(const TractOfCanaries& tract, const std::string& reader) {
  const auto folder = tract.folder / ("for_" + reader);
  const Ran made = oaklight("packet " + tract.tract + " --for " + reader + " --out " +
                            folder.string() + " --work-day 2026-12-07");
  EXPECT_EQ(made.exit_code, 0) << made.errors;
  const Ran read =
      run_program("/usr/bin/python3 -B " + source_path("tests/command/packet_words.py") + " " +
                  folder.string());
  EXPECT_EQ(read.exit_code, 0) << read.errors;
  return read.out;
}

/// The machine's name; a path where it is so short that it stands in any text.
std::string host_name() {
  std::array<char, 256> name{};
  ::gethostname(name.data(), name.size() - 1);
  const std::string whole = name.data();
  return whole.size() < 6 ? source_path("") : whole;
}

TEST(Privacy, EachReaderFindsWhatHeNeedsAndNothingElse) {
  const TractOfCanaries tract;
  for (const std::string reader : kReaders) {
    const std::string words = words_of(tract, reader);
    for (const Canary& canary : kCanaries) {
      const bool found = words.find(canary.word) != std::string::npos;
      EXPECT_EQ(found, may_find(canary, reader))
          << reader << (found ? " finds " : " does not find ") << canary.field << ": "
          << canary.why;
    }
    for (const std::string& uid : tract.uids) {
      std::string bare = uid;
      std::erase(bare, '-');
      EXPECT_EQ(words.find(uid), std::string::npos) << reader << " finds the id of a record";
      EXPECT_EQ(words.find(bare), std::string::npos) << reader << " finds the id of a record";
    }
    // Where and on what machine it was made.
    for (const std::string& place : {tract.folder.path().string(), std::string("Qfileqfile"),
                                     source_path(""), build_path(""), host_name()}) {
      EXPECT_EQ(words.find(place), std::string::npos) << reader << " finds " << place;
    }
  }
}

TEST(Privacy, TheTractFileItselfTellsNoFolderOfTheMachine) {
  const DemoTract demo;
  const Ran read = run_program("sqlite3 " + demo.tract + " .dump");
  ASSERT_EQ(read.exit_code, 0) << read.errors;
  EXPECT_NE(read.out.find("import tract.csv"), std::string::npos) << "the history is in it";
  EXPECT_EQ(read.out.find(demo_plots().string()), std::string::npos);
}

TEST(Privacy, EveryTextOfTheSchemaHasItsCanary) {
  // A column of text that comes later has to be thought of here.
  const std::set<std::string> ours = {"form_file.path", "form_file.version", "change.table_name"};
  std::string fields;
  for (const Canary& canary : kCanaries) fields += std::string(canary.field) + "\n";
  const std::string dictionary = bytes_of(source_path("schema/README.md"));
  const std::regex row("\\| `([a-z_]+\\.[a-z_]+)` \\| text \\|");
  int columns = 0;
  for (auto it = std::sregex_iterator(dictionary.begin(), dictionary.end(), row);
       it != std::sregex_iterator(); ++it) {
    ++columns;
    const std::string name = (*it)[1];
    EXPECT_TRUE(ours.contains(name) || fields.find(name) != std::string::npos)
        << name << " has no canary";
  }
  EXPECT_GT(columns, 20);
}

}  // namespace
}  // namespace oaklight::test
