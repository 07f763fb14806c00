#include "opened.h"

#include <algorithm>
#include <optional>
#include <variant>

namespace haunch {

Box handle_of(const OpenedFront& front, Length out) {
  const Box& face = front.box;
  const Length from_edge = std::min(Length::from_mm(20), floor_divide(face.extent(0), 4));
  const Length broad = std::min(Length::from_mm(40), floor_divide(face.extent(0), 4));
  Box handle = face;
  handle.low[2] = face.low[2] - out;
  handle.high[2] = face.low[2];
  if (front.fit.swing()->at_high) {
    handle.low[0] = face.low[0] + from_edge;
    handle.high[0] = handle.low[0] + broad;
  } else {
    handle.high[0] = face.high[0] - from_edge;
    handle.low[0] = handle.high[0] - broad;
  }
  return handle;
}

std::vector<OpenedFront> opened_fronts(const Bench& bench) {
  std::vector<OpenedFront> all;
  for (const Fit* fit : fits_that_stand(bench.assembly, StandsIn::front)) {
    if (std::holds_alternative<std::monostate>(fit->moves)) continue;
    std::optional<Box> box;
    std::size_t named = 0;
    for (std::size_t piece = 0; piece < bench.solids.size(); ++piece) {
      if (!is_within(bench.assembly, bench.assembly.pieces[piece].group, fit->group)) continue;
      if (!box) named = piece;
      box = box ? around(*box, bench.solids[piece].blank) : bench.solids[piece].blank;
    }
    if (box) all.push_back({*fit, named, *box});
  }
  return all;
}

}  // namespace haunch
