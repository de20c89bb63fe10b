#include "core/handoff/manifest.hpp"

#include <nlohmann/json.hpp>

#include "core/base/sha256.hpp"
#include "core/handoff/list_gpx.hpp"

namespace oaklight {
namespace {

using Json = nlohmann::ordered_json;

template <class Unit>
Json figure(const std::optional<Quantity<Unit>>& value) {
  return value ? Json(value->value) : Json(nullptr);
}

Json totals_json(const std::vector<ProductTotal>& totals) {
  Json list = Json::array();
  for (const ProductTotal& total : totals) {
    list.push_back({{"product", word_of(total.product)},
                    {"trees", total.trees},
                    {"board_feet", figure(total.board_feet)},
                    {"cords", figure(total.cords)},
                    {"trees_without_volume", total.without_volume}});
  }
  return list;
}

}  // namespace

std::string manifest_json(const Packet& packet, std::span<const PacketBytes> files) {
  Json trees = Json::object();
  std::size_t all = 0;
  for (const PacketList& list : lists_of(packet)) {
    trees[std::string(list.name)] = list.trees->size();
    all += list.trees->size();
  }
  Json parts = Json::array();
  for (const PacketBytes& file : files) {
    parts.push_back({{"name", file.name},
                     {"what", file.what},
                     {"bytes", file.bytes.size()},
                     {"sha256", sha256_hex(file.bytes)}});
  }
  const Json manifest = {
      {"manifest_for", "packet"},
      {"reader", word_of(packet.reader)},
      {"tract", packet.tract.name},
      {"demo", packet.tract.demo},
      {"made_on", packet.made_on},
      {"rule_versions", packet.rule_versions},
      {"log_rule", packet.log_rule},
      {"volumes_by", packet.volumes_by},
      {"trees", std::move(trees)},
      {"trees_in_all", all},
      {"trees_with_position", placed_trees(packet)},
      {"totals", totals_json(packet.totals)},
      {"totals_if_cleared", totals_json(packet.totals_if_cleared)},
      {"list_bytes", packet.list_csv.size()},
      {"list_sha256", packet.list_sha256},
      {"files", std::move(parts)},
  };
  // Text that is not UTF-8 must not stop a packet; it is shown as the replacement character.
  return manifest.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace oaklight
