#pragma once

#include <QColor>

namespace oaklight {

/// The few colours of our paper. Each is told apart from white on a grey printer, and none carries
/// a meaning alone: a word or a shape always stands with it.
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
};

QColor colour_of(Ink ink);

}  // namespace oaklight
