#include "core/paper/ink.hpp"

namespace oaklight {

QColor colour_of(Ink ink) {
  switch (ink) {
    case Ink::black:
      return {0, 0, 0};
    case Ink::soft:
      return {64, 64, 64};
    case Ink::rule:
      return {150, 150, 150};
    case Ink::tint:
      return {244, 245, 239};
    case Ink::band:
      return {228, 229, 222};
    case Ink::white:
      return {255, 255, 255};
    case Ink::leave:
      return {16, 84, 52};
    case Ink::stop:
      return {122, 20, 12};
    case Ink::water:
      return {20, 68, 120};
  }
  return {0, 0, 0};
}

}  // namespace oaklight
