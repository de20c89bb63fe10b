#include "core/paper/ink.hpp"

namespace oaklight {
namespace {

QColor on_paper(Ink ink) {
  switch (ink) {
    case Ink::black:
    case Ink::dark_ground:
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
    case Ink::on_ground:
      return {255, 255, 255};
    case Ink::leave:
      return {16, 84, 52};
    case Ink::stop:
    case Ink::stop_ground:
      return {122, 20, 12};
    case Ink::water:
      return {20, 68, 120};
    case Ink::light:
      return {140, 82, 0};
  }
  return {0, 0, 0};
}

/// The sheet of a printed guide: warm, a little off white.
QColor by_day(Ink ink) {
  switch (ink) {
    case Ink::black:
      return {22, 24, 20};
    case Ink::rule:
      return {124, 124, 114};
    case Ink::tint:
      return {242, 243, 233};
    case Ink::band:
      return {230, 231, 218};
    case Ink::white:
      return {253, 252, 247};
    default:
      return on_paper(ink);
  }
}

QColor in_the_sun(Ink ink) {
  switch (ink) {
    case Ink::soft:
      return {20, 20, 20};
    case Ink::rule:
      return {90, 90, 90};
    case Ink::tint:
    case Ink::band:
      return {242, 242, 242};
    case Ink::leave:
      return {0, 56, 30};
    case Ink::stop:
    case Ink::stop_ground:
      return {96, 0, 0};
    case Ink::water:
      return {0, 40, 92};
    case Ink::light:
      return {116, 62, 0};
    default:
      return on_paper(ink);
  }
}

QColor by_night(Ink ink) {
  switch (ink) {
    case Ink::black:
      return {232, 230, 220};
    case Ink::soft:
      return {196, 194, 184};
    case Ink::rule:
      return {126, 126, 118};
    case Ink::tint:
      return {30, 34, 30};
    case Ink::band:
      return {42, 46, 42};
    case Ink::white:
      return {18, 20, 18};
    case Ink::leave:
      return {140, 208, 162};
    case Ink::stop:
      return {255, 166, 150};
    case Ink::water:
      return {150, 200, 244};
    case Ink::stop_ground:
      return {94, 24, 16};
    case Ink::dark_ground:
      return {58, 62, 58};
    case Ink::on_ground:
      return {255, 240, 236};
    case Ink::light:
      return {242, 190, 84};
  }
  return {232, 230, 220};
}

}  // namespace

QColor colour_of(Ink ink, Palette palette) {
  switch (palette) {
    case Palette::paper:
      return on_paper(ink);
    case Palette::day:
      return by_day(ink);
    case Palette::bright:
      return in_the_sun(ink);
    case Palette::night:
      return by_night(ink);
  }
  return on_paper(ink);
}

}  // namespace oaklight
