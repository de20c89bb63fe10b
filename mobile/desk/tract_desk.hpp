#pragma once

#include <QObject>
#include <chrono>
#include <deque>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <variant>
#include <vector>

#include "core/session/knowledge.hpp"
#include "core/session/live_tract.hpp"
#include "core/store/tract_store.hpp"
#include "mobile/desk/tract_writer.hpp"

/// One open tract file as the screens work on it: its records in memory, always those that are on
/// disk. What a person does goes to the writer first and is shown when it is safe.
class TractDesk : public QObject {
  Q_OBJECT

 public:
  /// Told on the screen's thread once the action is on disk, or not.
  using Then = std::function<void(const oaklight::Status&)>;

  struct Clocks {
    oaklight::Clock& clock;  ///< must outlive the desk
    oaklight::IdSource::Random random;
    std::string device;
  };

  /// Opens a tract file; looks only when another program holds it or the medium cannot be written.
  /// Errors: of TractStore::open; of read_knowledge.
  static oaklight::Result<std::unique_ptr<TractDesk>> open(const std::filesystem::path& path,
                                                           const Clocks& clocks);
  /// Makes a new tract file. Errors: of TractStore::create.
  static oaklight::Result<std::unique_ptr<TractDesk>> create(const std::filesystem::path& path,
                                                             const Clocks& clocks);
  ~TractDesk() override;

  [[nodiscard]] const oaklight::LiveTract& live() const { return live_; }
  [[nodiscard]] const oaklight::TractData& data() const { return live_.data(); }
  [[nodiscard]] const oaklight::TractKnowledge& knowledge() const { return knowledge_; }
  oaklight::IdSource& ids() { return ids_; }
  [[nodiscard]] oaklight::Clock& clock() const { return clock_; }
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  [[nodiscard]] bool readOnly() const { return read_only_; }

  /// Makes an action from the records as they are when its turn comes.
  using Maker = std::function<oaklight::Result<oaklight::Action>()>;

  /// Writes an action. While one could not be saved, all others are refused with its error.
  void submit(Maker make, Then then = {});
  void undo();
  void redo();
  [[nodiscard]] const oaklight::UndoState& undoState() const { return undo_state_; }

  /// The action that is not on disk although a person did it; nothing when all is saved.
  [[nodiscard]] const std::optional<oaklight::Error>& notSaved() const { return not_saved_; }
  /// Tries again to save it.
  void retry();
  /// Gives it up, for example when the disk stays full.
  void giveUp();
  /// Whether something is on its way to the disk.
  [[nodiscard]] bool busy() const { return !jobs_.empty(); }
  /// How long the disk took over the last action.
  [[nodiscard]] std::chrono::microseconds lastCommit() const { return last_commit_; }

  /// A compact copy in one file, made by the writer.
  void copyTo(const std::filesystem::path& target, Then then);

  /// For work too long for the screen's thread: the records as they are now, never to change.
  [[nodiscard]] std::shared_ptr<const oaklight::TractData> snapshot() const;

 signals:
  /// Records changed, and are on disk.
  void changed(const std::vector<oaklight::Change>& changes);
  void undoStateChanged();
  void notSavedChanged();
  /// An action was refused and changed nothing: what, where and how to mend it.
  void refused(const oaklight::Error& error);

 private:
  enum class Replay { undo, redo };
  struct Job {
    std::variant<Maker, Replay> what;
    Then then;
  };
  using Written = std::variant<oaklight::Action, Replay>;
  struct Outcome {
    oaklight::Result<std::vector<oaklight::Change>> changes;
    oaklight::UndoState undo_state;
    std::chrono::microseconds took{0};
  };

  TractDesk(oaklight::TractStore store, oaklight::TractData data,
            oaklight::TractKnowledge knowledge, const Clocks& clocks);
  static oaklight::Result<std::unique_ptr<TractDesk>> settle(
      oaklight::Result<oaklight::TractStore> store, const Clocks& clocks);
  static Outcome run(oaklight::TractStore& store, const Written& written);
  void add(Job job);
  void start();
  void post(Written written);
  void finish(const Outcome& outcome);

  oaklight::Clock& clock_;
  std::filesystem::path path_;
  bool read_only_;
  oaklight::LiveTract live_;
  oaklight::TractKnowledge knowledge_;
  oaklight::IdSource ids_;
  oaklight::UndoState undo_state_;
  std::optional<oaklight::Error> not_saved_;
  std::chrono::microseconds last_commit_{0};
  std::deque<Job> jobs_;            ///< the first is with the writer
  std::optional<Written> pending_;  ///< what the writer has, or could not save
  mutable std::shared_ptr<const oaklight::TractData> snapshot_;
  std::unique_ptr<TractWriter> writer_;
};
