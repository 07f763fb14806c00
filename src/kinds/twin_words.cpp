#include "twin_words.h"

#include <algorithm>
#include <string_view>

namespace haunch {
namespace {

bool is_letter(char it) {
  return (it >= 'a' && it <= 'z') || (it >= 'A' && it <= 'Z');
}

/// Whether a word stands at `at` in a text, and goes on in neither direction.
bool stands_at(const std::string& text, std::size_t at, std::string_view word) {
  const std::size_t end = at + word.size();
  return text.compare(at, word.size(), word) == 0 && (at == 0 || !is_letter(text[at - 1])) &&
         (end == text.size() || !is_letter(text[end]));
}

}  // namespace

std::string twin_words(const std::string& name) {
  constexpr std::string_view kLeft = "left";
  constexpr std::string_view kRight = "right";
  std::string twin;
  for (std::size_t at = 0; at < name.size();) {
    const bool left = stands_at(name, at, kLeft);
    const bool right = stands_at(name, at, kRight);
    if (left) twin += kRight;
    if (right) twin += kLeft;
    if (!left && !right) twin += name[at];
    at += left ? kLeft.size() : right ? kRight.size() : 1;
  }
  return twin;
}

Chain twin_chain(Chain chain) {
  if (chain.what.find("from the left") == std::string::npos) {
    chain.what = twin_words(chain.what);
    return chain;
  }
  std::reverse(chain.links.begin(), chain.links.end());
  for (Chain::Link& link : chain.links)
    link.what = twin_words(link.what);
  return chain;
}

}  // namespace haunch
