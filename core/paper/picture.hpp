#pragma once

#include <QRectF>
#include <QSizeF>
#include <QString>
#include <functional>
#include <optional>
#include <vector>

#include "core/paper/drawing.hpp"
#include "core/units/reading.hpp"

namespace oaklight {

/// The room that a picture gets, and how it is read.
struct PictureFrame {
  QSizeF size;            ///< pt
  double letters = 11.0;  ///< size of ordinary text, pt; all else keeps its proportion to it. Where
                          ///< the frame is less than 20 letters wide or high they are set smaller
  UnitSystem units = UnitSystem::us;
  bool head = true;  ///< false: without its large figure and title, for a screen that shows its own
};

/// How the parts of a chart are told apart, with colour or without.
enum class Pattern { solid, hatched, open, mixed };
void fill_pattern(Drawing& drawing, const QRectF& rect, Pattern pattern);

/// One thing of a picture and what it means.
struct KeyEntry {
  std::function<void(Drawing&, const QRectF&)> sample;  ///< draws it into a box of kKeySample
  QString words;
};
inline constexpr QSizeF kKeySample{20.0, 11.0};

/// One picture while it is laid out. Lengths are such that ordinary text is kBodyText;
/// finish() brings all to the size that was asked for.
class PictureSheet {
 public:
  /// Where the picture itself stands: below its words, or, in a frame that is wide, beside them.
  enum class Place { below, beside };
  explicit PictureSheet(const PictureFrame& frame, Place place = Place::below);

  Drawing& drawing() { return drawing_; }
  /// What head, key and foot have left of the column of words.
  [[nodiscard]] const QRectF& room() const { return room_; }
  /// The place of the picture: the room, or all that is beside the words.
  [[nodiscard]] const QRectF& picture() const { return beside_ ? *beside_ : room_; }
  [[nodiscard]] bool beside() const { return beside_.has_value(); }
  /// Wide enough for things side by side.
  [[nodiscard]] bool wide() const { return whole_.width() >= 400.0; }

  /// The figure that matters most, large, and what it is, under it. Either may be "".
  void head(const QString& figure, const QString& words);
  /// Something that must be known to read the picture; also without a head.
  void note(const QString& words);
  /// What the things of the picture mean, below what was drawn at the top so far.
  void key(const std::vector<KeyEntry>& entries);
  /// Text along the bottom; each call stands above the one before.
  void foot(const QString& words, const TextStyle& style = kSmallText.in(Ink::soft));
  /// In place of a picture: what is missing, and what to do about it.
  void missing(const QString& what, const QString& fix);

  [[nodiscard]] double factor() const { return factor_; }
  /// The picture, its corner at 0, 0, within frame.size.
  [[nodiscard]] Drawing finish() const { return scaled(drawing_, factor_); }

 private:
  double factor_ = 1.0;
  bool head_ = true;
  QRectF whole_;
  QRectF room_;
  std::optional<QRectF> beside_;
  Drawing drawing_;
};

/// A figure for people: thousands parted, no trailing unit.
QString figure_words(double value, int decimals);

}  // namespace oaklight
