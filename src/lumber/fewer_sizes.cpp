#include "fewer_sizes.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

namespace haunch::lumber {

namespace {

double area(const PieceWay& way) {
  return static_cast<double>(way.length) * static_cast<double>(way.width);
}

/// Parts put together.
struct Bunch {
  std::vector<PartWays> parts;
  double loss = 0;  // of area, by the first way

  std::size_t ways() const { return parts.front().ways.size(); }

  /// All of them, at the least of their sizes.
  PartWays least() const {
    PartWays least{0, parts.front().ways};
    for (const PartWays& part : parts) {
      least.parts += part.parts;
      for (std::size_t way = 0; way < least.ways.size(); ++way) {
        least.ways[way].length = std::min(least.ways[way].length, part.ways[way].length);
        least.ways[way].width = std::min(least.ways[way].width, part.ways[way].width);
      }
    }
    return least;
  }

  void measure() {
    const double kept = area(least().ways.front());
    loss = 0;
    for (const PartWays& part : parts)
      loss += static_cast<double>(part.parts) * (area(part.ways.front()) - kept);
  }
};

void sort_by(std::vector<PartWays>& parts, std::int64_t PieceWay::*size) {
  std::stable_sort(parts.begin(), parts.end(), [size](const PartWays& a, const PartWays& b) {
    return a.ways.front().*size < b.ways.front().*size;
  });
}

/// What the first so many of the parts lose when they are put together, for each number of them.
template <typename Iterator>
std::vector<double> losses(Iterator begin, Iterator end) {
  std::vector<double> losses = {0};
  PieceWay least = begin->ways.front();
  double parts = 0;
  double sum = 0;
  for (; begin != end; ++begin) {
    const PieceWay& way = begin->ways.front();
    least.length = std::min(least.length, way.length);
    least.width = std::min(least.width, way.width);
    parts += static_cast<double>(begin->parts);
    sum += static_cast<double>(begin->parts) * area(way);
    losses.push_back(sum - parts * area(least));
  }
  return losses;
}

/// Where the parts, in their order, are parted so that both sides together lose least: how many
/// are on the first side.
std::pair<double, std::size_t> best_parting(const std::vector<PartWays>& parts) {
  const std::vector<double> low = losses(parts.begin(), parts.end());
  const std::vector<double> high = losses(parts.rbegin(), parts.rend());
  std::pair<double, std::size_t> best = {1e300, 1};
  for (std::size_t first = 1; first < parts.size(); ++first)
    best = std::min(best, {low[first] + high[parts.size() - first], first});
  return best;
}

/// The bunch in two, by length or by width.
std::pair<Bunch, Bunch> parted(Bunch bunch) {
  Bunch other = bunch;
  sort_by(bunch.parts, &PieceWay::length);
  sort_by(other.parts, &PieceWay::width);
  const auto by_length = best_parting(bunch.parts);
  const auto by_width = best_parting(other.parts);
  if (by_width.first < by_length.first) bunch = std::move(other);
  const auto at =
      bunch.parts.begin() + static_cast<std::ptrdiff_t>(std::min(by_length, by_width).second);
  Bunch low{{bunch.parts.begin(), at}, 0};
  Bunch high{{at, bunch.parts.end()}, 0};
  low.measure();
  high.measure();
  return {std::move(low), std::move(high)};
}

/// Bunches of parts whose ways differ in sizes alone.
std::vector<Bunch> by_kind_of_ways(std::vector<PartWays> parts) {
  std::map<std::vector<std::tuple<std::size_t, bool, std::int64_t>>, Bunch> alike;
  for (PartWays& part : parts) {
    std::vector<std::tuple<std::size_t, bool, std::int64_t>> kind;
    for (const PieceWay& way : part.ways)
      kind.emplace_back(way.thickness, way.turnable, way.pieces);
    alike[kind].parts.push_back(std::move(part));
  }
  std::vector<Bunch> bunches;
  for (auto& [kind, bunch] : alike) {
    bunch.measure();
    bunches.push_back(std::move(bunch));
  }
  return bunches;
}

}  // namespace

std::vector<PartWays> fewer_sizes(std::vector<PartWays> parts, std::size_t most) {
  std::vector<Bunch> bunches = by_kind_of_ways(std::move(parts));
  std::size_t ways = 0;
  for (const Bunch& bunch : bunches)
    ways += bunch.ways();
  if (ways > most) return {};
  while (true) {
    const auto worst =
        std::max_element(bunches.begin(), bunches.end(),
                         [](const Bunch& a, const Bunch& b) { return a.loss < b.loss; });
    if (worst == bunches.end() || worst->parts.size() < 2 || worst->loss <= 0) break;
    ways += worst->ways();
    if (ways > most) break;
    auto [low, high] = parted(std::move(*worst));
    *worst = std::move(low);
    bunches.push_back(std::move(high));
  }
  std::vector<PartWays> fewer;
  for (const Bunch& bunch : bunches)
    fewer.push_back(bunch.least());
  return fewer;
}

}  // namespace haunch::lumber
