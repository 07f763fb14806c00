#include "refusal/written.h"

#include <algorithm>

namespace haunch {

WrittenLength::WrittenLength(std::string_view text, Unit bare_unit)
    : bare(bare_unit), empty(text.empty()) {
  for (Token token = first_token(text); token.kind != TokenKind::end; token = first_token(text)) {
    text.remove_prefix(token.text.size());
    if (token.kind == TokenKind::blank && (tokens.empty() || text.empty())) continue;
    tokens.push_back(token);
    const bool unit = token.kind == TokenKind::word && unit_steps(token) != 0;
    shape += unit ? 'u' : static_cast<char>(token.kind);
  }
}

std::string WrittenLength::text(std::size_t from, std::size_t to) const {
  std::string joined;
  for (std::size_t i = from; i < std::min(to, tokens.size()); ++i)
    joined += tokens[i].kind == TokenKind::blank ? std::string_view(" ") : tokens[i].text;
  return joined;
}

std::string WrittenLength::with(std::size_t first, std::size_t count,
                                std::string_view instead) const {
  return text(0, first) + std::string(instead) + text(first + count);
}

bool one_of(std::string_view word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

std::string small_letters(std::string_view word) {
  std::string small(word);
  for (char& c : small)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return small;
}

std::string quoted(std::string_view word) {
  constexpr std::size_t kLongest = 24;
  if (word.size() <= kLongest) return '"' + std::string(word) + '"';
  std::size_t end = kLongest;
  while ((static_cast<unsigned char>(word[end]) & 0xC0U) == 0x80)
    --end;
  return '"' + std::string(word.substr(0, end)) + "…\"";
}

}  // namespace haunch
