#include "core/paper/packet_pdf.hpp"

#include <QBuffer>
#include <algorithm>
#include <sstream>

#include "tests/paper/invented_packet.hpp"
#include "tests/paper/paper_fixture.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight {
namespace {

// Read back by poppler's tools, which share no code with the writer. Expected values are derived
// from the packet that was written.

using test::invented_packet;
using test::run_program;

/// A packet as a file, and what poppler says about it.
class PacketPdf : public test::PaperTest {
 protected:
  void write(const Packet& packet, PaperSize paper = PaperSize::letter) {
    const auto bytes = packet_pdf(packet, paper);
    ASSERT_TRUE(bytes) << to_text(bytes.error());
    bytes_ = *bytes;
    test::write_bytes(file(), bytes_);
  }
  [[nodiscard]] std::string file() const { return (folder_ / "packet.pdf").string(); }
  [[nodiscard]] std::string text() const {
    return run_program("pdftotext -enc UTF-8 " + file() + " -").out;
  }
  [[nodiscard]] std::string info() const { return run_program("pdfinfo " + file()).out; }

  std::string bytes_;
  test::TempDir folder_;
};

std::ptrdiff_t lines_of(const std::string& text) {
  return std::count(text.begin(), text.end(), '\n');
}

/// What pdfinfo says after a label, without the blanks.
std::string after(const std::string& info, const std::string& label) {
  const auto at = info.find(label);
  if (at == std::string::npos) return {};
  const auto from = info.find_first_not_of(' ', at + label.size());
  return info.substr(from, info.find('\n', from) - from);
}

TEST_F(PacketPdf, CopiesAHashAndATagAsTheLettersThatStandThere) {
  Packet packet = invented_packet(3);
  packet.list_sha256 = "ffaff1fi" + std::string(56, 'f');
  packet.cut.front().tag = "ff-fi-7";
  write(packet);
  const std::string words = text();
  EXPECT_NE(words.find(packet.list_sha256), std::string::npos);
  EXPECT_NE(words.find("ff-fi-7"), std::string::npos);
  EXPECT_EQ(words.find("\uFB00"), std::string::npos) << "ff is drawn as one sign";
}

class PacketPdfOf : public PacketPdf, public testing::WithParamInterface<int> {};

TEST_P(PacketPdfOf, TreesReadsInTheOrderThatKeepsPeopleSafe) {
  write(invented_packet(GetParam()));
  const std::string words = text();
  const auto cautions = words.find("BEFORE YOU START");
  const auto emergency = words.find("CALL 911");
  const auto map = words.find("Map of the tract");
  const auto list = words.find("Trees to cut: " + std::to_string(GetParam()));
  const auto stay = words.find("DO NOT CUT: ");
  const auto totals = words.find("What the list adds up to");
  ASSERT_NE(totals, std::string::npos);
  EXPECT_LT(cautions, emergency);
  EXPECT_LT(emergency, map);
  EXPECT_LT(map, list);
  EXPECT_LT(list, stay);
  EXPECT_LT(stay, totals);
}

TEST_P(PacketPdfOf, TreesHoldsEveryTagAndCountsItsPages) {
  const Packet packet = invented_packet(GetParam());
  write(packet);
  const std::string words = text();
  for (const auto* list : {&packet.cut, &packet.trained, &packet.keep, &packet.others}) {
    for (const PacketTree& tree : *list) {
      EXPECT_NE(words.find(tree.tag + "\n"), std::string::npos) << tree.tag;
    }
  }
  const int pages = std::stoi(after(info(), "Pages:"));
  for (int i = 1; i <= pages; ++i) {
    const std::string number = "Page " + std::to_string(i) + " of " + std::to_string(pages) + "\n";
    EXPECT_NE(words.find(number), std::string::npos) << number;
  }
}

INSTANTIATE_TEST_SUITE_P(Sizes, PacketPdfOf, testing::Values(3, 60, 2000));

TEST_F(PacketPdf, EmbedsEachTypefaceAndNamesItself) {
  write(invented_packet(60));
  const std::string fonts = run_program("pdffonts " + file()).out;
  std::istringstream rows(fonts);
  std::string row;
  std::getline(rows, row);
  const auto embedded = row.find("emb");
  std::getline(rows, row);
  ASSERT_NE(embedded, std::string::npos);
  int typefaces = 0;
  while (std::getline(rows, row)) {
    ++typefaces;
    EXPECT_NE(row.find("NotoSans-"), std::string::npos) << row;
    EXPECT_EQ(row.substr(embedded, 3), "yes") << row;
  }
  EXPECT_EQ(typefaces, 2);
  EXPECT_EQ(after(info(), "Title:"), "Lantern Hollow tract: marked trees, list for the logger");
}

TEST_F(PacketPdf, IsVectorsAndNoPictures) {
  write(invented_packet(10));
  const std::string images = run_program("pdfimages -list " + file()).out;
  EXPECT_EQ(lines_of(images), 2) << images;
}

TEST_F(PacketPdf, HasThePageSizeAskedFor) {
  write(invented_packet(3), PaperSize::letter);
  EXPECT_NE(info().find("612 x 792 pts (letter)"), std::string::npos);
  write(invented_packet(3), PaperSize::a4);
  EXPECT_NE(info().find("(A4)"), std::string::npos) << info();
}

TEST_F(PacketPdf, IsTheSameAgainWithThePacketsOwnDay) {
  const Packet packet = invented_packet(25);
  write(packet);
  const std::string first = bytes_;
  EXPECT_EQ(packet.made_on, "2026-10-05");
  EXPECT_NE(first.find("/CreationDate (D:20261005000000"), std::string::npos);
  write(packet);
  EXPECT_EQ(first, bytes_);
}

// How quick it is: tests/bench/packet.cpp.
TEST_F(PacketPdf, OfTwoThousandTreesIsSmall) {
  write(invented_packet(2000));
  EXPECT_LT(bytes_.size(), 3'000'000u);
}

TEST_F(PacketPdf, TellsItsLanguageAndIsSoundAllTheSame) {
  write(invented_packet(3));
  EXPECT_NE(bytes_.rfind("/Lang (en-US)"), std::string::npos);
  const auto ran = run_program("pdfinfo " + file());
  EXPECT_EQ(ran.exit_code, 0);
  EXPECT_EQ(ran.errors, "");
  // Poppler finds the catalog through the appended table, without having to mend anything.
  const auto tree =
      run_program("pdftocairo -pdf " + file() + " " + (folder_ / "again.pdf").string());
  EXPECT_EQ(tree.exit_code, 0);
  EXPECT_EQ(tree.errors, "");
}

TEST_F(PacketPdf, OddNamesComeThroughPopplerUnharmed) {
  Packet packet = invented_packet(3);
  packet.tract.name =
      "Cr\xC3\xAA"
      "che \"Nord\" \xE2\x80\x93 5\xC2\xBD acres, \xD7\x90\xD7\x9C\xD7\x95\xD7\x9F";
  packet.cut[0].species = "\xF0\x9F\x8C\xB3";
  write(packet);
  EXPECT_NE(text().find("Cr\xC3\xAA"
                        "che \"Nord\" \xE2\x80\x93 5\xC2\xBD acres"),
            std::string::npos);
  EXPECT_EQ(run_program("pdftotext " + file() + " -").errors, "");
}

TEST_F(PacketPdf, RefusesADeviceThatIsNotOpen) {
  QBuffer closed;
  const Status written = write_packet_pdf(invented_packet(3), PaperSize::letter, closed);
  ASSERT_FALSE(written);
  EXPECT_EQ(written.error().code, ErrorCode::cannot_write);
}

/// A disk that fills up.
class FullDisk : public QIODevice {
 public:
  FullDisk() { open(QIODevice::WriteOnly); }

 protected:
  qint64 readData(char*, qint64) override { return -1; }
  qint64 writeData(const char*, qint64 size) override {
    room_ -= size;
    return room_ >= 0 ? size : -1;
  }

 private:
  qint64 room_ = 20000;
};

TEST_F(PacketPdf, SaysWhenTheDiskIsFull) {
  FullDisk disk;
  const Status written = write_packet_pdf(invented_packet(60), PaperSize::letter, disk);
  ASSERT_FALSE(written);
  EXPECT_EQ(written.error().code, ErrorCode::cannot_write);
}

}  // namespace
}  // namespace oaklight
