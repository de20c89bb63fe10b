#pragma once

#include <QString>
#include <QStringList>

#include "core/handoff/packet.hpp"
#include "core/session/knowledge.hpp"

// Words for verdicts, marks and light. Each verdict has a shape of its own too, so that it is told
// apart without colour.

/// "Take", "Keep", "Kill standing", "Look again".
QString verdict_words(oaklight::Verdict verdict);
/// The icon of its shape.
QString verdict_icon(oaklight::Verdict verdict);
QString method_words(oaklight::Method method);
QString product_words(oaklight::Product product);
/// "logger", "firewood cutter", "girdler", "owner".
QString reader_name(oaklight::PacketReader reader);
QString reader_name(oaklight::Reader destination);
/// "white oak 15.0 in".
QString tree_words(const oaklight::TractKnowledge& knowledge, const oaklight::TreeFacts& facts);
/// "75 %".
QString light_words(const oaklight::Light& light);
/// "3 of 4 sides free, 1 not looked at".
QString sides_words(const oaklight::Light& light);
/// "N", "E".
QString side_letter(oaklight::Side side);
/// "R1.50, R2.01".
QString rule_words(const std::vector<std::string>& rules);
