// How a piece lies at a machine: which of its sides looks where, and on which hand the line stands
// that its places are told from.
//
// The machinist stands before the machine, the fence beyond the work; what is fed goes from right
// to left. What is worked up or down has its datum against the fence. What is worked sideways looks
// to the fence, where the cutter is, and has its datum on the table; or, with its datum against the
// fence, to the left, the way that it is fed.
//
// The datum is the side that the setting is told from, else the face side, and of what is worked in
// a face the face edge.
#pragma once

#include <array>
#include <cstddef>
#include <iterator>
#include <string_view>
#include <vector>

#include "machine.h"
#include "operation.h"

namespace haunch {

/// Where a side looks, as the machinist stands before the machine.
enum class Toward : unsigned char { left, right, table, up, machinist, fence };

template <>
inline constexpr std::string_view kWords<Toward>[] = {"left", "right",     "table",
                                                      "up",   "machinist", "fence"};
static_assert(std::size(kWords<Toward>) == static_cast<std::size_t>(Toward::fence) + 1);

/// The side of a piece that is its datum at a machine, and what it is called there.
struct DatumSide {
  WorkedSide side{2, false};
  std::string_view name = "face side";  // a literal
};
DatumSide datum_side(const Assembly& wood, const Run& run, const std::vector<NamedSize>& settings);

/// A piece at a machine.
class Lie {
 public:
  /// `worked`: the side through which the cut comes in; `datum`: one that it meets.
  Lie(const Place& place, WorkedSide worked, WorkedSide datum, const Holding& held);

  /// The side of the piece that looks there.
  WorkedSide at(Toward toward) const { return sides_[static_cast<std::size_t>(toward)]; }
  /// Where a side of the piece looks.
  Toward of(WorkedSide side) const;

 private:
  std::array<WorkedSide, 6> sides_;
};

/// The side of its piece that the line bounds which a run's places are told from: the foot, the
/// left end, the lower edge.
WorkedSide side_of_line(const Piece& piece, const Run& run);

/// Where that line is at the machine.
inline Toward hand_of(const Lie& lie, const Piece& piece, const Run& run) {
  return lie.of(side_of_line(piece, run));
}

}  // namespace haunch
