// The names of operations: words with hyphens between them, that begin with what they are.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace haunch {

/// Of all that can be timed: those of set-ups, "fit-" with what is fitted, "hang-" with what is
/// hung, and "sand". Of fitting the beginning only.
const std::vector<std::string>& operation_names();

/// Whether `family` is `name`, or its first words: "tenon" of "tenon-face-cheek".
bool is_family_of(std::string_view family, std::string_view name);

/// Whether any operation can be called by it or by longer words.
bool names_operation(std::string_view name);

/// With hyphens in place of spaces, as in "fit-hinges-with-flaps".
std::string hyphened(std::string name);

}  // namespace haunch
