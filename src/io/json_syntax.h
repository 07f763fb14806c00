// Why a text is no JSON: what stands at the place where reading stopped, and what would be right.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace haunch {

/// How far a reader got before it met something that it could not read.
struct ReadingState {
  /// What may come next, before any comma or colon that must stand there.
  enum class Next { document, first_key, first_element, colon, comma, nothing };

  Next next = Next::document;
  std::size_t cursor = 0;  // just past the last token read, commas and colons not counted
  std::optional<std::size_t> opener;  // of the innermost open object or list
  std::optional<std::size_t> last;    // of the last token read
};

struct SyntaxFault {
  /// What the fault belongs to: the open object or list, the value due in it, or the last value
  /// read.
  enum class Of { container, due_value, last_value };

  std::size_t offset = 0;
  std::string message;
  Of of = Of::container;
};

/// Explains the first fault of `text` after `state.cursor`. There must be one.
SyntaxFault explain_syntax(std::string_view text, const ReadingState& state);

/// How a message points to another place of the same text: "column 7" on one line with `here`, else
/// "line 3".
std::string place_words(std::string_view text, std::size_t there, std::size_t here);

}  // namespace haunch
