#pragma once

#include <QObject>
#include <chrono>
#include <deque>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <stop_token>
#include <variant>
#include <vector>

#include "core/session/knowledge.hpp"
#include "core/session/live_tract.hpp"
#include "core/store/tract_store.hpp"
#include "mobile/desk/background.hpp"
#include "mobile/desk/tract_writer.hpp"

/// A tract file as it was read, on whatever thread, before a desk works on it.
struct ReadTract {
  oaklight::TractStore store;
  oaklight::LiveTract live;
  oaklight::TractKnowledge knowledge;
};

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

  /// Opens a tract file and reads it, on any thread; looks only when another program holds it or
  /// the medium cannot be written. Damage is looked for later, see lookForDamage().
  /// Errors: of TractStore::open; of read_knowledge.
  static oaklight::Result<ReadTract> read(const std::filesystem::path& path, const Clocks& clocks);
  /// Makes a new tract file. Errors: of TractStore::create.
  static oaklight::Result<ReadTract> create(const std::filesystem::path& path,
                                            const Clocks& clocks);

  TractDesk(ReadTract tract, const Clocks& clocks);
  ~TractDesk() override;

  [[nodiscard]] const oaklight::LiveTract& live() const { return live_; }
  [[nodiscard]] const oaklight::TractData& data() const { return live_.data(); }
  [[nodiscard]] const oaklight::TractKnowledge& knowledge() const { return knowledge_; }
  oaklight::IdSource& ids() { return ids_; }
  [[nodiscard]] oaklight::Clock& clock() const { return clocks_.clock; }
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  /// For another connection to the same file, or a look into others.
  [[nodiscard]] oaklight::StoreContext context() const;
  [[nodiscard]] bool readOnly() const { return read_only_ || damage_; }

  /// Reads the whole file against its checksums beside the work, once, and tells by damageFound().
  /// A first picture comes before it; whatever leaves the tract comes after it, by whenSound().
  void lookForDamage();
  /// Tells as soon as it is known whether the file is sound; an error says that it is not.
  void whenSound(Then then);
  /// Why nothing more is written; nothing while no damage is known.
  [[nodiscard]] const std::optional<oaklight::Error>& damage() const { return damage_; }
  /// Whether the whole file was read and nothing found.
  [[nodiscard]] bool sound() const { return checked_ && !damage_; }

  /// Makes an action from the records as they are when its turn comes.
  using Maker = std::function<oaklight::Result<oaklight::Action>()>;

  /// Writes an action. While one could not be saved, all others are refused with its error.
  void submit(Maker make, Then then = {});
  /// The same for what takes long to work out, on another thread and from records that are still
  /// as they were when it is done; else it is worked out again.
  using LongMaker = std::function<oaklight::Result<oaklight::Action>(const oaklight::TractData&,
                                                                     oaklight::IdSource&)>;
  void submitLong(LongMaker make, Then then = {});
  /// Work on the file itself in its turn, a join or a decision; what it returns is followed.
  using Work =
      std::function<oaklight::Result<std::vector<oaklight::Change>>(oaklight::TractStore&)>;
  void submitWork(Work work, Then then = {});
  void undo();
  void redo();
  [[nodiscard]] const oaklight::UndoState& undoState() const { return undo_state_; }

  /// The action that is not on disk although a person did it; nothing when all is saved.
  [[nodiscard]] const std::optional<oaklight::Error>& notSaved() const { return not_saved_; }
  /// Tries again to save it.
  void retry();
  /// Gives it up, for example when the disk stays full.
  void giveUp();
  /// Whether something is on its way to the disk, or being worked out for it.
  [[nodiscard]] bool busy() const { return !jobs_.empty() || !long_jobs_.empty(); }
  /// How long the disk took over the last action.
  [[nodiscard]] std::chrono::microseconds lastCommit() const { return last_commit_; }

  /// Brings all that is saved into the one file, before the system may end the app.
  void settle();

  /// A compact copy of a sound file in one file, made by the writer.
  void copyTo(const std::filesystem::path& target, Then then);

  /// For work too long for the screen's thread: the records as they are now, never to change.
  [[nodiscard]] std::shared_ptr<const oaklight::TractData> snapshot() const {
    return live_.snapshot();
  }

 signals:
  /// Records changed, and are on disk.
  void changed(const std::vector<oaklight::Change>& changes);
  void undoStateChanged();
  void notSavedChanged();
  /// An action was refused and changed nothing: what, where and how to mend it.
  void refused(const oaklight::Error& error);
  /// The file is damaged, and from now on only looked at.
  void damageFound();

 private:
  enum class Replay { undo, redo };
  struct Job {
    std::variant<Maker, Replay, Work> what;
    Then then;
  };
  struct LongJob {
    LongMaker make;
    Then then;
  };
  using Written = std::variant<oaklight::Action, Replay, Work>;
  struct Outcome {
    oaklight::Result<std::vector<oaklight::Change>> changes;
    oaklight::UndoState undo_state;
    std::chrono::microseconds took{0};
  };

  static Outcome run(oaklight::TractStore& store, const Written& written);
  void add(Job job);
  void workOut();
  void start();
  void post(Written written);
  void finish(const Outcome& outcome);
  void settleSoundness(const oaklight::Status& sound);

  Clocks clocks_;
  std::filesystem::path path_;
  bool read_only_;
  oaklight::LiveTract live_;
  oaklight::TractKnowledge knowledge_;
  oaklight::IdSource ids_;
  oaklight::UndoState undo_state_;
  std::optional<oaklight::Error> not_saved_;
  std::chrono::microseconds last_commit_{0};
  std::deque<Job> jobs_;            ///< the first is with the writer
  std::deque<LongJob> long_jobs_;   ///< the first is being worked out
  std::optional<Written> pending_;  ///< what the writer has, or could not save
  std::unique_ptr<TractWriter> writer_;
  bool checked_ = false;  ///< for damage, to the end
  std::optional<oaklight::Error> damage_;
  std::vector<Then> wait_for_check_;
  std::stop_source stop_check_;
  Background check_, working_out_;
};
