// How stiff wood and sheets are: their modulus of elasticity in bending, and how much they creep.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace haunch {

struct Stiffness {
  double mpa = 0;           // modulus of elasticity, N/mm2
  double creep = 0;         // what a load that stays adds to the first sag, as a part of it
  std::string_view source;  // in plain words
};

/// Of a species as the table of woods names it, at 12 % of moisture; nothing where no figure is
/// printed.
std::optional<Stiffness> stiffness_of_species(std::string_view name);

/// Of a sheet so thick, in mm, by the words of its material: "birch plywood", "MDF",
/// "particleboard"; of plywood along the grain of its face. Nothing of what is none of them.
std::optional<Stiffness> stiffness_of_board(std::string_view material, double thickness_mm);

/// Of glass.
Stiffness stiffness_of_glass();

}  // namespace haunch
