// How the front of a cabinet, or a face frame, is divided: into columns from the left or rows from
// the top, each of which may be divided again, down to what fills each opening.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "document.h"
#include "haunch/wood.h"
#include "spec.h"

namespace haunch {

/// How a node is divided.
enum class Division : unsigned char { none, columns, rows };

/// One part of a front, as it was read. What it says of itself stands in its values, under
/// `layout_node.…`; of one that is filled with a leaf or a drawer their keys stand there too.
struct LayoutNode {
  std::string path = "/layout";  // in the spec
  Division division = Division::none;
  Spec said;
  Length more;                    // of a grade's rows: how much higher than the first
  std::vector<LayoutNode> nodes;  // from the left, or from the top

  /// What closes it; only of one that is not divided.
  FrontKind front() const;
};

/// A rectangle at the front, from the lower left corner of the whole.
struct Area {
  Length left, right, low, high;

  Length width() const { return right - left; }
  Length height() const { return high - low; }
  friend bool operator==(const Area&, const Area&) = default;
};

/// What settles where things stand in a layout.
struct LayoutRules {
  Unit unit = Unit::mm;
  Meets meets = Meets::inset;
  Length gap;             // round an inset front; between two that lie over the front
  Length upright, level;  // how wide what stands between columns is, how high what is between rows
  Sides reach;            // of fronts beyond the openings at the sides of the whole
  /// In a case without a face frame, where two fronts one above the other have nothing between.
  bool framed = true;
  bool wooden_runners = false;
};

/// What bounds an opening, or what a divider ends on, at one of its sides: a divider, or the
/// outside of the whole.
using Bound = std::optional<std::size_t>;

/// The four of them.
struct Bounding {
  Bound left, right, head, foot;
};

/// An opening, as it is seen between what bounds it.
struct LaidOpening {
  const LayoutNode* node = nullptr;
  Area sight;
  Sides reach;  // how far its front goes beyond the opening; less than 0: it stands within
  Bounding by;

  /// Where the front stands that closes it.
  Area front() const {
    return {sight.left - reach.left, sight.right + reach.right, sight.low - reach.foot,
            sight.high + reach.head};
  }
};

/// What stands between two nodes of a list. One that is `none` has no width, and no wood.
struct Divider {
  Between kind = Between::rail;
  bool upright = false;  // between columns
  Area at;
  Bounding by;       // of an upright one its head and foot, of a level one left and right
  std::string path;  // of the list that it stands in
};

/// A list as it is divided: along its direction its nodes' openings, and between each and its next
/// what stands there.
struct LaidList {
  std::string path;
  bool across = false;  // columns
  std::vector<const LayoutNode*> nodes;
  std::vector<Length> sizes;
  std::vector<Between> between;
  std::vector<Length> widths;
  Bounding by;
};

/// Dividers stand before those within the nodes beside them, so that each ends on earlier ones.
struct ResolvedLayout {
  std::vector<LaidOpening> openings;  // down the rows, then to the right
  std::vector<Divider> dividers;
  std::vector<LaidList> lists;  // each before those within it
  std::vector<Problem> problems;
};

/// How far fronts go beyond the openings at the sides of the whole, where those are so wide. What
/// lies over them ends half a gap within its sides and its foot, a whole one below its top.
Sides reach_over(const Sides& widths, Meets meets, Length gap);

/// The same, so much higher.
ResolvedLayout raised(ResolvedLayout layout, Length by);

/// Divides `whole`, the opening that a case or the outer members of a frame leave. The tree must
/// outlive what it gives.
ResolvedLayout resolve(const LayoutNode& tree, const Area& whole, const LayoutRules& rules);

}  // namespace haunch
