#include "tests/paper/picture_check.hpp"

#include <QDir>
#include <QImage>
#include <QPainter>
#include <QPainterPathStroker>
#include <algorithm>
#include <cmath>

#include "core/paper/page.hpp"
#include "tests/paper/paper_fixture.hpp"
#include "tests/support/places.hpp"

namespace oaklight::test {
namespace {

/// The room of the letters themselves: from above the capitals to below the tails.
QRectF letters_of(const TextItem& item) {
  const double p = item.style.points;
  return {item.baseline.x(), item.baseline.y() - 0.73 * p, text_width(item.text, item.style),
          0.93 * p};
}

std::string told(const TextItem& item) { return "\"" + item.text.toStdString() + "\""; }

/// The ink of what was last filled under a point before an item: the ground of words there.
Ink ground_under(const std::vector<DrawingItem>& items, std::size_t before, QPointF point) {
  for (std::size_t i = before; i-- > 0;) {
    const auto* path = std::get_if<PathItem>(&items[i]);
    if (path == nullptr || !path->fill) continue;
    if (path->clip && !path->clip->contains(point)) continue;
    if (path->path.contains(point)) return *path->fill;
  }
  return Ink::white;
}

void check_text(const std::vector<DrawingItem>& items, std::size_t i, double smallest,
                std::vector<std::string>& faults) {
  const auto& text = std::get<TextItem>(items[i]);
  if (text.style.points < smallest - 1e-9) faults.push_back("too small: " + told(text));
  const bool large = text.style.points >= 18.0 || (text.style.bold && text.style.points >= 14.0);
  const QRectF box = letters_of(text);
  for (const QPointF spot : {box.center(), box.topLeft(), box.bottomRight()}) {
    const Ink ground = ground_under(items, i, spot);
    for (const Palette palette : kPalettes) {
      const double ratio = contrast(colour_of(text.style.ink, palette), colour_of(ground, palette));
      if (ratio < (large ? 4.5 : 7.0)) {
        faults.push_back("too weak, " + std::to_string(ratio) + ": " + told(text));
      }
    }
    const double limit = luminance(QColor(0x40, 0x40, 0x40));
    if (luminance(colour_of(ground, Palette::night)) > limit) {
      faults.push_back("bright ground at night: " + told(text));
    }
  }
  for (std::size_t j = 0; j < i; ++j) {
    const auto* other = std::get_if<TextItem>(&items[j]);
    if (other != nullptr && letters_of(*other).intersects(box)) {
      faults.push_back(told(text) + " overlaps " + told(*other));
    }
  }
}

bool touches(const PathItem& item, const QRectF& box) {
  if (item.clip && !item.clip->intersects(box)) return false;
  if (item.fill && item.path.intersects(box)) return true;
  if (!item.stroke) return false;
  QPainterPathStroker pen;
  pen.setWidth(item.stroke->width);
  QPainterPath drawn = pen.createStroke(item.path);
  if (item.clip) {
    QPainterPath clip;
    clip.addRect(*item.clip);
    drawn = drawn.intersected(clip);
  }
  return drawn.intersects(box);
}

/// Lines that run through words, and shapes drawn over them.
void check_crossings(const std::vector<DrawingItem>& items, std::size_t i,
                     std::vector<std::string>& faults) {
  const auto& text = std::get<TextItem>(items[i]);
  const QRectF box = letters_of(text).adjusted(0.5, 0.5, -0.5, -0.5);
  for (std::size_t j = i + 1; j < items.size(); ++j) {
    const auto* path = std::get_if<PathItem>(&items[j]);
    if (path != nullptr && touches(*path, box)) faults.push_back("covered: " + told(text));
  }
  for (std::size_t j = i; j-- > 0;) {
    const auto* path = std::get_if<PathItem>(&items[j]);
    if (path == nullptr) continue;
    if (path->fill && !path->clip && path->path.contains(box)) break;  // its own ground
    if (path->stroke && touches(*path, box)) faults.push_back("line through: " + told(text));
  }
}

void paint_to(const QString& path, const Drawing& drawing, const PictureFrame& frame,
              Palette palette) {
  constexpr double kDots = 2.0;
  QImage image((frame.size * kDots).toSize(), QImage::Format_RGB32);
  image.fill(ground_of(palette));
  QPainter painter(&image);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.scale(kDots, kDots);
  paint(drawing, painter, palette);
  painter.end();
  image.save(path);
}

}  // namespace

const std::vector<SizedFrame>& sized_frames() {
  static const std::vector<SizedFrame> frames = {
      {"phone", {QSizeF(380.0, 480.0), 14.0}},
      {"tablet", {QSizeF(800.0, 600.0), 16.0}},
      {"half_page", {QSizeF(525.0, 330.0), 11.0}},  // the body of a letter page, halved
      {"small", {QSizeF(185.0, 300.0), 12.7}},      // a phone of 412 x 915 by its true size
  };
  return frames;
}

double luminance(const QColor& colour) {
  const auto linear = [](int channel) {
    const double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * linear(colour.red()) + 0.7152 * linear(colour.green()) +
         0.0722 * linear(colour.blue());
}

double contrast(const QColor& a, const QColor& b) {
  const double one = luminance(a);
  const double other = luminance(b);
  return (std::max(one, other) + 0.05) / (std::min(one, other) + 0.05);
}

std::vector<std::string> faults_of(const Drawing& drawing, const PictureFrame& frame) {
  std::vector<std::string> faults;
  const QRectF inside = QRectF(QPointF(0.0, 0.0), frame.size).adjusted(-0.01, -0.01, 0.01, 0.01);
  const double room = std::min(frame.size.width(), frame.size.height());
  const double smallest = std::min(frame.letters, room / 20.0) * kSmallestText / kBodyText.points;
  const auto& items = drawing.items();
  for (std::size_t i = 0; i < items.size(); ++i) {
    const QRectF box = box_of(items[i]);
    const auto* text = std::get_if<TextItem>(&items[i]);
    if (!inside.contains(box)) {
      faults.push_back("item " + std::to_string(i) + " leaves the frame" +
                       (text != nullptr ? ": " + told(*text) : ""));
    }
    if (text == nullptr) continue;
    check_text(items, i, smallest, faults);
    check_crossings(items, i, faults);
  }
  faults.erase(std::unique(faults.begin(), faults.end()), faults.end());
  return faults;
}

void save_pictures(const std::string& name, const Drawing& drawing, const PictureFrame& frame) {
  const QString folder = QString::fromStdString(build_path("pictures"));
  QDir().mkpath(folder);
  const QString stem = folder + "/" + QString::fromStdString(name);
  paint_to(stem + "_day.png", drawing, frame, Palette::day);
  paint_to(stem + "_night.png", drawing, frame, Palette::night);
}

std::string words_of(const Drawing& drawing) {
  std::string all;
  for (const std::string& text : texts_of(drawing)) all += (all.empty() ? "" : " ") + text;
  return all;
}

std::vector<QRectF> filled(const Drawing& drawing, Ink ink) {
  std::vector<QRectF> out;
  for (const DrawingItem& item : drawing.items()) {
    const auto* path = std::get_if<PathItem>(&item);
    if (path != nullptr && path->fill == ink) out.push_back(box_of(item));
  }
  return out;
}

}  // namespace oaklight::test
