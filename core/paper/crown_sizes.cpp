#include "core/paper/crown_sizes.hpp"

namespace oaklight {

QString size_words(const CrownCard& card) {
  int taped = 0;
  int fitted = 0;
  int book = 0;
  const auto count = [&](const DrawnCrown& crown) {
    ++(crown.taped ? taped : crown.fitted ? fitted : book);
  };
  count(card.crown);
  for (const CrownNeighbour& n : card.neighbours) count(n.crown);
  if (fitted + book == 0) return QStringLiteral("Crowns by four measured radii.");
  const QString by_what = fitted == 0 ? QStringLiteral("by size")
                          : book == 0
                              ? QStringLiteral("by the local curve")
                              : QStringLiteral("by the local curve (%1) or by size").arg(fitted);
  return (taped == 0 ? QStringLiteral("Crowns %1, not measured.")
                     : QStringLiteral("Round crowns %1, the others measured."))
      .arg(by_what);
}

}  // namespace oaklight
