#include "core/handoff/marked_list_csv.hpp"

#include "core/base/csv_text.hpp"
#include "core/base/number_text.hpp"

namespace oaklight {
namespace {

constexpr std::size_t kWorkColumns = 5;

std::vector<std::string> header() {
  return {"list",      "number",       "tag",           "cautions",  "species",  "dbh_in",
          "stand",     "method",       "product",       "volume_bf", "log_rule", "volume_cords",
          "crop_tree", "latitude_deg", "longitude_deg", "reason"};
}

/// One of the four parts of the list.
struct Part {
  std::string_view name;
  const std::vector<PacketTree>& trees;
  bool to_cut;  ///< by this reader, now or when somebody cleared the tree
};

/// "stop DEAD_ASH: ... | extra_care SLOPE_15: ...", all of them, stops first.
std::string caution_cell(const PacketTree& tree) {
  std::string text;
  for (const Caution& caution : tree.cautions) {
    if (!text.empty()) text += " | ";
    text += std::string(word_of(caution.severity)) + " " + caution.code + ": " + caution.text;
  }
  return safe_csv_cell(text);
}

/// What is to be done and what it yields stands only beside trees that this reader may come to cut,
/// so that nobody filters the others out as work of his.
void add_work(std::vector<std::string>& cells, const Packet& packet, const PacketTree& tree) {
  cells.emplace_back(word_of(tree.method));
  cells.emplace_back(word_of(tree.product));
  cells.push_back(tree.board_feet ? number_text(tree.board_feet->value, 0) : "");
  cells.push_back(tree.board_feet ? csv_cell(packet.log_rule) : "");
  cells.push_back(tree.cords ? number_text(tree.cords->value, 2) : "");
}

std::string record(const Packet& packet, const Part& part, std::size_t i) {
  const PacketTree& tree = part.trees[i];
  std::vector<std::string> cells = {std::string(part.name), std::to_string(i + 1),
                                    safe_csv_cell(tree.tag)};
  cells.push_back(caution_cell(tree));
  cells.push_back(safe_csv_cell(tree.species));
  cells.push_back(number_text(tree.dbh.inches().value, 1));
  cells.push_back(safe_csv_cell(tree.stand));
  if (part.to_cut) {
    add_work(cells, packet, tree);
  } else {
    cells.resize(cells.size() + kWorkColumns);
  }
  cells.emplace_back(tree.crop ? "yes" : "no");
  cells.push_back(tree.position ? number_text(tree.position->latitude.value, 6) : "");
  cells.push_back(tree.position ? number_text(tree.position->longitude.value, 6) : "");
  cells.push_back(safe_csv_cell(tree.reason));
  return csv_record(cells);
}

}  // namespace

std::string marked_list_csv(const Packet& packet) {
  const bool logger = packet.reader == Reader::logger;
  std::string text = csv_record(header());
  for (const Part& part :
       {Part{"cut", packet.cut, true},
        Part{logger ? "trained_feller_only" : "leave_alone", packet.trained, logger},
        Part{"keep", packet.keep, false}, Part{"not_yours", packet.others, false}}) {
    for (std::size_t i = 0; i < part.trees.size(); ++i) text += record(packet, part, i);
  }
  return text;
}

}  // namespace oaklight
