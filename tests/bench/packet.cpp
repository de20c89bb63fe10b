// How long a packet takes and how large its files are. Prints a table; judges nothing.
#include <chrono>
#include <cstdio>
#include <cstdlib>

#include "core/paper/packet_pdf.hpp"
#include "tests/paper/invented_packet.hpp"

int main(int count, char** words) {
  using Clock = std::chrono::steady_clock;
  std::printf("%8s %10s %10s %10s\n", "trees", "reader", "pdf s", "pdf MB");
  for (int trees : {60, 500, 2000, 20000}) {
    if (count > 1 && trees > std::atoi(words[1])) continue;
    for (const oaklight::PacketReader reader :
         {oaklight::PacketReader::logger, oaklight::PacketReader::firewood}) {
      const oaklight::Packet packet = oaklight::test::invented_packet(trees, 1, reader);
      const auto start = Clock::now();
      const auto pdf = oaklight::packet_pdf(packet, oaklight::PaperSize::letter);
      const std::chrono::duration<double> seconds = Clock::now() - start;
      if (!pdf) return 1;
      std::printf("%8d %10s %10.2f %10.2f\n", trees, std::string(word_of(reader)).c_str(),
                  seconds.count(), static_cast<double>(pdf->size()) / 1e6);
    }
  }
  return 0;
}
