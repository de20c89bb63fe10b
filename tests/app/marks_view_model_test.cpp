#include <algorithm>
#include <fstream>

#include "core/session/card_work.hpp"
#include "core/session/decide.hpp"
#include "core/session/marks_view.hpp"
#include "tests/app/demo_workspace.hpp"

namespace oaklight::test {
namespace {

class MarksPageModel : public DemoWorkspace {
 protected:
  MarksPageModel() {
    marks().setShown(true);
    packet().setOpen(true);
    wait();
  }
  PacketViewModel& packet() { return *marks().packet(); }
  void wait() {
    settle([this] { return marks().busy() || packet().busy(); });
  }
  void decideAll() {
    packet().decideAll();
    wait();
  }
  [[nodiscard]] MarksView view() {
    return marks_view(desk().data(), desk().knowledge(), std::nullopt, std::nullopt).value();
  }
  [[nodiscard]] int rows_of(Verdict verdict) {
    const auto& all = desk().data().marks;
    return static_cast<int>(std::ranges::count(all, verdict, &Mark::verdict));
  }
  /// All text of the page that shows.
  [[nodiscard]] QString pageText() {
    const Drawing drawn = packet().picture().draw({QSizeF(612.0, 792.0)});
    QString text;
    for (const DrawingItem& item : drawn.items()) {
      if (const auto* words = std::get_if<TextItem>(&item)) text += words->text + QLatin1Char(' ');
    }
    return text;
  }
};

TEST_F(MarksPageModel, BeforeAnythingIsDecidedThePacketIsRefusedWithWhatToDo) {
  EXPECT_EQ(packet().pages(), 0);
  EXPECT_TRUE(packet().problem().contains(QStringLiteral("Nothing is decided")));
  EXPECT_TRUE(packet().canDecide());
  packet().make();
  wait();
  EXPECT_FALSE(std::filesystem::exists(packet().folder()));
}

TEST_F(MarksPageModel, DecidingAllStandsGivesThePages) {
  decideAll();
  EXPECT_EQ(packet().problem(), QString());
  EXPECT_GT(packet().pages(), 1);
  EXPECT_EQ(desk().data().marks.size(), desk().data().walk_trees.size());
}

TEST_F(MarksPageModel, FiltersByVerdictByReaderAndByTag) {
  decideAll();
  const int all = static_cast<int>(desk().data().walk_trees.size());
  ASSERT_EQ(marks().marks()->count(), all);
  marks().chooseVerdict(1);
  EXPECT_EQ(marks().marks()->count(), rows_of(Verdict::take));
  marks().chooseReader(2);
  const auto& stored = desk().data().marks;
  EXPECT_EQ(marks().marks()->count(), std::ranges::count_if(stored, [](const Mark& mark) {
              return mark.verdict == Verdict::take && mark.destination == Reader::firewood;
            }));
  marks().chooseVerdict(0);
  marks().chooseReader(0);
  const std::string tag = desk().data().walk_trees.front().tag;
  marks().setTag(QString::fromStdString(tag));
  EXPECT_GE(marks().marks()->count(), 1);
  for (int row = 0; row < marks().marks()->count(); ++row)
    EXPECT_NE(marks().marks()->at(row)->tag.find(tag), std::string::npos);
  EXPECT_LT(marks().marks()->count(), all);
}

TEST_F(MarksPageModel, UndecidedTreesAreCountedAndFound) {
  marks().chooseVerdict(5);
  EXPECT_EQ(marks().marks()->count(), static_cast<int>(desk().data().walk_trees.size()));
  decideAll();
  EXPECT_EQ(marks().marks()->count(), 0);
}

TEST_F(MarksPageModel, CautionsOfATreeComeFirstAndStopsBeforeTheOthers) {
  decideAll();
  const MarksView listed = view();
  const auto found = std::ranges::find_if(listed.rows, [](const MarkRow& row) {
    return !row.cautions.empty() && row.cautions.front().severity == Severity::stop;
  });
  ASSERT_NE(found, listed.rows.end());
  marks().openTree(static_cast<int>(found - listed.rows.begin()));
  EXPECT_TRUE(marks().tree()->title().startsWith(QString::fromStdString(found->tag)));
  ASSERT_EQ(marks().tree()->cautions().size(), static_cast<qsizetype>(found->cautions.size()));
  EXPECT_TRUE(marks().tree()->cautions().front().startsWith(QStringLiteral("STOP. ")));
}

TEST_F(MarksPageModel, ThePagesBeginWithWhatToTellAnAmbulance) {
  decideAll();
  const auto packed =
      packet_for(desk().data(), desk().knowledge(), PacketReader::logger, packet().options());
  ASSERT_TRUE(packed);
  ASSERT_FALSE(packed->emergency.empty());
  const QString first = pageText();
  EXPECT_TRUE(first.contains(QString::fromStdString(packed->emergency.front().label)));
  packet().turn(1);
  EXPECT_EQ(packet().page(), 1);
  EXPECT_NE(pageText(), first);
  packet().turn(-1);
  packet().turn(-1);
  EXPECT_EQ(packet().page(), 0);
}

TEST_F(MarksPageModel, WritesTheFilesBesideTheTractAndSaysWhere) {
  decideAll();
  const auto packed =
      packet_for(desk().data(), desk().knowledge(), PacketReader::logger, packet().options());
  ASSERT_TRUE(packed);
  const std::filesystem::path folder = packet().folder();
  packet().make();
  wait();
  EXPECT_EQ(folder.parent_path(), desk().path().parent_path());
  EXPECT_EQ(bytes_of(folder / "logger.csv"), packed->list_csv);
  EXPECT_EQ(bytes_of(folder / "logger.pdf").substr(0, 5), "%PDF-");
  EXPECT_TRUE(std::filesystem::exists(folder / "logger.manifest.json"));
  EXPECT_TRUE(packet().notice().contains(QString::fromStdString(folder.string())));
}

TEST_F(MarksPageModel, F3_APacketThatWasMadeIsNeverWrittenOver) {
  decideAll();
  const std::filesystem::path first = packet().folder();
  packet().make();
  wait();
  const std::string handed_over = bytes_of(first / "logger.manifest.json");
  const auto taken = std::ranges::find(desk().data().marks, Verdict::take, &Mark::verdict);
  ASSERT_NE(taken, desk().data().marks.end());
  desk().submit([this, id = taken->tree] {
    return overrule(desk().live(), desk().knowledge(), desk().ids(), id, Verdict::keep, "a den");
  });
  wait();
  decideAll();
  const std::filesystem::path second = packet().folder();
  EXPECT_NE(second, first);
  packet().make();
  wait();
  EXPECT_EQ(bytes_of(first / "logger.manifest.json"), handed_over);
  EXPECT_NE(bytes_of(second / "logger.manifest.json"), handed_over);
}

TEST_F(MarksPageModel, AFolderThatCannotBeMadeIsToldInWords) {
  decideAll();
  std::ofstream(packet().folder()) << "a file is in the way";
  packet().make();
  wait();
  EXPECT_TRUE(packet().notice().contains(QStringLiteral("folder cannot be made")))
      << packet().notice().toStdString();
}

TEST_F(MarksPageModel, MarksThatNoLongerFitTheRecordsAreRefusedByTag) {
  decideAll();
  const auto taken = std::ranges::find(desk().data().marks, Verdict::take, &Mark::verdict);
  ASSERT_NE(taken, desk().data().marks.end());
  const WalkTree* tree = desk().live().find(taken->tree);
  ASSERT_NE(tree, nullptr);
  const std::string tag = tree->tag;
  WalkTreeDraft draft = draft_of(*tree);
  draft.facts.conditions.add(Condition::den);  // a den tree is kept
  desk().submit([this, id = tree->id, draft] {
    return correct_walk_tree(desk().live(), desk().knowledge(), id, draft);
  });
  wait();
  EXPECT_EQ(packet().pages(), 0);
  EXPECT_TRUE(packet().problem().contains(QString::fromStdString(tag)))
      << packet().problem().toStdString();
  EXPECT_TRUE(packet().canDecide());
  decideAll();
  EXPECT_EQ(packet().problem(), QString());
}

TEST_F(MarksPageModel, TotalsAreThoseOfThePackets) {
  decideAll();
  ASSERT_EQ(marks().totals().size(), 2);
  const auto packed =
      packet_for(desk().data(), desk().knowledge(), PacketReader::logger, packet().options());
  ASSERT_TRUE(packed);
  EXPECT_EQ(marks().totals().front(), totals_words(*packed));
}

TEST_F(MarksPageModel, AHundredThousandMarksAreRowsWhoseWordsAreMadeWhenSeen) {
  auto many = std::make_shared<MarksView>(view());
  ASSERT_FALSE(many->rows.empty());
  const MarkRow one = many->rows.front();
  many->rows.assign(100'000, one);
  MarkListModel model(desk().knowledge());
  model.set(many, {});
  EXPECT_EQ(model.rowCount(), 100'000);
  EXPECT_EQ(model.data(model.index(99'999), MarkListModel::TagRole).toString().toStdString(),
            one.tag);
  model.set(many, {.tag = "no such tag"});
  EXPECT_EQ(model.rowCount(), 0);
}

}  // namespace
}  // namespace oaklight::test
