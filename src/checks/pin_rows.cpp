// Rows of holes for the pins of shelves.
#include <algorithm>
#include <map>
#include <tuple>

#include "family.h"

namespace haunch {
namespace {

constexpr Rule kPitch{"shelf-pin-pitch", "off whole steps, in a row of pin holes",
                      "a shelf is set up and down by whole steps"};
constexpr Rule kLevel{"shelf-pin-level", "in height between two holes that carry one shelf",
                      "four pins at one height, or the shelf rocks"};
constexpr Rule kBehind{"shelf-pin-behind", "of wood behind the hole of a shelf pin",
                       "under 3 mm a pin comes through (trade practice)"};

/// A row of holes in one face of a piece: their middles, lowest first.
struct Row {
  std::size_t piece = 0;
  bool to_right = false;  // the holes come out at the face that looks to the right
  Length deep;            // its middle, from front to back
  std::vector<Length> heights;
};

std::vector<Row> rows_in(const Bench& bench, std::size_t number) {
  const Piece& piece = bench.assembly.pieces[number];
  const Box blank = placed_blank(piece);
  std::map<std::tuple<bool, Length, std::size_t>, Row> rows;  // by feature
  for (std::size_t its = 0; its < piece.features.size(); ++its) {
    const Feature& feature = piece.features[its];
    if (feature.kind != FeatureKind::shelf_pin_holes) continue;
    for (const Prism& prism : feature.prisms) {
      const Box hole = bounds_of(placed(prism, piece.place));
      const bool to_right = hole.high[0] == blank.high[0];
      const Length deep = hole.low[2] + floor_half(hole.extent(2));
      Row& row = rows[{to_right, deep, its}];
      row.piece = number;
      row.to_right = to_right;
      row.deep = deep;
      row.heights.push_back(hole.low[1] + floor_half(hole.extent(1)));
    }
  }
  std::vector<Row> all;
  for (auto& [where, row] : rows) {
    std::sort(row.heights.begin(), row.heights.end());
    all.push_back(std::move(row));
  }
  return all;
}

/// Of a row's least step: how far a hole is off whole ones.
Length off_step(Length from_first, Length step) {
  const Length beyond = from_first - step * (from_first.steps() / step.steps());
  return std::min(beyond, step - beyond);
}

void check_pitch(Bench& bench, const Row& row) {
  if (row.heights.size() < 3) return;
  Length step = row.heights[1] - row.heights[0];
  for (std::size_t i = 2; i < row.heights.size(); ++i)
    step = std::min(step, row.heights[i] - row.heights[i - 1]);
  Length most;
  for (const Length height : row.heights)
    most =
        std::max(most, step > Length() ? off_step(height - row.heights.front(), step) : Length());
  report(bench, kPitch, {row.piece}, {}, most, Bounds{{}, {}, {}, Length()});
}

/// The most by which two rows that carry the same shelves are not level.
std::optional<Length> off_level(const Row& a, const Row& b) {
  if (a.heights.size() != b.heights.size()) return {};
  Length most;
  for (std::size_t i = 0; i < a.heights.size(); ++i) {
    const Length off = a.heights[i] - b.heights[i];
    most = std::max(most, std::max(off, -off));
  }
  return most;
}

/// Whether two rows stand at the same heights, with no shelf of one above all of the other.
bool overlap(const Row& a, const Row& b) {
  return a.heights.front() <= b.heights.back() && b.heights.front() <= a.heights.back();
}

/// Whether a shelf lies between the two: on faces that look at each other, with no third between
/// them.
bool carry_one_shelf(const Bench& bench, const std::vector<Row>& rows, const Row& left,
                     const Row& right) {
  if (!left.to_right || right.to_right || left.piece == right.piece) return false;
  const Box from = bench.solids[left.piece].blank;
  const Box to = bench.solids[right.piece].blank;
  if (from.high[0] >= to.low[0]) return false;
  if (!overlap(left, right)) return false;
  return std::none_of(rows.begin(), rows.end(), [&](const Row& row) {
    const Box& its = bench.solids[row.piece].blank;
    return its.low[0] >= from.high[0] && its.high[0] <= to.low[0] && overlap(row, left);
  });
}

void check_level(Bench& bench, const std::vector<Row>& rows) {
  for (const Row& left : rows)
    for (const Row& right : rows) {
      const bool one_face = left.piece == right.piece && left.to_right == right.to_right &&
                            left.deep < right.deep && overlap(left, right);
      if (!one_face && !carry_one_shelf(bench, rows, left, right)) continue;
      std::vector<std::size_t> parts{left.piece};
      if (right.piece != left.piece) parts.push_back(right.piece);
      report(bench, kLevel, std::move(parts), {}, off_level(left, right),
             Bounds{{}, Length(), {}, {}});
    }
}

void check_behind(Bench& bench, const Row& row) {
  const Piece& piece = bench.assembly.pieces[row.piece];
  const Box blank = placed_blank(piece);
  std::optional<Length> least;
  for (const Feature& feature : piece.features) {
    if (feature.kind != FeatureKind::shelf_pin_holes) continue;
    for (const Prism& prism : feature.prisms) {
      const Box hole = bounds_of(placed(prism, piece.place));
      const bool to_right = hole.high[0] == blank.high[0];
      if (to_right != row.to_right) continue;
      const Length left = to_right ? hole.low[0] - blank.low[0] : blank.high[0] - hole.high[0];
      if (!least || left < *least) least = left;
    }
  }
  report(bench, kBehind, {row.piece}, {}, least,
         Bounds{Length::from_steps(1), {}, bench.limits.least_wood, {}});
}

}  // namespace

void check_pin_rows(Bench& bench) {
  std::vector<Row> rows;
  for (std::size_t piece = 0; piece < bench.solids.size(); ++piece)
    for (Row& row : rows_in(bench, piece))
      rows.push_back(std::move(row));
  for (const Row& row : rows) {
    check_pitch(bench, row);
    check_behind(bench, row);
  }
  check_level(bench, rows);
}

std::vector<const Rule*> rules_of_pin_rows() {
  return {&kPitch, &kLevel, &kBehind};
}

}  // namespace haunch
