// Calls by which a person reads an instrument into a tree, with digits and no decimal key, as on
// the app's sheet.
#include <array>
#include <cstdlib>

#include "core/base/number_text.hpp"
#include "core/session/plot_work.hpp"
#include "mobile/web/bridge/tract_json.hpp"
#include "mobile/web/bridge/tree_json.hpp"

namespace oaklight::web {
namespace {

constexpr const char* kWords = "TreeViewModel";

constexpr std::size_t kMostDigits = 6;

enum class Reading { dbh, logs, height, live_crown, dieback, azimuth, distance, stems, edge };

/// Its word for the page, its name, and the digits after the point that it has: nobody reads a tape
/// finer.
struct ReadingKind {
  Reading reading;
  std::string_view word;
  const char* name;
  int us_decimals;
  int metric_decimals;
};
constexpr std::array kKinds = {ReadingKind{Reading::dbh, "dbh", "Diameter", 1, 1},
                               ReadingKind{Reading::logs, "logs", "Logs", 1, 1},
                               ReadingKind{Reading::height, "height", "Height", 0, 1},
                               ReadingKind{Reading::live_crown, "live_crown", "Live crown", 0, 0},
                               ReadingKind{Reading::dieback, "dieback", "Dieback", 0, 0},
                               ReadingKind{Reading::azimuth, "azimuth", "Azimuth", 0, 0},
                               ReadingKind{Reading::distance, "distance", "Distance", 1, 1},
                               ReadingKind{Reading::stems, "stems", "Stems", 0, 0},
                               ReadingKind{Reading::edge, "edge", "Counts at edge", 0, 0}};

Json unit_of(Reading reading, UnitSystem system) {
  const bool us = system == UnitSystem::us;
  switch (reading) {
    case Reading::dbh:
      return us ? "in" : "cm";
    case Reading::logs:
      return phrase(kWords, "logs of 16 ft");
    case Reading::height:
    case Reading::distance:
      return us ? "ft" : "m";
    case Reading::live_crown:
    case Reading::dieback:
      return "%";
    case Reading::azimuth:
      return phrase(kWords, "° true");
    default:
      return {};
  }
}

int decimals_of(const ReadingKind& kind, UnitSystem system) {
  return system == UnitSystem::us ? kind.us_decimals : kind.metric_decimals;
}

Json with_unit(double value, const ReadingKind& kind, UnitSystem system) {
  const Json unit = unit_of(kind.reading, system);
  const std::string number = number_text(value, decimals_of(kind, system));
  return unit.is_null() ? Json(number) : joined({number, unit}, " ");
}

/// "123" on a keypad without a decimal key. Errors: missing_value without digits; not_a_number.
Result<double> value_of(const std::string& digits, const ReadingKind& kind, UnitSystem system) {
  if (digits.empty()) {
    return Error{ErrorCode::missing_value, "Nothing was typed.", "digits", "Type the reading."};
  }
  if (digits.size() > kMostDigits) {
    return Error{ErrorCode::out_of_range, "No instrument shows so many digits.", "digits",
                 "Type it again."};
  }
  const auto whole = whole_from_text(digits);
  if (!whole) return whole.error();
  auto value = static_cast<double>(*whole);
  for (int i = 0; i < decimals_of(kind, system); ++i) value /= 10.0;
  return value;
}

Result<const ReadingKind*> kind_of(const Arguments& arguments) {
  const auto word = arguments.text("reading");
  for (const ReadingKind& kind : kKinds) {
    if (word == kind.word) return &kind;
  }
  return arguments.missing("reading");
}

Result<TapedLength> length_of(double value, UnitSystem system) {
  return TapedLength::from_hundredths(static_cast<std::int32_t>(value * 100.0 + 0.5), system);
}

/// Puts a reading into a draft; azimuth and distance wait for each other outside.
Status put(TreeDraft& draft, Reading reading, double value, UnitSystem system) {
  switch (reading) {
    case Reading::dbh: {
      const auto dbh = Dbh::from_tenths(static_cast<std::int32_t>(value * 10.0 + 0.5), system);
      if (!dbh) return dbh.error();
      draft.facts.dbh = *dbh;
      return Done{};
    }
    case Reading::logs: {
      const double halves = value * 2.0;
      if (halves != static_cast<int>(halves)) {
        return Error{ErrorCode::out_of_range, "Logs are counted in halves.", "tree/logs",
                     "Type 25 for two and a half."};
      }
      draft.facts.half_logs = static_cast<int>(halves);
      return Done{};
    }
    case Reading::height: {
      const auto length = length_of(value, system);
      if (!length) return length.error();
      draft.facts.height = *length;
      return Done{};
    }
    case Reading::live_crown:
      draft.facts.live_crown = Percent{value};
      return Done{};
    case Reading::dieback:
      draft.facts.dieback = Percent{value};
      return Done{};
    case Reading::stems:
      draft.stems = static_cast<int>(value);
      return Done{};
    default:
      draft.edge_count = static_cast<int>(value);
      return Done{};
  }
}

Result<Json> read_reading(WebDesk& /*desk*/, const Arguments& arguments) {
  const auto kind = kind_of(arguments);
  if (!kind) return kind.error();
  const auto value = value_of(arguments.text("digits").value_or(""), **kind, arguments.system());
  if (!value) return Json{{"text", ""}};
  return Json{{"text", with_unit(*value, **kind, arguments.system())}};
}

/// An azimuth means something with its distance only, and the reverse: the first one waits.
Status wait_for_both(OpenTract& tract, const Tree& tree, Reading reading, double value,
                     UnitSystem system) {
  if (!tract.waiting || tract.waiting->tree != tree.id) {
    tract.waiting = WaitingPlace{tree.id, tree.azimuth, tree.distance};
  }
  if (reading == Reading::azimuth) {
    tract.waiting->azimuth = Degrees{value};
    return Done{};
  }
  const auto length = length_of(value, system);
  if (!length) return length.error();
  tract.waiting->distance = *length;
  return Done{};
}

Result<Json> enter_reading(WebDesk& desk, const Arguments& arguments) {
  const auto found = tree_of(desk, arguments);
  if (!found) return found.error();
  const auto kind = kind_of(arguments);
  if (!kind) return kind.error();
  const UnitSystem system = arguments.system();
  const auto value = value_of(arguments.text("digits").value_or(""), **kind, system);
  if (!value) return value.error();
  OpenTract& tract = *desk.tract();
  const Reading reading = (*kind)->reading;
  const TreeId id = (*found)->id;
  const bool place = reading == Reading::azimuth || reading == Reading::distance;
  if (place) {
    const Status kept = wait_for_both(tract, **found, reading, *value, system);
    if (!kept) return kept.error();
    if (!tract.waiting->azimuth || !tract.waiting->distance) {
      return changed(desk, tree_json(tract, **found));
    }
  }
  const auto written = desk.submit([&](OpenTract& open) -> Result<Action> {
    TreeDraft draft = draft_of(*open.live.find(id));
    if (place) {
      draft.azimuth = open.waiting->azimuth;
      draft.distance = open.waiting->distance;
    } else if (const Status done = put(draft, reading, *value, system); !done) {
      return done.error();
    }
    return correct_tree(open.live, open.knowledge, id, draft);
  });
  if (place) tract.waiting.reset();
  if (!written) return written.error();
  return changed(desk, tree_json(tract, *tract.live.find(id)));
}

/// Touches a choice of the sheet: the same crown class again takes the answer back.
Result<Json> toggle(WebDesk& desk, const Arguments& arguments) {
  const auto found = tree_of(desk, arguments);
  if (!found) return found.error();
  const TreeId id = (*found)->id;
  const auto written = desk.submit([&](OpenTract& tract) -> Result<Action> {
    TreeDraft draft = draft_of(*tract.live.find(id));
    TreeFacts& facts = draft.facts;
    if (const auto status = arguments.word<TreeStatus>("word")) {
      facts.status = *status;
    } else if (const auto crown = arguments.word<CrownClass>("word")) {
      facts.crown_class = facts.crown_class == *crown ? std::nullopt : std::optional(*crown);
    } else if (const auto seen = arguments.word<Condition>("word")) {
      facts.conditions = facts.conditions.with(*seen, !facts.conditions.has(*seen));
    } else {
      return arguments.missing("word");
    }
    return correct_tree(tract.live, tract.knowledge, id, draft);
  });
  if (!written) return written.error();
  return changed(desk, tree_json(*desk.tract(), *desk.tract()->live.find(id)));
}

constexpr std::array kCalls = {NamedCall{"readReading", read_reading, false},
                               NamedCall{"enterReading", enter_reading},
                               NamedCall{"toggle", toggle}};

Json length_words(const std::optional<TapedLength>& length, const ReadingKind& kind) {
  return length ? with_unit(length->hundredths() / 100.0, kind, length->system()) : Json("-");
}

Json value_words(const Tree& tree, const std::optional<Degrees>& azimuth,
                 const std::optional<TapedLength>& distance, const ReadingKind& kind) {
  const TreeFacts& facts = tree.facts;
  const UnitSystem system = facts.dbh.system();
  const auto share = [&](const std::optional<Percent>& value) {
    return value ? with_unit(value->value, kind, system) : Json("-");
  };
  switch (kind.reading) {
    case Reading::dbh:
      return with_unit(facts.dbh.tenths() / 10.0, kind, system);
    case Reading::logs:
      return facts.half_logs ? with_unit(*facts.half_logs / 2.0, kind, system) : Json("-");
    case Reading::height:
      return length_words(facts.height, kind);
    case Reading::live_crown:
      return share(facts.live_crown);
    case Reading::dieback:
      return share(facts.dieback);
    case Reading::azimuth:
      return azimuth ? with_unit(azimuth->value, kind, system) : Json("-");
    case Reading::distance:
      return length_words(distance, kind);
    case Reading::stems:
      return std::to_string(tree.stems);
    case Reading::edge:
      break;
  }
  return std::to_string(tree.edge_count);
}

}  // namespace

std::span<const NamedCall> reading_calls() { return kCalls; }

Json readings_json(const OpenTract& tract, const Tree& tree) {
  const bool waits = tract.waiting && tract.waiting->tree == tree.id;
  Json list = Json::array();
  for (const ReadingKind& kind : kKinds) {
    list.push_back({{"reading", kind.word},
                    {"name", phrase(kWords, kind.name)},
                    {"value", value_words(tree, waits ? tract.waiting->azimuth : tree.azimuth,
                                          waits ? tract.waiting->distance : tree.distance, kind)}});
  }
  return list;
}

}  // namespace oaklight::web
