#include "mobile/viewmodels/pages_view_model.hpp"

#include <algorithm>

PagesViewModel::PagesViewModel(bool metric, QObject* parent)
    : QObject(parent), paper_(metric ? 1 : 0) {}

QStringList PagesViewModel::papers() const { return {tr("Letter"), tr("A4")}; }

void PagesViewModel::setPaper(int paper) {
  if (paper == paper_ || paper < 0 || paper >= static_cast<int>(kPaperOrder.size())) return;
  paper_ = paper;
  choose();
}

void PagesViewModel::choose() {
  emit chosenChanged();
  say({});
  follow();
}

void PagesViewModel::showPages(std::vector<oaklight::Drawing> pages, const QString& problem) {
  drawn_ = std::move(pages);
  problem_ = problem;
  page_ = std::clamp(page_, 0, std::max(0, this->pages() - 1));
  fillPicture();
}

void PagesViewModel::fillPicture() {
  picture_ = {};
  if (page_ < pages()) {
    const QSizeF paper = oaklight::page_size(paperSize());
    picture_ = Picture(
        [page = drawn_[static_cast<std::size_t>(page_)],
         paper](const oaklight::PictureFrame& frame) {
          return oaklight::scaled(page, frame.size.width() / paper.width());
        },
        tr("Page %1 of %2").arg(page_ + 1).arg(pages()));
  }
  emit pagesChanged();
}

void PagesViewModel::turn(int by) {
  const int page = page_ + by;
  if (page < 0 || page >= pages()) return;
  page_ = page;
  fillPicture();
}

void PagesViewModel::say(const QString& notice) {
  if (notice_ == notice) return;
  notice_ = notice;
  emit noticeChanged();
}
