#include "shelf_pins.h"

#include <algorithm>
#include <set>

#include "face_bore.h"

namespace haunch {
namespace {

constexpr std::size_t kToMoveBy = 2;

/// The hole whose pin puts the underside of a shelf nearest to a height; `least`: the lowest free.
std::size_t nearest_hole(const PinRows& rows, Length underside, std::size_t least) {
  std::size_t best = least;
  const auto off = [&](std::size_t hole) {
    const Length by = rows.underside(hole) - underside;
    return by < Length() ? -by : by;
  };
  for (std::size_t hole = least; hole <= rows.most; ++hole)
    if (off(hole) < off(best)) best = hole;
  return best;
}

}  // namespace

/// 37 mm, and what is usual with it, rows 32 mm apart of holes 5 mm wide, are of the common system
/// of holes for hinge plates and shelves, as catalogues of hinges have it; inches are near it. With
/// hinges one pitch behind their plates, and before them on stiles, which are too narrow for that.
static Length usual_from_front(const Ledger& ledger, const std::optional<CupHinges>& hinges,
                               bool stiles) {
  if (!hinges) return stiles ? ledger.pick(28'000, 9, 8) : ledger.pick(37'000, 3, 2);
  return stiles ? ledger.pick(15'000, 5, 8) : hinges->plate + ledger.pick(32'000, 5, 4);
}

PinHoles settle_pin_holes(Ledger& ledger, const std::optional<CupHinges>& hinges,
                          const PinPlace& place) {
  const Length thickness = place.thickness;
  PinHoles holes;
  holes.pitch = ledger.take("pin_rows.pitch", ledger.pick(32'000, 5, 4), "usual for rows of pins");
  holes.diameter =
      ledger.take("pin_rows.diameter", ledger.pick(5'000, 1, 4), "usual for shelf pins");
  holes.from_front =
      ledger.take("pin_rows.from_front", usual_from_front(ledger, hinges, place.stiles),
                  hinges         ? "clear of the plates of the hinges"
                  : place.stiles ? "in the middle of usual stiles"
                                 : "usual for rows of pins");
  const Length usual = ledger.pick(10'000, 3, 8);
  const Length half =
      floor_multiple(floor_half(thickness - Length::from_mm(3)), ledger.pick(500, 1, 64));
  const bool shallow = place.from_both_faces && half < usual;
  holes.depth =
      ledger.take("pin_rows.depth", shallow ? half : usual,
                  shallow ? "so that 3 mm is left between rows in both faces of a partition"
                          : "usual for shelf pins");
  if (ledger.stated("pin_rows.first").stated) holes.first = ledger.take("pin_rows.first", {}, {});
  if (holes.depth >= thickness)
    ledger.problem({"pin_rows.depth"}, "is not less than the thickness that is bored, " +
                                           ledger.say(thickness) + "; leave wood behind the holes");
  return holes;
}

std::vector<std::size_t> PinRows::bored() const {
  std::set<std::size_t> all;
  for (const std::size_t hole : used)
    for (std::size_t its = hole - std::min(hole, kToMoveBy);
         its <= std::min(hole + kToMoveBy, most); ++its)
      all.insert(its);
  return {all.begin(), all.end()};
}

/// Where nothing is said, from half a pitch to a whole one is left below and above, the same: so a
/// side may be bored from either end. The rear row stands whole pitches behind the front one, for
/// the same template.
PinRows rows_for(const PinHoles& holes, int shelves, Length thickness, Length low, Length high,
                 Length front, Length rear) {
  PinRows rows{holes, low, {}, {}, {}, {}};
  const Length clear = high - low;
  const std::int64_t pitches =
      std::max<std::int64_t>((clear - holes.pitch).steps() / holes.pitch.steps(), 0);
  rows.most = static_cast<std::size_t>(pitches);
  rows.first = holes.first.value_or(floor_half(clear - holes.pitch * pitches));
  while (rows.most > 0 && rows.height(rows.most) + holes.diameter > high)
    --rows.most;
  rows.front = front + holes.from_front;
  const Length deep = rear - holes.from_front - rows.front;
  rows.rear = rows.front + std::max(floor_multiple(deep, holes.pitch), holes.pitch);
  const Length free = clear - thickness * shelves;
  std::size_t least = 0;
  for (int i = 0; i < shelves; ++i) {
    const Length wanted = low + floor_divide(free * (i + 1), shelves + 1) + thickness * i;
    rows.used.push_back(nearest_hole(rows, wanted, std::min(least, rows.most)));
    least = rows.used.back() + 1;
  }
  return rows;
}

void bore_row(Piece& piece, bool looks_right, const PinRows& rows, Length row) {
  const PinHoles& holes = rows.holes;
  const Box blank = placed_blank(piece);
  const std::vector<std::size_t> all = rows.bored();
  const auto hole = [&](std::size_t number) {
    return bored(piece, {FeatureKind::shelf_pin_holes,
                         "shelf pins",
                         0,
                         !looks_right,
                         {Length(), rows.height(number), row},
                         holes.diameter,
                         holes.depth});
  };
  Feature feature = hole(all.front());
  for (std::size_t i = 1; i < all.size(); ++i)
    feature.prisms.push_back(hole(all[i]).prisms.front());
  const std::vector<NamedSize> told{{SizeName::from_front, row - blank.low[2]},
                                    {SizeName::from_foot, rows.height(all.front()) - blank.low[1]},
                                    {SizeName::pitch, holes.pitch}};
  feature.sizes.insert(feature.sizes.end(), told.begin(), told.end());
  piece.features.push_back(std::move(feature));
}

}  // namespace haunch
