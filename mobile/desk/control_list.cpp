#include "mobile/desk/control_list.hpp"

#include <QAccessible>
#include <QQuickWindow>

namespace {

void walk(QQuickItem* item, std::vector<Control>& found) {
  if (!item->isVisible()) return;
  const QAccessibleInterface* spoken = QAccessible::queryAccessibleInterface(item);
  if (spoken != nullptr && item->isEnabled()) {
    const auto role = spoken->role();
    if (role == QAccessible::Button || role == QAccessible::PageTab ||
        role == QAccessible::CheckBox || role == QAccessible::EditableText) {
      found.push_back({item, spoken->text(QAccessible::Name),
                       item->mapRectToScene(QRectF(0, 0, item->width(), item->height()))});
    }
  }
  for (QQuickItem* child : item->childItems()) walk(child, found);
}

}  // namespace

std::vector<Control> controls_of(const QQuickWindow& window) {
  std::vector<Control> found;
  walk(window.contentItem(), found);
  return found;
}

QString control_lines(const QQuickWindow& window) {
  QString lines;
  for (const Control& control : controls_of(window)) {
    const QRect box = control.box.toRect();
    lines += QStringLiteral("%1\t%2\t%3\t%4\t%5\n")
                 .arg(box.x())
                 .arg(box.y())
                 .arg(box.width())
                 .arg(box.height())
                 .arg(control.name);
  }
  return lines;
}
