#include "rough.h"

#include <algorithm>
#include <charconv>

namespace haunch::lumber {
namespace {

constexpr int kMostLayers = 3;

/// The thickest finished part out of so many layers.
Length yield_of(const StockThickness& stock, int layers, Length face) {
  const Length planed = stock.surfaced ? Length() : face * 2;
  return (stock.thickness - planed) * layers;
}

std::optional<ThicknessWay> way_from(Length finished, const StockThickness& stock, Length face) {
  if (stock.sheet) {
    const Length off = std::max(stock.thickness, finished) - std::min(stock.thickness, finished);
    return off <= kSheetTolerance ? std::optional(ThicknessWay{}) : std::nullopt;
  }
  for (int layers = 1; layers <= kMostLayers; ++layers) {
    if (yield_of(stock, layers, face) < finished) continue;
    ThicknessWay way{0, layers, {}};
    for (int line = 1; line < layers; ++line)
      way.glue_lines.push_back(floor_divide(finished * line, layers));
    return way;
  }
  return {};
}

std::vector<StockThickness> rough_boards(const std::vector<Length>& thicknesses) {
  std::vector<StockThickness> stock;
  for (const Length thickness : thicknesses)
    stock.push_back({thickness, false, false});
  return stock;
}

}  // namespace

Allowances usual_allowances(Unit unit) {
  if (unit == Unit::inch)
    return {Length::from_inch_parts(1), Length::from_inch_parts(1, 4),
            Length::from_inch_parts(3, 32)};
  return {Length::from_mm(25), Length::from_mm(6), Length::from_mm_thousandths(2500)};
}

Length rough_length(const FinishedPart& part, const Allowances& allowances) {
  return part.length + part.horn * 2 + allowances.length;
}

Length rough_width(const FinishedPart& part, const Allowances& allowances) {
  return part.width + allowances.width;
}

std::vector<ThicknessWay> ways_to_thickness(Length finished,
                                            const std::vector<StockThickness>& stock, Length face) {
  std::vector<ThicknessWay> ways;
  for (std::size_t i = 0; i < stock.size(); ++i) {
    auto way = way_from(finished, stock[i], face);
    if (!way) continue;
    way->stock = i;
    ways.push_back(std::move(*way));
  }
  std::stable_sort(ways.begin(), ways.end(), [&](const ThicknessWay& a, const ThicknessWay& b) {
    if (a.layers != b.layers) return a.layers < b.layers;
    return stock[a.stock].thickness < stock[b.stock].thickness;
  });
  return ways;
}

std::optional<Length> quarters_thickness(std::string_view name, bool surfaced) {
  constexpr int kFewest = 4;
  constexpr int kMost = 32;
  constexpr int kThinner = 6;  // up to here 3/16 in. comes off for two surfaced sides
  if (!name.ends_with("/4")) return {};
  name.remove_suffix(2);
  int quarters = 0;
  const auto [end, fault] = std::from_chars(name.data(), name.data() + name.size(), quarters);
  if (fault != std::errc() || end != name.data() + name.size() || quarters < kFewest ||
      quarters > kMost)
    return {};
  const Length rough = Length::from_inch_parts(quarters, 4);
  if (!surfaced) return rough;
  return rough - Length::from_inch_parts(quarters <= kThinner ? 3 : 4, 16);
}

std::vector<StockThickness> usual_thicknesses(Unit unit, bool hardwood) {
  std::vector<Length> sizes;
  if (unit == Unit::inch) {
    for (const int quarters : {4, 5, 6, 7, 8, 12, 14, 16})
      sizes.push_back(Length::from_inch_parts(quarters, 4));
    return rough_boards(sizes);
  }
  const std::vector<int> softwood = {16, 19, 25, 38, 50, 63, 75, 100};
  const std::vector<int> oak = {27, 40, 54, 80};
  for (const int size : hardwood ? oak : softwood)
    sizes.push_back(Length::from_mm(size));
  return rough_boards(sizes);
}

}  // namespace haunch::lumber
