#include "mobile/desk/control_list.hpp"

#include <QAccessible>
#include <QFile>
#include <QQuickWindow>
#include <QTimer>
#include <cstdio>

namespace {

constexpr int kLookMs = 10;

bool is_pressed(QAccessible::Role role) {
  return role == QAccessible::Button || role == QAccessible::PageTab ||
         role == QAccessible::CheckBox || role == QAccessible::EditableText;
}

bool is_read(QAccessible::Role role) {
  return role == QAccessible::StaticText || role == QAccessible::Heading ||
         role == QAccessible::AlertMessage;
}

QRectF box_of(const QQuickItem* item) {
  return item->mapRectToScene(QRectF(0, 0, item->width(), item->height()));
}

void walk(QQuickItem* item, std::vector<Control>& found) {
  if (!item->isVisible()) return;
  const QAccessibleInterface* spoken = QAccessible::queryAccessibleInterface(item);
  if (spoken != nullptr && item->isEnabled() && is_pressed(spoken->role()))
    found.push_back({item, spoken->text(QAccessible::Name), box_of(item)});
  for (QQuickItem* child : item->childItems()) walk(child, found);
}

QString fields_of(const QRectF& box) {
  const QRect whole = box.toRect();
  return QStringLiteral("%1\t%2\t%3\t%4")
      .arg(whole.x())
      .arg(whole.y())
      .arg(whole.width())
      .arg(whole.height());
}

QString one_line(QString text) { return text.replace(QLatin1Char('\n'), QLatin1Char(' ')); }

/// Its line; "" for what is neither pressed nor read.
QString line_of(QQuickItem* item, const QString& boxes) {
  const auto line = [&boxes](const char* kind, bool chosen, const QString& name,
                             const QString& typed) {
    return QStringLiteral("%1\t%2\t%3\t%4\t%5\n")
        .arg(QLatin1String(kind), boxes, QString::number(chosen ? 1 : 0), one_line(name),
             one_line(typed));
  };
  const QAccessibleInterface* spoken = QAccessible::queryAccessibleInterface(item);
  const QString name = spoken != nullptr ? spoken->text(QAccessible::Name) : QString();
  if (spoken != nullptr && item->isEnabled() && is_pressed(spoken->role())) {
    const bool typed = spoken->role() == QAccessible::EditableText;
    return line("press", spoken->state().checked, name,
                typed ? spoken->text(QAccessible::Value) : QString());
  }
  if (spoken != nullptr && !name.isEmpty() && is_read(spoken->role()))
    return line("read", false, name, {});
  // Plain text of a page is painted, and not spoken by itself.
  const QString painted =
      item->inherits("QQuickText") ? item->property("text").toString() : QString();
  return painted.isEmpty() ? QString() : line("read", false, painted, {});
}

void write_lines(QQuickItem* item, const QRectF& sight, QString& lines) {
  if (!item->isVisible()) return;
  // Each sheet is modal: what lies below can be neither pressed nor read.
  if (QByteArrayView(item->metaObject()->className()) == "QQuickPopupItem") lines.clear();
  const QRectF box = box_of(item);
  const QRectF seen = item->clip() ? sight & box : sight;
  lines += line_of(item, fields_of(box) + QLatin1Char('\t') + fields_of(seen & box));
  for (QQuickItem* child : item->childItems()) write_lines(child, seen, lines);
}

}  // namespace

std::vector<Control> controls_of(const QQuickWindow& window) {
  std::vector<Control> found;
  walk(window.contentItem(), found);
  return found;
}

QString control_lines(const QQuickWindow& window) {
  QString lines;
  write_lines(window.contentItem(), QRectF(0, 0, window.width(), window.height()), lines);
  return lines;
}

ControlAnswers::ControlAnswers(QQuickWindow& window, const QString& path,
                               std::function<bool()> busy)
    : window_(window), path_(path), busy_(std::move(busy)) {
  QAccessible::setActive(true);
  auto* timer = new QTimer(this);
  connect(timer, &QTimer::timeout, this, &ControlAnswers::look);
  connect(&window_, &QQuickWindow::frameSwapped, this, [this] { drawn_ = true; });
  timer->start(kLookMs);
}

void ControlAnswers::look() {
  const QString question = path_ + QStringLiteral(".ask");
  if (!asked_ || busy_()) {
    asked_ = QFile::exists(question);
    drawn_ = false;
    if (asked_) window_.update();  // layouts place things with the next picture
    return;
  }
  if (!drawn_) return;
  asked_ = false;
  const QString beside = path_ + QStringLiteral(".new");
  QFile file(beside);
  if (!file.open(QIODevice::WriteOnly) || file.write(control_lines(window_).toUtf8()) < 0) return;
  file.close();
  std::rename(QFile::encodeName(beside).constData(), QFile::encodeName(path_).constData());
  QFile::remove(question);
}
