#include "mobile/desk/tract_writer.hpp"

TractWriter::TractWriter(oaklight::TractStore store) : store_(std::move(store)) {
  on_thread_.moveToThread(&thread_);
  thread_.setObjectName("tract writer");
  thread_.start();
}

TractWriter::~TractWriter() {
  post([this](oaklight::TractStore&) { thread_.quit(); });
  thread_.wait();
}

void TractWriter::post(std::function<void(oaklight::TractStore&)> work) {
  QMetaObject::invokeMethod(
      &on_thread_, [this, work = std::move(work)] { work(store_); }, Qt::QueuedConnection);
}
