#include "run_rods.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include "along_wall.h"
#include "leaves.h"
#include "own_axes.h"

namespace haunch {
namespace {

using What = AlongStand::What;

Axis axis_of(RodDirection direction) {
  constexpr Axis kAll[] = {Axis::y, Axis::x, Axis::z};
  return kAll[static_cast<std::size_t>(direction)];
}

/// "left edge", or where its grain runs along the rod "left end".
std::string edge_words(const Piece& piece, RodDirection direction, bool low) {
  constexpr std::string_view kSides[][2] = {
      {"upper", "lower"}, {"right", "left"}, {"rear", "front"}};
  const bool along = own_axis(piece.place, axis_of(direction)) == 0;
  return std::string(kSides[static_cast<std::size_t>(direction)][low ? 1 : 0]) +
         (along ? " end" : " edge");
}

/// One of the three, with what is made for the run alone and the outer sides of its cases.
class AlongRod {
 public:
  AlongRod(const Assembly& wood, const AlongWall& wall, Unit unit, RodDirection direction)
      : wood_(wood), wall_(wall), unit_(unit), axis_(static_cast<std::size_t>(axis_of(direction))) {
    rod_.direction = direction;
  }

  Rod rod() {
    settle_zero();
    for (std::size_t piece = 0; piece < wood_.pieces.size(); ++piece)
      if (wood_.pieces[piece].group == 0) add_piece(piece);
    for (const AlongStand& stand : wall_.stands)
      if (stand.what == What::cabinet) add_case(stand);
    if (rod_.direction == RodDirection::width) {
      add_gaps();
      add_walls();
    }
    for (auto& [at, names] : marks_)
      rod_.marks.push_back({at, std::move(names)});
    return std::move(rod_);
  }

 private:
  void settle_zero();
  void add_piece(std::size_t piece);
  void add_cutouts(std::size_t piece);
  void add_case(const AlongStand& stand);
  void add_gaps();
  void add_walls();
  std::size_t strip_of(std::size_t piece);
  void mark(std::size_t piece, Length place, const std::string& what);
  std::optional<std::size_t> side_of(const AlongStand& stand, bool right) const;
  std::optional<std::size_t> last_piece(bool right) const;
  Box box_of(std::size_t piece) const { return placed_blank(wood_.pieces[piece]); }

  const Assembly& wood_;
  const AlongWall& wall_;
  Unit unit_;
  std::size_t axis_;
  Length zero_;
  Rod rod_;
  std::map<Length, std::vector<RodName>> marks_;
};

/// The wall's left end where that is shortest, the level that the cases stand on, the front.
void AlongRod::settle_zero() {
  const MeasuredWall& ruling = wall_.shortest_wall();
  switch (rod_.direction) {
    case RodDirection::width:
      zero_ = ruling.left;
      rod_.length = ruling.length;
      break;
    case RodDirection::height:
      zero_ = wall_.level;
      rod_.length = wood_.size[1] - wall_.level;
      break;
    case RodDirection::depth:
      rod_.length = wall_.back;
      break;
  }
}

/// What is of one role stands on one strip.
std::size_t AlongRod::strip_of(std::size_t piece) {
  const Role role = wood_.pieces[piece].role;
  auto strip = std::find_if(rod_.strips.begin(), rod_.strips.end(),
                            [&](const RodStrip& its) { return its.role == role; });
  if (strip == rod_.strips.end()) strip = rod_.strips.insert(strip, {"run", role, {}});
  if (std::find(strip->pieces.begin(), strip->pieces.end(), piece) == strip->pieces.end())
    strip->pieces.push_back(piece);
  return static_cast<std::size_t>(strip - rod_.strips.begin());
}

void AlongRod::mark(std::size_t piece, Length place, const std::string& what) {
  std::vector<RodName>& names = marks_[place - zero_];
  const std::size_t strip = strip_of(piece);
  const auto same = std::find_if(names.begin(), names.end(), [&](const RodName& its) {
    return its.strip == strip && its.what == what;
  });
  if (same == names.end())
    names.push_back({strip, what, {piece}, {}});
  else
    same->pieces.push_back(piece);
}

void AlongRod::add_piece(std::size_t piece) {
  const Piece& its = wood_.pieces[piece];
  const Box box = box_of(piece);
  mark(piece, box.low[axis_], edge_words(its, rod_.direction, true));
  mark(piece, box.high[axis_], edge_words(its, rod_.direction, false));
  rod_.stretches.push_back({strip_of(piece), box.low[axis_] - zero_, box.high[axis_] - zero_});
  add_cutouts(piece);
}

void AlongRod::add_cutouts(std::size_t piece) {
  if (rod_.direction == RodDirection::height) return;
  std::size_t number = 0;
  for (const Feature& feature : wood_.pieces[piece].features) {
    if (feature.kind != FeatureKind::cutout) continue;
    const Box box = placed(feature.cuts.front(), wood_.pieces[piece].place);
    const std::string what = "cut-out over " + wall_.cutouts[number++];
    mark(piece, box.low[axis_], what + " begins");
    mark(piece, box.high[axis_], what + " ends");
    rod_.stretches.push_back(
        {strip_of(piece), box.low[axis_] - zero_, box.high[axis_] - zero_, true});
  }
}

/// Of a case the deepest piece at its end: a side, to which its neighbour is screwed.
std::optional<std::size_t> AlongRod::side_of(const AlongStand& stand, bool right) const {
  std::optional<std::size_t> side;
  for (std::size_t piece = 0; piece < wood_.pieces.size(); ++piece) {
    if (!wood_.groups[wood_.pieces[piece].group].path.starts_with(stand.part.path + "/") &&
        wood_.groups[wood_.pieces[piece].group].path != stand.part.path)
      continue;
    const Box box = box_of(piece);
    const Box& room = stand.part.room;
    if (right ? box.high[0] != room.high[0] : box.low[0] != room.low[0]) continue;
    if (!side || box.extent(2) > box_of(*side).extent(2)) side = piece;
  }
  return side;
}

/// From one end to the other as one, carried to its sides.
void AlongRod::add_case(const AlongStand& stand) {
  const auto left = side_of(stand, false), right = side_of(stand, true);
  if (!left || !right) return;
  const Box& room = stand.part.room;
  constexpr std::string_view kEnds[][2] = {
      {"foot", "top"}, {"left end", "right end"}, {"front", "back"}};
  const auto& ends = kEnds[static_cast<std::size_t>(rod_.direction)];
  const auto what = [&](bool high) {
    return stand.part.path + ", " + std::string(ends[high ? 1 : 0]);
  };
  const bool across = rod_.direction == RodDirection::width;
  mark(*left, room.low[axis_], what(false));
  if (!across) mark(*right, room.low[axis_], what(false));
  if (!across) mark(*left, room.high[axis_], what(true));
  mark(*right, room.high[axis_], what(true));
  for (const std::size_t side : {*left, *right}) {
    const Box box = box_of(side);
    if (box.low[axis_] != room.low[axis_])
      mark(side, box.low[axis_], edge_words(wood_.pieces[side], rod_.direction, true));
    if (box.high[axis_] != room.high[axis_])
      mark(side, box.high[axis_], edge_words(wood_.pieces[side], rod_.direction, false));
  }
  rod_.stretches.push_back({strip_of(*left), room.low[axis_] - zero_, room.high[axis_] - zero_});
}

/// Where what is put in a gap has its place: carried to what stands beside it.
void AlongRod::add_gaps() {
  for (std::size_t i = 0; i < wall_.stands.size(); ++i) {
    const AlongStand& gap = wall_.stands[i];
    if (gap.what != What::gap) continue;
    const std::string what = gap.name.empty() ? "gap" : "gap for the " + gap.name;
    if (i > 0 && wall_.stands[i - 1].what == What::cabinet)
      if (const auto side = side_of(wall_.stands[i - 1], true))
        mark(*side, gap.low, what + " begins");
    if (i + 1 < wall_.stands.size() && wall_.stands[i + 1].what == What::cabinet)
      if (const auto side = side_of(wall_.stands[i + 1], false))
        mark(*side, gap.high, what + " ends");
  }
}

/// What stands nearest to an end of the wall.
std::optional<std::size_t> AlongRod::last_piece(bool right) const {
  std::optional<std::size_t> last;
  for (std::size_t piece = 0; piece < wood_.pieces.size(); ++piece) {
    const Role role = wood_.pieces[piece].role;
    if (role == Role::extra || role == Role::worktop) continue;
    if (!last || (right ? box_of(piece).high[0] > box_of(*last).high[0]
                        : box_of(piece).low[0] < box_of(*last).low[0]))
      last = piece;
  }
  return last;
}

/// Where they are, at each of the heights where one that is out was measured.
void AlongRod::add_walls() {
  for (const bool right : {false, true}) {
    const auto beside = last_piece(right);
    if (!beside || !(right ? wall_.right_wall : wall_.left_wall)) continue;
    const auto end_of = [&](const MeasuredWall& its) { return right ? its.right : its.left; };
    const bool plumb = std::all_of(
        wall_.measured.begin(), wall_.measured.end(),
        [&](const MeasuredWall& its) { return end_of(its) == end_of(wall_.measured.front()); });
    for (const MeasuredWall& its : wall_.measured)
      if (!plumb || &its == &wall_.measured.front())
        mark(*beside, end_of(its),
             plumb ? "wall" : "wall, " + in_words(its.at, unit_) + " above the floor");
  }
}

/// A cabinet's own, told in the run's pieces.
Rod in_pieces(Rod rod, const std::vector<std::size_t>& pieces) {
  const auto renumber = [&](std::vector<std::size_t>& all) {
    for (std::size_t& piece : all)
      piece = pieces[piece];
  };
  for (RodStrip& strip : rod.strips)
    renumber(strip.pieces);
  for (RodMark& its : rod.marks)
    for (RodName& name : its.names) {
      renumber(name.pieces);
      renumber(name.takes);
    }
  return rod;
}

constexpr std::array kDirections{RodDirection::height, RodDirection::width, RodDirection::depth};

void add_cabinet(std::vector<Rod>& rods, const Assembly& wood, const TakenPart& part) {
  const auto group = std::find_if(wood.groups.begin(), wood.groups.end(),
                                  [&](const Group& its) { return its.path == part.path; });
  const AloneGroup alone =
      group_alone(wood, static_cast<std::size_t>(group - wood.groups.begin()), part.room);
  const Making making = making_of(alone.wood);
  for (const RodDirection direction : kDirections) {
    rods.push_back(in_pieces(rod_of(alone.wood, making, direction), alone.pieces));
    rods.back().of = part.path;
  }
}

}  // namespace

std::vector<Rod> run_rods(const Assembly& wood, const AlongWall& wall, Unit unit) {
  std::vector<Rod> rods;
  for (const RodDirection direction :
       {RodDirection::width, RodDirection::height, RodDirection::depth})
    rods.push_back(AlongRod(wood, wall, unit, direction).rod());
  for (const AlongStand& stand : wall.stands)
    if (stand.what == What::cabinet) add_cabinet(rods, wood, stand.part);
  return rods;
}

}  // namespace haunch
