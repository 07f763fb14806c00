// Characters in UTF-8, as far as they matter for counting and cutting.
#pragma once

namespace haunch {

/// Whether a byte goes on with a character that began before it.
constexpr bool continues_character(char byte) {
  return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U;
}

}  // namespace haunch
