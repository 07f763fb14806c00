#include "run_views.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "movements.h"
#include "paper.h"
#include "piece_marks.h"
#include "projection.h"
#include "run_page.h"
#include "spots.h"

namespace haunch {
namespace {

using What = AlongStand::What;

constexpr double kName = 3.5, kNote = 2.8;
constexpr double kHatched = 2.2;         // of ground beside its line
constexpr Length kAbove = whole_mm(60);  // that a wall is drawn above the work

CutPlane from_front() {
  return {Axis::z, Length(), true};
}
CutPlane from_above() {
  return {Axis::y, Length(), false};
}

/// For what others bring, or another run.
bool is_left_free(const AlongStand& stand) {
  return stand.what == What::corner || (stand.what == What::gap && !stand.name.empty());
}

/// Ground that is cut through: a thick line, and short slanted ones at the side where it lies.
void draw_ground(NotedView& view, const SpotRun& line, ViewSpot into) {
  constexpr double kApart = 2.6;
  view.picture().strokes.push_back({Pen::cut, {line}});
  Stroke hatch{Pen::hatch, {}};
  for (std::size_t i = 1; i < line.size(); ++i) {
    const ViewSpot &a = line[i - 1], &b = line[i];
    const double length = std::hypot(b.u - a.u, b.v - a.v);
    if (length == 0) continue;
    const ViewSpot along{(b.u - a.u) / length, (b.v - a.v) / length};
    const auto strokes = static_cast<int>(std::lround(length / kApart));
    for (int stroke = 0; stroke < strokes; ++stroke) {
      const double at = kApart * (stroke + 0.5);
      const ViewSpot from{a.u + along.u * at, a.v + along.v * at};
      hatch.runs.push_back({from, moved(from, {(into.u + along.u * 0.7) * kHatched,
                                               (into.v + along.v * 0.7) * kHatched})});
    }
    view.reserve(around(Extent{a, a}, Extent{moved(b, {into.u * kHatched, into.v * kHatched}), b}));
  }
  view.picture().strokes.push_back(std::move(hatch));
}

/// "2654.5 at 0, 2648 at 900, 2640 at 2100"
std::string readings_words(const AlongWall& wall, const LengthPrinter& lengths) {
  std::string words;
  for (const MeasuredWall& its : wall.measured)
    words += (words.empty() ? "" : ", ") + lengths.one(its.length) + " at " + lengths.one(its.at);
  return words;
}

/// What stands along the wall has its name where that has room: level, else upright, else its
/// number from the left, of which a list tells.
class StandNames {
 public:
  StandNames(NotedView& view, const AlongWall& wall) : view_(view), wall_(wall) {}

  /// `room_of`: where each stands on the paper.
  template <typename RoomOf>
  void name_all(const RoomOf& room_of) {
    std::size_t number = 0;
    for (const AlongStand& stand : wall_.stands)
      if (stand.what != What::other && !stand.name.empty())
        name(stand.name, std::to_string(++number), room_of(stand));
  }

  /// "1 island-drawers; 4 flour"
  const std::string& list() const { return list_; }

 private:
  void name(const std::string& words, const std::string& number, const Extent& room) {
    if (try_name(words, room)) return;
    list_ += (list_.empty() ? "" : "; ") + number + " " + words;
    if (!try_name(number, room)) name_above(number, room);
  }

  bool try_name(const std::string& words, const Extent& room) {
    for (const bool upright : {false, true})
      for (const double size : {kName, kNote}) {
        const Lettering text{{}, words, size, Anchor::middle, upright};
        const double length = width_of(text) + 1;
        if (length > (upright ? room.height() : room.width()) ||
            size * 1.2 > (upright ? room.width() : room.height()))
          continue;
        if (view_.letter(text, places(room, upright, length, size))) return true;
      }
    return false;
  }

  static std::vector<ViewSpot> places(const Extent& room, bool upright, double length,
                                      double size) {
    std::vector<ViewSpot> all;
    const double low = upright ? room.low.v : room.low.u,
                 wide = upright ? room.height() : room.width();
    for (const double across : {0.55, 0.42, 0.68, 0.3, 0.8, 0.18, 0.9})
      for (const double part : {0.5, 0.35, 0.65}) {
        const double along = low + std::clamp(wide * part, length / 2, wide - length / 2);
        if (upright)
          all.push_back({room.low.u + room.width() * across + size * 0.36, along});
        else
          all.push_back({along, room.low.v + room.height() * across - size * 0.36});
      }
    return all;
  }

  void name_above(const std::string& number, const Extent& room) {
    const double middle = (room.low.u + room.high.u) / 2;
    std::vector<ViewSpot> all;
    for (const double up : {1.0, 4.5, 8.0, 11.5})
      all.push_back({middle, room.high.v + up});
    view_.letter({{}, number, kNote}, all);
  }

  NotedView& view_;
  const AlongWall& wall_;
  std::string list_;
};

/// "A filler 1 82.7 wide, planed to the wall: 82.7 at 0 from its foot, 75.2 at 780; BM end panel
/// 1": what is made for the run alone.
std::string own_pieces_words(const Assembly& wood, const LengthPrinter& lengths) {
  std::string words;
  for (const Piece& piece : wood.pieces) {
    if (piece.group != 0) continue;
    words += (words.empty() ? "" : "; ") + piece.mark + " " + piece.name;
    if (piece.role != Role::filler) continue;
    words += ", " + lengths.one(piece.blank[1]) + " wide";
    const std::vector<PlanedWidth> widths = planed_widths(piece);
    for (std::size_t i = 0; i < widths.size(); ++i)
      words += (i == 0 ? ", planed to the wall: " : ", ") + lengths.one(widths[i].width) + " at " +
               lengths.one(widths[i].from_foot) + (i == 0 ? " from its foot" : "");
  }
  return words;
}

/// The elevation.
class RunElevation {
 public:
  RunElevation(const ItemReport& item, const AlongWall& wall, const LineView& lines,
               PaperScale scale, const LengthPrinter& lengths)
      : item_(item),
        wall_(wall),
        lengths_(lengths),
        view_(lines, item.wood, sight_of(from_front()), scale, lengths) {}

  WholeView drawn() {
    draw_walls();
    draw_floor();
    std::vector<std::string> words = reading_words();
    for (const AlongStand& stand : wall_.stands)
      if (is_left_free(stand)) draw_gap(stand);
    StandNames names(view_, wall_);
    names.name_all([&](const AlongStand& stand) { return extent_of(stand); });
    mark_pieces_of_whole(view_, {from_front(), {}});
    chains();
    if (std::string own = own_pieces_words(item_.wood, lengths_); !own.empty())
      words.push_back(std::move(own));
    if (!names.list().empty()) words.push_back(names.list());
    return {"", "elevation, seen from its front", std::move(view_.picture()), std::move(words)};
  }

 private:
  ViewSpot spot(Length along, Length height) const {
    return view_.paper(Triple{along, height, Length()});
  }
  Extent extent_of(const AlongStand& stand) const {
    return {spot(stand.low, stand.foot), spot(stand.high, stand.top)};
  }
  /// At which side the wall is out, so that what was read of it stands there.
  bool is_read_right() const { return wall_.fixed_from_left; }
  bool has_wall(bool right) const { return right ? wall_.right_wall : wall_.left_wall; }
  Length end_at(const MeasuredWall& its, bool right) const { return right ? its.right : its.left; }

  void draw_walls();
  void draw_wall(bool right, Length foot, Length top);
  void draw_floor();
  void draw_gap(const AlongStand& gap);
  void tell_readings();
  std::vector<std::string> reading_words() const;
  void chains();
  std::vector<Length> stand_places() const;
  std::vector<Length> heights() const;
  Length floor_at(bool right) const;

  const ItemReport& item_;
  const AlongWall& wall_;
  const LengthPrinter& lengths_;
  NotedView view_;
};

Length RunElevation::floor_at(bool right) const {
  if (wall_.floor.empty()) return wall_.level;
  return right ? wall_.floor.back().height : wall_.floor.front().height;
}

/// As they were measured, from the floor to the highest reading.
void RunElevation::draw_walls() {
  const Length top = std::max(wall_.measured.back().height, item_.wood.size[1] + kAbove);
  for (const bool right : {false, true})
    if (has_wall(right)) draw_wall(right, floor_at(right), top);
  if (wall_.measured.size() > 1) tell_readings();
}

void RunElevation::draw_wall(bool right, Length foot, Length top) {
  SpotRun line{spot(end_at(wall_.measured.front(), right), foot)};
  for (const MeasuredWall& its : wall_.measured)
    if (its.height > foot && its.height < top) line.push_back(spot(end_at(its, right), its.height));
  line.push_back(spot(end_at(wall_.measured.back(), right), top));
  draw_ground(view_, line, {right ? 1.0 : -1.0, 0});
}

/// The lengths beside the wall, at the heights where they were measured.
void RunElevation::tell_readings() {
  const bool right = is_read_right();
  const double way = right ? 1 : -1;
  for (const MeasuredWall& its : wall_.measured) {
    const ViewSpot at = spot(end_at(its, right), its.height);
    view_.picture().line(Pen::thin, moved(at, {-way * 1.2, 0}),
                         moved(at, {way * (kHatched + 2), 0}));
    const Lettering text{
        {}, lengths_.one(its.length) + " at " + lengths_.one(its.at), kNote, Anchor::middle, true};
    const double half = width_of(text) / 2;
    std::vector<ViewSpot> places;
    for (const double out : {kHatched + 1.0, kHatched + 4.6})
      for (const double up : {half + 0.8, -half - 0.8})
        places.push_back(moved(at, {right ? out + kNote * 0.75 : -out, up}));
    view_.letter(text, places);
  }
}

/// With its fall, and the level that the cases stand on.
void RunElevation::draw_floor() {
  constexpr Length kPast = whole_mm(150);  // a free end
  Length left = wall_.left_wall ? wall_.shortest_wall().left : -kPast;
  Length right = wall_.right_wall ? wall_.shortest_wall().right : item_.wood.size[0] + kPast;
  if (wall_.left_wall) left = std::min(left, wall_.measured.front().left);
  if (wall_.right_wall) right = std::max(right, wall_.measured.front().right);
  SpotRun line{spot(left, floor_at(false))};
  for (const FloorPlace& place : wall_.floor)
    if (place.along > left && place.along < right) line.push_back(spot(place.along, place.height));
  line.push_back(spot(right, floor_at(true)));
  draw_ground(view_, line, {0, -1});
  if (wall_.floor.empty()) return;
  view_.picture().line(Pen::chain, spot(left, wall_.level), spot(right, wall_.level));
  for (const FloorPlace& place : wall_.floor) {
    if (!place.is_read) continue;
    const ViewSpot at = spot(std::clamp(place.along, left, right), place.height);
    const std::string words =
        place.fall == Length() ? "highest" : lengths_.one(place.fall) + " lower";
    const Lettering text{{}, words, kNote};
    const double half = width_of(text) / 2;
    std::vector<ViewSpot> places;
    for (const double off : {0.0, half - 1, 1 - half})
      places.push_back(moved(at, {off, -kHatched - 3.4}));
    view_.letter(text, places);
  }
}

/// Dashed: it is what others bring.
void RunElevation::draw_gap(const AlongStand& gap) {
  const auto& [low, high] = extent_of(gap);
  view_.picture().strokes.push_back(
      {Pen::moving, {{low, {high.u, low.v}, high, {low.u, high.v}, low}}});
}

std::vector<std::string> RunElevation::reading_words() const {
  if (wall_.measured.size() == 1) return {};
  return {"the wall was measured " + readings_words(wall_, lengths_) +
          " above the floor's highest point; figures along it are of " +
          lengths_.one(wall_.shortest_wall().at) + ", where it is shortest"};
}

/// Edges of all that stands along the wall, from one end of that to the other.
std::vector<Length> RunElevation::stand_places() const {
  std::vector<Length> places;
  for (const AlongStand& stand : wall_.stands)
    places.insert(places.end(), {stand.low, stand.high});
  return places;
}

std::vector<Length> RunElevation::heights() const {
  std::vector<Length> places{wall_.level, item_.wood.size[1]};
  for (const FloorPlace& place : wall_.floor)
    places.push_back(place.height);
  const Length lowest = *std::min_element(places.begin(), places.end());
  places = {lowest, wall_.level, item_.wood.size[1]};
  for (const AlongStand& stand : wall_.stands)
    if (stand.what == What::cabinet) places.push_back(stand.top);
  for (const Piece& piece : item_.wood.pieces)
    if (piece.role == Role::toe_board) places.push_back(placed_blank(piece).high[1]);
  return places;
}

void RunElevation::chains() {
  view_.keep_clear();
  const MeasuredWall& ruling = wall_.shortest_wall();
  std::vector<Length> along = stand_places();
  const bool too_long =
      wall_.stands.back().high > ruling.right || wall_.stands.front().low < ruling.left;
  if (!too_long) along.insert(along.end(), {ruling.left, ruling.right});
  view_.chain(PaperSide::below, Axis::x, along);
  view_.chain(PaperSide::below, Axis::x, {ruling.left, ruling.right});
  const PaperSide side = is_read_right() ? PaperSide::left : PaperSide::right;
  const std::vector<Length> up = heights();
  view_.chain(side, Axis::y, up);
  view_.chain(side, Axis::y,
              {*std::min_element(up.begin(), up.end()), *std::max_element(up.begin(), up.end())});
}

/// The plan.
class RunPlan {
 public:
  RunPlan(const ItemReport& item, const AlongWall& wall, const LineView& lines, PaperScale scale,
          const LengthPrinter& lengths)
      : item_(item),
        wall_(wall),
        lengths_(lengths),
        view_(lines, item.wood, sight_of(from_above()), scale, lengths) {
    for (const Piece& piece : item.wood.pieces)
      if (piece.role == Role::worktop) worktop_ = &piece;
    for (const Box& cut : cutouts_of(worktop_))
      cutouts_.push_back(placed(cut, worktop_->place));
  }

  WholeView drawn() {
    draw_walls();
    draw_stands();
    for (const Box& cutout : cutouts_)
      draw_cutout(cutout);
    StandNames names(view_, wall_);
    names.name_all([&](const AlongStand& stand) { return view_.paper(room_of(stand)); });
    mark_pieces_of_whole(view_, {from_above(), {}});
    draw_movements_from_above(view_);
    chains();
    std::vector<std::string> words = cutout_words();
    tell_void(words);
    if (!names.list().empty()) words.push_back(names.list());
    return {"", "plan, seen from above", std::move(view_.picture()), std::move(words)};
  }

 private:
  static std::vector<Box> cutouts_of(const Piece* worktop) {
    std::vector<Box> all;
    if (worktop == nullptr) return all;
    for (const Feature& feature : worktop->features)
      if (feature.kind == FeatureKind::cutout)
        all.insert(all.end(), feature.cuts.begin(), feature.cuts.end());
    return all;
  }
  /// What is put in a gap is as deep as the cases.
  Box room_of(const AlongStand& stand) const {
    if (stand.what == What::cabinet) return stand.part.room;
    return {{stand.low, stand.foot, front()}, {stand.high, stand.top, back()}};
  }
  std::string over(std::size_t cutout) const {
    return cutout < wall_.cutouts.size() ? wall_.cutouts[cutout] : std::to_string(cutout + 1);
  }
  Length front() const { return extreme_case(true); }
  Length back() const { return extreme_case(false); }
  Length extreme_case(bool front) const {
    std::optional<Length> place;
    for (const AlongStand& stand : wall_.stands) {
      if (stand.what != What::cabinet) continue;
      const Box& room = stand.part.room;
      const Length its = front ? room.low[2] : room.high[2];
      place = !place ? its : front ? std::min(*place, its) : std::max(*place, its);
    }
    return place.value_or(Length());
  }

  void draw_walls();
  void draw_stands();
  void draw_cutout(const Box& cutout);
  std::vector<std::string> cutout_words() const;
  void tell_void(std::vector<std::string>& words) const;
  void chains();

  const ItemReport& item_;
  const AlongWall& wall_;
  const LengthPrinter& lengths_;
  NotedView view_;
  const Piece* worktop_ = nullptr;
  std::vector<Box> cutouts_;
};

/// The wall behind, and those at its ends where it is shortest; dashed where they stand at the
/// other heights.
void RunPlan::draw_walls() {
  const auto spot = [&](Length along, Length deep) {
    return view_.paper(Triple{along, Length(), deep});
  };
  constexpr Length kPast = whole_mm(150);
  const MeasuredWall& ruling = wall_.shortest_wall();
  const Length left = wall_.left_wall ? ruling.left : -kPast;
  const Length right = wall_.right_wall ? ruling.right : item_.wood.size[0] + kPast;
  draw_ground(view_, {spot(left, wall_.back), spot(right, wall_.back)}, {0, 1});
  for (const bool at_right : {false, true}) {
    if (!(at_right ? wall_.right_wall : wall_.left_wall)) continue;
    const Length end = at_right ? right : left;
    draw_ground(view_, {spot(end, Length() - kPast), spot(end, wall_.back)},
                {at_right ? 1.0 : -1.0, 0});
    for (const MeasuredWall& its : wall_.measured)
      if (const Length there = at_right ? its.right : its.left; there != end)
        view_.picture().line(Pen::hidden, spot(there, Length() - kPast), spot(there, wall_.back));
  }
}

/// Below a worktop they are hidden; what is put in a gap, and another run, is dashed.
void RunPlan::draw_stands() {
  for (const AlongStand& stand : wall_.stands) {
    const bool hidden = stand.what == What::cabinet && worktop_ != nullptr;
    const bool gap = is_left_free(stand);
    if (!hidden && !gap) continue;
    const auto& [low, high] = view_.paper(room_of(stand));
    view_.picture().strokes.push_back(
        {hidden ? Pen::hidden : Pen::moving, {{low, {high.u, low.v}, high, {low.u, high.v}, low}}});
  }
}

/// A cross: it goes right through.
void RunPlan::draw_cutout(const Box& cutout) {
  const auto& [low, high] = view_.paper(cutout);
  view_.picture().line(Pen::thin, low, high);
  view_.picture().line(Pen::thin, {low.u, high.v}, {high.u, low.v});
}

std::vector<std::string> RunPlan::cutout_words() const {
  std::vector<std::string> words;
  for (std::size_t i = 0; i < cutouts_.size(); ++i) {
    const Box top = placed_blank(*worktop_);
    const Box& its = cutouts_[i];
    const bool from_left = wall_.fixed_from_left;
    const Length off = from_left ? its.low[0] - top.low[0] : top.high[0] - its.high[0];
    words.push_back("cut-out over " + over(i) + ": " + lengths_.one(its.extent(0)) + " x " +
                    lengths_.one(its.extent(2)) + ", " + lengths_.one(its.low[2] - top.low[2]) +
                    " from the front edge, " + lengths_.one(off) + " from the " +
                    (from_left ? "left" : "right") + " end, where fixing begins");
  }
  return words;
}

void RunPlan::tell_void(std::vector<std::string>& words) const {
  if (const Length room = wall_.back - back(); room > Length())
    words.push_back("behind the backs " + lengths_.one(room) + " is left for services");
  if (wall_.measured.size() > 1)
    words.push_back("walls stand where the wall is shortest, at " +
                    lengths_.one(wall_.shortest_wall().at) + "; dashed where they are out");
}

void RunPlan::chains() {
  view_.keep_clear();
  const PaperSide fixed = wall_.fixed_from_left ? PaperSide::left : PaperSide::right;
  const PaperSide other = wall_.fixed_from_left ? PaperSide::right : PaperSide::left;
  const MeasuredWall& ruling = wall_.shortest_wall();
  if (worktop_ == nullptr) {
    view_.chain(PaperSide::below, Axis::x, {ruling.left, ruling.right});
  } else {
    const Box top = placed_blank(*worktop_);
    std::vector<Length> along{top.low[0], top.high[0]};
    for (const Box& cutout : cutouts_) {
      along.insert(along.end(), {cutout.low[0], cutout.high[0]});
      view_.chain(other, Axis::z, {top.low[2], cutout.low[2], cutout.high[2], top.high[2]});
    }
    view_.chain(PaperSide::below, Axis::x, along);
    view_.chain(PaperSide::below, Axis::x, {top.low[0], top.high[0]});
  }
  std::vector<Length> deep{wall_.back, back()};
  for (const AlongStand& stand : wall_.stands)
    if (stand.what == What::cabinet) deep.push_back(stand.part.room.low[2]);
  if (worktop_ != nullptr) deep.push_back(placed_blank(*worktop_).low[2]);
  view_.chain(fixed, Axis::z, deep);
  view_.chain(fixed, Axis::z, {*std::min_element(deep.begin(), deep.end()), wall_.back});
}

/// The first link of a chain up from the floor: "packed 6.4".
std::string packed_words(const ItemReport& item, const std::string& name, bool right,
                         const LengthPrinter& lengths) {
  const std::string what = "up from the floor at " + name + ", " + (right ? "right" : "left");
  for (const Chain& chain : item.chains)
    if (chain.what == what && chain.links.size() > 1)
      return lengths.one(chain.links.front().length);
  return lengths.one(Length());
}

}  // namespace

RunViews::RunViews(const ItemReport& item, const AlongWall& wall,
                   const std::vector<DrawnWood>& woods, const LengthPrinter& lengths)
    : item_(item),
      wall_(wall),
      lengths_(lengths),
      front_(view_of(woods, sight_of(from_front()), HiddenLines::left_out)),
      above_(view_of(woods, sight_of(from_above()), HiddenLines::left_out)) {}

std::vector<WholeView> RunViews::at_scale(PaperScale scale) const {
  return {RunElevation(item_, wall_, front_, scale, lengths_).drawn(),
          RunPlan(item_, wall_, above_, scale, lengths_).drawn()};
}

std::vector<std::string> fixing_words(const ItemReport& item, const AlongWall& wall,
                                      const LengthPrinter& lengths) {
  std::vector<std::string> words;
  for (const Caution& caution : item.cautions)
    if (caution.about == "order of fixing") words.push_back(caution.words);
  std::vector<std::string> cabinets;
  for (const AlongStand& stand : wall.stands)
    if (stand.what == What::cabinet) cabinets.push_back(stand.name);
  if (!wall.fixed_from_left) std::reverse(cabinets.begin(), cabinets.end());
  if (!wall.floor.empty())
    for (const std::string& name : cabinets)
      words.push_back(name + ": up from the floor " + packed_words(item, name, false, lengths) +
                      " at its left, " + packed_words(item, name, true, lengths) + " at its right");
  return words;
}

}  // namespace haunch
