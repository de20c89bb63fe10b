#pragma once

#include <memory>

#include "core/base/result.hpp"

class QGuiApplication;

namespace oaklight {

/// The name of the typeface built into this library.
inline constexpr const char* kTypeface = "Noto Sans";

/// Makes painting possible as long as it lives: a QGuiApplication where the program has none, and
/// our own typeface.
///
/// A program without a window gets Qt's offscreen platform, so that no display, no window system
/// and no runtime folder is needed; a value of QT_QPA_PLATFORM that the user set is kept. An
/// application that exists is used and left as it is.
class PaperApplication {
 public:
  /// errors   cannot_write when the program runs a Qt application without graphics, or when the
  ///          typeface cannot be loaded
  /// assumes  called on the thread of the Qt application, or on the main thread where there is none
  static Result<PaperApplication> start();

  PaperApplication(PaperApplication&&) noexcept;
  PaperApplication& operator=(PaperApplication&&) = delete;
  ~PaperApplication();

 private:
  PaperApplication();
  std::unique_ptr<QGuiApplication> own_;  ///< null where the program has one
};

}  // namespace oaklight
