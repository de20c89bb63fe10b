// The PDF of each reader on each paper, read back page by page with poppler's tools, which share no
// code with the writer. Expected values are derived from the packet that was written.
#include <algorithm>
#include <sstream>

#include "core/base/number_text.hpp"
#include "core/paper/packet_pdf.hpp"
#include "core/paper/text.hpp"
#include "tests/handoff/odd_tract.hpp"
#include "tests/paper/paper_fixture.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight {
namespace {

using namespace oaklight::test;

struct Case {
  PacketReader reader;
  PaperSize paper;
};

std::vector<Case> all_cases() {
  std::vector<Case> cases;
  for (const PacketReader reader : kReaders) {
    for (const PaperSize paper : {PaperSize::letter, PaperSize::a4})
      cases.push_back({reader, paper});
  }
  return cases;
}

/// Every blank, break of line or break of page as one blank.
std::string in_one_line(const std::string& text) {
  std::istringstream words(text);
  std::string line;
  for (std::string word; words >> word;) line += (line.empty() ? "" : " ") + word;
  return line;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

class ReaderPdf : public PaperTest, public testing::WithParamInterface<Case> {
 protected:
  void write(const ManyTrees& wish) {
    auto made = packet_of_all(many_trees(wish), GetParam().reader);
    ASSERT_TRUE(made) << to_text(made.error());
    packet_ = *std::move(made);
    const auto bytes = packet_pdf(packet_, GetParam().paper);
    ASSERT_TRUE(bytes) << to_text(bytes.error());
    write_bytes(file(), *bytes);
    pages_.clear();
    const Ran text = run_program("pdftotext -enc UTF-8 " + file() + " -");
    EXPECT_EQ(text.errors, "");
    std::istringstream whole(text.out);
    for (std::string page; std::getline(whole, page, '\f');) pages_.push_back(in_one_line(page));
  }
  [[nodiscard]] std::string file() const { return (folder_ / "packet.pdf").string(); }
  [[nodiscard]] std::string text() const {
    std::string all;
    for (const std::string& page : pages_) all += page + " ";
    return all;
  }
  /// The place of the first page that has these words; pages_.size() where none has.
  [[nodiscard]] std::size_t page_of(const std::string& words) const {
    const auto found =
        std::ranges::find_if(pages_, [&](const std::string& page) { return has(page, words); });
    return static_cast<std::size_t>(found - pages_.begin());
  }
  void expect_number_and_hash_on_each_page() const {
    ASSERT_GT(pages_.size(), 3U);
    const std::string count = std::to_string(pages_.size());
    for (std::size_t i = 0; i < pages_.size(); ++i) {
      EXPECT_TRUE(has(pages_[i], "Page " + std::to_string(i + 1) + " of " + count)) << i + 1;
      EXPECT_TRUE(has(pages_[i], "List SHA-256 " + packet_.list_sha256)) << i + 1;
    }
  }

  Packet packet_;
  std::vector<std::string> pages_;
  TempDir folder_;
};

TEST_P(ReaderPdf, BearsItsNumberAndTheHashOfTheListOnEachPage) {
  write({.trees = 60, .measured = true});
  expect_number_and_hash_on_each_page();
  EXPECT_TRUE(has(run_program("pdfinfo " + file()).out,
                  GetParam().paper == PaperSize::letter ? "(letter)" : "(A4)"));
}

TEST_P(ReaderPdf, BeginsWithCautionsAndTheEmergencyCard) {
  write({.trees = 60, .measured = true});
  // As painted: in reading order the numbers of the sentences would stand between their lines.
  const std::string first =
      in_one_line(run_program("pdftotext -raw -enc UTF-8 -f 1 -l 1 " + file() + " -").out);
  EXPECT_TRUE(has(first, "BEFORE YOU START"));
  EXPECT_TRUE(has(first, "IF SOMEONE IS HURT: CALL 911"));
  for (const PacketFact& fact : packet_.emergency) {
    EXPECT_TRUE(has(first, in_one_line(fact.text))) << fact.label;
  }
  // What is dangerous on this very list: every eighth of the 60 trees has a crack.
  EXPECT_TRUE(has(first, "Crack or seam in trunk (")) << first;
  // However long the list of them is, the first of the job's cautions are on the first page too.
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_TRUE(has(first, in_one_line(packet_.before_you_start[i]))) << i;
  }
  for (const Caution& caution : packet_.job_cautions) {
    const std::size_t page = page_of(in_one_line(caution.text));
    EXPECT_LT(page, page_of("Map of the tract")) << caution.text;
  }
}

TEST_P(ReaderPdf, GoesFromCautionsOverMapAndListToWhatStaysAndTheTotals) {
  write({.trees = 60, .measured = true});
  const std::string all = text();
  const char* list = GetParam().reader == PacketReader::standing ? "Trees to kill standing: "
                     : GetParam().reader == PacketReader::owner  ? "Trees that go: "
                                                                 : "Trees to cut: ";
  std::size_t last = 0;
  for (const std::string& part :
       {std::string("BEFORE YOU START"), std::string("CALL 911"), std::string("Map of the tract"),
        list + std::to_string(packet_.cut.size()),
        "DO NOT CUT: " + std::to_string(packet_.keep.size()),
        std::string("TOTALS AND SIGNATURES")}) {
    const std::size_t at = all.find(part);
    ASSERT_NE(at, std::string::npos) << part;
    EXPECT_GT(at + 1, last) << part;
    last = at;
  }
}

TEST_P(ReaderPdf, HasAPageOfTreesNotToCutWithEachCropTree) {
  write({.trees = 60, .measured = true});
  std::string stays;
  for (const std::string& page : pages_) {
    if (has(page, "DO NOT CUT") && has(page, "Why")) stays += page + " ";
  }
  int crops = 0;
  for (const PacketTree& tree : packet_.keep) {
    EXPECT_TRUE(has(stays, " " + tree.tag + " ")) << tree.tag;
    crops += tree.crop ? 1 : 0;
  }
  EXPECT_EQ(crops, 12) << "every fifth of 60 trees";
  EXPECT_TRUE(has(stays, "These trees stay"));
}

TEST_P(ReaderPdf, EndsWithTotalsSeasonSignaturesAndWhoGoverns) {
  write({.trees = 60, .measured = true});
  std::string end;
  for (std::size_t i = page_of("TOTALS AND SIGNATURES"); i < pages_.size(); ++i) {
    end += pages_[i] + " ";
  }
  ASSERT_FALSE(packet_.totals.empty());
  for (const ProductTotal& total : packet_.totals) {
    if (total.board_feet) {
      EXPECT_TRUE(has(end, grouped_text(total.board_feet->value, 0)));
    }
    if (total.cords) {
      EXPECT_TRUE(has(end, grouped_text(total.cords->value, 2)));
    }
  }
  EXPECT_TRUE(has(end, in_one_line(packet_.season_advice))) << end;
  for (const char* part : {"Owner: name", "Person who marked the trees: name", "Signature", "Date",
                           "state and local law and codes", "the label of any product", "license"})
    EXPECT_TRUE(has(end, part)) << part;
}

TEST_P(ReaderPdf, OfAnOddTractIsSoundAndWhole) {
  for (const ManyTrees& wish : {ManyTrees{.trees = 57, .odd = true, .measured = true},
                                ManyTrees{.trees = 24, .odd = true, .placed = false}}) {
    write(wish);
    expect_number_and_hash_on_each_page();
    const Ran info = run_program("pdfinfo " + file());
    EXPECT_EQ(info.exit_code, 0);
    EXPECT_EQ(info.errors, "");
    const Ran again =
        run_program("pdftocairo -pdf " + file() + " " + (folder_ / "again.pdf").string());
    EXPECT_EQ(again.exit_code, 0);
    EXPECT_EQ(again.errors, "");
    const std::string all = text();
    EXPECT_TRUE(has(all, "\"Quoted\", with 'commas', and; more"));
    EXPECT_TRUE(has(all, "=cmd|' /C calc'!A0")) << "paper runs nothing";
    EXPECT_FALSE(has(all, "\xE2\x80\xAE")) << "nothing turns the words around";
  }
}

INSTANTIATE_TEST_SUITE_P(Readers, ReaderPdf, testing::ValuesIn(all_cases()), [](const auto& one) {
  return std::string(word_of(one.param.reader)) + "_" + std::string(word_of(one.param.paper));
});

using OneTree = PaperTest;

TEST_F(OneTree, MakesAPacketForItsCutterAndTheOwner) {
  const TractData data = many_trees({.trees = 1, .odd = true});
  for (const PacketReader reader : {PacketReader::logger, PacketReader::owner}) {
    const auto packet = packet_of_all(data, reader);
    ASSERT_TRUE(packet) << to_text(packet.error());
    const auto bytes = packet_pdf(*packet, PaperSize::letter);
    ASSERT_TRUE(bytes);
    const TempDir folder;
    write_bytes(folder / "one.pdf", *bytes);
    const Ran text = run_program("pdftotext " + (folder / "one.pdf").string() + " -");
    EXPECT_EQ(text.errors, "");
    EXPECT_TRUE(has(in_one_line(text.out), "DO NOT CUT: 0"));
  }
}

}  // namespace
}  // namespace oaklight
