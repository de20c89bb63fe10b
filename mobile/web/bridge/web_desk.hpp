#pragma once

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>

#include "core/base/clock.hpp"
#include "core/session/card_view.hpp"
#include "core/session/knowledge.hpp"
#include "core/session/live_stand.hpp"
#include "core/session/live_tract.hpp"
#include "core/store/tract_store.hpp"
#include "mobile/web/bridge/arguments.hpp"

namespace oaklight::web {

/// Where a tree stands while only one of the two readings is known.
struct WaitingPlace {
  TreeId tree;
  std::optional<Degrees> azimuth;
  std::optional<TapedLength> distance;
};

/// The cards of a stand as they were decided, with the cautions of its trees, for as long as
/// nothing changed.
struct DecidedStand {
  StandId stand;
  std::uint64_t followed = 0;  ///< of the tract when it was decided
  std::vector<CardView> cards;
  std::optional<std::map<WalkTreeId, std::vector<Caution>>> cautions;  ///< when a card was opened
};

/// A tract file that is open, with its records in memory: always those that are on disk.
struct OpenTract {
  OpenTract(std::string name, TractStore opened, LiveTract records, TractKnowledge known,
            IdSource new_ids)
      : file(std::move(name)),
        store(std::move(opened)),
        live(std::move(records)),
        knowledge(std::move(known)),
        ids(std::move(new_ids)) {}

  std::string file;  ///< its name, "my_woods.gpkg"
  TractStore store;
  LiveTract live;
  TractKnowledge knowledge;
  IdSource ids;
  std::optional<LiveStand> kept;  ///< the stand of the plot at hand
  std::optional<WaitingPlace> waiting;
  std::optional<DecidedStand> decided;
};

/// The one tract that a page works on, and the files that the browser keeps for it. One thread does
/// all; what is answered is on disk.
class WebDesk {
 public:
  /// device  as the history names who wrote
  WebDesk(Clock& clock, std::string device) : clock_(clock), device_(std::move(device)) {}

  /// Answers one call of the page: {"call": "tally", ...} by {"ok": {...}} or {"error": {...}}.
  [[nodiscard]] std::string answer(std::string_view request);

  [[nodiscard]] OpenTract* tract() { return tract_.get(); }
  [[nodiscard]] StoreContext context() const { return {clock_, system_random(), device_}; }

  /// Opens a file and closes the one before; what is refused leaves that one open. Errors: of
  /// TractStore::open; of read_knowledge.
  Status open(const std::string& file);
  /// Makes a new file and opens it; demo: with the invented demo tract in it. Errors: as open; of
  /// TractStore::create.
  Status create(const std::string& file, bool demo);
  void close() { tract_.reset(); }

  using Maker = std::function<Result<Action>(OpenTract&)>;
  /// Makes an action, writes it and follows it in memory. returns  records that it changed
  Result<std::size_t> submit(const Maker& make);
  enum class Replay { undo, redo };
  Status replay(Replay way);
  /// What undo and redo would do.
  [[nodiscard]] Json undo_json();

 private:
  Status take(Result<TractStore> store, const std::string& file);
  void follow(std::span<const Change> changes);

  Clock& clock_;
  std::string device_;
  std::unique_ptr<OpenTract> tract_;
};

/// One call of the page.
using Call = Result<Json> (*)(WebDesk& desk, const Arguments& arguments);
struct NamedCall {
  std::string_view name;
  Call call;
  bool needs_tract = true;
};
// The calls by what they are about, a file each.
[[nodiscard]] std::span<const NamedCall> file_calls();
[[nodiscard]] std::span<const NamedCall> setup_calls();
[[nodiscard]] std::span<const NamedCall> plot_calls();
[[nodiscard]] std::span<const NamedCall> tally_calls();
[[nodiscard]] std::span<const NamedCall> tree_calls();
[[nodiscard]] std::span<const NamedCall> reading_calls();
[[nodiscard]] std::span<const NamedCall> stand_calls();
[[nodiscard]] std::span<const NamedCall> light_calls();
[[nodiscard]] std::span<const NamedCall> card_calls();
[[nodiscard]] std::span<const NamedCall> walk_tree_calls();
[[nodiscard]] std::span<const NamedCall> mark_calls();

/// The path of a file that the browser keeps. Errors: not_a_choice for a name that is no plain one.
[[nodiscard]] Result<std::string> path_of(const std::optional<std::string>& file);
/// Takes a file away with what SQLite keeps beside it.
void remove_file(const std::string& path);

}  // namespace oaklight::web
