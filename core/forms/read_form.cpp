#include "core/forms/read_form.hpp"

#include <algorithm>
#include <initializer_list>
#include <nlohmann/json.hpp>
#include <set>

#include "core/base/json_limits.hpp"
#include "core/forms/csv_file.hpp"
#include "core/forms/kept_fields.hpp"
#include "core/forms/near_word.hpp"

namespace oaklight {
namespace {

using Json = nlohmann::json;

/// Thrown and caught in this file only.
struct FormFault {
  std::string pointer;
  std::string what;
  std::string fix;
};

/// A JSON value that knows where it stands.
class Node {
 public:
  Node(const Json& value, std::string pointer) : value_(value), pointer_(std::move(pointer)) {}

  [[noreturn]] void fail(std::string what, std::string fix) const {
    throw FormFault{pointer_, std::move(what), std::move(fix)};
  }

  /// An object with no other members than these.
  void expect_object(std::initializer_list<std::string_view> members) const {
    if (!value_.is_object()) fail("This must be an object.", "Write it in { }.");
    for (const auto& [key, value] : value_.items()) {
      if (std::find(members.begin(), members.end(), key) != members.end()) continue;
      const std::vector<std::string_view> known(members);
      fail("Member \"" + key + "\" is unknown.",
           did_you_mean(near_words(key, known), "Take it out."));
    }
  }

  [[nodiscard]] bool has(const char* member) const { return value_.contains(member); }

  [[nodiscard]] Node at(const char* member) const {
    if (!has(member)) fail("Member \"" + std::string(member) + "\" is missing.", "Add it.");
    return {value_.at(member), pointer_ + "/" + member};
  }

  [[nodiscard]] std::vector<Node> items() const {
    if (!value_.is_array() || value_.empty()) fail("This must be a list.", "Write it in [ ].");
    std::vector<Node> nodes;
    for (std::size_t i = 0; i < value_.size(); ++i) {
      nodes.emplace_back(value_[i], pointer_ + "/" + std::to_string(i));
    }
    return nodes;
  }

  [[nodiscard]] std::string text() const {
    if (!value_.is_string()) fail("This must be text.", "Write it in quotes.");
    auto text = value_.get<std::string>();
    if (text.empty()) fail("This must not be empty.", "Say it in a word or two.");
    return text;
  }
  [[nodiscard]] std::string text_or_nothing(const char* member) const {
    return has(member) ? at(member).text() : std::string();
  }
  [[nodiscard]] bool yes() const {
    if (!value_.is_boolean()) fail("This must be true or false.", "Write it without quotes.");
    return value_.get<bool>();
  }
  [[nodiscard]] double number() const {
    if (!value_.is_number()) fail("This must be a number.", "Write it without quotes.");
    return value_.get<double>();
  }
  [[nodiscard]] int whole(int most) const {
    const double n = number();
    if (!value_.is_number_integer() || n < 0 || n > most) {
      fail("This must be a whole number from 0 to " + std::to_string(most) + ".", "Change it.");
    }
    return static_cast<int>(n);
  }
  [[nodiscard]] bool is_object() const { return value_.is_object(); }
  [[nodiscard]] bool is_bool() const { return value_.is_boolean(); }

 private:
  const Json& value_;
  std::string pointer_;
};

When read_when(const Node& node) {
  node.expect_object({"field", "is"});
  When when{node.at("field").text(), {}};
  if (node.has("is")) {
    for (const Node& word : node.at("is").items()) when.is.push_back(word.text());
  }
  return when;
}

Range read_range(const Node& node) {
  const auto ends = node.items();
  if (ends.size() != 2) node.fail("A range has two numbers.", "Write [least, most].");
  const Range range{ends[0].number(), ends[1].number()};
  if (range.least > range.most) node.fail("The range is upside down.", "Write the smaller first.");
  return range;
}

/// One value for both systems, or {"us": ..., "metric": ...}.
template <class T, class Read>
BySystem<T> read_by_system(const Node& node, Read read) {
  if (!node.is_object()) return {read(node), read(node)};
  node.expect_object({"us", "metric"});
  return {read(node.at("us")), read(node.at("metric"))};
}

void read_limits(const Node& node, Field& field) {
  if (node.has("range")) {
    field.range = read_by_system<std::optional<Range>>(node.at("range"), read_range);
  }
  if (node.has("one_of")) {
    for (const Node& n : node.at("one_of").items()) field.one_of.push_back(n.whole(1'000'000));
  }
  if (node.has("decimals")) field.decimals = node.at("decimals").whole(9);
  if (node.has("step")) {
    field.step = node.at("step").number();
    if (*field.step <= 0) node.at("step").fail("A step is more than 0.", "Change it.");
  }
  if (node.has("max_length")) {
    field.max_length = static_cast<std::size_t>(node.at("max_length").whole(100'000));
  }
}

Field read_field(const Node& node) {
  node.expect_object({"name", "label", "short", "help", "kind", "columns", "unit", "required",
                      "only_when", "range", "one_of", "decimals", "step", "max_length", "choices",
                      "default"});
  Field field;
  field.name = node.at("name").text();
  field.label = node.at("label").text();
  field.short_label = node.at("short").text();
  field.help = node.at("help").text();
  const auto kind = from_word<FieldKind>(node.at("kind").text());
  if (!kind) node.at("kind").fail("This kind is unknown.", "forms/README.md lists the kinds.");
  field.kind = *kind;
  const auto as_text = [](const Node& n) { return n.text(); };
  field.column = node.has("columns") ? read_by_system<std::string>(node.at("columns"), as_text)
                                     : BySystem<std::string>{field.name, field.name};
  if (node.has("unit")) field.unit = read_by_system<std::string>(node.at("unit"), as_text);
  if (node.has("required")) {
    const Node required = node.at("required");
    if (required.is_bool()) {
      field.required = required.yes();
    } else {
      field.required_when = read_when(required);
    }
  }
  if (node.has("only_when")) field.only_when = read_when(node.at("only_when"));
  read_limits(node, field);
  field.choices = node.text_or_nothing("choices");
  field.initial = node.text_or_nothing("default");
  return field;
}

ChoiceList read_choices(const std::string& name, const Node& node) {
  const auto known = model_words(name);
  if (known.empty()) node.fail("The program has no choice list of this name.", "Take it out.");
  ChoiceList list{name, {}};
  std::set<std::string> seen;
  for (const Node& item : node.items()) {
    item.expect_object({"word", "label", "group", "help"});
    Choice choice{item.at("word").text(), item.at("label").text(), item.text_or_nothing("group"),
                  item.text_or_nothing("help")};
    if (std::find(known.begin(), known.end(), choice.word) == known.end()) {
      item.at("word").fail("The program has no word \"" + choice.word + "\" for this.",
                           did_you_mean(near_words(choice.word, known), "Take it out."));
    }
    if (!seen.insert(choice.word).second) {
      item.at("word").fail("The word \"" + choice.word + "\" is there twice.", "Keep one.");
    }
    list.choices.push_back(std::move(choice));
  }
  return list;
}

RecordForm read_record(const Node& node) {
  node.expect_object({"name", "label", "file", "help", "one_row", "fields"});
  RecordForm record{node.at("name").text(),
                    node.at("label").text(),
                    node.at("file").text(),
                    node.at("help").text(),
                    node.has("one_row") && node.at("one_row").yes(),
                    {}};
  std::set<std::string> columns;
  for (const Node& item : node.at("fields").items()) {
    Field field = read_field(item);
    if (record.find(field.name)) item.fail("This field is there twice.", "Keep one.");
    bool fresh = columns.insert(lower_case(field.column.us)).second;
    if (field.has_system()) fresh &= columns.insert(lower_case(field.column.metric)).second;
    if (!fresh) item.fail("Its column belongs to another field too.", "Name it otherwise.");
    record.fields.push_back(std::move(field));
  }
  return record;
}

// What follows checks the form as a whole, when all its parts are known.

bool has_word(const ChoiceList& list, std::string_view word) {
  return std::any_of(list.choices.begin(), list.choices.end(),
                     [&](const Choice& c) { return c.word == word; });
}

void check_when(const Form& form, const RecordForm& record, const When& when, const Node& node) {
  const Field* other = record.find(when.field);
  if (!other) {
    node.fail("It depends on \"" + when.field + "\", which this record does not have.",
              "Name a field of the same record.");
  }
  if (when.is.empty()) return;
  const ChoiceList* list = form.find_choices(other->choices);
  for (const std::string& word : when.is) {
    if (list && has_word(*list, word)) continue;
    node.fail("\"" + when.field + "\" can never be \"" + word + "\".", "Use a word of its list.");
  }
}

void check_field(const Form& form, const RecordForm& record, const Field& field, const Node& node) {
  const auto kept = kept_fields();
  const auto known = std::find_if(kept.begin(), kept.end(), [&](const KeptField& k) {
    return k.record == record.name && k.field == field.name;
  });
  if (known == kept.end()) {
    node.fail("The program keeps no field \"" + field.name + "\" of \"" + record.name + "\".",
              "Take it out; what it holds can go into the note.");
  }
  if (known->kind != field.kind || known->choices != field.choices) {
    node.fail("\"" + field.name + "\" is kept as kind \"" + std::string(word_of(known->kind)) +
                  (known->choices.empty() ? "\"."
                                          : "\" of list \"" + std::string(known->choices) + "\"."),
              "Change it back.");
  }
  if (known->need == Need::filled && !field.required) {
    node.fail("\"" + field.name + "\" cannot be left empty.", "Make it required.");
  }
  const ChoiceList* list = form.find_choices(field.choices);
  if (!field.choices.empty() && !list) {
    node.fail("There is no choice list \"" + field.choices + "\".", "Add it to \"choices\".");
  }
  if (list && !field.initial.empty() && !has_word(*list, field.initial)) {
    node.fail("Its default \"" + field.initial + "\" is not in its list.", "Change one of them.");
  }
  if (field.required_when) check_when(form, record, *field.required_when, node);
  if (field.only_when) check_when(form, record, *field.only_when, node);
}

/// Records that the first form did not have: a tract made with it is read as it is.
bool came_later(std::string_view record) { return record == "acorns" || record == "acorn_years"; }

void check_whole(const Form& form, const Node& root) {
  const auto records = root.at("records").items();
  for (std::size_t r = 0; r < records.size(); ++r) {
    const auto fields = records[r].at("fields").items();
    for (std::size_t f = 0; f < fields.size(); ++f) {
      check_field(form, form.records[r], form.records[r].fields[f], fields[f]);
    }
  }
  for (const KeptField& kept : kept_fields()) {
    if (kept.need == Need::may_lack) continue;
    const RecordForm* record = form.find_record(kept.record);
    if (record == nullptr && came_later(kept.record)) continue;
    if (record && record->find(kept.field)) continue;
    root.at("records").fail("Field \"" + std::string(kept.field) + "\" of \"" +
                                std::string(kept.record) + "\" is missing.",
                            "Put it back; the program cannot do without it.");
  }
}

Form read_whole(const Json& json) {
  const Node root(json, "");
  root.expect_object({"form", "version", "choices", "records"});
  Form form{root.at("form").text(), root.at("version").text(), {}, {}};
  const Node choices = root.at("choices");
  if (!choices.is_object()) choices.fail("This must be an object.", "Write it in { }.");
  for (const auto& [name, list] : json.at("choices").items()) {
    form.choices.push_back(read_choices(name, Node(list, "/choices/" + name)));
  }
  for (const Node& item : root.at("records").items()) {
    RecordForm record = read_record(item);
    if (form.find_record(record.name)) item.fail("This record is there twice.", "Keep one.");
    form.records.push_back(std::move(record));
  }
  check_whole(form, root);
  return form;
}

}  // namespace

Result<Form> read_form(std::string_view text, std::string_view file) {
  if (auto fault = json_beyond_limits(text, file)) return *std::move(fault);
  try {
    return read_whole(Json::parse(text));
  } catch (const FormFault& fault) {
    return Error{ErrorCode::bad_json, fault.what, std::string(file) + ":" + fault.pointer,
                 fault.fix};
  } catch (const Json::parse_error& problem) {
    const auto end = text.begin() +
                     static_cast<std::ptrdiff_t>(std::min(text.size(), std::size_t{problem.byte}));
    const auto line = 1 + std::count(text.begin(), end, '\n');
    return Error{ErrorCode::bad_json, "The JSON is broken on this line.",
                 std::string(file) + ":" + std::to_string(line),
                 "Look for a comma, quote or bracket that is missing there."};
  } catch (const Json::exception&) {
    return Error{ErrorCode::bad_json, "The form cannot be read.", std::string(file),
                 "Start again from the form that came with the program."};
  }
}

}  // namespace oaklight
