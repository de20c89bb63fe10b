#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/model/words.hpp"
#include "core/sample/confidence.hpp"
#include "core/units/units.hpp"

namespace oaklight {

/// Which distribution counts the wrong ones in a sample.
enum class AuditModel {
  hypergeometric,  ///< drawn without putting back from a list of known length: exact for a list
  binomial,        ///< the length is not known, or long against the sample; asks for a few more
};
template <>
inline constexpr auto kWords<AuditModel> = std::to_array<Word<AuditModel>>(
    {{AuditModel::hypergeometric, "hypergeometric"}, {AuditModel::binomial, "binomial"}});

/// How many to look at.
struct AuditPlan {
  int sample = 0;
  int allowed = 0;  ///< wrong ones in the sample with which the claim still stands
  AuditModel model = AuditModel::hypergeometric;
  double risk = 0.0;  ///< that so few are found although more are wrong than claimed; 0 .. 1
};

/// The longest list that is audited by the exact distribution.
inline constexpr int kLongestAuditList = 100'000;

/// The fewest to look at so that, when at most `allowed` of them are wrong, no more than `bound` of
/// all are, with this confidence (one-sided).
///
/// list     how many there are; nothing: not known, and the binomial distribution is used
/// bound    greatest wrong share to be claimed, above 0 and below 100 %
/// returns  the whole list where no smaller sample can tell
/// errors   out_of_range: a list that is empty or too long, a bound outside, allowed below 0 or not
///          fewer than the list
/// accuracy equal to another library in every row of tests/published/audit.tsv
/// source   acceptance sampling by attributes for an isolated lot: the least n with
///          P(wrong in sample <= allowed) <= 1 - confidence at the smallest number of wrong ones
///          above the bound
Result<AuditPlan> audit_plan(std::optional<int> list, int allowed, Percent bound,
                             Confidence confidence);

/// The greatest share that may be wrong after so many were found in a sample, one-sided.
///
/// list     nothing: binomial (Clopper and Pearson 1934)
/// returns  never below the share found in the sample
/// errors   out_of_range: sample not in 1 .. list, wrong not in 0 .. sample
Result<Percent> greatest_wrong_share(std::optional<int> list, int sample, int wrong,
                                     Confidence confidence);

/// Which of a list to look at: `sample` different places below `list`, rising. The same seed draws
/// the same places on every machine, so that a draw can be shown to be no one's choice.
///
/// errors   out_of_range: sample not in 0 .. list
Result<std::vector<int>> audit_draw(int list, int sample, std::uint64_t seed);

}  // namespace oaklight
