#pragma once

#include <QObject>
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

/// What can be pressed and read now, for tests that press from outside the program. A line for each
/// control and each spoken text that no open sheet covers, its fields parted by tabs: press or
/// read; x, y, width, height of its box; the same four of the part that is not scrolled out of
/// sight; 1 where it is chosen, else 0; its name; what is typed in it.
QString control_lines(const QQuickWindow& window);

/// Answers another program that asks what can be pressed: it makes the file PATH.ask and finds the
/// lines in PATH, which is renamed into place. Nothing is answered while `busy` holds, nor before a
/// picture was drawn since the question was seen.
class ControlAnswers : public QObject {
 public:
  ControlAnswers(QQuickWindow& window, const QString& path, std::function<bool()> busy);

 private:
  void look();

  QQuickWindow& window_;
  QString path_;
  std::function<bool()> busy_;
  bool asked_ = false;
  bool drawn_ = false;
};
