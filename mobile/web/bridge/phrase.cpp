#include "mobile/web/bridge/phrase.hpp"

#include "core/session/plot_work.hpp"

namespace oaklight::web {

Json phrase(std::string_view context, std::string_view source,
            std::initializer_list<Json> arguments) {
  Json words{{"c", context}, {"s", source}};
  if (arguments.size() > 0) words["a"] = Json(Json::array_t(arguments));
  return words;
}

Json joined(std::vector<Json> parts, std::string_view between) {
  if (parts.size() == 1) return parts.front();
  return {{"l", std::move(parts)}, {"j", between}};
}

Json counted(std::string_view context, int count, std::string_view one, std::string_view more) {
  return count == 1 ? phrase(context, one) : phrase(context, more, {std::to_string(count)});
}

std::string raised(std::string text) {
  for (const std::string_view unit : {"ft2", "m2"}) {
    for (auto at = text.find(unit); at != std::string::npos; at = text.find(unit, at)) {
      text.replace(at + unit.size() - 1, 1, "²");
    }
  }
  return text;
}

Json species_words(const TractKnowledge& knowledge, SpeciesCode code) {
  const Species* species = knowledge.species().find(code);
  return species == nullptr ? Json(std::to_string(code.fia))
                            : phrase("Species", species->common_name);
}

Json tree_words(const TractKnowledge& knowledge, SpeciesCode code, Dbh dbh) {
  return phrase("TallyViewModel", "%1 %2", {species_words(knowledge, code), dbh_text(dbh)});
}

Json tagged_words(const TractKnowledge& knowledge, const std::string& tag, const TreeFacts& facts) {
  return joined({tag, tree_words(knowledge, facts.species, facts.dbh)}, "  ");
}

Json form_words(const std::string& label) {
  return label.empty() ? Json("") : phrase("Form", label);
}

Json verdict_words(Verdict verdict) {
  switch (verdict) {
    case Verdict::take:
      return phrase("Marks", "Take");
    case Verdict::keep:
      return phrase("Marks", "Keep");
    case Verdict::kill_standing:
      return phrase("Marks", "Kill standing");
    case Verdict::look_again:
      break;
  }
  return phrase("Marks", "Look again");
}

std::string_view verdict_icon(Verdict verdict) {
  switch (verdict) {
    case Verdict::take:
      return "take";
    case Verdict::keep:
      return "keep";
    case Verdict::kill_standing:
      return "kill";
    case Verdict::look_again:
      break;
  }
  return "look";
}

Json caution_json(const Caution& caution) {
  Json words = caution.text;
  if (caution.severity == Severity::stop) {
    words = phrase("MarkedTreeViewModel", "STOP. %1", {caution.text});
  } else if (caution.severity == Severity::extra_care) {
    words = phrase("MarkedTreeViewModel", "Extra care. %1", {caution.text});
  }
  return {{"severity", word_of(caution.severity)}, {"words", words}};
}

Json caution_list(const std::vector<Caution>& cautions) {
  Json list = Json::array();
  for (const Caution& caution : cautions) list.push_back(caution_json(caution));
  return list;
}

std::string rule_list(const std::vector<std::string>& rules) {
  std::string list;
  for (const std::string& rule : rules) list += (list.empty() ? "" : ", ") + rule;
  return list;
}

Json error_json(const Error& error) {
  return {{"code", name_of(error.code)},
          {"what", error.what},
          {"where", error.where},
          {"fix", error.fix}};
}

}  // namespace oaklight::web
