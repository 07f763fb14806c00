#include "fittings.h"

#include <utility>

namespace haunch {
namespace {

/// A recess from the back edge of a stile, the one that the leaf's outside is.
struct Recess {
  std::string_view kind;
  Length from_foot, length;
  Length depth;
  Length from_face, width;
};

void cut(Piece& stile, bool is_left, const Recess& recess) {
  const Length edge = is_left ? Length() : stile.blank[1] - recess.depth;
  Feature feature;
  feature.kind = recess.kind;
  feature.cuts = {
      {{recess.from_foot, edge, recess.from_face},
       {recess.from_foot + recess.length, edge + recess.depth, recess.from_face + recess.width}}};
  feature.sizes = {{"length", recess.length},
                   {"width", recess.width},
                   {"depth", recess.depth},
                   {"from_foot", recess.from_foot},
                   {"from_face", recess.from_face}};
  feature.fitting = true;
  stile.features.push_back(std::move(feature));
}

void let_in_hinges(Piece& stile, bool is_left, const HingePlan& hinges) {
  for (const Length foot : hinges.feet)
    cut(stile, is_left, {"gain", foot, hinges.length, hinges.thickness, Length(), hinges.width});
}

void let_in_lock(Piece& stile, bool is_left, const LockPlan& lock) {
  const auto in_middle = [&](Length width) { return floor_half(stile.blank[2] - width); };
  cut(stile, is_left,
      {"lock-mortise", lock.height - floor_half(lock.case_height), lock.case_height,
       lock.case_depth, in_middle(lock.case_thickness), lock.case_thickness});
  if (lock.plate_length == Length()) return;
  cut(stile, is_left,
      {"faceplate", lock.height - floor_half(lock.plate_length), lock.plate_length,
       lock.plate_thickness, in_middle(lock.plate_width), lock.plate_width});
}

}  // namespace

void let_in(Assembly& assembly, std::size_t left_stile, std::size_t right_stile,
            const FittingsPlan& fittings) {
  const bool left = fittings.hangs_left;
  Piece& hanging = assembly.pieces[left ? left_stile : right_stile];
  Piece& locking = assembly.pieces[left ? right_stile : left_stile];
  if (fittings.hinges) let_in_hinges(hanging, left, *fittings.hinges);
  if (fittings.lock) let_in_lock(locking, !left, *fittings.lock);
}

}  // namespace haunch
