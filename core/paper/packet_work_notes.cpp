#include <map>

#include "core/paper/packet_pages.hpp"
#include "core/paper/reader_words.hpp"

namespace oaklight {
namespace {

/// One sentence and the trees that it holds for, in the order of the list.
struct Sentence {
  std::string text;
  QStringList tags;
};

/// The sentences that `told` gives of the trees, each once, in the order of their first tree.
template <class Told>
std::vector<Sentence> sentences_of(const Packet& packet, const Told& told) {
  std::vector<Sentence> sentences;
  std::map<std::string, std::size_t> place;
  for (const auto* list : {&packet.cut, &packet.trained}) {
    for (const PacketTree& tree : *list) {
      if (!tree.work) continue;
      const std::string& text = told(*tree.work);
      if (text.empty()) continue;
      const auto [at, fresh] = place.try_emplace(text, sentences.size());
      if (fresh) sentences.push_back({text, {}});
      sentences[at->second].tags.append(printable(tree.tag));
    }
  }
  return sentences;
}

std::size_t judged(const Packet& packet) {
  std::size_t trees = 0;
  for (const auto* list : {&packet.cut, &packet.trained}) {
    for (const PacketTree& tree : *list) trees += tree.work ? 1U : 0U;
  }
  return trees;
}

/// Each sentence with its tags; the one that holds for more than half of the trees stands last and
/// names no tags.
void write_sentences(PageFlow& flow, const QString& head, const std::vector<Sentence>& sentences,
                     std::size_t trees) {
  if (sentences.empty()) return;
  flow.subhead(head, 60.0);
  const auto holds_for_most = [&](const Sentence& s) {
    return 2 * static_cast<std::size_t>(s.tags.size()) > trees;
  };
  const Sentence* most = nullptr;
  for (const Sentence& sentence : sentences) {
    if (holds_for_most(sentence)) {
      most = &sentence;
      continue;
    }
    flow.text({{printable(sentence.text), kBodyText},
               {QStringLiteral("Trees: ") + sentence.tags.join(QStringLiteral(", ")), kSmallText,
                std::nullopt, 1.0}});
    flow.gap(5.0);
  }
  if (most == nullptr) return;
  const bool all = static_cast<std::size_t>(most->tags.size()) == trees;
  flow.text({{printable(most->text), kBodyText},
             {(all ? QStringLiteral("All trees of this packet that go (%1).")
                   : QStringLiteral("All other trees of this packet that go (%1)."))
                  .arg(most->tags.size()),
              kSmallText, std::nullopt, 1.0}});
  flow.gap(5.0);
}

}  // namespace

void write_work_notes(PageFlow& flow, const Packet& packet) {
  const std::size_t trees = judged(packet);
  if (trees == 0) return;
  flow.new_page(QStringLiteral("HOW AND WHEN"));
  flow.heading(QStringLiteral("How and when, by the rules of the owner"));
  flow.text({{QStringLiteral("A stop beside a tree goes before every way named here. The law, the "
                             "label, the manual of the saw and licensed people come first."),
              kStrongText}});
  // A firewood cutter is told of no way but felling, and of no herbicide.
  if (packet.reader != PacketReader::firewood) {
    write_sentences(flow, QStringLiteral("How"),
                    sentences_of(packet, [](const WorkNotes& w) -> auto& { return w.how; }), trees);
    write_sentences(
        flow, QStringLiteral("Herbicide: no dose is given, follow the label"),
        sentences_of(packet, [](const WorkNotes& w) -> auto& { return w.herbicide_words; }), trees);
  }
  write_sentences(flow, QStringLiteral("When"),
                  sentences_of(packet, [](const WorkNotes& w) -> auto& { return w.when; }), trees);
}

}  // namespace oaklight
