#include "emphasis.h"

#include <algorithm>

namespace haunch {
namespace {

constexpr std::string_view kReverse = "\x1B[1;7m", kBold = "\x1B[1m", kPlain = "\x1B[0m";

bool is_number(std::string_view word) {
  return !word.empty() && word.find_first_not_of("0123456789") == std::string_view::npos;
}

/// How a word stands out, from the one before it in its line; not at all: nothing.
std::string_view emphasis_of(std::string_view word, std::string_view before) {
  if (word == "FAIL" || (word == "fail" && before == "checks")) return kReverse;
  if (word == "CAUTIONS") return kBold;
  const bool counted = before.empty() || is_number(before);
  return counted && (word == "caution" || word == "cautions") ? kBold : std::string_view();
}

}  // namespace

std::string emphasised(std::string_view page) {
  constexpr std::string_view kBetween = " \n\f,;:";
  std::string text;
  text.reserve(page.size() + page.size() / 64);
  std::string_view before;
  while (!page.empty()) {
    const std::size_t gap = std::min(page.find_first_not_of(kBetween), page.size());
    if (page.substr(0, gap).find('\n') != std::string_view::npos) before = {};
    text += page.substr(0, gap);
    page.remove_prefix(gap);
    const std::string_view word = page.substr(0, page.find_first_of(kBetween));
    const std::string_view style = emphasis_of(word, before);
    text += style;
    text += word;
    if (!style.empty()) text += kPlain;
    before = word;
    page.remove_prefix(word.size());
  }
  return text;
}

}  // namespace haunch
