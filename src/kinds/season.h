// The seasons of a piece of work: what moisture its wood is built at and will see, and what the
// wood of its pieces does there.
#pragma once

#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "haunch/wood.h"
#include "species.h"
#include "swelling.h"

namespace haunch {

/// One value for all pieces, but for those roles that have their own.
template <typename Value>
struct OfRoles {
  Value all{};
  std::map<std::string, Value, std::less<>> own;  // by role: stile, rail, muntin, panel

  const Value& of(std::string_view role_word) const {
    const auto found = own.find(role_word);
    return found == own.end() ? all : found->second;
  }
  const Value& of(Role role) const { return of(word_of(role)); }
};

/// How the boards of a role are sawn from the log: with the rings along their width, along their
/// thickness, or both among them; then the larger movement counts both ways.
enum class Sawn { flat, quarter, mixed };

/// Moisture of the wood in percent: the lowest it will see, at the bench, the highest.
struct Moisture {
  double low = 0;
  double build = 0;
  double high = 0;
};

/// "8.5 %": to a tenth, as moisture is known no better.
std::string percent_words(double percent);

/// What is known of a job's wood for its seasons.
struct Season {
  Moisture moisture;
  OfRoles<Species> species;  // all with figures of movement
  OfRoles<Sawn> sawn;
  std::vector<Species> woods = {};  // that the spec or the shop knows besides

  /// The wood that a piece is made of: what it says itself, else that of its role. One whose
  /// movement is not known stands still.
  Species wood_of(const Piece& piece) const;
};

/// The assembly as it is when all its wood has come to `percent`, after it was built at
/// season.moisture.build.
Assembly at_moisture(const Assembly& built, const Season& season, double percent);

/// Of some boxes in the axes of their pieces, where each then lies in the assembly.
std::vector<Box> placed_at_moisture(const Assembly& built, const Season& season, double percent,
                                    const std::vector<BoxOfPiece>& boxes);

/// The moistures at which the wood is not as built: low and high, less what equals build.
std::vector<double> other_moistures(const Moisture& moisture);

}  // namespace haunch
