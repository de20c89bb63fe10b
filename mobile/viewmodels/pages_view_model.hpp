#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QStringList>
#include <array>
#include <vector>

#include "core/paper/drawing.hpp"
#include "core/paper/page.hpp"
#include "mobile/items/picture.hpp"

/// Pages as they will be printed, turned one by one on the screen. What they say is put together by
/// the view models made from this one.
class PagesViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("A view model of pages is made from it")
  Q_PROPERTY(QStringList papers READ papers CONSTANT)
  Q_PROPERTY(int paper READ paper WRITE setPaper NOTIFY chosenChanged)
  Q_PROPERTY(int pages READ pages NOTIFY pagesChanged)  ///< 0 when there is nothing to print
  Q_PROPERTY(int page READ page NOTIFY pagesChanged)
  Q_PROPERTY(bool hasNext READ hasNext NOTIFY pagesChanged)
  Q_PROPERTY(Picture picture READ picture NOTIFY pagesChanged)
  /// Why there are no pages, and what to do; "" when there are.
  Q_PROPERTY(QString problem READ problem NOTIFY pagesChanged)
  Q_PROPERTY(QString notice READ notice NOTIFY noticeChanged)  ///< where the files are, or why not

 public:
  [[nodiscard]] QStringList papers() const;
  [[nodiscard]] int paper() const { return paper_; }
  void setPaper(int paper);
  [[nodiscard]] int pages() const { return static_cast<int>(drawn_.size()); }
  [[nodiscard]] int page() const { return page_; }
  [[nodiscard]] bool hasNext() const { return page_ < pages() - 1; }
  [[nodiscard]] Picture picture() const { return picture_; }
  [[nodiscard]] QString problem() const { return problem_; }
  [[nodiscard]] QString notice() const { return notice_; }

  Q_INVOKABLE void turn(int by);

 signals:
  void chosenChanged();
  void pagesChanged();
  void noticeChanged();

 protected:
  PagesViewModel(bool metric, QObject* parent);

  [[nodiscard]] oaklight::PaperSize paperSize() const {
    return kPaperOrder[static_cast<std::size_t>(paper_)];
  }
  void toFirstPage() { page_ = 0; }
  /// The pages to show, or why there are none.
  void showPages(std::vector<oaklight::Drawing> pages, const QString& problem);
  void say(const QString& notice);
  /// Another choice of what is shown: said, and put together anew.
  void choose();
  virtual void follow() = 0;

 private:
  static constexpr std::array kPaperOrder = {oaklight::PaperSize::letter, oaklight::PaperSize::a4};
  void fillPicture();

  int paper_ = 0;
  int page_ = 0;
  std::vector<oaklight::Drawing> drawn_;
  Picture picture_;
  QString problem_, notice_;
};
