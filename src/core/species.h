// Species of wood: how much they move with their moisture, and how heavy they are.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace haunch {

/// What is printed of a species; a figure that is nowhere printed is absent.
struct Species {
  std::string name;                          // "Oak, white": as the table lists it
  std::string group;                         // hardwood, softwood or tropical
  std::optional<double> radial, tangential;  // movement for 1 % of moisture, as a ratio
  std::optional<double> radial_shrinkage, tangential_shrinkage;  // percent, green to oven-dry
  std::optional<double> gravity_green, gravity_12;  // oven-dry mass over volume green, at 12 %
  std::string source;                               // in plain words
};

// ---- which there are

/// The species that haunch knows, in the order of the table: hardwoods, softwoods, tropical woods.
std::vector<Species> known_species();

/// The species of that name, if there is one. Capitals and hyphens do not matter. "Oak, white" may
/// be called "white oak", "Sipo / utile" either of the two, and what stands in brackets be left
/// out; some more trade names are known. A name that means several species ("maple") is none.
std::optional<Species> find_species(std::string_view name);

/// A name as it is spoken, so that one wood is written one way however a spec has it: "white oak"
/// of "Oak, white" and "WHITE-OAK". A trade name, and what is not known, keeps its words, with
/// single spaces.
std::string spelt(std::string_view name);

/// Whether both names are of one species that haunch knows.
bool is_one_species(std::string_view a, std::string_view b);

/// The one of a shop's `own` woods that goes by that name, or null.
const Species* find_own_species(std::string_view name, const std::vector<Species>& own);

/// The same, else the table's: a shop's own woods overrule it.
std::optional<Species> find_species(std::string_view name, const std::vector<Species>& own);

/// Those with every word of `words` somewhere in their name, and the one of that trade name; of no
/// words, all.
std::vector<Species> search_species(std::string_view words);

/// The same of the table and a shop's `own` woods, which come first and overrule those of their
/// name.
std::vector<Species> search_species(std::string_view words, const std::vector<Species>& own);

/// The name, as the table has it, that was most likely meant; empty when nothing is near.
std::string nearest_species(std::string_view name);

// ---- how they move

/// Across the grain: along a ray (the width of a quarter-sawn board) or along a ring (of a
/// flat-sawn one).
enum class Direction { radial, tangential };

struct Coefficient {
  double per_percent = 0;  // change for 1 % of moisture, as a ratio of the size at 10 %
  bool derived = false;    // worked out from the total shrinkage, printed nowhere
};

/// The printed coefficient, else the one that follows from the total shrinkage; nothing when
/// neither is known.
///
/// From the shrinkage S in percent it is S / (3000 - 20 S): a straight line from fibre saturation
/// at 30 %, referred to the size at 10 %. Of the 72 pairs that Wood Handbook tables 4-3 and 13-5
/// have in common it gives 65 to the last digit, one but for that; six are printed by group.
std::optional<Coefficient> coefficient_of(const Species& species, Direction direction);

struct Coefficients {
  double radial = 0, tangential = 0;
  bool derived = false;  // either of them
};

/// Both, when both are known.
std::optional<Coefficients> coefficients_of(const Species& species);

}  // namespace haunch
