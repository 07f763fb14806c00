#include "across.h"

#include <algorithm>

#include "bodies.h"
#include "polyhedron.h"

namespace haunch {
namespace {

bool is_told_along(const Run& run) {
  constexpr Line kEnds[] = {Line::foot, Line::lower_end, Line::left_end, Line::front_end,
                            Line::rear_end};
  return run.side.into == 2 && !run.to &&
         std::find(std::begin(kEnds), std::end(kEnds), run.from) != std::end(kEnds);
}

bool is_set_across(const Operation& operation) {
  return operation.has(SizeName::from_edge) || operation.has(SizeName::from_front) ||
         operation.has(SizeName::from_back) || operation.has(SizeName::from_face);
}

bool lies_at(const Box& body, const Run& run) {
  if (!run.far) return body.low[0] <= run.near && run.near <= body.high[0];
  return body.low[0] < *run.far && run.near < body.high[0];
}

/// Round all that the run makes of its feature.
std::optional<Box> made_by(const Feature& feature, const Run& run) {
  std::optional<Box> all;
  for (const Box& body : bodies_of(feature))
    if (lies_at(body, run)) all = all ? around(*all, body) : body;
  return all;
}

std::optional<AcrossFace> across_of(const Piece& piece, const Run& run) {
  const auto made = made_by(piece.features[run.feature], run);
  if (!made || made->extent(1) == piece.blank[1]) return {};
  const bool backwards = piece.place.backwards[1];
  const Length near = backwards ? piece.blank[1] - made->high[1] : made->low[1];
  if (!run.far) return AcrossFace{near + floor_half(made->extent(1)), {}};
  return AcrossFace{near, near + made->extent(1)};
}

}  // namespace

void tell_across(Making& making, const Assembly& wood) {
  for (Operation& operation : making.operations)
    for (Run& run : operation.runs)
      if (is_told_along(run) && !is_set_across(operation))
        run.across = across_of(wood.pieces[run.piece], run);
}

}  // namespace haunch
