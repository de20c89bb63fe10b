#pragma once

#include <QColor>

namespace oaklight {

/// The few colours of our drawings, named as on paper. Each is told apart from white on a grey
/// printer, and none carries a meaning alone: a word or a shape always stands with it.
enum class Ink {
  black,
  soft,  ///< second-rank text, still at least 7:1 on white
  rule,  ///< hairlines
  tint,  ///< the ground of a stand
  band,  ///< the ground of a sub-head
  white,
  leave,  ///< trees that stay
  stop,   ///< danger
  water,
  stop_ground,  ///< the ground of a word of danger
  dark_ground,  ///< the ground of a word that must be seen first
  on_ground,    ///< text on either
  light,        ///< the open edge of a crown
};
inline constexpr auto kInks = {Ink::black, Ink::soft,        Ink::rule,        Ink::tint,
                               Ink::band,  Ink::white,       Ink::leave,       Ink::stop,
                               Ink::water, Ink::stop_ground, Ink::dark_ground, Ink::on_ground,
                               Ink::light};

/// Where a drawing is seen. Ink::white is the ground in each of them, and Ink::black what stands
/// out most.
enum class Palette {
  paper,
  day,     ///< a screen under trees
  bright,  ///< a screen in the sun: as far from the ground as can be
  night,   ///< a screen in the dark: nothing behind text is brighter than #404040
};
inline constexpr auto kPalettes = {Palette::paper, Palette::day, Palette::bright, Palette::night};

/// accuracy text in black, soft, leave, stop and water reaches 7:1 on white, tint and band, text in
///          on_ground on its two grounds; light and rule are for shapes: light 4.5:1, and rule 3:1
///          on screens. Bright: black reaches 18:1
/// source   WCAG 2.2, success criteria 1.4.6 and 1.4.11
QColor colour_of(Ink ink, Palette palette = Palette::paper);

/// What lies under a drawing: fill the screen with it before painting.
inline QColor ground_of(Palette palette) { return colour_of(Ink::white, palette); }

}  // namespace oaklight
