#pragma once

#include <initializer_list>
#include <nlohmann/json.hpp>
#include <string_view>

#include "core/base/error.hpp"
#include "core/model/species.hpp"
#include "core/release/cautions.hpp"
#include "core/release/plan.hpp"
#include "core/session/knowledge.hpp"

// What the page says, told so that it says it in the language of the person: by context and source,
// as Qt's translations know them, and what is put in. The page looks them up in the very files that
// the app has.

namespace oaklight::web {

using Json = nlohmann::json;

/// {"c": context, "s": source, "a": [...]}: "%1" in the source stands for the first of the
/// arguments, each a text or a phrase.
[[nodiscard]] Json phrase(std::string_view context, std::string_view source,
                          std::initializer_list<Json> arguments = {});
/// Phrases one after the other with a word between: {"l": [...], "j": ", "}.
[[nodiscard]] Json joined(std::vector<Json> parts, std::string_view between);
/// English and Spanish have one word for one and another for more; `more` takes the count as %1.
[[nodiscard]] Json counted(std::string_view context, int count, std::string_view one,
                           std::string_view more);

/// A figure as core writes it, with raised figures: "80 ft2/ac" becomes "80 ft²/ac".
[[nodiscard]] std::string raised(std::string text);
[[nodiscard]] Json species_words(const TractKnowledge& knowledge, SpeciesCode code);
/// "white oak 14.0 in".
[[nodiscard]] Json tree_words(const TractKnowledge& knowledge, SpeciesCode code, Dbh dbh);
/// "14  white oak 15.0 in".
[[nodiscard]] Json tagged_words(const TractKnowledge& knowledge, const std::string& tag,
                                const TreeFacts& facts);
/// A label of the tract's form.
[[nodiscard]] Json form_words(const std::string& label);
[[nodiscard]] Json verdict_words(Verdict verdict);
/// Name of the verdict's shape: it is told by shape, not by colour alone.
[[nodiscard]] std::string_view verdict_icon(Verdict verdict);
[[nodiscard]] Json caution_json(const Caution& caution);
[[nodiscard]] Json caution_list(const std::vector<Caution>& cautions);
/// "R1.50, R2.10".
[[nodiscard]] std::string rule_list(const std::vector<std::string>& rules);
/// {code, what, where, fix}.
[[nodiscard]] Json error_json(const Error& error);

}  // namespace oaklight::web
