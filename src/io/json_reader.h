// Text to values: strict JSON (RFC 8259) in UTF-8, each value with its place in the text.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "document.h"

namespace haunch {

// What a document may hold at most. Far beyond any spec, and small enough to bound time and memory.
inline constexpr std::size_t kMaxDocumentBytes = std::size_t{64} << 20;
inline constexpr std::size_t kMaxDepth = 64;               // objects and lists within one another
inline constexpr std::size_t kMaxValues = 1'000'000;       // of any kind, in one document
inline constexpr std::size_t kMaxKeys = 100;               // of one object
inline constexpr std::size_t kMaxTextCharacters = 10'000;  // of one text, key or number
inline constexpr std::size_t kMaxBlanks = 1'000'000;       // in a row

/// As many problems of one document are spelled out; more help nobody.
inline constexpr std::size_t kMaxProblems = 20;

/// What reading a text gave. Both may be there: after a repeated key or an overlong text, reading
/// goes on without it.
struct Reading {
  std::optional<Value> value;     // absent when the text cannot be read to its end
  std::vector<Problem> problems;  // in the order of the text, each with an offset; beyond the first
                                  // kMaxProblems nothing but the offset
};

/// Reads one document. A byte order mark before it is skipped. Never throws but for want of memory.
Reading read_json(std::string_view text);

/// A place as an editor shows it, counted from 1.
struct TextPlace {
  std::size_t line = 1;
  std::size_t column = 1;  // in characters; a byte order mark is none

  friend bool operator==(const TextPlace&, const TextPlace&) = default;
};

/// Where the byte at `offset` (at most the text's size) stands. Lines end with \n or \r\n.
TextPlace place_in(std::string_view text, std::size_t offset);

bool is_blank(char c);

/// Where the next byte of `text` stands, from `at` on, that is no blank, or its end.
std::size_t after_blanks(std::string_view text, std::size_t at);
}  // namespace haunch
