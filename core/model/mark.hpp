#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/acorn.hpp"
#include "core/model/stump.hpp"
#include "core/model/tract.hpp"

namespace oaklight {

enum class Verdict { take, keep, kill_standing, look_again };
template <>
inline constexpr auto kWords<Verdict> =
    std::to_array<Word<Verdict>>({{Verdict::take, "take"},
                                  {Verdict::keep, "keep"},
                                  {Verdict::kill_standing, "kill_standing"},
                                  {Verdict::look_again, "look_again"}});

enum class Method { none, fell, machine_fell, girdle };
template <>
inline constexpr auto kWords<Method> =
    std::to_array<Word<Method>>({{Method::none, "none"},
                                 {Method::fell, "fell"},
                                 {Method::machine_fell, "machine_fell"},
                                 {Method::girdle, "girdle"}});

enum class Product { none, sawlog, pulpwood, firewood };
template <>
inline constexpr auto kWords<Product> =
    std::to_array<Word<Product>>({{Product::none, "none"},
                                  {Product::sawlog, "sawlog"},
                                  {Product::pulpwood, "pulpwood"},
                                  {Product::firewood, "firewood"}});

/// Who gets the packet.
enum class Reader { logger, firewood };
template <>
inline constexpr auto kWords<Reader> =
    std::to_array<Word<Reader>>({{Reader::logger, "logger"}, {Reader::firewood, "firewood"}});

/// What was decided for one tree of the marking walk, by rule or by hand.
struct Mark {
  MarkId id;
  WalkTreeId tree;
  Verdict verdict = Verdict::look_again;
  Method method = Method::none;
  Product product = Product::none;
  std::optional<Reader> destination;  ///< whose list it goes on; nothing: nobody's
  std::string reason;                 ///< one plain sentence
  std::vector<std::string> rules;     ///< ids of the rules behind it, e.g. "R1.50"
  bool by_hand = false;               ///< a person overruled the recommendation
  std::string rule_version;           ///< of the rule file that was used
};

/// Everything in a tract file at one moment.
struct TractData {
  Tract tract;
  std::vector<Stand> stands;
  std::vector<Cruise> cruises;
  std::vector<Plot> plots;
  std::vector<Tree> trees;
  std::vector<Regen> regens;
  std::vector<WalkTree> walk_trees;
  std::vector<Contact> contacts;
  std::vector<Mark> marks;
  std::vector<MapLine> lines;
  std::vector<Stump> stumps;
  std::vector<AcornCount> acorn_counts;
  std::vector<AcornYear> acorn_years;
};

}  // namespace oaklight
