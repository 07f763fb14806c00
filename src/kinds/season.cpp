#include "season.h"

#include <fmt/core.h>

#include "moisture.h"
#include "season_swelling.h"

namespace haunch {
namespace {

/// The larger of two movements, whichever way they go.
double larger(double a, double b) {
  return std::abs(a) > std::abs(b) ? a : b;
}

Swelling swelling_of(const Species& species, Sawn sawn, double from, double to) {
  const double radial = movement_ratio(species, Direction::radial, from, to).value_or(0);
  const double tangential = movement_ratio(species, Direction::tangential, from, to).value_or(0);
  switch (sawn) {
    case Sawn::flat:
      return {1 + tangential, 1 + radial};
    case Sawn::quarter:
      return {1 + radial, 1 + tangential};
    case Sawn::mixed:
      return {1 + larger(radial, tangential), 1 + larger(radial, tangential)};
  }
  return {};
}

}  // namespace

std::string percent_words(double percent) {
  const std::string text = fmt::format("{:.1f}", percent);
  return (text.ends_with(".0") ? text.substr(0, text.size() - 2) : text) + " %";
}

Species Season::wood_of(const Piece& piece) const {
  if (piece.material.empty()) return species.of(piece.role);
  return find_species(piece.material, woods).value_or(Species());
}

Swelling swelling_at(const Piece& piece, const Season& season, double percent) {
  if (piece.matter != Matter::wood) return {};
  // A spline lies askew in its blank: what it grows along the mitre, no width of that has.
  const bool askew = piece.role == Role::spline;
  const auto of_wood = [&](const Species& wood) {
    const Swelling its =
        swelling_of(wood, season.sawn.of(piece.role), season.moisture.build, percent);
    return askew ? Swelling{1, its.thickness} : its;
  };
  return piece.material.empty() ? of_wood(season.species.of(piece.role))
                                : of_wood(season.wood_of(piece));
}

namespace {

std::vector<Swelling> swellings_at(const Assembly& built, const Season& season, double percent) {
  std::vector<Swelling> swellings;
  swellings.reserve(built.pieces.size());
  for (const Piece& piece : built.pieces)
    swellings.push_back(swelling_at(piece, season, percent));
  return swellings;
}

}  // namespace

Assembly at_moisture(const Assembly& built, const Season& season, double percent) {
  return swollen(built, swellings_at(built, season, percent));
}

std::vector<Box> placed_at_moisture(const Assembly& built, const Season& season, double percent,
                                    const std::vector<BoxOfPiece>& boxes) {
  return placed_swollen(built, swellings_at(built, season, percent), boxes);
}

std::vector<double> other_moistures(const Moisture& moisture) {
  std::vector<double> others;
  if (moisture.low < moisture.build) others.push_back(moisture.low);
  if (moisture.high > moisture.build) others.push_back(moisture.high);
  return others;
}

}  // namespace haunch
