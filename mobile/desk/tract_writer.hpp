#pragma once

#include <QObject>
#include <QThread>
#include <functional>

#include "core/store/tract_store.hpp"

/// A thread of its own for one open tract file, so that no picture ever waits for a disk.
class TractWriter {
 public:
  explicit TractWriter(oaklight::TractStore store);
  /// Finishes what was posted, then closes the file.
  ~TractWriter();
  TractWriter(const TractWriter&) = delete;
  TractWriter& operator=(const TractWriter&) = delete;

  /// Runs work on the thread, after all that was posted before.
  void post(std::function<void(oaklight::TractStore&)> work);

 private:
  oaklight::TractStore store_;
  QThread thread_;
  QObject on_thread_;  ///< what lives on it, for posting
};
