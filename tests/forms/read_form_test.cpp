#include "core/forms/read_form.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "core/forms/kept_fields.hpp"
#include "core/model/plot_task.hpp"
#include "tests/forms/cruise_files.hpp"

namespace oaklight {
namespace {

using test::form_file;
using test::tally_form;

std::string form_text() { return form_file("tally.form.json").text; }

/// The words of a choice list of the form, each once.
std::set<std::string> form_words(const char* list) {
  std::set<std::string> words;
  const ChoiceList* choices = tally_form().find_choices(list);
  if (!choices) return words;
  for (const Choice& choice : choices->choices) words.insert(choice.word);
  return words;
}

template <class E>
std::set<std::string> enum_words() {
  std::set<std::string> words;
  for (const auto& entry : kWords<E>) words.emplace(entry.word);
  return words;
}

TEST(TallyForm, ChoicesAreTheWordsOfTheModelAndNoOthers) {
  EXPECT_EQ(form_words("goal"), enum_words<Goal>());
  EXPECT_EQ(form_words("plot_status"), enum_words<PlotStatus>());
  EXPECT_EQ(form_words("plot_task"), enum_words<PlotTask>());
  EXPECT_EQ(form_words("tree_status"), enum_words<TreeStatus>());
  EXPECT_EQ(form_words("crown_class"), enum_words<CrownClass>());
  EXPECT_EQ(form_words("regen_height"), enum_words<RegenHeight>());
  EXPECT_EQ(form_words("role"), enum_words<CardRole>());
  EXPECT_EQ(form_words("side"), enum_words<Side>());
  EXPECT_EQ(form_words("seen"), enum_words<Seen>());
  EXPECT_EQ(form_words("condition"), enum_words<Condition>());
  // Every oak of a known group bears; `none` is no choice here.
  EXPECT_EQ(form_words("oak_group"), (std::set<std::string>{"white", "red"}));
  EXPECT_EQ(form_words("acorn_crop"), enum_words<AcornCrop>());
  EXPECT_EQ(form_words("finding"), enum_words<Finding>());
  EXPECT_EQ(form_words("wound"), enum_words<Wound>());
  EXPECT_EQ(form_words("wound_place"), enum_words<WoundPlace>());
  EXPECT_EQ(tally_form().choices.size(), 15U) << "a list that this test does not know";
}

TEST(TallyForm, HasEveryFieldThatTheProgramKeeps) {
  std::size_t fields = 0;
  for (const RecordForm& record : tally_form().records) fields += record.fields.size();
  EXPECT_EQ(fields, kept_fields().size());
  for (const KeptField& kept : kept_fields()) {
    const RecordForm* record = tally_form().find_record(kept.record);
    ASSERT_NE(record, nullptr) << kept.record;
    EXPECT_NE(record->find(kept.field), nullptr) << kept.record << "." << kept.field;
  }
}

TEST(TallyForm, SaysWhatAPersonNeedsToKnow) {
  for (const RecordForm& record : tally_form().records) {
    for (const Field& field : record.fields) {
      const std::string name = record.name + "." + field.name;
      EXPECT_LE(field.short_label.size(), 12U) << name << ": a narrow column on paper";
      EXPECT_LE(field.help.size(), 100U) << name << ": one line";
      EXPECT_EQ(field.help.find('\n'), std::string::npos) << name;
      EXPECT_FALSE(field.help.ends_with('.')) << name << ": the program adds the full stop";
      EXPECT_EQ(field.has_system(), field.unit.us != field.unit.metric) << name;
      const bool number = field.kind != FieldKind::text && field.kind != FieldKind::choice &&
                          field.kind != FieldKind::choices && field.kind != FieldKind::species &&
                          field.kind != FieldKind::date && field.kind != FieldKind::yes_no;
      EXPECT_EQ(number, field.range.us.has_value()) << name << ": numbers have a range";
      EXPECT_EQ(number, field.range.metric.has_value()) << name;
      EXPECT_EQ(field.kind == FieldKind::text, field.max_length > 0) << name;
    }
    std::set<std::string> labels;
    for (const Field& field : record.fields) labels.insert(field.short_label);
    EXPECT_EQ(labels.size(), record.fields.size()) << record.name << ": one heading twice";
  }
}

TEST(TallyForm, RangesOfTheTwoSystemsAreAlike) {
  const auto in_us = [](const Field& field, double metric) {
    switch (field.kind) {
      case FieldKind::diameter:
        return metric / 2.54;
      case FieldKind::length:
        return metric / 0.3048;
      case FieldKind::area:
        return metric * 2.4710538;  // ac/ha: 10,000 m2 over 4,046.856 m2, derived
      case FieldKind::basal_area_factor:
        return metric * 4.3560;  // ft2/ac over m2/ha: derived, see PointDesign
      default:
        return metric;
    }
  };
  for (const RecordForm& record : tally_form().records) {
    for (const Field& field : record.fields) {
      if (!field.has_system() || field.name == "dbh") continue;
      // Round figures in both systems, so they only come near each other.
      const double top = in_us(field, field.range.metric->most) / field.range.us->most;
      EXPECT_GT(top, 0.75) << record.name << "." << field.name;
      EXPECT_LT(top, 1.35) << record.name << "." << field.name;
    }
  }
}

struct FormCase {
  const char* label;
  const char* from;
  const char* to;
  const char* where;
};

class FormFault : public testing::TestWithParam<FormCase> {};

TEST_P(FormFault, IsRefusedWithItsPlace) {
  std::string text = form_text();
  test::replace_once(text, GetParam().from, GetParam().to);
  const auto form = read_form(text, "f.json");
  ASSERT_FALSE(form);
  EXPECT_EQ(form.error().code, ErrorCode::bad_json);
  EXPECT_EQ(form.error().where, GetParam().where) << form.error().what;
  EXPECT_FALSE(form.error().fix.empty());
}

const FormCase kFormCases[] = {
    {"BrokenJson", "\"form\": \"tally\",", "\"form\": \"tally\"", "f.json:3"},
    {"MissingMember", "  \"version\": \"1\",\n", "", "f.json:"},
    {"UnknownMember", "\"version\": \"1\",", "\"version\": \"1\", \"colour\": \"red\",", "f.json:"},
    {"NotText", "\"version\": \"1\"", "\"version\": 1", "f.json:/version"},
    {"EmptyText", "\"version\": \"1\"", "\"version\": \"\"", "f.json:/version"},
    {"UnknownKind", "\"name\": \"county\", \"kind\": \"text\"",
     "\"name\": \"county\", \"kind\": \"words\"", "f.json:/records/0/fields/2/kind"},
    {"KindThatIsNotKept", "\"name\": \"county\", \"kind\": \"text\"",
     "\"name\": \"county\", \"kind\": \"date\"", "f.json:/records/0/fields/2"},
    {"FieldThatIsNotKept", "\"name\": \"county\", ", "\"name\": \"parish\", ",
     "f.json:/records/0/fields/2"},
    {"FieldTwice", "\"name\": \"county\", ", "\"name\": \"state\", ", "f.json:/records/0/fields/2"},
    {"ColumnOfAnother", "\"name\": \"county\", ", "\"name\": \"county\", \"columns\": \"state\", ",
     "f.json:/records/0/fields/2"},
    {"WordThatTheModelLacks", "{\"word\": \"look\", ", "{\"word\": \"beauty\", ",
     "f.json:/choices/goal/2/word"},
    {"WordTwice", "{\"word\": \"look\", ", "{\"word\": \"mast\", ", "f.json:/choices/goal/2/word"},
    {"UnknownList", "\"goal\": [", "\"aim\": [", "f.json:/choices/aim"},
    {"DefaultThatIsNoChoice", "\"default\": \"mast\"", "\"default\": \"oak\"",
     "f.json:/records/1/fields/3"},
    {"DependsOnNothing", "\"required\": {\"field\": \"landing_lon\"}",
     "\"required\": {\"field\": \"landing_lno\"}", "f.json:/records/0/fields/7"},
    {"DependsOnAWordThatIsNone", "\"required\": {\"field\": \"status\", \"is\": [\"skipped\"]}",
     "\"required\": {\"field\": \"status\", \"is\": [\"left\"]}", "f.json:/records/2/fields/4"},
    {"RangeUpsideDown", "\"range\": [1, 500]", "\"range\": [500, 1]",
     "f.json:/records/1/fields/4/range"},
    {"RangeOfOne", "\"range\": [1, 500]", "\"range\": [500]", "f.json:/records/1/fields/4/range"},
    {"RangeOfText", "\"range\": [1, 500]", "\"range\": [1, \"500\"]",
     "f.json:/records/1/fields/4/range/1"},
    {"StepOfNothing", "\"range\": [1, 500]", "\"range\": [1, 500], \"step\": 0",
     "f.json:/records/1/fields/4/step"},
    {"DecimalsOfHalf", "\"range\": [1, 500]", "\"range\": [1, 500], \"decimals\": 0.5",
     "f.json:/records/1/fields/4/decimals"},
    {"NotYesOrNo", "\"one_row\": true", "\"one_row\": \"yes\"", "f.json:/records/0/one_row"},
    {"ChoicesAreNoObject", "\"choices\": {", "\"choices\": [], \"records\": {", "f.json:/choices"},
    {"DecimalsOfMinusOne", "\"range\": [1, 500]", "\"range\": [1, 500], \"decimals\": -1",
     "f.json:/records/1/fields/4/decimals"},
    {"DecimalsOfTooMany", "\"range\": [1, 500]", "\"range\": [1, 500], \"decimals\": 999999",
     "f.json:/records/1/fields/4/decimals"},
    {"RangeIsNoList", "\"range\": [1, 500]", "\"range\": 500", "f.json:/records/1/fields/4/range"},
    {"RangeOfNothing", "\"range\": [1, 500]", "\"range\": []", "f.json:/records/1/fields/4/range"},
    {"AnotherListThanItsOwn", "\"choices\": \"goal\"", "\"choices\": \"side\"",
     "f.json:/records/1/fields/3"},
    {"UnknownRecord", "\"name\": \"regeneration\"", "\"name\": \"seedlings\"",
     "f.json:/records/4/fields/0"},
};
INSTANTIATE_TEST_SUITE_P(All, FormFault, testing::ValuesIn(kFormCases),
                         [](const auto& made) { return std::string(made.param.label); });

TEST(ReadForm, RefusesWhatIsNoForm) {
  for (const char* text : {"", "[]", "null", "7", "{}", "{\"form\":1}", "[[[[", "\xFF"}) {
    const auto form = read_form(text, "f.json");
    ASSERT_FALSE(form) << text;
    EXPECT_EQ(form.error().code, ErrorCode::bad_json);
  }
}

using Json = nlohmann::json;

/// The error of a form after somebody changed its JSON.
template <class Change>
std::string refused_after(Change change) {
  Json form = Json::parse(form_text());
  change(form);
  const auto read = read_form(form.dump(), "f.json");
  return read ? "" : read.error().where + " " + read.error().what;
}

TEST(ReadForm, RecordsAndListsThatTheProgramNeedsMayNotGo) {
  EXPECT_EQ(refused_after([](Json&) {}), "");
  EXPECT_EQ(refused_after([](Json& form) { form["records"].push_back(form["records"][0]); }),
            "f.json:/records/" + std::to_string(tally_form().records.size()) +
                " This record is there twice.");
  EXPECT_EQ(refused_after([](Json& form) { form["choices"].erase("goal"); }),
            "f.json:/records/1/fields/3 There is no choice list \"goal\".");
  // trees.csv without its species, and without all of it.
  const auto erased = [](const char* record, const char* field) {
    return refused_after([&](Json& form) {
      for (auto& one : form["records"]) {
        if (one["name"] != record) continue;
        auto& fields = one["fields"];
        std::erase_if(fields.template get_ref<Json::array_t&>(),
                      [&](const Json& f) { return f["name"] == field; });
      }
    });
  };
  EXPECT_EQ(erased("trees", "species"),
            "f.json:/records Field \"species\" of \"trees\" is missing.");
  // Acorns came later: a tract whose form has no such record is read as it is.
  EXPECT_EQ(refused_after([](Json& form) {
              std::erase_if(form["records"].get_ref<Json::array_t&>(), [](const Json& record) {
                return record["name"] == "acorns" || record["name"] == "acorn_years";
              });
            }),
            "");
}

TEST(ReadForm, AnEssentialFieldStaysRequired) {
  std::string text = form_text();
  test::replace_once(
      text,
      "\"name\": \"height_class\", \"kind\": \"choice\", \"choices\": "
      "\"regen_height\", \"label\": \"Height\", \"short\": \"Ht\", \"required\": true",
      "\"name\": \"height_class\", \"kind\": \"choice\", \"choices\": "
      "\"regen_height\", \"label\": \"Height\", \"short\": \"Ht\", \"required\": false");
  const auto form = read_form(text, "f.json");
  ASSERT_FALSE(form);
  EXPECT_EQ(form.error().where, "f.json:/records/4/fields/3");
}

TEST(ReadForm, LocalPracticeMayRenameAndTighten) {
  std::string text = form_text();
  test::replace_once(text, "\"label\": \"Age\"", "\"label\": \"Alter\"");
  test::replace_once(text, "\"range\": [1, 500]", "\"range\": [20, 300]");
  const auto form = read_form(text, "f.json");
  ASSERT_TRUE(form) << to_text(form.error());
  const Field* age = form->find_record("stands")->find("age_years");
  EXPECT_EQ(age->label, "Alter");
  EXPECT_EQ(age->range.us, (Range{20, 300}));
  EXPECT_EQ(age->range.metric, (Range{20, 300}));
}

TEST(ReadForm, ReadsWhatEachMemberSays) {
  const Field* dbh = tally_form().find_record("trees")->find("dbh");
  ASSERT_NE(dbh, nullptr);
  EXPECT_EQ(dbh->column.us, "dbh_in");
  EXPECT_EQ(dbh->column.metric, "dbh_cm");
  EXPECT_EQ(dbh->unit.of(UnitSystem::metric), "cm");
  EXPECT_EQ(dbh->range.of(UnitSystem::metric), (Range{0.1, 508}));
  EXPECT_FALSE(dbh->required);  // a count point goes without; the import asks for it elsewhere
  const Field* edge = tally_form().find_record("trees")->find("edge_count");
  EXPECT_EQ(edge->one_of, (std::vector<std::int64_t>{1, 2, 4}));
  EXPECT_EQ(edge->initial, "1");
  const Field* reason = tally_form().find_record("plots")->find("skip_reason");
  EXPECT_EQ(reason->required_when, (When{"status", {"skipped"}}));
  EXPECT_EQ(reason->only_when, (When{"status", {"skipped"}}));
  EXPECT_EQ(tally_form().version, "1");
}

}  // namespace
}  // namespace oaklight
