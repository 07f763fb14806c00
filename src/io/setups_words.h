// The words of set-ups, on pages and in CSV.
#pragma once

#include <string>
#include <vector>

#include "setups_report.h"

namespace haunch {

/// "15 wide, 78 deep, 14.5 from the face side"
std::string settings_text(const std::vector<NamedSize>& settings, const LengthPrinter& lengths);

/// "76.6 to 129.9, 164.1 to 217.4": where all of a piece's runs are told from one line.
std::string places_text(const Piece& piece, const std::vector<Run>& runs,
                        const LengthPrinter& lengths);

/// "width 15, 14.8 to 15.2"
std::string first_piece_text(const FirstPiece& first, const LengthPrinter& lengths);

/// "tenon haunch", "first thickness"
std::string operation_words(const Setup& setup);

/// What stands against a way of working, as a machinist is told it.
std::string finding_text(const WayFinding& finding, const LengthPrinter& lengths);

}  // namespace haunch
