// The printed figures of species, and where they were printed.
#pragma once

#include <optional>
#include <span>
#include <string_view>

namespace haunch {

/// The figures are those of Species; the last four are where the coefficients, the shrinkage and
/// the specific gravity come from, and what else is to be known; empty if there is nothing to say.
struct SpeciesRow {
  std::string_view name;
  std::string_view group;
  std::optional<double> radial, tangential;
  std::optional<double> radial_shrinkage, tangential_shrinkage;
  std::optional<double> gravity_green, gravity_12;
  std::string_view coefficients_from, shrinkage_from, gravity_from, note;
};

/// Another name of a species in the table.
struct SpeciesAlias {
  std::string_view alias;
  std::string_view name;
};

std::span<const SpeciesRow> species_rows();
std::span<const SpeciesAlias> species_aliases();

}  // namespace haunch
