#include "core/base/number_text.hpp"
#include "core/forms/import_job.hpp"

namespace oaklight {
namespace {

constexpr int kHalfLogFeet = 8;

}  // namespace

std::optional<int> half_logs_of(const FilledRow& row) {
  const auto logs = row.get<double>("logs");
  // The form allows halves only, so that the double is exact.
  return logs ? std::optional(static_cast<int>(*logs * 2.0)) : std::nullopt;
}

Conditions conditions_of(const FilledRow& row) {
  Conditions conditions;
  const auto words = row.get<std::vector<std::string>>("conditions");
  if (!words) return conditions;
  for (const std::string& word : *words) {
    if (const auto condition = from_word<Condition>(word)) conditions.add(*condition);
  }
  return conditions;
}

std::optional<TreeFacts> facts_of(const FilledRow& row) {
  const auto species = row.get<SpeciesCode>("species");
  const auto dbh = row.get<Dbh>("dbh");
  if (!species || !dbh) return std::nullopt;
  TreeFacts facts{*species, *dbh};
  facts.status = row.word<TreeStatus>("status").value_or(TreeStatus::live);
  facts.crown_class = row.word<CrownClass>("crown_class");
  facts.live_crown = row.quantity<Percent>("live_crown_pct");
  facts.dieback = row.quantity<Percent>("dieback_pct");
  facts.height = row.get<TapedLength>("height");
  facts.half_logs = half_logs_of(row);
  facts.conditions = conditions_of(row);
  facts.note = row.text("note");
  return facts;
}

void check_facts(const TreeFacts& facts, const FilledRow& row, FaultList& faults) {
  if (facts.status == TreeStatus::dead && facts.live_crown && *facts.live_crown > Percent{0.0}) {
    row.fault(faults, "live_crown_pct", ErrorCode::contradiction,
              "The tree is dead, and has a live crown.", "Correct its status, or empty this cell.");
  }
  if (!facts.height || !facts.half_logs) return;
  const int log_feet = kHalfLogFeet * *facts.half_logs;
  if (Feet{static_cast<double>(log_feet)} > facts.height->feet()) {
    row.fault(faults, "logs", ErrorCode::contradiction,
              "The logs are " + std::to_string(log_feet) +
                  " ft long together, more than the tree is high.",
              "Correct the logs (16 ft each) or the height.");
  }
}

bool is_thinner(Dbh a, Dbh b) {
  // In whole thousandths of a centimetre: 1 in is 2.54 cm exactly, so nothing is rounded.
  const auto exact = [](Dbh dbh) {
    return static_cast<std::int64_t>(dbh.tenths()) * (dbh.system() == UnitSystem::us ? 254 : 100);
  };
  return exact(a) < exact(b);
}

std::string shown(Dbh dbh) {
  return number_text(dbh.tenths() / 10.0, 1) + (dbh.system() == UnitSystem::us ? " in" : " cm");
}

}  // namespace oaklight
