// The rules by which trees are chosen, as a user may edit them, and what they then decide.
#include "core/base/utf8.hpp"
#include "core/session/decide.hpp"
#include "tests/forms/cruise_files.hpp"
#include "tests/fuzz/law.hpp"
#include "tests/fuzz/targets.hpp"
#include "tests/support/set_clock.hpp"

namespace oaklight::test {
namespace {

constexpr std::int64_t kMay2026 = 1'777'900'020'000;

/// The shipped species and the trees of the good import.
const TractData& walked_tract() {
  static const TractData data = import_files(good_files()).data;
  return data;
}

/// What a rule file decides of a small walk: every verdict with a reason, whatever the rules say.
void decide_by(ReleaseKnowledge release) {
  const TractKnowledge knowledge{tally_form(),
                                 {},
                                 std::move(release),
                                 *CautionTable::read(form_file("hazard_cautions.csv").text),
                                 {},
                                 {}};
  SetClock clock(kMay2026);
  IdSource ids(clock, same_bits());
  const auto plans = plan_stands(walked_tract(), knowledge, ids);
  if (!plans) return require_told(plans.error());
  for (const StandPlan& plan : *plans) {
    for (const Mark& mark : plan.marks) {
      require(!mark.reason.empty() && is_utf8(mark.reason), "a verdict has a reason");
    }
  }
}

}  // namespace

void fuzz_rules(std::string_view bytes) {
  const auto files = files_of(bytes);
  auto release = release_knowledge(species_table(), form_in(files, "release.rule.json"),
                                   form_in(files, "species/mast_rank.csv"));
  if (!release) return require_told(release.error());
  for (const Rule& rule : release->rules.rules()) {
    require(release->rules.find(rule.id) != nullptr, "a rule is found by its id");
  }
  decide_by(*std::move(release));
}

}  // namespace oaklight::test
