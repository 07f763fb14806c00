#include "stiffness.h"

#include <algorithm>
#include <array>
#include <cctype>

namespace haunch {
namespace {

struct Row {
  std::string_view name;
  int mpa;
  std::string_view source;
};

constexpr std::string_view kTable5 = "Wood Handbook 2010 Table 5-3a, at 12 %";
constexpr std::string_view kImported = "Wood Handbook 2010 Table 5-5b, at 12 %";
constexpr std::string_view kImported1999 = "Wood Handbook 1999, at 12 % (quoted, one source)";

constexpr std::array kRows = {
    Row{"Alder, red", 9'500, kTable5},
    Row{"Ash, black", 11'000, kTable5},
    Row{"Ash, blue", 9'700, kTable5},
    Row{"Ash, green", 11'400, kTable5},
    Row{"Ash, Oregon", 9'400, kTable5},
    Row{"Ash, white", 12'000, kTable5},
    Row{"Aspen, bigtooth", 9'900, kTable5},
    Row{"Aspen, quaking", 8'100, kTable5},
    Row{"Basswood, American", 10'100, kTable5},
    Row{"Beech, American", 11'900, kTable5},
    Row{"Birch, paper", 11'000, kTable5},
    Row{"Birch, sweet", 15'000, kTable5},
    Row{"Birch, yellow", 13'900, kTable5},
    Row{"Butternut", 8'100, kTable5},
    Row{"Cherry, black", 10'300, kTable5},
    Row{"Chestnut, American", 8'500, kTable5},
    Row{"Cottonwood, balsam poplar", 7'600, kTable5},
    Row{"Cottonwood, black", 8'800, kTable5},
    Row{"Cottonwood, eastern", 9'400, kTable5},
    Row{"Elm, American", 9'200, kTable5},
    Row{"Elm, rock", 10'600, kTable5},
    Row{"Elm, slippery", 10'300, kTable5},
    Row{"Hackberry", 8'200, kTable5},
    Row{"Hickory, mockernut", 15'300, kTable5},
    Row{"Hickory, pecan", 11'900, kTable5},
    Row{"Hickory, pignut", 15'600, kTable5},
    Row{"Hickory, shagbark (true hickory)", 14'900, kTable5},
    Row{"Honeylocust", 11'200, kTable5},
    Row{"Locust, black", 14'100, kTable5},
    Row{"Magnolia, cucumbertree", 12'500, kTable5},
    Row{"Magnolia, southern", 9'700, kTable5},
    Row{"Maple, bigleaf", 10'000, kTable5},
    Row{"Maple, black", 11'200, kTable5},
    Row{"Maple, red (soft maple)", 11'300, kTable5},
    Row{"Maple, silver (soft maple)", 7'900, kTable5},
    Row{"Maple, sugar (hard maple)", 12'600, kTable5},
    Row{"Oak, chestnut", 11'000, kTable5},
    Row{"Oak, laurel (red oak group)", 11'700, kTable5},
    Row{"Oak, live", 13'700, kTable5},
    Row{"Oak, northern red", 12'500, kTable5},
    Row{"Oak, overcup", 9'800, kTable5},
    Row{"Oak, post", 10'400, kTable5},
    Row{"Oak, swamp chestnut", 12'200, kTable5},
    Row{"Oak, water (red oak group)", 13'900, kTable5},
    Row{"Oak, white", 12'300, kTable5},
    Row{"Oak, willow (red oak group)", 13'100, kTable5},
    Row{"Sassafras", 7'700, kTable5},
    Row{"Sweetgum", 11'300, kTable5},
    Row{"Sycamore, American", 9'800, kTable5},
    Row{"Tupelo, black", 8'300, kTable5},
    Row{"Tupelo, water", 8'700, kTable5},
    Row{"Walnut, black", 11'600, kTable5},
    Row{"Willow, black", 7'000, kTable5},
    Row{"Yellow-poplar", 10'900, kTable5},
    Row{"Baldcypress", 9'900, kTable5},
    Row{"Cedar, Atlantic white", 6'400, kTable5},
    Row{"Cedar, eastern redcedar", 6'100, kTable5},
    Row{"Cedar, incense", 7'200, kTable5},
    Row{"Cedar, northern white", 5'500, kTable5},
    Row{"Cedar, Port-Orford", 11'700, kTable5},
    Row{"Cedar, western redcedar", 7'700, kTable5},
    Row{"Cedar, yellow", 9'800, kTable5},
    Row{"Douglas-fir, coast", 13'400, kTable5},
    Row{"Douglas-fir, interior north", 12'300, kTable5},
    Row{"Douglas-fir, interior west", 12'600, kTable5},
    Row{"Fir, balsam", 10'000, kTable5},
    Row{"Fir, California red", 10'300, kTable5},
    Row{"Fir, grand", 10'800, kTable5},
    Row{"Fir, noble", 11'900, kTable5},
    Row{"Fir, Pacific silver", 12'100, kTable5},
    Row{"Fir, subalpine", 8'900, kTable5},
    Row{"Fir, white", 10'300, kTable5},
    Row{"Hemlock, eastern", 8'300, kTable5},
    Row{"Hemlock, mountain", 9'200, kTable5},
    Row{"Hemlock, western", 11'300, kTable5},
    Row{"Larch, western", 12'900, kTable5},
    Row{"Pine, eastern white", 8'500, kTable5},
    Row{"Pine, loblolly (southern yellow pine)", 12'300, kTable5},
    Row{"Pine, lodgepole", 9'200, kTable5},
    Row{"Pine, longleaf (southern yellow pine)", 13'700, kTable5},
    Row{"Pine, ponderosa", 8'900, kTable5},
    Row{"Pine, red", 11'200, kTable5},
    Row{"Pine, shortleaf (southern yellow pine)", 12'100, kTable5},
    Row{"Pine, slash (southern yellow pine)", 13'700, kTable5},
    Row{"Pine, sugar", 8'200, kTable5},
    Row{"Pine, western white", 10'100, kTable5},
    Row{"Redwood", 9'200, kTable5},
    Row{"Spruce, black", 11'100, kTable5},
    Row{"Spruce, Engelmann", 8'900, kTable5},
    Row{"Spruce, red", 11'400, kTable5},
    Row{"Spruce, Sitka", 10'800, kTable5},
    Row{"Spruce, white", 9'600, kTable5},
    Row{"Tamarack", 11'300, kTable5},
    Row{"Meranti, dark red", 12'200, kImported},
    Row{"Meranti, yellow", 10'700, kImported},
    Row{"Spanish-cedar", 9'900, kImported},
    Row{"Teak", 10'700, kImported},
    Row{"Mahogany, African (Khaya)", 9'700, kImported1999},
    Row{"Mahogany, true (Swietenia)", 10'300, kImported1999},
};

// Creep of a load that stays in a dry house. Solid wood: final sag half as much again as the first
// (AWC on NDS 3.5.2). Sheets by kdef of EN 1995-1-1, service class 1.
constexpr double kCreepOfWood = 0.5, kCreepOfPlywood = 0.8, kCreepOfBoard = 2.25;

bool has_word(std::string_view text, std::string_view word) {
  const auto same = [](char a, char b) { return std::tolower(static_cast<unsigned char>(a)) == b; };
  return std::search(text.begin(), text.end(), word.begin(), word.end(), same) != text.end();
}

/// By thickness, the largest first: of sheets at least so thick.
struct BoardStep {
  double from_mm;
  int mpa;
};

double step_of(const auto& steps, double thickness_mm) {
  for (const BoardStep& step : steps)
    if (thickness_mm >= step.from_mm) return step.mpa;
  return steps.back().mpa;
}

// EN 312, P2: up to 13 mm, to 20, to 25, beyond.
constexpr std::array kParticleboard = {BoardStep{25.5, 1'350}, BoardStep{20.5, 1'500},
                                       BoardStep{13.5, 1'600}, BoardStep{0, 1'800}};
// EN 622-5, MDF for dry use: up to 12 mm, to 19, beyond.
constexpr std::array kMdf = {BoardStep{19.5, 2'100}, BoardStep{12.5, 2'200}, BoardStep{0, 2'500}};

}  // namespace

std::optional<Stiffness> stiffness_of_species(std::string_view name) {
  for (const Row& row : kRows)
    if (row.name == name) return Stiffness{static_cast<double>(row.mpa), kCreepOfWood, row.source};
  return {};
}

std::optional<Stiffness> stiffness_of_board(std::string_view material, double thickness_mm) {
  if (has_word(material, "plywood") || has_word(material, "blockboard"))
    return Stiffness{7'000, kCreepOfPlywood,
                     "plywood along the grain of its face, lower figure of measured sheets"};
  if (has_word(material, "mdf") || has_word(material, "fibreboard") ||
      has_word(material, "fiberboard"))
    return Stiffness{step_of(kMdf, thickness_mm), kCreepOfBoard, "least of EN 622-5, dry MDF"};
  if (has_word(material, "particleboard") || has_word(material, "chipboard") ||
      has_word(material, "melamine"))
    return Stiffness{step_of(kParticleboard, thickness_mm), kCreepOfBoard, "least of EN 312, P2"};
  return {};
}

Stiffness stiffness_of_glass() {
  return {70'000, 0, "glass (handbooks)"};
}

}  // namespace haunch
