#include "core/paper/reader_words.hpp"

namespace oaklight {

QString words_of(TreeMark mark, PacketReader reader) {
  const ReaderWords& words = words_for(reader);
  switch (mark) {
    case TreeMark::cut:
      return QString::fromUtf8(words.map_work);
    case TreeMark::trained:
      return QString::fromUtf8(words.map_trained);
    case TreeMark::other:
      return QString::fromUtf8(words.map_other);
    case TreeMark::crop:
      return QStringLiteral("Do not cut: crop tree");
    case TreeMark::keep:
      break;
  }
  return QStringLiteral("Do not cut");
}

}  // namespace oaklight
