// Fittings that a spec describes by what is cut for them, and hinges that it places one by one.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document.h"
#include "haunch/length.h"
#include "value_reader.h"

namespace haunch {

/// The sides of a piece as it stands in its leaf, seen from the face side.
enum class Surface { face, back, left, right, upper, lower };

/// "face", "back" …
std::string_view surface_word(Surface surface);

/// One recess of a fitting: a box, or a round hole, which has a diameter.
struct RecessSpec {
  Length start;                 // fitting to its near end, of a hole to its middle
  Length length, width;         // of a box
  Length diameter;              // of a hole; zero: a box
  std::optional<Length> from;   // to its near wall, of a hole to its middle; empty: in the middle
  std::optional<Length> depth;  // empty: right through

  bool is_hole() const { return diameter > Length(); }
};

struct FittingSpec {
  std::string name;
  std::string on;  // the name or the mark of a piece
  Surface into = Surface::face;
  Length at;  // above the leaf's foot, or from its left edge
  std::vector<RecessSpec> recesses;
};

struct FittingsSpec {
  std::vector<FittingSpec> each;
  bool by_shop = false;
};

/// A hinge's foot above that of the leaf, or its top below the leaf's.
struct HingePlace {
  Length distance;
  bool from_top = false;
};

/// Reads the values of "fittings" and "hinges.at". What can't be read is left out.
std::vector<FittingSpec> read_fittings(ValueReader& read, const Value& value,
                                       const std::string& path);
std::vector<HingePlace> read_hinge_places(ValueReader& read, const Value& value,
                                          const std::string& path, int most);

}  // namespace haunch
