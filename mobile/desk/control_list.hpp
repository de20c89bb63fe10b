#pragma once

#include <QQuickItem>
#include <QString>
#include <functional>
#include <vector>

class QQuickWindow;

/// A control that somebody can press now, as assistive technology sees it.
struct Control {
  QQuickItem* item = nullptr;
  QString name;
  QRectF box;  ///< in the window
};

/// The visible and enabled controls of a window, in the order in which they are painted.
/// assumes  QAccessible is active
std::vector<Control> controls_of(const QQuickWindow& window);

/// The same as text, a line each: x, y, width, height, name, parted by tabs. For tests that press
/// from outside the program.
QString control_lines(const QQuickWindow& window);
