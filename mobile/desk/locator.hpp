#pragma once

#include <QObject>
#include <QTimer>
#include <optional>
#include <vector>

#include "core/place/fix.hpp"
#include "mobile/desk/receiver.hpp"

/// Where the person is now, and which way they walk; or that nobody knows. Pages ask for it while
/// they show; with the last of them gone the receiver rests.
class Locator : public QObject {
  Q_OBJECT

 public:
  // Judgement: receivers tell a fix a second; in ten a walker has gone 40 ft.
  static constexpr int kOldMs = 10'000;

  /// old_ms  a fix that is so old is none any more
  explicit Locator(int old_ms = kOldMs, QObject* parent = nullptr);

  /// Listens to another receiver; what the one before said is forgotten.
  void use(std::unique_ptr<Receiver> receiver);
  [[nodiscard]] const Receiver* receiver() const { return receiver_.get(); }
  /// One more page, or one less, needs the position.
  void want(bool wanted);

  /// The newest fix; nothing once it is some seconds old, because a walker has gone on.
  [[nodiscard]] const std::optional<oaklight::Fix>& here() const { return here_; }
  /// From true north; nothing for one who stands.
  [[nodiscard]] std::optional<oaklight::Degrees> heading() const;

  /// From now on fixes are gathered, for the mean at one place.
  void gather();
  void stopGathering() { gathering_ = false; }
  [[nodiscard]] const std::vector<oaklight::Fix>& gathered() const { return gathered_; }

 signals:
  /// There is a newer fix, or none any more.
  void moved();
  /// The receiver complains, or does so no more.
  void problemChanged();

 private:
  void take(const oaklight::Fix& fix);
  void forget();

  std::unique_ptr<Receiver> receiver_;
  int wanted_ = 0;
  std::optional<oaklight::Fix> here_;
  oaklight::Heading heading_;
  bool gathering_ = false;
  std::vector<oaklight::Fix> gathered_;
  QTimer old_;  ///< runs out when the newest fix is too old
};
