#include "runner_holes.h"

#include <algorithm>
#include <optional>

#include "face_bore.h"

namespace haunch {
namespace {

// Deep enough for the usual screws of runners; so much wood is left behind the hole, or between two
// that meet in a partition.
constexpr Length kDeep = Length::from_mm(12);
constexpr Length kBehind = Length::from_mm(5);

/// Boards, packing, the members of framed ends.
bool is_run_on(Role role) {
  return role == Role::side || role == Role::partition || role == Role::packing ||
         role == Role::stile || role == Role::rail;
}

/// The piece of the case whose face, at `x`, a screw at that height and depth goes into.
std::optional<std::size_t> bored_at(const Assembly& cabinet, Length x, bool right, Length height,
                                    Length depth) {
  for (std::size_t i = 0; i < cabinet.pieces.size(); ++i) {
    const Piece& piece = cabinet.pieces[i];
    const Box blank = placed_blank(piece);
    if (is_run_on(piece.role) && (right ? blank.low[0] : blank.high[0]) == x &&
        blank.low[1] < height && height < blank.high[1] && blank.low[2] < depth &&
        depth < blank.high[2])
      return i;
  }
  return {};
}

Length depth_in(const Piece& piece) {
  const Length thickness = piece.blank[2];
  const Length free =
      piece.role == Role::partition ? floor_half(thickness - kBehind) : thickness - kBehind;
  return std::min(kDeep, free);
}

/// A side or a partition stands, packing lies from front to back.
void bore_one(Piece& piece, const std::string& drawer, bool right, const RunnerHoles& holes,
              Length depth) {
  const Box blank = placed_blank(piece);
  const Length up = holes.height - blank.low[1];
  const bool stands = piece.place.axes[0] == Axis::y;
  FaceBore hole;
  hole.name = "runner of " + drawer;
  hole.upwards = right;
  hole.middle = {Length(), holes.height, depth};
  hole.diameter = holes.diameter;
  hole.depth = depth_in(piece);
  hole.told = {{stands ? SizeName::from_foot : SizeName::from_edge, up},
               {SizeName::from_front, depth - blank.low[2]}};
  bore(piece, hole);
}

}  // namespace

void pack_behind(CarcasePlan& carcase, const Area& sight, const RunnerHoles& holes) {
  for (RunPlan& run : carcase.runs) {
    const bool beside = run.role == Role::packing && run.at.low == sight.low &&
                        (run.right ? run.at.left == sight.right : run.at.right == sight.left);
    if (!beside) continue;
    const Length height = run.at.height();
    const Length wanted = holes.height - floor_half(height);
    run.at.low = std::clamp(wanted, sight.low, sight.high - height);
    run.at.high = run.at.low + height;
  }
}

std::string bore_runner_holes(Assembly& cabinet, const std::string& drawer,
                              const RunnerHoles& holes) {
  for (const bool right : {false, true})
    for (const Length depth : holes.depth) {
      const auto number =
          bored_at(cabinet, right ? holes.right : holes.left, right, holes.height, depth);
      if (!number) return right ? "right" : "left";
      bore_one(cabinet.pieces[*number], drawer, right, holes, depth);
    }
  return {};
}

}  // namespace haunch
