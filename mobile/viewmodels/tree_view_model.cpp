#include "mobile/viewmodels/tree_view_model.hpp"

#include <array>

#include "core/base/number_text.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::Condition;
using oaklight::CrownClass;
using oaklight::Dbh;
using oaklight::Degrees;
using oaklight::Done;
using oaklight::Error;
using oaklight::ErrorCode;
using oaklight::Percent;
using oaklight::Status;
using oaklight::TapedLength;
using oaklight::Tree;
using oaklight::TreeDraft;
using oaklight::TreeStatus;
using oaklight::UnitSystem;

namespace {

using Reading = TreeViewModel::Reading;

constexpr const char* kStatusList = "tree_status";
constexpr const char* kCrownList = "crown_class";
constexpr const char* kConditionList = "condition";

QString unit_of(Reading reading, UnitSystem system) {
  const bool us = system == UnitSystem::us;
  switch (reading) {
    case Reading::Dbh:
      return us ? QStringLiteral("in") : QStringLiteral("cm");
    case Reading::Logs:
      return TreeViewModel::tr("logs of 16 ft");
    case Reading::Height:
    case Reading::Distance:
      return us ? QStringLiteral("ft") : QStringLiteral("m");
    case Reading::LiveCrown:
    case Reading::Dieback:
      return QStringLiteral("%");
    case Reading::Azimuth:
      return TreeViewModel::tr("° true");
    default:
      return {};
  }
}

/// Digits after the point that a reading has: nobody reads a tape finer.
int decimals_of(Reading reading, UnitSystem system) {
  switch (reading) {
    case Reading::Dbh:
    case Reading::Logs:
    case Reading::Distance:
      return 1;
    case Reading::Height:
      return system == UnitSystem::us ? 0 : 1;
    default:
      return 0;
  }
}

QString with_unit(double value, Reading reading, UnitSystem system) {
  const QString unit = unit_of(reading, system);
  const QString number = QString::number(value, 'f', decimals_of(reading, system));
  return unit.isEmpty() ? number : number + QLatin1Char(' ') + unit;
}

double value_of(const QString& digits, Reading reading, UnitSystem system) {
  double value = digits.toInt();
  for (int i = 0; i < decimals_of(reading, system); ++i) value /= 10.0;
  return value;
}

oaklight::Result<TapedLength> length_of(double value, UnitSystem system) {
  return TapedLength::from_hundredths(static_cast<std::int32_t>(value * 100.0 + 0.5), system);
}

template <class T>
Status assign(std::optional<T>& field, const oaklight::Result<T>& value) {
  if (!value) return value.error();
  field = *value;
  return Done{};
}

/// Puts a reading into a draft; azimuth and distance are put in by who knows both.
Status put(TreeDraft& draft, Reading reading, double value, UnitSystem system) {
  switch (reading) {
    case Reading::Dbh: {
      const auto dbh = Dbh::from_tenths(static_cast<std::int32_t>(value * 10.0 + 0.5), system);
      if (!dbh) return dbh.error();
      draft.facts.dbh = *dbh;
      return Done{};
    }
    case Reading::Logs: {
      const double halves = value * 2.0;
      if (halves != static_cast<int>(halves))
        return Error{ErrorCode::out_of_range, "Logs are counted in halves.", "tree/logs",
                     "Type 25 for two and a half."};
      draft.facts.half_logs = static_cast<int>(halves);
      return Done{};
    }
    case Reading::Height:
      return assign(draft.facts.height, length_of(value, system));
    case Reading::LiveCrown:
      draft.facts.live_crown = Percent{value};
      return Done{};
    case Reading::Dieback:
      draft.facts.dieback = Percent{value};
      return Done{};
    case Reading::Stems:
      draft.stems = static_cast<int>(value);
      return Done{};
    case Reading::Edge:
      draft.edge_count = static_cast<int>(value);
      return Done{};
    default:
      return Done{};
  }
}

template <class T>
QString or_dash(const std::optional<T>& value, Reading reading, UnitSystem system) {
  return value ? with_unit(value->value, reading, system) : QStringLiteral("-");
}

QString length_or_dash(const std::optional<TapedLength>& length, Reading reading) {
  if (!length) return QStringLiteral("-");
  return with_unit(length->hundredths() / 100.0, reading, length->system());
}

}  // namespace

TreeViewModel::TreeViewModel(TractDesk& desk, Settings& settings, QObject* parent)
    : QObject(parent), desk_(desk), settings_(settings) {
  connect(&desk, &TractDesk::changed, this, [this] {
    fillChips();
    emit changed();
  });
}

const Tree* TreeViewModel::tree() const { return desk_.live().find(id_); }

void TreeViewModel::choose(oaklight::TreeId tree) {
  id_ = tree;
  waiting_azimuth_.reset();
  waiting_distance_.reset();
  chips_.set({});
  fillChips();
  emit changed();
}

QString TreeViewModel::title() const {
  const Tree* tree = this->tree();
  if (tree == nullptr) return {};
  const auto* species = desk_.knowledge().species().find(tree->facts.species);
  return tr("%1 %2").arg(species == nullptr ? QString() : name_of(*species),
                         QString::fromStdString(oaklight::dbh_text(tree->facts.dbh)));
}

void TreeViewModel::fillChips() {
  const Tree* tree = this->tree();
  if (tree == nullptr) return;
  std::vector<Chip> chips;
  const auto add = [&](const char* list, const char* heading) {
    const auto* choices = desk_.knowledge().form.find_choices(list);
    if (choices == nullptr) return;
    for (const oaklight::Choice& choice : choices->choices) {
      chips.push_back({choice.group.empty() ? heading : choice.group, choice.word,
                       form_words(choice.label), form_words(choice.help), false});
    }
  };
  add(kStatusList, "Tree");
  add(kCrownList, "Crown class");
  add(kConditionList, "Seen");
  for (Chip& chip : chips) {
    const auto status = oaklight::from_word<TreeStatus>(chip.word);
    const auto crown = oaklight::from_word<CrownClass>(chip.word);
    const auto condition = oaklight::from_word<Condition>(chip.word);
    chip.on = (status && tree->facts.status == *status) ||
              (crown && tree->facts.crown_class == *crown) ||
              (condition && tree->facts.conditions.has(*condition));
  }
  if (chips_.rowCount() != static_cast<int>(chips.size())) return chips_.set(std::move(chips));
  for (std::size_t row = 0; row < chips.size(); ++row)
    chips_.setOn(static_cast<int>(row), chips[row].on);
}

QStringList TreeViewModel::readingNames() const {
  return {tr("Diameter"), tr("Logs"),     tr("Height"), tr("Live crown"),    tr("Dieback"),
          tr("Azimuth"),  tr("Distance"), tr("Stems"),  tr("Counts at edge")};
}

QStringList TreeViewModel::readings() const {
  const Tree* tree = this->tree();
  if (tree == nullptr) return {};
  const auto& facts = tree->facts;
  const UnitSystem system = facts.dbh.system();
  const auto azimuth = waiting_azimuth_ ? waiting_azimuth_ : tree->azimuth;
  const auto distance = waiting_distance_ ? waiting_distance_ : tree->distance;
  return {with_unit(facts.dbh.tenths() / 10.0, Reading::Dbh, system),
          facts.half_logs ? with_unit(*facts.half_logs / 2.0, Reading::Logs, system)
                          : QStringLiteral("-"),
          length_or_dash(facts.height, Reading::Height),
          or_dash(facts.live_crown, Reading::LiveCrown, system),
          or_dash(facts.dieback, Reading::Dieback, system),
          or_dash(azimuth, Reading::Azimuth, system),
          length_or_dash(distance, Reading::Distance),
          QString::number(tree->stems),
          QString::number(tree->edge_count)};
}

QString TreeViewModel::read(int reading, const QString& digits) const {
  const auto kind = static_cast<Reading>(reading);
  const UnitSystem system = settings_.system();
  return with_unit(value_of(digits, kind, system), kind, system);
}

void TreeViewModel::submit(const std::function<Status(TreeDraft&)>& change) {
  desk_.submit([this, change, id = id_]() -> oaklight::Result<oaklight::Action> {
    const Tree* tree = desk_.live().find(id);
    if (tree == nullptr)
      return Error{ErrorCode::unknown_reference, "That tree was taken out.", "tree", ""};
    TreeDraft draft = oaklight::draft_of(*tree);
    if (const Status changed = change(draft); !changed) return changed.error();
    return oaklight::correct_tree(desk_.live(), desk_.knowledge(), id, draft);
  });
}

void TreeViewModel::toggle(int row) {
  const Chip* chip = chips_.at(row);
  const Tree* tree = this->tree();
  if (chip == nullptr || tree == nullptr) return;
  submit([word = chip->word, on = chip->on](TreeDraft& draft) -> Status {
    if (const auto status = oaklight::from_word<TreeStatus>(word)) draft.facts.status = *status;
    if (const auto crown = oaklight::from_word<CrownClass>(word))
      draft.facts.crown_class = on ? std::nullopt : std::optional(*crown);
    if (const auto condition = oaklight::from_word<Condition>(word))
      draft.facts.conditions = draft.facts.conditions.with(*condition, !on);
    return Done{};
  });
}

void TreeViewModel::enter(int reading, const QString& digits) {
  const auto kind = static_cast<Reading>(reading);
  const UnitSystem system = settings_.system();
  const double value = value_of(digits, kind, system);
  if (kind == Reading::Azimuth) waiting_azimuth_ = Degrees{value};
  if (kind == Reading::Distance) {
    const auto length = length_of(value, system);
    if (length) waiting_distance_ = *length;
  }
  const Tree* tree = this->tree();
  if (tree == nullptr || digits.isEmpty()) return;
  const auto azimuth = waiting_azimuth_ ? waiting_azimuth_ : tree->azimuth;
  const auto distance = waiting_distance_ ? waiting_distance_ : tree->distance;
  const bool is_place = kind == Reading::Azimuth || kind == Reading::Distance;
  if (is_place && !(azimuth && distance)) {
    emit changed();
    return;
  }
  submit([=](TreeDraft& draft) {
    if (is_place) {
      draft.azimuth = azimuth;
      draft.distance = distance;
    }
    return put(draft, kind, value, system);
  });
  if (is_place) {
    waiting_azimuth_.reset();
    waiting_distance_.reset();
  }
}

void TreeViewModel::changeSpecies(oaklight::SpeciesCode code) {
  submit([code](TreeDraft& draft) -> Status {
    draft.facts.species = code;
    return Done{};
  });
}

void TreeViewModel::remove() {
  desk_.submit([this, id = id_] { return remove_tree(desk_.live(), desk_.knowledge(), id); },
               [this](const Status& done) {
                 if (done) emit removed();
               });
}
