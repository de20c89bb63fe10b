#pragma once

#include "core/base/result.hpp"

namespace oaklight {

/// Makes painting possible: a QGuiApplication when the program has none, and our own typeface.
///
/// A program without a window gets Qt's offscreen platform, so that no display, no window system
/// and no runtime folder is needed; a value of QT_QPA_PLATFORM that the user set is kept. An
/// application that exists is used as it is. May be called again; the first call belongs to the
/// main thread.
///
/// errors   cannot_write when the program runs a Qt application without graphics, or when the
///          typeface cannot be loaded
Status ensure_gui_app();

/// The name of the typeface built into this library.
inline constexpr const char* kTypeface = "Noto Sans";

}  // namespace oaklight
