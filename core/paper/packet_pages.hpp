#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/handoff/packet.hpp"
#include "core/paper/page_flow.hpp"

namespace oaklight {

/// The pages of a packet, laid out and ready to paint: cautions, maps, the list, trees for a
/// trained feller only, trees that must not be cut, totals and signatures. The same packet gives
/// the same pages.
/// assumes  a PaperApplication lives
std::vector<Drawing> packet_pages(const Packet& packet, PaperSize paper);

// The parts, each starting on a page of its own.

/// By tag: the letter of the detail map on which the tree is; "" where there are no detail maps.
using MapLetters = std::map<QString, QString>;

void write_front(PageFlow& flow, const Packet& packet);
MapLetters write_maps(PageFlow& flow, const Packet& packet);
void write_cut_list(PageFlow& flow, const Packet& packet, const MapLetters& letters);
void write_trained_list(PageFlow& flow, const Packet& packet, const MapLetters& letters);
void write_keep_list(PageFlow& flow, const Packet& packet, const MapLetters& letters);
/// How, when and with or without herbicide: each sentence once, with the tags it holds for.
void write_work_notes(PageFlow& flow, const Packet& packet);
/// For the owner: before and after, a picture each, and how the figures were made.
void write_owner_pages(PageFlow& flow, const Packet& packet);
/// For the owner: how the figures were made, with the local curves that were fitted.
void write_owner_sources(PageFlow& flow, const OwnerPart& owner);
/// For the others: the notes of the figures that their packet prints; nothing where it has none.
void write_reader_sources(PageFlow& flow, const Packet& packet);
/// For the owner: the practice record of each stand.
void write_practice_record(PageFlow& flow, const Packet& packet);
void write_end(PageFlow& flow, const Packet& packet);

// Words that several parts share.

/// Puts a picture whose corner is at 0, 0 on the page.
void place_picture(Drawing& page, const Drawing& picture, QPointF corner);
QString species_words(const std::string& name);  ///< "Red maple", as it begins a cell
QString count_words(std::size_t count, const char* one, const char* many);  ///< "3 trees"

}  // namespace oaklight
