#include "core/release/marks.hpp"

#include "core/measure/product.hpp"

namespace oaklight {

Method default_method(const TreeFacts& facts, const Species* species, Verdict verdict,
                      const RemovalSettings& settings) {
  if (verdict == Verdict::kill_standing) return Method::girdle;
  if (verdict != Verdict::take) return Method::none;
  const bool ash = species != nullptr && species->genus() == "Fraxinus";
  if (ash && facts.dieback && *facts.dieback > settings.ash_machine_above) {
    return Method::machine_fell;
  }
  return Method::fell;
}

std::vector<Mark> to_marks(const ReleasePlan& plan, const ReleaseInput& input, IdSource& ids) {
  std::vector<Mark> marks;
  marks.reserve(plan.trees.size());
  for (std::size_t i = 0; i < plan.trees.size(); ++i) {
    const TreeVerdict& verdict = plan.trees[i];
    const TreeFacts& facts = input.graph.trees()[i].facts;
    const Species* species = input.knowledge.species.find(facts.species);
    Mark mark;
    mark.id = ids.next_id<MarkTag>();
    mark.tree = WalkTreeId{verdict.tree};
    mark.verdict = verdict.verdict;
    mark.method = default_method(facts, species, verdict.verdict, input.knowledge.settings.removal);
    if (verdict.verdict == Verdict::take && species != nullptr) {
      mark.product = product_of(*species, facts.dbh, facts.half_logs, facts.conditions,
                                input.knowledge.settings.product)
                         .product;
    }
    mark.reason = verdict.reason;
    mark.rules = verdict.rules;
    mark.rule_version = plan.rule_version;
    marks.push_back(std::move(mark));
  }
  return marks;
}

}  // namespace oaklight
