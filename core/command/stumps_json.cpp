#include "core/command/stumps_json.hpp"

#include "core/command/figure_keys.hpp"
#include "core/command/json_values.hpp"

namespace oaklight::command {
namespace {

Json damage_json(const DamageFigure& damage) {
  return {{"trees_to_be_left", damage.left},
          {"felled", damage.cut},
          {"badly_hurt", damage.badly},
          {"hurt_less", damage.other},
          {"share_pct", optional_json(damage.share())},
          {"limit_pct", damage.limit.value},
          {"rule", damage.rule},
          {"over", damage.over()}};
}

template <class Q>
Json between_json(const Between<Q>& value) {
  return {{"low", value.low.value}, {"likely", value.likely.value}, {"high", value.high.value}};
}

template <class Q>
Json between_json(const std::optional<Between<Q>>& value) {
  return value ? between_json(*value) : Json(nullptr);
}

Json place_json(const std::optional<Position>& place) {
  if (!place) return nullptr;
  return {{"latitude_deg", place->latitude.value}, {"longitude_deg", place->longitude.value}};
}

Json json_of(const UnmarkedTree& tree) {
  return {{"tag", text_or_null(tree.tag)},
          {"species", text_or_null(tree.species)},
          {"stand", text_or_null(tree.stand)},
          {"leave_tree", tree.leave_tree},
          {"crop_tree", tree.crop},
          {"hung", tree.hung},
          {"dbh_in", between_json(tree.dbh)},
          {"dbh_by_tape", tree.measured},
          {"board_feet", between_json(tree.board_feet)},
          {"board_feet_by_local_table", tree.local_board_feet},
          {"cords_if_firewood", between_json(tree.cords)},
          {"cords_by_local_table", tree.local_cords},
          {"position", place_json(tree.position)}};
}

Json json_of(const HurtTree& tree) {
  return {{"tag", text_or_null(tree.tag)},
          {"species", text_or_null(tree.species)},
          {"stand", text_or_null(tree.stand)},
          {"crop_tree", tree.crop},
          {"wound", tree.wound ? Json(word_of(*tree.wound)) : Json(nullptr)},
          {"wound_place", tree.place ? Json(word_of(*tree.place)) : Json(nullptr)},
          {"badly", tree.badly()},
          {"position", place_json(tree.position)}};
}

Json audit_json(const StumpAudit& audit) {
  return {{"model", word_of(audit.plan.model)},
          {"sample_needed", audit.plan.sample},
          {"wrong_allowed", audit.plan.allowed},
          {"bound_pct", audit.bound.value},
          {"confidence_pct", 100.0 * audit.confidence.share()},
          {"seed", audit.seed},
          {"tags", audit.tags},
          {"not_seen", audit.not_seen},
          {"wrong", audit.wrong},
          {"greatest_wrong_share_pct", optional_json(audit.greatest_share)},
          {"claim_stands", audit.holds()}};
}

}  // namespace

std::string stumps_json(const StumpCheck& check, const std::optional<StumpAudit>& audit,
                        const std::vector<std::string>& written) {
  Json json{{"listed", check.listed.size()}, {"looked_at", check.looked_at()}};
  for (const auto& [state, word] : kWords<ListState>) json[std::string(word)] = check.of(state);
  json["share_done_pct"] = optional_json(check.share_done());
  const UnmarkedTotals& cut = check.unmarked_totals;
  json["cut_not_marked"] = {{"trees", cut.trees},
                            {"without_dbh", cut.without_dbh},
                            {"log_rule", check.log_rule},
                            {"board_feet", between_json(cut.board_feet)},
                            {"with_board_feet", cut.with_board_feet},
                            {"cords_if_firewood", between_json(cut.cords)},
                            {"with_cords", cut.with_cords},
                            {"volumes_by", check.volumes_by},
                            {"each", Json::array()}};
  for (const UnmarkedTree& tree : check.unmarked) {
    json["cut_not_marked"]["each"].push_back(json_of(tree));
  }
  json["crop_trees"] = damage_json(check.crop_damage);
  json["trees_left"] = damage_json(check.left_damage);
  json["hurt"] = Json::array();
  for (const HurtTree& tree : check.hurt) json["hurt"].push_back(json_of(tree));
  json["hurt_without_tag"] = check.hurt_without_tag;
  json["tags_twice"] = Json::array();
  for (const TagTwice& tag : check.twice) json["tags_twice"].push_back(tag.tag);
  if (audit) json["audit"] = audit_json(*audit);
  json["files"] = written;
  add_sources(json, Document::stumps);
  return json_text(json);
}

}  // namespace oaklight::command
