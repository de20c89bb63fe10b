#include <algorithm>
#include <cmath>

#include "core/forms/cards.hpp"

namespace oaklight {
namespace {

/// The rows of one card.
struct Card {
  const CardRow* first = nullptr;
  const CardRow* crop = nullptr;
  std::vector<const CardRow*> neighbours;
  std::map<std::string_view, const CardRow*> tags;  ///< of the neighbours
  std::vector<const CardRow*> open;
};

std::string quoted(const std::string& text) { return "\"" + text + "\""; }

std::optional<CardRow> card_row(ImportJob& job, const FilledRow& row) {
  const auto role = row.word<CardRole>("role");
  CardRow read{row, role.value_or(CardRole::open), row.text("card"), row.text("tag")};
  if (!role || read.card.empty()) return std::nullopt;
  if (read.role == CardRole::open) read.tag.clear();
  if (read.role == CardRole::crop) {
    if (!read.tag.empty() && read.tag != read.card) {
      row.fault(job.faults, "tag", ErrorCode::contradiction,
                "The crop tree wears tag " + quoted(read.tag) + ", its card is " +
                    quoted(read.card) + ".",
                "A card is named by the tag of its crop tree: make the two the same.");
    }
    read.tag = read.card;
  }
  if (read.role == CardRole::neighbour) {
    if (read.tag.empty()) return std::nullopt;
    if (read.tag == read.card) {
      row.fault(job.faults, "tag", ErrorCode::contradiction,
                "The crop tree stands on its own card as a neighbour.",
                "Correct the tag, or write crop as its role.");
      return std::nullopt;
    }
  }
  return read;
}

/// A person who looks up at a touching crown sees on which side it is.
void check_sides(ImportJob& job, const CardRow& neighbour) {
  const FilledRow& row = neighbour.row;
  const auto seen = row.word<Seen>("seen");
  const bool crowds = seen == Seen::touches || seen == Seen::over;
  if (crowds && !row.given("side") && !row.given("azimuth_deg")) {
    row.fault(job.faults, "side", ErrorCode::missing_value,
              "Neighbour " + quoted(neighbour.tag) + " crowds the crop tree, on no side.",
              "Give its side, or its azimuth.");
  }
  const auto azimuth = row.quantity<Degrees>("azimuth_deg");
  const Sides sides = named_sides(row);
  if (!azimuth || sides.empty()) return;
  constexpr double kBehind = 90.0;  // a wide crown reaches round a corner, not to the other side
  for (const Side side : kSides) {
    const Degrees middle{90.0 * static_cast<int>(side)};
    if (sides.has(side) && degrees_apart(*azimuth, middle) <= kBehind) return;
  }
  row.fault(job.faults, "azimuth_deg", ErrorCode::contradiction,
            "The azimuth points away from the side that is given.",
            "Read it from the crop tree to the neighbour, or correct the side.");
}

/// Says how a neighbour makes an open side a contradiction; nothing when it does not.
const CardRow* crowder_of(const Card& card, Side side) {
  for (const CardRow* neighbour : card.neighbours) {
    const auto seen = neighbour->row.word<Seen>("seen");
    if (seen == Seen::none || seen == Seen::below) continue;
    Sides sides = named_sides(neighbour->row);
    const auto azimuth = neighbour->row.quantity<Degrees>("azimuth_deg");
    if (sides.empty() && azimuth) sides.add(side_of(*azimuth));
    if (sides.has(side)) return neighbour;
  }
  return nullptr;
}

void check_open_sides(ImportJob& job, const Card& card) {
  Sides told;
  for (const CardRow* open : card.open) {
    for (const Side side : kSides) {
      if (!named_sides(open->row).has(side)) continue;
      if (told.has(side)) {
        open->row.fault(
            job.faults, "side", ErrorCode::duplicate,
            "Side " + std::string(word_of(side)) + " of this card is told as open twice.",
            "Keep one.");
      }
      told.add(side);
      if (const CardRow* crowder = crowder_of(card, side)) {
        open->row.fault(job.faults, "side", ErrorCode::contradiction,
                        "Side " + std::string(word_of(side)) + " is told as open, and neighbour " +
                            quoted(crowder->tag) + " on line " +
                            std::to_string(crowder->row.line()) + " stands there.",
                        "Take out the open side, or say that there is a clear gap: none.");
      }
    }
  }
}

void check_crop_row(ImportJob& job, const std::string& name, const Card& card) {
  if (!card.crop) {
    card.first->row.fault(job.faults, "card", ErrorCode::missing_value,
                          "Card " + quoted(name) + " has no row for its crop tree.",
                          "Add a row with role crop.");
    return;
  }
  const auto& known = job.existing.walk_trees;
  const bool in_tract = std::any_of(known.begin(), known.end(), [&](const WalkTree& tree) {
    return tree.crop && tree.tag == name;
  });
  if (in_tract) {
    card.crop->row.fault(job.faults, "card", ErrorCode::duplicate,
                         "The card of crop tree " + quoted(name) + " is in the tract already.",
                         "Take its rows out, or give this tree its own tag.");
  }
}

std::map<std::string, Card> group(ImportJob& job, const std::vector<CardRow>& rows) {
  std::map<std::string, Card> cards;
  for (const CardRow& row : rows) {
    Card& card = cards[row.card];
    if (!card.first) card.first = &row;
    const std::string stand = row.row.text("stand");
    if (const std::string other = card.first->row.text("stand");
        !stand.empty() && !other.empty() && stand != other) {
      row.row.fault(job.faults, "stand", ErrorCode::contradiction,
                    "Card " + quoted(row.card) + " is in stand " + quoted(other) + " on line " +
                        std::to_string(card.first->row.line()) + ".",
                    "Give all rows of a card one stand, that of the crop tree.");
    }
    if (row.role == CardRole::open) {
      card.open.push_back(&row);
    } else if (row.role == CardRole::neighbour) {
      const auto [twin, fresh] = card.tags.emplace(row.tag, &row);
      if (fresh) {
        card.neighbours.push_back(&row);
      } else {
        row.row.fault(job.faults, "tag", ErrorCode::duplicate,
                      "Neighbour " + quoted(row.tag) + " is on this card already, on line " +
                          std::to_string(twin->second->row.line()) + ".",
                      "Keep one row; a tree on two sides has both in its side cell: N|E.");
      }
    } else if (!card.crop) {
      card.crop = &row;
    } else {
      row.row.fault(job.faults, "role", ErrorCode::duplicate,
                    "Card " + quoted(row.card) + " has its crop tree on line " +
                        std::to_string(card.crop->row.line()) + " already.",
                    "Keep one row with role crop.");
    }
  }
  return cards;
}

/// Sides at which somebody looked up: the open ones, and those of neighbours that were looked at.
Sides looked_at(const Card& card) {
  Sides looked;
  for (const CardRow* open : card.open) looked.add(named_sides(open->row));
  for (const CardRow* neighbour : card.neighbours) {
    const auto seen = neighbour->row.word<Seen>("seen");
    if (!seen || seen == Seen::not_looked) continue;
    const Sides sides = named_sides(neighbour->row);
    const auto azimuth = neighbour->row.quantity<Degrees>("azimuth_deg");
    looked.add(sides);
    if (sides.empty() && azimuth) looked.add(side_of(*azimuth));
  }
  return looked;
}

void add_contact(ImportJob& job, const CardRow& row,
                 const std::map<std::string, WalkTreeId>& trees) {
  const auto crop = trees.find(row.card);
  const auto neighbour = trees.find(row.tag);
  if (crop == trees.end() || neighbour == trees.end()) return;
  Contact contact;
  contact.id = job.ids.next_id<ContactTag>();
  contact.crop = crop->second;
  contact.neighbour = neighbour->second;
  contact.sides = named_sides(row.row);
  contact.seen = row.row.word<Seen>("seen").value_or(Seen::not_looked);
  contact.distance = row.row.get<TapedLength>("distance");
  contact.azimuth = row.row.quantity<Degrees>("azimuth_deg");
  job.data.contacts.push_back(contact);
}

}  // namespace

Sides named_sides(const FilledRow& row) {
  Sides sides;
  const auto words = row.get<std::vector<std::string>>("side");
  if (!words) return sides;
  for (const std::string& word : *words) {
    if (const auto side = from_word<Side>(word)) sides.add(*side);
  }
  return sides;
}

Side side_of(Degrees azimuth) {
  constexpr Side kRound[] = {Side::north, Side::east, Side::south, Side::west};
  return kRound[static_cast<std::size_t>(std::floor((azimuth.value + 45.0) / 90.0)) % 4];
}

double degrees_apart(Degrees a, Degrees b) {
  const double apart = std::fmod(std::fabs(a.value - b.value), 360.0);
  return std::min(apart, 360.0 - apart);
}

void import_cards(ImportJob& job) {
  std::vector<CardRow> rows;
  for (const auto& row : job.tables.crop_trees.rows()) {
    const FilledRow filled(job.tables.crop_trees, row);
    job.find_stand(filled);
    if (auto read = card_row(job, filled)) rows.push_back(std::move(*read));
  }
  RowsByTag by_tag;
  for (const CardRow& row : rows) {
    if (!row.tag.empty()) by_tag[row.tag].push_back(&row);
  }
  std::map<std::string, Sides> looked;
  for (const auto& [name, card] : group(job, rows)) {
    check_crop_row(job, name, card);
    for (const CardRow* neighbour : card.neighbours) check_sides(job, *neighbour);
    check_open_sides(job, card);
    looked[name] = looked_at(card);
  }
  check_mutual(job, rows);
  const auto trees = join_tags(job, by_tag, looked);
  for (const CardRow& row : rows) {
    if (row.role == CardRole::neighbour) add_contact(job, row, trees);
  }
}

}  // namespace oaklight
