// What is seen of wood from one side, and of wood that is cut through: lines, in millimetres,
// before any scale.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace haunch {

/// A place on a view: u to the right, v up.
struct ViewSpot {
  double u = 0, v = 0;

  friend bool operator==(const ViewSpot&, const ViewSpot&) = default;
};

/// What a line is of.
enum class LineOf : unsigned char {
  seen,    // an edge
  hidden,  // an edge behind wood
  cut,     // the outline of what the view cuts through
  broken,  // where the wood goes on beyond what is drawn
};

/// A straight line of one piece, by its index into what was drawn.
struct ViewLine {
  LineOf of = LineOf::seen;
  ViewSpot from, to;
  std::size_t piece = 0;
};

/// Wood that a section cuts through: end grain, or long grain that runs one way on the view.
struct CutArea {
  std::size_t piece = 0;
  std::optional<ViewSpot> grain;             // of length 1; nothing: end grain, or no wood
  std::vector<std::vector<ViewSpot>> loops;  // what lies inside an odd number of them is cut
};

struct LineView {
  std::vector<ViewLine> lines;
  std::vector<CutArea> areas;
};

/// The rectangle round a view.
struct Extent {
  ViewSpot low, high;

  double width() const { return high.u - low.u; }
  double height() const { return high.v - low.v; }
};

/// Nothing of a view that shows nothing.
std::optional<Extent> extent_of(const LineView& view);

}  // namespace haunch
