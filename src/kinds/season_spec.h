// Seasons as a spec or a shop file states them under "moisture", "grain" and "species", the woods
// that a shop knows besides, and what is taken where they are silent.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "kind.h"
#include "season.h"
#include "spec.h"
#include "value_reader.h"

namespace haunch {

/// Where nothing is said. Built at 8 %: wood for use indoors, average at installation over most of
/// the United States (Wood Handbook 2010, figure 13-1). 6 to 12 %: heated dwellings run from under
/// 6 in winter to 12 in summer (Swedish trade handbook; Eurocode 5 takes 12 % as the most of
/// service class 1).
inline constexpr Moisture kUsualYear{6, 8, 12};

/// Percent of moisture, or that which air of an object's temperature and humidity brings wood to.
std::optional<double> read_percent(ValueReader& read, const Value& value, const std::string& path);

/// A figure of a wood that a spec or a shop file may give, and its bounds.
struct WoodFigure {
  std::string_view key;
  std::optional<double> Species::*figure;
  double least, most;
  std::string_view what = "such a figure";
};
std::span<const WoodFigure> wood_figures();

/// The woods that a spec or a shop file adds or overrules.
std::vector<Species> read_woods(ValueReader& read, const Value& value, const std::string& path,
                                bool by_shop);

/// Of the widths of a wood that is flat-sawn: how much they change by from the bench to the wettest
/// (upwards) or to the driest that it will be, as a spec says of moisture or in a usual year.
struct SeasonalPart {
  double upwards = 0, downwards = 0;
  bool known = true;  // the wood; else as much as most hardwoods

  /// How much such a width changes by at most, either way.
  Length either_way(Length width) const;
  Length swells(Length width) const;
  Length shrinks(Length width) const;
};
SeasonalPart seasonal_part(const Spec& spec, const std::string& name);

struct SettledSeason {
  std::optional<Season> season;  // where spec or shop speaks of moisture
  std::vector<Assumed> assumed;
  std::vector<Problem> problems;  // at places in the spec
};

/// What the wood of a heated house goes through in a usual year, for work whose spec does not speak
/// of moisture; nothing where the movement of its panels' wood is not known.
std::optional<Season> usual_season(const Spec& spec);

/// The same of all the wood of a cabinet; what is of a wood without figures stands still.
Season usual_season_of_case(const Spec& spec);

/// What was taken for that.
std::vector<Assumed> assumed_of_usual(const Spec& spec, const Season& usual);

/// The spec's values, for want of them the shop's, for want of those the usual ones. Movement that
/// is asked for of a wood without figures is a problem.
SettledSeason settle_season(const Spec& spec);

/// What of the wood that is there has no species named for its role, and so no movement.
std::vector<Problem> missing_woods(const Assembly& wood, const Season& season);

}  // namespace haunch
