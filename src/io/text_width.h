// How wide a line of print can come, where its face is not known.
#pragma once

#include <string_view>

namespace haunch {

enum class Letters : unsigned char { plain, bold };

/// In em (sizes of the type), and no less than it takes in any of the usual plain faces: reckoned
/// from the widest of those that come with Linux, Windows and macOS. Kerning is to be off.
double text_width(std::string_view text, Letters letters = Letters::plain);

}  // namespace haunch
