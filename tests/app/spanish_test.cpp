// The app in Spanish, complete enough to tally with.
#include <QMetaEnum>
#include <QRegularExpression>

#include "mobile/viewmodels/words.hpp"
#include "tests/app/app_fixture.hpp"

namespace oaklight::test {
namespace {

class Spanish : public App {
 protected:
  void begin(const Screen& screen) {
    start(screen);
    app_settings().setLanguage(QStringLiteral("es"));
    show(AppModel::Page::Tally);
    workspace().plot().set(desk().data().plots.front().id);
    settle();
  }
  QStringList names_shown() {
    QStringList names;
    for (const Control& control : controls_of(window())) names << control.name;
    return names;
  }
  const std::vector<Choice>& choices(const char* list) {
    return desk().knowledge().form.find_choices(list)->choices;
  }
};

/// What a text in another language must not equal: a translator passed over looks just like it.
/// Words that both languages write alike are in no list of these tests.
testing::AssertionResult differs(const std::string& english) {
  if (form_words(english).toStdString() != english) return testing::AssertionSuccess();
  return testing::AssertionFailure() << "no Spanish for " << english;
}

TEST_F(Spanish, TheTallyShowsNoControlInEnglish) {
  // Names that the tally's controls have in English, taken from its pages.
  const QStringList english = {"Keypad",       "Same again", "More",
                               "Border tree",  "Seedlings",  "Next plot",
                               "Other",        "Undo",       "Redo",
                               "Hold to lock", "Pages",      "Other species: search all",
                               "Tract",        "Walk",       "Tally",
                               "Stand",        "Light",      "Marks",
                               "Setup",        "Species",    "Back to the species"};
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    start(screen);
    show(AppModel::Page::Tally);
    workspace().plot().set(desk().data().plots.front().id);
    settle();
    // In English the list is met, so that its absence in Spanish says something.
    const QStringList before = names_shown();
    int met = 0;
    for (const QString& name : before) met += english.contains(name) ? 1 : 0;
    EXPECT_GE(met, 5) << before.join(", ").toStdString();

    app_settings().setLanguage(QStringLiteral("es"));
    settle();
    const QStringList after = names_shown();
    EXPECT_EQ(after.size(), before.size());
    EXPECT_NE(find(QStringLiteral("Teclado")), nullptr) << after.join(", ").toStdString();
    for (const QString& name : after) {
      EXPECT_FALSE(english.contains(name)) << name.toStdString();
    }
    // Whatever has letters was translated: nothing is named as it was before, but the tract's own
    // names and figures.
    const QRegularExpression words(QStringLiteral("^[A-Za-z][a-z]+( [a-z]+)*$"));
    for (const QString& name : after) {
      EXPECT_FALSE(before.contains(name) && words.match(name).hasMatch()) << name.toStdString();
    }
    app_settings().setLanguage(QStringLiteral("en"));
    stop();
  }
}

TEST_F(Spanish, EveryChoiceOfTheTallyHasItsLabel) {
  begin(kTablet);
  // "Dominante" and the like differ by a letter at least; no label is the same in both languages.
  for (const ChoiceList& list : desk().knowledge().form.choices) {
    for (const Choice& choice : list.choices) {
      EXPECT_TRUE(differs(choice.label)) << list.name;
      EXPECT_TRUE(choice.help.empty() || differs(choice.help)) << choice.help;
      EXPECT_TRUE(choice.group.empty() || differs(choice.group)) << choice.group;
    }
  }
  EXPECT_EQ(form_words(choices("crown_class").front().label), QStringLiteral("Aislado"));
}

TEST_F(Spanish, EverySpeciesHasItsName) {
  begin(kTablet);
  const TractKnowledge& known = desk().knowledge();
  ASSERT_FALSE(known.sets.empty());
  for (const TallySet& set : known.sets) {
    EXPECT_TRUE(differs(set.name));
    for (const SpeciesCode code : set.species) {
      const Species* species = known.species().find(code);
      ASSERT_NE(species, nullptr);
      EXPECT_NE(::name_of(*species).toStdString(), species->common_name);
    }
  }
}

TEST_F(Spanish, EveryPageLoads) {
  begin(kTablet);
  const auto pages = QMetaEnum::fromType<AppModel::Page>();
  for (int i = 0; i < pages.keyCount(); ++i) {
    show(static_cast<AppModel::Page>(pages.value(i)));
    picture(QStringLiteral("%1_tablet_es").arg(QString::fromLatin1(pages.key(i)).toLower()));
  }
  EXPECT_TRUE(warnings().isEmpty()) << warnings().join("\n").toStdString();
  stop();
  begin(kPhone);
  picture(QStringLiteral("tally_phone_es"));
}

}  // namespace
}  // namespace oaklight::test
