#pragma once

#include <gtest/gtest.h>

#include <QCoreApplication>
#include <QElapsedTimer>
#include <optional>

#include "core/paper/gui_app.hpp"
#include "mobile/desk/demo_tract.hpp"
#include "mobile/viewmodels/workspace.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {

/// The demo tract as the screens work on it.
class DemoWorkspace : public testing::Test {
 protected:
  DemoWorkspace()
      : paper_(PaperApplication::start()),
        settings_(QString::fromStdString((folder_ / "settings.ini").string())) {
    const TractDesk::Clocks clocks{clock_, system_random(), "test"};
    const auto path = folder_ / "hollow.gpkg";
    EXPECT_TRUE(make_demo_tract(path, clocks));
    auto read = TractDesk::read(path, clocks);
    EXPECT_TRUE(read);
    workspace_.emplace(std::make_unique<TractDesk>(*std::move(read), clocks), settings_, locator_);
  }

  [[nodiscard]] TractDesk& desk() { return workspace_->tract(); }
  LightViewModel& light() { return *workspace_->light(); }
  MarksViewModel& marks() { return *workspace_->marks(); }

  /// Lets the writer and the threads that compute finish.
  template <class Busy>
  void settle(Busy busy) {
    QElapsedTimer timer;
    timer.start();
    do {
      QCoreApplication::processEvents(QEventLoop::AllEvents, 10);
    } while ((desk().busy() || busy()) && timer.elapsed() < 20'000);
    ASSERT_FALSE(desk().busy() || busy()) << "still at work after 20 s";
  }

  TempDir folder_;
  SystemClock clock_;
  Result<PaperApplication> paper_;
  Settings settings_;
  Locator locator_;
  std::optional<Workspace> workspace_;
};

}  // namespace oaklight::test
