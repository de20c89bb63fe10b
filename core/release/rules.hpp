#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.hpp"
#include "core/model/words.hpp"

namespace oaklight {

/// How well a rule is founded; shown wherever the rule is.
enum class Evidence { retrieved, from_memory, common_practice };
template <>
inline constexpr auto kWords<Evidence> =
    std::to_array<Word<Evidence>>({{Evidence::retrieved, "retrieved"},
                                   {Evidence::from_memory, "from memory"},
                                   {Evidence::common_practice, "common practice"}});

/// One rule of forms/release.rule.json. Its value is a list of numbers or a list of words.
struct Rule {
  std::string id;    ///< stable: "R4.01"; ids that begin with X are defaults of ours
  std::string text;  ///< the rule in one plain sentence
  std::vector<double> numbers;
  std::vector<std::string> words;
  std::string unit;  ///< of the value
  Evidence evidence = Evidence::common_practice;
  std::string source;
  bool editable = false;  ///< the program reads the value, so a change changes the answer
};

/// The release rules of one tract: what the recommendation decides by, and cites.
class RuleBook {
 public:
  /// Reads a rule file.
  ///
  /// errors   bad_json when it is not JSON; missing_value, not_a_choice, out_of_range or duplicate
  ///          with the rule's id in `where`
  static Result<RuleBook> from_json(std::string_view text, std::string_view file);

  /// The rules that came with the program.
  static Result<RuleBook> shipped();

  [[nodiscard]] const std::vector<Rule>& rules() const { return rules_; }  ///< in file order
  /// The file's own version and the first digits of its checksum, so that an edited file never
  /// passes for the one it was copied from: "2026.1-5f3a90c2".
  [[nodiscard]] const std::string& version() const { return version_; }
  /// Adds the rules of another book that this one lacks: a file of an older program knows nothing
  /// of the rules that came since. The version then says how many were added.
  void add_missing(const RuleBook& newer);
  /// nullptr when no rule has this id.
  [[nodiscard]] const Rule* find(std::string_view id) const;

 private:
  std::vector<Rule> rules_;
  std::string version_;
};

}  // namespace oaklight
