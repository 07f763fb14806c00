// How what lies loose in a case goes in and out: straight through the opening before it, or tilted
// on its way, one end up.
#include <algorithm>
#include <cmath>

#include "family.h"
#include "rounding.h"

namespace haunch {
namespace {

constexpr Rule kStraight{"goes-in-straight", "left beside it in its opening as it goes in, level",
                         "a shelf is put in and taken out with the case standing"};
constexpr Rule kTilted{"goes-in-tilted",
                       "left above it in its opening as it goes in with one end up",
                       "a shelf wider than its opening goes in tilted, or not at all"};

/// A rectangle as it is seen from the front.
struct Window {
  Length left, right, low, high;

  Length width() const { return right - left; }
  Length height() const { return high - low; }
};

double steps_of(Length length) {
  return static_cast<double>(length.steps());
}

/// What stays where it is while a loose piece is put in: neither that nor another, nor a front.
Wood standing_round(const Bench& bench, std::size_t loose) {
  Wood standing;
  for (std::size_t piece = 0; piece < bench.solids.size(); ++piece)
    if (piece != loose && !bench.assembly.pieces[piece].loose && !is_of_front(bench, piece))
      add(standing, bench.solids[piece].wood);
  return standing;
}

/// The room that a piece lies in, as far as it is free to each side of it.
Window room_round(const Bench& bench, const Box& piece, const Wood& standing) {
  const Wood own{{piece}, {}};
  const Box all = bounds_of_wood(bench.solids);
  const auto free = [&](Way way) {
    const Length to_end = way.upwards ? all.high[way.axis] - piece.high[way.axis]
                                      : piece.low[way.axis] - all.low[way.axis];
    return gap(own, standing, way).value_or(to_end);
  };
  return {piece.low[0] - free({0, false}), piece.high[0] + free({0, true}),
          piece.low[1] - free({1, false}), piece.high[1] + free({1, true})};
}

/// What stands before a piece within the room that it lies in.
std::vector<Box> before(const Box& piece, const Window& room, const Wood& standing) {
  std::vector<Box> all;
  for (const Box& box : bounds_of(standing)) {
    const Box front{
        {room.left, room.low, box.low[2]},
        {room.right, room.high, std::max(box.low[2], std::min(box.high[2], piece.low[2]))}};
    if (const auto part = common(box, front)) all.push_back(*part);
  }
  return all;
}

/// The places along an axis where something begins or ends, and the ends of the room.
std::vector<Length> places_of(const std::vector<Box>& boxes, std::size_t axis, Length from,
                              Length to) {
  std::vector<Length> places{from, to};
  for (const Box& box : boxes)
    for (const Length place : {box.low[axis], box.high[axis]})
      if (place > from && place < to) places.push_back(place);
  std::sort(places.begin(), places.end());
  places.erase(std::unique(places.begin(), places.end()), places.end());
  return places;
}

bool is_free(const Window& window, const std::vector<Box>& boxes) {
  return std::none_of(boxes.begin(), boxes.end(), [&](const Box& box) {
    return box.low[0] < window.right && window.left < box.high[0] && box.low[1] < window.high &&
           window.low < box.high[1];
  });
}

/// Every opening before the room, no larger one of which holds it.
std::vector<Window> openings_before(const Window& room, const std::vector<Box>& boxes) {
  std::vector<Window> openings;
  const auto across = places_of(boxes, 0, room.left, room.right);
  const auto up = places_of(boxes, 1, room.low, room.high);
  for (std::size_t a = 0; a + 1 < across.size(); ++a)
    for (std::size_t b = across.size() - 1; b > a; --b)
      for (std::size_t c = 0; c + 1 < up.size(); ++c)
        for (std::size_t d = up.size() - 1; d > c; --d) {
          const Window window{across[a], across[b], up[c], up[d]};
          const bool held = std::any_of(openings.begin(), openings.end(), [&](const Window& it) {
            return it.left <= window.left && window.right <= it.right && it.low <= window.low &&
                   window.high <= it.high;
          });
          if (!held && is_free(window, boxes)) openings.push_back(window);
        }
  return openings;
}

/// How high a board of this length and thickness stands when it is tilted so far that it is no
/// wider than the opening; nothing where it is thicker than that is wide.
std::optional<double> height_tilted(Length length, Length thick, Length opening) {
  const double l = steps_of(length);
  const double t = steps_of(thick);
  const double w = steps_of(opening);
  if (t > w) return {};
  // l cos a + t sin a = w, of which the larger solution leaves it least wide.
  const double angle = std::atan2(t, l) + std::acos(std::min(1.0, w / std::hypot(l, t)));
  return l * std::sin(angle) + t * std::cos(angle);
}

void check_loose(Bench& bench, std::size_t number) {
  const Box piece = bench.solids[number].blank;
  const Wood standing = standing_round(bench, number);
  const Window room = room_round(bench, piece, standing);
  const auto openings = openings_before(room, before(piece, room, standing));
  std::optional<Length> straight, tilted;
  const auto better = [](std::optional<Length>& best, Length left) {
    if (!best || left > *best) best = left;
  };
  for (const Window& opening : openings) {
    if (opening.height() >= piece.extent(1)) better(straight, opening.width() - piece.extent(0));
    const auto high = height_tilted(piece.extent(0), piece.extent(1), opening.width());
    // Behind the opening it is laid down again: its corners need the room of its diagonal.
    const double diagonal = std::hypot(steps_of(piece.extent(0)), steps_of(piece.extent(1)));
    if (high && diagonal <= steps_of(room.width()))
      better(tilted, opening.height() - nearest_step(*high));
  }
  if (straight && *straight >= Length())
    report(bench, kStraight, {number}, {}, straight, Bounds{Length(), {}, {}, {}});
  else
    report(bench, kTilted, {number}, {}, tilted, Bounds{Length(), {}, {}, {}});
}

}  // namespace

void check_loose_pieces(Bench& bench) {
  for (std::size_t piece = 0; piece < bench.solids.size(); ++piece)
    if (bench.assembly.pieces[piece].loose) check_loose(bench, piece);
}

std::vector<const Rule*> rules_of_loose_pieces() {
  return {&kStraight, &kTilted};
}

}  // namespace haunch
