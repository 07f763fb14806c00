// Characters in UTF-8.
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstring>
#include <string_view>

namespace haunch {

/// Whether a byte goes on with a character that began before it.
constexpr bool continues_character(char byte) {
  return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U;
}

/// Eight bytes side by side in a number, which are judged in one step.
struct EightBytes {
  std::uint64_t bytes = 0;

  explicit EightBytes(const char* text) { std::memcpy(&bytes, text, sizeof bytes); }

  /// One byte eight times.
  static constexpr std::uint64_t all(unsigned char byte) { return byte * 0x0101010101010101U; }
  /// Whether all are from ' ' to '~': none has its high bit set, nor gets it when 0x20 is taken off
  /// or 1 is added. What is borrowed or carried comes of a byte that fails itself.
  bool are_printed() const {
    return ((bytes | (bytes - all(' ')) | (bytes + all(1))) & all(0x80)) == 0;
  }
  /// Of printed ones: whether that byte is among them, and so one of the differences is 0.
  bool hold(char byte) const {
    const std::uint64_t differences = bytes ^ all(static_cast<unsigned char>(byte));
    return ((differences - all(1)) & all(0x80)) != 0;
  }
};

/// How many bytes `text` begins with that are ASCII, are printed as they are and are none of
/// `but`: all of most texts, which need not be taken apart then.
template <typename... But>
std::size_t plain_bytes(std::string_view text, But... but) {
  std::size_t size = 0;
  const auto are_plain = [&](EightBytes eight) {
    return eight.are_printed() && !(eight.hold(but) || ...);
  };
  while (text.size() - size >= sizeof(EightBytes) && are_plain(EightBytes(text.data() + size)))
    size += sizeof(EightBytes);
  while (size < text.size() && text[size] >= ' ' && text[size] <= '~' &&
         !((text[size] == but) || ...))
    ++size;
  return size;
}

struct Utf8Character {
  std::size_t size = 0;  // in bytes; 0: not UTF-8
  char32_t code = 0;
};

/// Reads the character that begins `text`, which is not empty, by the table of RFC 3629: no
/// overlong forms, no surrogates.
constexpr Utf8Character first_character(std::string_view text) {
  constexpr char32_t kLeast[] = {0, 0, 0x80, 0x800, 0x10000};
  const unsigned lead = static_cast<unsigned char>(text[0]);
  if (lead < 0x80) return {1, lead};
  const std::size_t size = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  if (lead < 0xC2 || lead > 0xF4 || text.size() < size) return {};
  char32_t code = lead & (0x7FU >> size);
  for (std::size_t i = 1; i < size; ++i) {
    if (!continues_character(text[i])) return {};
    code = code << 6 | (static_cast<unsigned char>(text[i]) & 0x3FU);
  }
  if (code < kLeast[size] || code > 0x10FFFF || (code >= 0xD800 && code < 0xE000)) return {};
  return {size, code};
}

}  // namespace haunch
