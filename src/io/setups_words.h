// The words of set-ups, on pages and in CSV.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "setups_report.h"

namespace haunch {

/// "15 wide", "14.5 from the face side", "pitch 32"
std::string setting_words(SizeName name, const std::string& figure);

/// "15 wide, 78 deep, 14.5 from the face side"
std::string settings_text(const std::vector<NamedSize>& settings, const LengthPrinter& lengths);
/// With what goes right through: "8 wide, 45 deep, right through from both sides"
std::string settings_text(const Setup& setup, const LengthPrinter& lengths);

/// "worked side up, face side to the fence": how a piece is held for what is worked in an edge or
/// an end of it, or in a face, with what its datum is called.
std::string holding_text(const Holding& holding, bool in_face, std::string_view datum);

/// "width 15, 14.8 to 15.2"
std::string first_piece_text(const FirstPiece& first, const LengthPrinter& lengths);

/// "tenon haunch", "first thickness"
std::string operation_words(const Setup& setup);

/// What stands against a way of working, as a machinist is told it.
std::string finding_text(const WayFinding& finding, const LengthPrinter& lengths);

}  // namespace haunch
