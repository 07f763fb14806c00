// What hides what: the blocks of wood as they stand before each other on a view.
#pragma once

#include <span>
#include <vector>

#include "drawn_wood.h"
#include "sight.h"

namespace haunch {

/// On a view, in millimetres, and how near it is to the viewer.
struct SeenSpot {
  ViewSpot at;
  double near = 0;
};

/// From where to where, in shares of a line from 0 to 1.
struct LinePart {
  double from = 0, to = 0;
};

/// Parts of a line in turn and apart, but for gaps that are no more than `crack`.
std::vector<LinePart> joined(std::vector<LinePart> parts, double crack);

/// What is left of a line without these, which are in turn and apart.
std::vector<LinePart> rest_of(LinePart line, const std::vector<LinePart>& parts);

/// Where a place stands as seen from there.
class Viewer {
 public:
  explicit Viewer(const Sight& sight) : sight_(sight) {}

  SeenSpot see(const Spot& spot) const;
  /// More than 0 where a face looks at the viewer.
  double faces(const Spot& normal) const;
  /// The plane of a face that looks at the viewer: how near it is at u = v = 0, and how much more
  /// so for each millimetre to the right and up.
  struct Slope {
    double near = 0, by_u = 0, by_v = 0;
  };
  Slope slope_of(const Spot& normal, const SeenSpot& corner) const;

 private:
  const Sight& sight_;
};

class Covers {
 public:
  Covers(std::span<const DrawnWood> woods, const Viewer& viewer);

  /// The stretches of a line that wood stands before, in turn and apart. It must not come to one
  /// place on the view.
  ///
  /// A line behind the outline of a block is hidden as well. So it is not seen through the crack
  /// between two blocks; and where the wood ends there, the edge of what is nearer is drawn.
  std::vector<LinePart> hidden(const SeenSpot& from, const SeenSpot& to) const;

 private:
  /// What lies at the left of a side of an outline: u * this + v * that <= offset.
  struct Side {
    double u = 0, v = 0, offset = 0;
  };

  /// A block as seen. It hides what lies within its outline and behind all faces that look at the
  /// viewer.
  struct Cover {
    ViewSpot low, high;
    double nearest = 0;
    std::size_t sides = 0, sides_end = 0;    // its outline, among all sides
    std::size_t slopes = 0, slopes_end = 0;  // its faces, among all slopes
  };

  struct Line;

  void add(const Polyhedron& block, const Viewer& viewer);
  LinePart behind(const Cover& cover, const Line& line) const;
  LinePart inside(const Cover& cover, const Line& line, LinePart part) const;

  std::vector<Cover> covers_;  // the nearest first
  std::vector<Side> sides_;
  std::vector<Viewer::Slope> slopes_;
};

}  // namespace haunch
