#pragma once

#include <QCoreApplication>
#include <QString>
#include <cstdint>
#include <filesystem>
#include <functional>

#include "core/base/error.hpp"

/// Room on the disk of a tract file. A tally that runs into a full disk loses nothing that was
/// acknowledged (tests/crash), but a plot that cannot be finished is an hour lost: so it is told
/// in time. Row D10 of tests/app/field_rows.md.
class DiskRoom {
  Q_DECLARE_TR_FUNCTIONS(DiskRoom)

 public:
  /// Bytes free where that file lies; the greatest number where nobody can say.
  using Measure = std::function<std::uintmax_t(const std::filesystem::path&)>;

  explicit DiskRoom(std::filesystem::path file);

  /// A test decides what is free.
  void measureWith(Measure measure) { measure_ = std::move(measure); }

  /// too_low: a plot that is begun now may not be finished.
  enum class Level { enough, low, too_low };
  [[nodiscard]] Level level() const;
  /// What to tell of it; "" while there is enough.
  [[nodiscard]] QString warning() const;
  /// Why no plot is begun.
  [[nodiscard]] oaklight::Error refusal() const;

 private:
  [[nodiscard]] std::uintmax_t mebibytes() const;

  std::filesystem::path file_;
  Measure measure_;
};
