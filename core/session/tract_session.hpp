#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "core/forms/read_cruise.hpp"
#include "core/session/decide.hpp"

namespace oaklight {

/// What an import wrote, or why it wrote nothing.
struct ImportReport {
  std::vector<Error> faults;  ///< not empty: nothing was written
  int stands = 0, plots = 0, trees = 0, regens = 0, crop_trees = 0, neighbours = 0, lines = 0;
  int acorn_counts = 0, acorn_years = 0, stumps = 0;
  int volume_lines = 0;  ///< of the local volume table
};

/// Where calculation and the tract file meet: each call reads, computes (decide.hpp) and, where it
/// says so, writes in one transaction. One object is one open tract file.
class TractSession {
 public:
  /// Makes a new tract file. Errors: of TractStore::create; of the built-in forms (a bug).
  static Result<TractSession> create(const std::filesystem::path& path, StoreContext context);
  /// Opens a tract file. Errors: of TractStore::open; of the tract's own forms when a person edited
  /// them so that they no longer read.
  static Result<TractSession> open(const std::filesystem::path& path, OpenMode mode,
                                   StoreContext context);

  [[nodiscard]] const TractKnowledge& knowledge() const { return knowledge_; }
  TractStore& store() { return store_; }
  [[nodiscard]] const TractStore& store() const { return store_; }
  [[nodiscard]] Result<TractData> data() const { return store_.load(); }

  /// Reads the files of a cruise, checks them, and writes all of it or nothing. A local volume
  /// table and records are two actions, and two steps to undo: where the program is killed or the
  /// disk fails for good between them the table stays alone, and the same import finishes it.
  /// Errors: of the store; faults of the files are in the report.
  Result<ImportReport> import_files(const CruiseFiles& files);

  /// Decides each tree of the marking walk, stand by stand. Writes nothing.
  /// Errors: no_data when no tree was walked; of stand_facts.
  [[nodiscard]] Result<std::vector<StandPlan>> recommend();

  /// Decides the trees of each fixed plot whose trees all have azimuth and distance, crowns drawn
  /// as circles, guards by the stand's own figures. Plots give a prescription and the marking walk
  /// gives the list, so nothing is ever stored from here. Errors: no_data when no plot is mapped;
  /// of stand_facts.
  [[nodiscard]] Result<std::vector<MappedPlotPlan>> recommend_plots() const;

  /// Stores the marks of a recommendation as one action that can be undone. Trees that a person
  /// decided by hand keep their mark; a mark that says the same already is not written again.
  /// returns  marks written
  Result<int> store_marks(const std::vector<StandPlan>& plans);

  /// What one reader is handed, from the marks in the file. Errors: of make_packet.
  [[nodiscard]] Result<Packet> packet(PacketReader reader, PacketOptions options) const;

 private:
  TractSession(TractStore store, TractKnowledge knowledge)
      : store_(std::move(store)), knowledge_(std::move(knowledge)) {}

  Status apply_with_volumes(const Action& action, const std::string& volumes);

  TractStore store_;
  TractKnowledge knowledge_;
};

}  // namespace oaklight
