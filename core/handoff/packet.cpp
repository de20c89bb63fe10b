#include "core/handoff/packet.hpp"

namespace oaklight {

std::array<PacketList, 4> lists_of(const Packet& packet) {
  std::string_view work = "cut";
  std::string_view trained = "trained_feller_only";
  std::string_view others = "not_yours";
  switch (packet.reader) {
    case PacketReader::logger:
      break;
    case PacketReader::firewood:
      trained = "leave_alone";
      break;
    case PacketReader::standing:
      work = "kill_standing";
      trained = "trained_person_only";
      break;
    case PacketReader::owner:
      work = "goes";
      trained = "goes_if_cleared";
      others = "not_decided";
      break;
  }
  return {PacketList{work, &packet.cut, true},
          {trained, &packet.trained, packet.reader != PacketReader::firewood},
          {"keep", &packet.keep, false},
          {others, &packet.others, false}};
}

std::optional<Reader> destination_of(PacketReader reader) {
  if (reader == PacketReader::logger) return Reader::logger;
  if (reader == PacketReader::firewood) return Reader::firewood;
  return std::nullopt;
}

}  // namespace oaklight
