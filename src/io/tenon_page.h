// Mortises and tenons, those of rails and muntins and loose ones, as they are cut and marked.
#pragma once

#include <string>
#include <vector>

#include "haunch/wood.h"
#include "text_table.h"

namespace haunch {

/// From shoulder to shoulder of one piece, at its face side and at its back.
struct ShoulderLengths {
  Length face, back;

  friend bool operator==(const ShoulderLengths&, const ShoulderLengths&) = default;
};

/// Shoulder to shoulder, of every piece: less the tenons at both its ends.
std::vector<ShoulderLengths> shoulder_lengths(const Assembly& wood);

// Each is empty where there are none.
std::string mortise_page(const Assembly& wood, const LengthPrinter& lengths);
/// Seats of haunches that have none in a groove.
std::string haunching_page(const Assembly& wood, const LengthPrinter& lengths);
std::string tenon_page(const Assembly& wood, const LengthPrinter& lengths);
std::string loose_tenon_page(const Assembly& wood, const LengthPrinter& lengths);

}  // namespace haunch
