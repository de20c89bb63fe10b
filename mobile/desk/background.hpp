#pragma once

#include <QObject>
#include <QThreadPool>
#include <QTimer>
#include <cstdint>
#include <functional>

/// Work too long for the screen's thread. Only the newest request counts: what was asked before it
/// is not begun any more, and its answer is dropped.
class Background : public QObject {
  Q_OBJECT

 public:
  /// What to do with what was found out, on the screen's thread.
  using Answer = std::function<void()>;
  /// Runs on another thread; it holds all it needs and touches nothing of a screen.
  using Work = std::function<Answer()>;

  explicit Background(QObject* parent = nullptr);
  /// Waits for what runs.
  ~Background() override;

  void ask(Work work);
  /// Nobody waits for an answer any more.
  void drop();
  /// No answer yet to the newest request.
  [[nodiscard]] bool busy() const { return busy_; }
  /// The answer takes so long that a person wonders.
  [[nodiscard]] bool late() const { return late_; }

 signals:
  void lateChanged();
  /// The newest request was answered.
  void answered();

 private:
  void settle(const Answer& answer);
  void rest();
  void setLate(bool late);

  QThreadPool pool_;
  QTimer patience_;
  std::uint64_t newest_ = 0;
  bool busy_ = false;
  bool late_ = false;
};
