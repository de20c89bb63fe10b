// Calls of the page Marks: the list, cautions first.
#include <algorithm>
#include <array>

#include "core/base/number_text.hpp"
#include "core/base/today.hpp"
#include "core/place/position_text.hpp"
#include "core/session/decide.hpp"
#include "core/session/marks_view.hpp"
#include "core/session/records_named.hpp"
#include "mobile/web/bridge/tract_json.hpp"

namespace oaklight::web {
namespace {

constexpr std::size_t kUsualRows = 100;

struct Filter {
  std::optional<Verdict> verdict;
  bool undecided = false;
  std::string tag;

  explicit Filter(const Arguments& given)
      : verdict(given.word<Verdict>("verdict")),
        undecided(given.flag("undecided")),
        tag(given.text("tag").value_or("")) {}
  [[nodiscard]] bool shows(const MarkRow& row) const {
    if (undecided && row.mark) return false;
    if (verdict && (!row.mark || row.mark->verdict != *verdict)) return false;
    return tag.empty() || row.tag.find(tag) != std::string::npos;
  }
};

Json method_words(Method method) {
  switch (method) {
    case Method::fell:
      return phrase("Marks", "fell by hand");
    case Method::machine_fell:
      return phrase("Marks", "fell by machine");
    case Method::girdle:
      return phrase("Marks", "girdle");
    case Method::none:
      break;
  }
  return {};
}

Json product_words(Product product) {
  switch (product) {
    case Product::sawlog:
      return phrase("Marks", "sawlog");
    case Product::pulpwood:
      return phrase("Marks", "pulpwood");
    case Product::firewood:
      return phrase("Marks", "firewood");
    case Product::none:
      break;
  }
  return {};
}

Json reader_words(Reader reader) {
  return phrase("Marks", reader == Reader::logger ? "logger" : "firewood cutter");
}

/// "fell by hand, firewood, for the firewood cutter".
Json work_words(const Mark& mark) {
  std::vector<Json> parts;
  for (Json words : {method_words(mark.method), product_words(mark.product)}) {
    if (!words.is_null()) parts.push_back(std::move(words));
  }
  if (mark.destination) {
    parts.push_back(phrase("MarkListModel", "for the %1", {reader_words(*mark.destination)}));
  }
  if (mark.by_hand) parts.push_back(phrase("MarkListModel", "by hand"));
  return parts.empty() ? Json("") : joined(std::move(parts), ", ");
}

Json row_json(const OpenTract& tract, const MarkRow& row) {
  const bool stop = std::ranges::any_of(
      row.cautions, [](const Caution& caution) { return caution.severity == Severity::stop; });
  return {{"tree", to_text(row.tree)},
          {"cautions", caution_list(row.cautions)},
          {"stop", stop},
          {"tag", row.tag},
          {"title", tree_words(tract.knowledge, row.facts.species, row.facts.dbh)},
          {"icon", row.mark ? verdict_icon(row.mark->verdict) : "minus"},
          {"verdict", row.mark ? Json(word_of(row.mark->verdict)) : Json()},
          {"verdictWords",
           row.mark ? verdict_words(row.mark->verdict) : phrase("MarkListModel", "Not decided")},
          {"work", row.mark ? work_words(*row.mark) : Json("")},
          {"reason", row.mark ? row.mark->reason : std::string()},
          {"placed", row.position.has_value()},
          {"crop", row.crop}};
}

Json verdict_chips(const MarkTotals& totals) {
  const auto chip = [](Json word, Json name, int count) {
    return Json{{"word", std::move(word)},
                {"label", phrase("MarksViewModel", "%1 (%2)", {name, std::to_string(count)})},
                {"count", count}};
  };
  Json chips = Json::array();
  chips.push_back(chip(nullptr, phrase("MarksViewModel", "All"), totals.trees));
  for (const auto& [verdict, word] : kWords<Verdict>) {
    chips.push_back(chip(word, verdict_words(verdict), totals.of(verdict)));
  }
  chips.push_back(chip("undecided", phrase("MarksViewModel", "Not decided"), totals.undecided));
  return chips;
}

Json shown_words(std::size_t shown, const MarkTotals& totals) {
  constexpr const char* kWords = "MarksViewModel";
  std::vector<Json> parts{
      phrase(kWords, "%1 of %2 trees", {std::to_string(shown), std::to_string(totals.trees)})};
  if (totals.by_hand > 0) {
    parts.push_back(phrase(kWords, "; %1 decided by hand", {std::to_string(totals.by_hand)}));
  }
  if (totals.stops > 0) {
    parts.push_back(phrase(kWords, "; %1 with a STOP", {std::to_string(totals.stops)}));
  }
  return joined(std::move(parts), "");
}

Result<MarksView> view_of(const OpenTract& tract, const Arguments& arguments) {
  std::optional<StandId> only;
  if (arguments.has("stand")) {
    const auto stand = arguments.id<StandId>("stand");
    if (!stand) return stand.error();
    only = *stand;
  }
  return marks_view(tract.live.data(), tract.knowledge, only, std::nullopt);
}

Json total_words(const ProductTotal& total, const std::string& rule) {
  constexpr const char* kWords = "PacketViewModel";
  std::vector<Json> parts{
      phrase(kWords, "%1 %2", {product_words(total.product), std::to_string(total.trees)})};
  if (total.board_feet) {
    parts.push_back(
        phrase(kWords, " (%1 board feet, %2)", {grouped_text(total.board_feet->value, 0), rule}));
  }
  if (total.cords) {
    parts.push_back(phrase(kWords, " (%1 cords)", {number_text(total.cords->value, 2)}));
  }
  if (total.without_volume > 0) {
    parts.push_back(
        phrase(kWords, " (%1 without a volume)", {std::to_string(total.without_volume)}));
  }
  return joined(std::move(parts), "");
}

/// What goes to a reader, in one sentence.
Json packet_words(const Packet& packet, const Json& reader) {
  constexpr const char* kWords = "PacketViewModel";
  std::vector<Json> parts;
  for (const ProductTotal& total : packet.totals) {
    parts.push_back(total_words(total, packet.log_rule));
  }
  if (!packet.trained.empty()) {
    parts.push_back(phrase(kWords,
                           packet.reader == PacketReader::firewood ? "%1 to leave alone"
                                                                   : "%1 for a trained feller only",
                           {std::to_string(packet.trained.size())}));
  }
  return phrase(kWords, "For the %1: %2 to cut. %3",
                {reader, std::to_string(packet.cut.size()),
                 parts.empty() ? Json("") : joined(std::move(parts), "; ")});
}

/// A line for each who is handed a list. The packet itself is made by the app.
Json totals_json(const OpenTract& tract) {
  Json lines = Json::array();
  for (const auto& [reader, destination] : {std::pair{PacketReader::logger, Reader::logger},
                                            std::pair{PacketReader::firewood, Reader::firewood}}) {
    const Json name = reader_words(destination);
    const auto packet =
        packet_for(tract.live.data(), tract.knowledge, reader, PacketOptions{.today = today()});
    lines.push_back(packet ? packet_words(*packet, name)
                           : phrase("MarksViewModel", "For the %1: %2",
                                    {name, packet.error().what + " " + packet.error().fix}));
  }
  return lines;
}

Result<Json> marks(WebDesk& desk, const Arguments& arguments) {
  const OpenTract& tract = *desk.tract();
  const auto view = view_of(tract, arguments);
  if (!view) return view.error();
  const Filter filter(arguments.inside("filter"));
  const auto from = static_cast<std::size_t>(std::max(0, arguments.whole("from").value_or(0)));
  const auto given = arguments.whole("most").value_or(0);
  const std::size_t most = given > 0 ? static_cast<std::size_t>(given) : kUsualRows;
  Json rows = Json::array();
  std::size_t shown = 0;
  for (const MarkRow& row : view->rows) {
    if (!filter.shows(row)) continue;
    if (shown >= from && rows.size() < most) rows.push_back(row_json(tract, row));
    ++shown;
  }
  return Json{{"verdicts", verdict_chips(view->totals)},
              {"shown", shown_words(shown, view->totals)},
              {"more", from + rows.size() < shown},
              {"beside", phrase("MarkedTreeViewModel",
                                "Look up and around yourself too: no record shows everything.")},
              {"totals", from == 0 ? totals_json(tract) : Json::array()},
              {"rows", rows}};
}

Json fact_lines(const MarkRow& row) {
  constexpr const char* kWords = "MarkedTreeViewModel";
  Json lines = Json::array();
  const auto add = [&](const char* name, const Json& value) {
    if (!value.is_null()) lines.push_back(phrase(kWords, "%1: %2", {phrase(kWords, name), value}));
  };
  if (row.mark) {
    add("Method", method_words(row.mark->method));
    add("Product", product_words(row.mark->product));
    add("Goes to", row.mark->destination ? reader_words(*row.mark->destination) : Json());
    add("Decided", phrase(kWords, row.mark->by_hand ? "by hand" : "by the rules"));
  }
  add("Position",
      row.position ? Json(decimal_degrees_text(*row.position)) : phrase(kWords, "not known"));
  return lines;
}

Result<Json> mark(WebDesk& desk, const Arguments& arguments) {
  constexpr const char* kWords = "MarkedTreeViewModel";
  const auto id = arguments.id<WalkTreeId>("tree");
  if (!id) return id.error();
  const OpenTract& tract = *desk.tract();
  const auto view = view_of(tract, arguments);
  if (!view) return view.error();
  const auto found = std::ranges::find(view->rows, *id, &MarkRow::tree);
  if (found == view->rows.end()) return no_such("tree", to_text(*id));
  Json answer = row_json(tract, *found);
  answer["title"] = tagged_words(tract.knowledge, found->tag, found->facts);
  answer["beside"] = phrase(
      kWords, found->cautions.empty()
                  ? "Nothing that is recorded of this tree calls for a caution. Look up and around "
                    "yourself all the same: no record shows everything."
                  : "Look up and around yourself too: no record shows everything.");
  if (!found->mark) answer["reason"] = phrase(kWords, "Decide its stand on the page Light.");
  answer["rules"] = found->mark ? rule_list(found->mark->rules) : "";
  answer["facts"] = fact_lines(*found);
  return answer;
}

constexpr std::array kCalls = {NamedCall{"marks", marks}, NamedCall{"mark", mark}};

}  // namespace

std::span<const NamedCall> mark_calls() { return kCalls; }

}  // namespace oaklight::web
