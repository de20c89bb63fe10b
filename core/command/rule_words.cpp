#include "core/command/rule_words.hpp"

#include <iostream>

#include "core/base/number_text.hpp"

namespace oaklight::command {
namespace {

std::string value_of(const Rule& rule) {
  std::string text;
  for (const double number : rule.numbers) {
    text += (text.empty() ? "" : ", ") + number_text(number, 4);
    while (text.find('.') != std::string::npos && (text.back() == '0' || text.back() == '.')) {
      const bool point = text.back() == '.';
      text.pop_back();
      if (point) break;
    }
  }
  for (const std::string& word : rule.words) text += (text.empty() ? "" : ", ") + word;
  return text;
}

}  // namespace

Json rule_json(const Rule& rule) {
  return {{"id", rule.id},
          {"rule", rule.text},
          {"value", value_of(rule)},
          {"unit", rule.unit},
          {"status", word_of(rule.evidence)},
          {"source", rule.source},
          {"editable", rule.editable}};
}

void print(const Rule& rule) {
  std::cout << "  " << rule.id << "  " << rule.text << "\n        " << value_of(rule) << ' '
            << rule.unit << "; " << word_of(rule.evidence) << "; " << rule.source << '\n';
}

}  // namespace oaklight::command
