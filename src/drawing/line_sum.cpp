#include "line_sum.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

#include "covers.h"

namespace haunch {
namespace {

constexpr std::size_t kAll = std::numeric_limits<std::size_t>::max();

constexpr double kSameWay = 0.000002;  // radians
constexpr double kSamePlace = 0.0001;  // millimetres, across lines
constexpr double kShortest = 0.005;    // millimetres: a shorter line is none

/// What a line of this kind lies over.
int rank(LineOf of) {
  switch (of) {
    case LineOf::cut:
      return 0;
    case LineOf::seen:
      return 1;
    case LineOf::broken:
      return 2;
    case LineOf::hidden:
      return 3;
  }
  return 0;
}

/// A line with its direction, from 0 to half a turn, and where it lies along and across that.
struct Laid {
  const ViewLine* line;
  double turn = 0, length = 0;
  double across = 0;
  LinePart along = {};  // in millimetres
};

double turn_of(const ViewLine& line) {
  double turn = std::atan2(line.to.v - line.from.v, line.to.u - line.from.u);
  if (turn < 0) turn += std::numbers::pi;
  return turn > std::numbers::pi - kSameWay ? turn - std::numbers::pi : turn;
}

/// Calls `take` with each run of items of which each is within `near` of the one before.
template <typename Place, typename Take>
void by_runs(std::vector<Laid>& laid, double near, const Place& place, const Take& take) {
  std::stable_sort(laid.begin(), laid.end(),
                   [&](const Laid& a, const Laid& b) { return place(a) < place(b); });
  for (auto first = laid.begin(); first != laid.end();) {
    auto last = std::next(first);
    while (last != laid.end() && place(*last) - place(*std::prev(last)) < near)
      ++last;
    take(std::vector<Laid>(first, last));
    first = last;
  }
}

ViewSpot direction_of(double turn) {
  constexpr double kUpright = std::numbers::pi / 2;
  if (std::abs(turn) < kSameWay) return {1, 0};
  if (std::abs(turn - kUpright) < kSameWay) return {0, 1};
  return {std::cos(turn), std::sin(turn)};
}

/// Adds up the lines that lie along one.
class OneLine {
 public:
  OneLine(std::vector<Laid> laid, const ViewSpot& direction, std::vector<ViewLine>& sum)
      : laid_(std::move(laid)), direction_(direction), sum_(sum) {}

  void add_up() {
    std::stable_sort(laid_.begin(), laid_.end(),
                     [](const Laid& a, const Laid& b) { return order(a) < order(b); });
    for (auto first = laid_.begin(); first != laid_.end();) {
      auto last = std::next(first);
      while (last != laid_.end() && order(*last) == order(*first))
        ++last;
      add_alike(first, last);
      first = last;
    }
  }

 private:
  static std::pair<int, std::size_t> order(const Laid& it) {
    const std::size_t piece = it.line->piece;
    return {rank(it.line->of), it.line->of == LineOf::hidden ? kAll - piece : piece};
  }

  void add_alike(std::vector<Laid>::const_iterator first, std::vector<Laid>::const_iterator last) {
    std::vector<LinePart> parts;
    for (auto it = first; it != last; ++it)
      parts.push_back(it->along);
    parts = joined(std::move(parts), kShortest);
    for (const LinePart& part : parts)
      for (const LinePart& free : rest_of(part, covered_))
        if (free.to - free.from > kShortest)
          sum_.push_back({first->line->of, spot(free.from), spot(free.to), first->line->piece});
    covered_.insert(covered_.end(), parts.begin(), parts.end());
    covered_ = joined(std::move(covered_), kShortest);
  }

  ViewSpot spot(double along) const {
    const double across = laid_.front().across;
    return {along * direction_.u - across * direction_.v,
            along * direction_.v + across * direction_.u};
  }

  std::vector<Laid> laid_;
  ViewSpot direction_;
  std::vector<LinePart> covered_;
  std::vector<ViewLine>& sum_;
};

/// Lays lines of one direction, which is that of the longest, along and across it.
ViewSpot lay(std::vector<Laid>& laid) {
  const auto longest = std::max_element(
      laid.begin(), laid.end(), [](const Laid& a, const Laid& b) { return a.length < b.length; });
  const ViewSpot way = direction_of(longest->turn);
  for (Laid& it : laid) {
    const auto& [of, from, to, piece] = *it.line;
    it.across = (way.u * (from.v + to.v) - way.v * (from.u + to.u)) / 2;
    const double a = way.u * from.u + way.v * from.v;
    const double b = way.u * to.u + way.v * to.v;
    it.along = {std::min(a, b), std::max(a, b)};
  }
  return way;
}

std::vector<Laid> laid_out(const std::vector<ViewLine>& lines) {
  std::vector<Laid> laid;
  for (const ViewLine& line : lines) {
    const double length = std::hypot(line.to.u - line.from.u, line.to.v - line.from.v);
    if (length > kShortest) laid.push_back({&line, turn_of(line), length});
  }
  return laid;
}

}  // namespace

std::vector<ViewLine> summed(const std::vector<ViewLine>& lines) {
  std::vector<ViewLine> sum;
  std::vector<Laid> all = laid_out(lines);
  by_runs(
      all, kSameWay, [](const Laid& it) { return it.turn; },
      [&](std::vector<Laid> laid) {
        const ViewSpot way = lay(laid);
        by_runs(
            laid, kSamePlace, [](const Laid& it) { return it.across; },
            [&](std::vector<Laid> run) { OneLine(std::move(run), way, sum).add_up(); });
      });
  std::stable_sort(sum.begin(), sum.end(), [](const ViewLine& a, const ViewLine& b) {
    return std::pair(a.of, a.piece) < std::pair(b.of, b.piece);
  });
  return sum;
}

}  // namespace haunch
