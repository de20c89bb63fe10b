#pragma once

#include <gtest/gtest.h>

#include <memory>
#include <string>
#include <vector>

#include "core/paper/drawing.hpp"
#include "core/paper/gui_app.hpp"

namespace oaklight::test {

/// A test that paints or measures text.
class PaperTest : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    auto started = PaperApplication::start();
    ASSERT_TRUE(started) << to_text(started.error());
    app_ = std::make_unique<PaperApplication>(std::move(*started));
  }
  static void TearDownTestSuite() { app_.reset(); }

 private:
  static inline std::unique_ptr<PaperApplication> app_;
};

/// The texts of a drawing, in the order in which they are painted.
inline std::vector<std::string> texts_of(const Drawing& drawing) {
  std::vector<std::string> texts;
  for (const DrawingItem& item : drawing.items()) {
    if (const auto* text = std::get_if<TextItem>(&item)) texts.push_back(text->text.toStdString());
  }
  return texts;
}

}  // namespace oaklight::test
