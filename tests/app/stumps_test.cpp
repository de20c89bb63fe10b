// After the cut: the walk with the list, by touch.
#include <algorithm>

#include "core/session/decide.hpp"
#include "core/session/stump_view.hpp"
#include "core/session/stump_work.hpp"
#include "tests/app/app_fixture.hpp"

namespace oaklight::test {
namespace {

class StumpsPage : public App {
 protected:
  /// The demo tract with every tree decided, on the page.
  void begin(const Screen& screen) {
    start(screen);
    TractDesk& tract = desk();
    if (tract.data().marks.empty()) {
      EXPECT_TRUE(model().pageNames()[kPage].isEmpty()) << "no stumps before anything is marked";
    }
    tract.submit([&tract]() -> Result<Action> {
      const auto plans = plan_stands(tract.data(), tract.knowledge(), tract.ids());
      if (!plans) return plans.error();
      return marks_action(tract.data(), *plans);
    });
    settle();
    EXPECT_EQ(model().pageNames()[kPage], QStringLiteral("Stumps"));
    show(AppModel::Page::Stumps);
    ready();
  }
  StumpsViewModel& stumps() { return *workspace().marks()->stumps(); }
  void ready() {
    settle();
    ASSERT_TRUE(waitFor([this] { return !stumps().busy() && !desk().busy(); }));
    settle();
  }
  /// Moves what scrolls until the control is in sight.
  void scrollTo(const QString& name) {
    QQuickItem* control = find(name);
    ASSERT_NE(control, nullptr) << name.toStdString();
    for (QQuickItem* above = control->parentItem(); above != nullptr; above = above->parentItem()) {
      if (!above->inherits("QQuickFlickable")) continue;
      auto* content = above->property("contentItem").value<QQuickItem*>();
      const double most = above->property("contentHeight").toDouble() - above->height();
      const double top = control->mapToItem(content, QPointF()).y();
      above->setProperty("contentY", std::clamp(top - 10.0, 0.0, std::max(0.0, most)));
    }
    settle();
  }
  [[nodiscard]] const std::vector<Stump>& noted() { return desk().data().stumps; }
  static constexpr int kPage = static_cast<int>(AppModel::Page::Stumps);
};

TEST_F(StumpsPage, NotesATreeWithOneTapAndGoesOnToTheNext) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    const std::size_t before = noted().size();  // the tract is that of the screen before
    const auto first = stumps().inHand();
    ASSERT_TRUE(first.has_value());
    tap(QStringLiteral("Found as marked"));
    ready();
    ASSERT_EQ(noted().size(), before + 1);
    EXPECT_EQ(noted().back().tree, first);
    EXPECT_EQ(noted().back().finding, Finding::as_marked);
    EXPECT_NE(stumps().inHand(), first);
    EXPECT_TRUE(stumps().said().contains(QStringLiteral("Found as marked")));
    tap(QStringLiteral("Still standing"));
    ready();
    EXPECT_EQ(noted().back().finding, Finding::standing);
    tap(QStringLiteral("Hung up"));
    ready();
    ASSERT_EQ(noted().size(), before + 3);
    EXPECT_EQ(noted().back().finding, Finding::hung);
    EXPECT_TRUE(stumps().progress().startsWith(QStringLiteral("%1 of ").arg(before + 3)))
        << stumps().progress().toStdString();
    tap(QStringLiteral("Undo"));
    ready();
    EXPECT_EQ(noted().size(), before + 2);
    EXPECT_TRUE(warnings().isEmpty()) << warnings().join("\n").toStdString();
    stop();
  }
}

TEST_F(StumpsPage, ATurnedScreenOutlivesAChangeOfTheNamesInAClosedSheet) {
  begin(kPhone);  // the page of stumps has come up in the sheet of pages, which is closed
  for (const QSize size : {kTabletUpright.size, kTablet.size, kPhone.size}) {
    window().resize(size);
    settle();
  }
  app_settings().setGloves(!app_settings().gloves());
  settle();
  EXPECT_TRUE(warnings().isEmpty()) << warnings().join("\n").toStdString();
}

TEST_F(StumpsPage, NotesATreeThatWasToBeLeftWithItsWound) {
  begin(kTabletUpright);
  tap(QStringLiteral("Trees to be left"));
  settle();
  EXPECT_EQ(find(QStringLiteral("Found as marked")), nullptr)
      << "a tree that was to be left is not found as marked";
  ASSERT_NE(stumps().trees()->at(0), nullptr);
  EXPECT_FALSE(stumps().trees()->at(0)->listed);
  stumps().choose(0);
  settle();
  tap(QStringLiteral("Hurt tree"));
  ready();
  ASSERT_EQ(noted().size(), 1U);
  EXPECT_EQ(noted()[0].finding, Finding::hurt);
  EXPECT_EQ(noted()[0].wound, std::nullopt);
  tap(QStringLiteral("Large"));
  ready();
  ASSERT_EQ(noted().size(), 1U);
  EXPECT_EQ(noted()[0].wound, Wound::large);
  tap(QStringLiteral("Back to the list"));
  settle();
  EXPECT_NE(find(QStringLiteral("Found as marked")), nullptr);
}

TEST_F(StumpsPage, TakesAStumpWithoutATagByItsDiameter) {
  begin(kTabletUpright);
  tap(QStringLiteral("Stump without a tag"));
  ASSERT_TRUE(waitFor([this] { return find(QStringLiteral("1")) != nullptr; }));
  for (const char* key : {"1", "7", "2"}) tap(QString::fromLatin1(key));
  tap(QStringLiteral("Record"));
  ready();
  ASSERT_EQ(noted().size(), 1U);
  EXPECT_EQ(noted()[0].tree, std::nullopt);
  EXPECT_EQ(noted()[0].finding, Finding::not_marked);
  ASSERT_TRUE(noted()[0].over_bark.has_value());
  EXPECT_EQ(noted()[0].over_bark->tenths(), 172);
}

TEST_F(StumpsPage, ReportsShareDamageWorthAndAuditAndWritesThem) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    StumpReportViewModel& report = *workspace().marks()->stumpReport();
    const auto made = [&] {
      settle();
      EXPECT_TRUE(waitFor([&] { return !report.busy() && report.pages() > 0; }));
      settle();
    };
    tap(QStringLiteral("Found as marked"));
    ready();
    StumpDraft loose{.finding = Finding::not_marked, .seen_on = "2027-02-20"};
    loose.species = SpeciesCode{316};
    loose.over_bark = *StumpDiameter::from_tenths(172, UnitSystem::us);
    TractDesk& tract = desk();
    tract.submit(
        [&tract, loose] { return add_stump(tract.live(), tract.knowledge(), tract.ids(), loose); });
    ready();
    scrollTo(QStringLiteral("Report"));
    tap(QStringLiteral("Report"));
    made();
    EXPECT_TRUE(report.summary().startsWith(QStringLiteral("100.0 % of those looked at")))
        << report.summary().toStdString();
    EXPECT_TRUE(report.summary().contains(QStringLiteral("or as firewood")));
    EXPECT_FALSE(report.summary().contains(QStringLiteral("audit")));
    scrollTo(QStringLiteral("At most 10 % wrong"));
    tap(QStringLiteral("At most 10 % wrong"));
    made();
    const StumpView view = stump_view(desk().data(), desk().knowledge(), {}, {}).value();
    const AuditPlan plan = audit_plan(static_cast<int>(view.check.listed.size()), 0, Percent{10.0},
                                      *Confidence::from_share(0.95))
                               .value();
    EXPECT_TRUE(
        report.summary().contains(QStringLiteral("audit: look at %1 trees").arg(plan.sample)))
        << report.summary().toStdString();
    picture(QStringLiteral("stumps_report_%1").arg(QLatin1String(screen.name)));
    tap(QStringLiteral("Next page"));
    settle();
    EXPECT_EQ(report.page(), 1);
    tap(QStringLiteral("Write the report"));
    made();
    EXPECT_TRUE(std::filesystem::exists(report.folder() / "stumps.pdf"))
        << report.notice().toStdString();
    const Ran text =
        run_program("pdftotext -layout " + (report.folder() / "stumps.pdf").string() + " -");
    for (const char* words :
         {"Audit by sample", "hypergeometric", "agreed limit", "bd ft", "cord"}) {
      EXPECT_NE(text.out.find(words), std::string::npos) << words;
    }
    EXPECT_NE(bytes_of(report.folder() / "stumps.csv").find("cut_not_marked"), std::string::npos);
    tap(QStringLiteral("Back"));
    settle();
    EXPECT_NE(find(QStringLiteral("Found as marked")), nullptr);
    EXPECT_TRUE(warnings().isEmpty()) << warnings().join("\n").toStdString();
    stop();
  }
}

TEST_F(StumpsPage, WarnsOfAFreshCutBeforeAllElse) {
  begin(kPhone);
  EXPECT_TRUE(stumps().before().front().contains(QStringLiteral("broken limbs")));
  const StumpView view = stump_view(desk().data(), desk().knowledge(),
                                    {.today = Day{std::chrono::February / 20 / 2027}}, {})
                             .value();
  const auto stopped = std::ranges::find_if(view.check.listed, [](const ListedTree& tree) {
    return !tree.cautions.empty() && tree.cautions.front().severity == Severity::stop;
  });
  ASSERT_NE(stopped, view.check.listed.end());
  for (int row = 0; stumps().trees()->at(row) != nullptr; ++row) {
    if (stumps().trees()->at(row)->id == stopped->tree) stumps().choose(row);
  }
  EXPECT_TRUE(stumps().cautions().front().startsWith(QStringLiteral("STOP. ")));
}

TEST_F(StumpsPage, HasItsPicturesWithMarks) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    begin(screen);
    tap(QStringLiteral("Found as marked"));
    ready();
    for (const bool gloves : {true, false}) {
      app_settings().setGloves(gloves);
      settle();
      for (const auto light : {Settings::Light::Day, Settings::Light::Night}) {
        app_settings().setLight(light);
        settle();
        const QImage image =
            picture(QStringLiteral("stumps_marked_%1_%2_%3")
                        .arg(QLatin1String(screen.name), gloves ? "gloves" : "bare",
                             light == Settings::Light::Day ? "day" : "night"));
        EXPECT_EQ(image.size(), screen.size);
      }
      // T1: what is pressed at the tree.
      for (const char* name : {"Found as marked", "Still standing", "Hung up"}) {
        QQuickItem* button = find(QString::fromLatin1(name));
        ASSERT_NE(button, nullptr) << name;
        EXPECT_GE(button->height() / screen.pixels_per_mm, (gloves ? 20.0 : 15.0) - 0.1) << name;
        EXPECT_TRUE(QRect(QPoint(), screen.size).contains(middleOf(button))) << name;
      }
      const QRectF glass = QRectF(QPointF(), screen.size).adjusted(-1, -1, 1, 1);
      for (const Control& control : controls_of(window())) {
        bool scrolls = false;
        for (const QQuickItem* parent = control.item; parent != nullptr;
             parent = parent->parentItem()) {
          scrolls = scrolls || parent->inherits("QQuickFlickable");
        }
        if (scrolls) continue;
        EXPECT_TRUE(glass.contains(control.box)) << control.name.toStdString();
      }
    }
    app_settings().setLight(Settings::Light::Day);
    stop();
  }
}

}  // namespace
}  // namespace oaklight::test
