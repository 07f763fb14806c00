// What is measured in a joint at a dry fit, and what is asked of each figure: plain rows, which a
// joint brings with it. Checks measure the wood and go by the rows; they ask no joint of what kind
// it is.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "haunch/length.h"

namespace haunch {

struct Limits;

/// A rule that wood is checked against.
struct Rule {
  std::string_view check;    // its name in reports: "mortise-wall"
  std::string_view words;    // what the figure is, after it: "of wood beside the mortise"
  std::string_view reason;   // why it matters, and whose rule it is
  bool moved_first = false;  // something is moved to put it right, sooner than wood is changed
  std::string_view below_zero = {};  // what the figure is without its sign, where that says more
};

/// What can be measured where one piece enters another.
enum class Figure : unsigned char {
  bite,       // how far what enters goes past the sight edge
  cheeks,     // play of both sides together
  edges,      // play of both edges together
  edge,       // play at the one edge that has wood beside it
  bearing,    // to what it lies on
  bottom,     // from its end on
  seat,       // from its shoulder to what that stands on
  long_seat,  // the same of the longer one, where there is a long and a short shoulder
  haunch,     // from the end of its haunches on
  slope       // how much further it can go in before its slope meets the groove's mouth
};

/// What is asked of a figure.
enum class Asked : unsigned char {
  as_designed,  // to the step; besides, over the limit is loose: caution
  at_least,     // the limit, or none where there is no limit: less is a fail
  unpressed,    // no less than none: caution
  shut,         // open or pressed no more than the limit: caution
  past_bottom   // more than is left at the bottom: less is a fail
};

struct Measure {
  Figure figure;
  const Rule* rule;
  Asked asked = Asked::as_designed;
  Length Limits::*limit = nullptr;
};

/// What is cut to a plus/minus.
enum class Dimension : unsigned char {
  tenon_thickness,
  mortise_width,
  groove_width,
  panel_tongue,
  shoulder_length,
  mortise_place,  // face side to the near wall
  piece_width
};
inline constexpr std::size_t kDimensions = 7;

/// The two sizes whose difference is the play of the cheeks, for a forecast of it.
struct FitSizes {
  Dimension hollow, solid;  // of what receives, and of what enters
  bool glued = true;        // what is not must move in its groove, and not rattle
  bool slip = false;        // let in at both ends, and planed apart from all tenons

  friend bool operator==(const FitSizes&, const FitSizes&) = default;
};

/// By which rules what enters is judged: of how thick, how deep and how wide it may be.
enum class Proportions : unsigned char { none, of_tenon, of_dowel, of_lap };

/// All that is measured in a joint. A figure that it was not designed to have is left out.
struct Measures {
  std::span<const Measure> built;    // of the wood as it is glued up
  std::span<const Measure> moved;    // of wood that has moved since
  std::optional<FitSizes> fit = {};  // none: its fit is not forecast
  bool fit_left_out = false;         // though it has one, of which no plus/minus is taken
  Proportions proportions = Proportions::none;
};

}  // namespace haunch
