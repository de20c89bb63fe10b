#pragma once

#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <random>
#include <set>
#include <string>
#include <vector>

#include "core/session/tract_session.hpp"
#include "tests/support/set_clock.hpp"

namespace oaklight::test {

/// Something that is done to files in steps, each acknowledged when it is done, the same in every
/// run, while the disk may fail. The files lie in one folder of a TempDir.
class Work {
 public:
  virtual ~Work() = default;
  /// Lays the files down as they are before.
  virtual void lay_out(const std::filesystem::path& folder) = 0;
  /// Opens what is worked on.
  virtual Status start(const std::filesystem::path& folder) = 0;
  [[nodiscard]] virtual std::size_t steps() const = 0;
  virtual Status step(const std::filesystem::path& folder, std::size_t number) = 0;
  /// Whether a step that failed gives the same when it is done again without closing first; an
  /// import gives the same records with other ids.
  [[nodiscard]] virtual bool same_again() const { return true; }
  /// Whether that step is done already, although it was told to have failed: what was written and
  /// could not be synced may turn out to be whole when the file is opened again.
  virtual bool is_done(std::size_t number) = 0;
  /// Closes everything.
  virtual void stop() = 0;
  /// What is wrong with the files after the restart; "" when they hold what `done` steps left, or
  /// one more. `started`: start() was acknowledged.
  virtual std::string judge(const std::filesystem::path& folder, bool started,
                            std::size_t done) = 0;
};

/// How far a work came.
struct Came {
  bool started = false;
  std::size_t done = 0;
  std::set<ErrorCode> told;  ///< what the errors said
};

enum class AfterFailure {
  stop,   ///< as when the power is gone
  again,  ///< the same step once more, and once more after closing and opening
};
Came do_work(Work& work, const std::filesystem::path& folder, AfterFailure after);

/// Work on the tract file woods.gpkg.
class StoreWork : public Work {
 public:
  using Step = std::function<Status(TractSession&, const std::filesystem::path& folder)>;
  /// base    bytes of the tract file before; "": the work makes it
  /// log     bytes of a log beside it, with commits that the file does not hold yet
  /// beside  files of that name and bytes, which must stay as they are
  StoreWork(std::string base, std::vector<Step> steps, std::string log = "",
            std::map<std::string, std::string> beside = {});

  void lay_out(const std::filesystem::path& folder) override;
  Status start(const std::filesystem::path& folder) override;
  [[nodiscard]] std::size_t steps() const override { return steps_.size(); }
  Status step(const std::filesystem::path& folder, std::size_t number) override;
  bool is_done(std::size_t number) override;
  void stop() override { session_.reset(); }
  std::string judge(const std::filesystem::path& folder, bool started, std::size_t done) override;
  [[nodiscard]] bool same_again() const override { return same_again_; }

  /// Step `number` leaves a copy of that name.
  void promise_copy(std::size_t number, const std::string& name) { copies_[number] = name; }
  void never_same_again() { same_again_ = false; }

 private:
  struct State {
    TractData data;
    std::vector<std::string> history;
  };
  static Result<State> state_of(const TractSession& session);
  /// How a state differs from that before the first step (0) or after a step; "" when it does not.
  [[nodiscard]] std::string difference_to(std::size_t after, const State& found) const;
  void rehearse();
  StoreContext context() { return {clock_, std::mt19937_64{20260504}, "tablet"}; }
  Result<TractSession> open(const std::filesystem::path& file);
  std::string judge_file(const std::filesystem::path& file, std::size_t from, std::size_t to);

  std::string base_, log_;
  std::map<std::string, std::string> beside_;
  std::vector<Step> steps_;
  std::vector<State> states_;  ///< before the first step, and after each
  std::map<std::size_t, std::string> copies_;
  bool same_again_ = true;
  int judged_ = 0;
  SetClock clock_{1'777'900'020'000};  // 2026-05-04T13:07:00Z
  std::unique_ptr<TractSession> session_;
};

/// The works that the tests of this folder do, by name: "tally", "undo", "import", "upgrade",
/// "upgrade_log", "create", "copy", "join", "packet".
const std::vector<std::string>& work_names();
std::unique_ptr<Work> make_work(const std::string& name);

/// A count from the environment, for long runs by hand.
int count_wanted(const char* variable, int usual);

}  // namespace oaklight::test
