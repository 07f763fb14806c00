#include "encoding.h"

#include <fmt/core.h>

#include "utf8.h"

namespace haunch {
namespace {

constexpr std::string_view kMarkInUtf8 = "\xEF\xBB\xBF";

std::string_view foreign_encoding(std::string_view text) {
  const auto is = [&](std::size_t i, char c) { return i < text.size() && text[i] == c; };
  const auto some = [&](std::size_t i) { return i < text.size() && text[i] != '\0'; };
  if (is(0, '\0') && is(1, '\0')) return "UTF-32";
  if (is(0, '\xFF') && is(1, '\xFE')) return is(2, '\0') && is(3, '\0') ? "UTF-32" : "UTF-16";
  if (is(0, '\xFE') && is(1, '\xFF')) return "UTF-16";
  if (some(0) && is(1, '\0')) return is(2, '\0') && is(3, '\0') ? "UTF-32" : "UTF-16";
  if (is(0, '\0') && some(1)) return "UTF-16";
  return "";
}

/// What a lone byte is in the encodings that spreadsheets fall back to: " but é of Latin-1 or
/// Windows-1252". Empty where it is nothing to be seen, or rather part of a broken character.
std::string in_old_encodings(std::string_view text) {
  constexpr unsigned kEuro = 0x80;
  constexpr unsigned kFirst = 0xA1;
  const auto byte = static_cast<unsigned char>(text[0]);
  if (text.size() > 1 && continues_character(text[1])) return {};
  if (byte == kEuro) return " but \u20AC of Windows-1252";
  if (byte < kFirst) return {};
  // Here the byte is the number of the character: of two bytes in UTF-8.
  const std::string character = {static_cast<char>(0xC0U | byte >> 6U),
                                 static_cast<char>(0x80U | (byte & 0x3FU))};
  return " but " + character + " of Latin-1 or Windows-1252";
}

}  // namespace

std::size_t start_of(std::string_view text) {
  return text.starts_with(kMarkInUtf8) ? kMarkInUtf8.size() : 0;
}

std::optional<Problem> foreign_problem(std::string_view text) {
  const std::string_view encoding = foreign_encoding(text);
  if (encoding.empty()) return {};
  return Problem{"", fmt::format("the text is {}; save it as UTF-8", encoding), 0};
}

std::optional<Problem> encoding_problem(std::string_view text) {
  if (auto problem = foreign_problem(text)) return problem;
  for (std::size_t at = 0; at < text.size();) {
    const auto [size, code] = first_character(text.substr(at));
    const auto offset = static_cast<std::uint32_t>(at);
    if (size == 0) return Problem{"", not_utf8(text.substr(at)), offset};
    if (at > 0 && code == kByteOrderMark) return Problem{"", std::string(kStrayMark), offset};
    at += size;
  }
  return {};
}

std::string not_utf8(std::string_view text) {
  return fmt::format("the byte 0x{:02X} is not UTF-8{}; save the text as UTF-8",
                     static_cast<unsigned char>(text[0]), in_old_encodings(text));
}

}  // namespace haunch
