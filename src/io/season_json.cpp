#include "report_rows.h"

namespace haunch {
namespace {

struct PanelTold {
  const ItemReport& report;
  const PanelSeason& panel;
};

struct TenonTold {
  const SeasonReport& seasons;
  const TenonSeason& tenon;
};

struct WidthTold {
  const ItemReport& report;
  const WidthSeason& board;
};

struct FrontTold {
  const ItemReport& report;
  const FrontSeason& front;
};

struct WeightsTold {
  const ItemReport& report;
  const Weights& weights;
};

/// Of kilograms and percents.
using Thousandths = Rounded<3>;

ByName<Thousandths> weights_of_parts(const WeightsTold& it) {
  ByName<Thousandths> weights;
  for (std::size_t i = 0; i < it.weights.pieces.size(); ++i)
    if (const auto& kilograms = it.weights.pieces[i])
      weights.each.emplace_back(it.report.wood.pieces[i].mark, Thousandths{*kilograms});
  return weights;
}

std::optional<std::vector<Thousandths>> weights_of_leaves(const WeightsTold& it) {
  if (fits_that_stand(it.report.wood, StandsIn::group).empty()) return {};
  std::vector<Thousandths> weights;
  for (const LeafWeight& leaf : it.weights.leaves)
    weights.push_back({leaf.weight.kilograms});
  return weights;
}

OrNull<WeightsTold> weight_of(const ItemReport& report) {
  if (!report.weights->any_known()) return {};
  return {WeightsTold{report, *report.weights}};
}

std::optional<LeafSeason> leaf_named(const SeasonTold& it, std::string_view name) {
  for (const LeafSeason& leaf : it.report.seasons->leaves)
    if (group_name(it.report.wood.groups[leaf.group]) == name) return leaf;
  return {};
}

}  // namespace

template <>
struct JsonObject<Moisture> : JsonObjectDefaults {
  static constexpr std::string_view definition = "states";
  static constexpr JsonKey<Moisture> keys[] = {
      {"low", [](auto& it) { return Thousandths{it.low}; }},
      {"build", [](auto& it) { return Thousandths{it.build}; }},
      {"high", [](auto& it) { return Thousandths{it.high}; }}};
};

/// Moved sizes as they are, to the step.
template <>
struct JsonObject<PanelState> : JsonObjectDefaults {
  static constexpr std::string_view definition = "panel_state";
  static constexpr JsonKey<PanelState> keys[] = {{"width", the<&PanelState::width>},
                                                 {"gap", the<&PanelState::gap>},
                                                 {"bite", the<&PanelState::bite>}};
};

template <>
struct JsonObject<PanelTold> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<PanelTold> keys[] = {
      {"mark", [](auto& it) { return it.report.wood.pieces[it.panel.piece].mark; }},
      {"low", [](auto& it) { return it.panel.at[kLow]; }},
      {"build", [](auto& it) { return it.panel.at[kBuild]; }},
      {"high", [](auto& it) { return it.panel.at[kHigh]; }}};
};

template <>
struct JsonObject<LeafState> : JsonObjectDefaults {
  static constexpr std::string_view definition = "leaf_state";
  static constexpr JsonKey<LeafState> keys[] = {
      {"width", the<&LeafState::width>},
      {"clearance_left", [](auto& it) { return it.gaps.left; }},
      {"clearance_right", [](auto& it) { return it.gaps.right; }},
      {"height", the<&LeafState::height>},
      {"clearance_head", [](auto& it) { return it.gaps.head; }},
      {"clearance_foot", [](auto& it) { return it.gaps.foot; }}};
};

template <>
struct JsonObject<LeafSeason> : JsonObjectDefaults {
  static constexpr std::string_view definition = "leaf_season";
  static constexpr JsonKey<LeafSeason> keys[] = {
      {on_row, "low", [](auto& it) { return it.at[kLow]; }},
      {on_row, "build", [](auto& it) { return it.at[kBuild]; }},
      {on_row, "high", [](auto& it) { return it.at[kHigh]; }}};
};

template <>
struct JsonObject<TenonTold> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<TenonTold> keys[] = {
      {"joint", [](auto& it) { return joint_id(it.tenon.joint); }},
      {"low", [](auto& it) { return it.tenon.width[kLow]; }},
      {"build", [](auto& it) { return it.tenon.width[kBuild]; }},
      {"high", [](auto& it) { return it.tenon.width[kHigh]; }},
      {"limit", [](auto& it) { return it.seasons.widest_glued; }}};
};

template <>
struct JsonObject<MitreState> : JsonObjectDefaults {
  static constexpr std::string_view definition = "mitre_state";
  static constexpr JsonKey<MitreState> keys[] = {
      {"at_sight", the<&MitreState::at_sight>},
      {"at_outer", the<&MitreState::at_outer>},
      {"degrees", [](auto& it) { return Thousandths{it.degrees}; }}};
};

template <>
struct JsonObject<MitreSeason> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<MitreSeason> keys[] = {
      {"joint", [](auto& it) { return joint_id(it.joint); }},
      {"low", [](auto& it) { return it.at[kLow]; }},
      {"build", [](auto& it) { return it.at[kBuild]; }},
      {"high", [](auto& it) { return it.at[kHigh]; }}};
};

template <>
struct JsonObject<WidthTold> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<WidthTold> keys[] = {
      {"mark", [](auto& it) { return it.report.wood.pieces[it.board.piece].mark; }},
      {"low", [](auto& it) { return it.board.width[kLow]; }},
      {"build", [](auto& it) { return it.board.width[kBuild]; }},
      {"high", [](auto& it) { return it.board.width[kHigh]; }}};
};

template <>
struct JsonObject<FrontState> : JsonObjectDefaults {
  static constexpr std::string_view definition = "front_state";
  static constexpr JsonKey<FrontState> keys[] = {
      {"width", the<&FrontState::width>},   {"height", the<&FrontState::height>},
      {"gap_left", the<&FrontState::left>}, {"gap_right", the<&FrontState::right>},
      {"gap_head", the<&FrontState::head>}, {"gap_foot", the<&FrontState::foot>}};
};

template <>
struct JsonObject<FrontTold> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<FrontTold> keys[] = {
      {"of", [](auto& it) { return it.report.wood.groups[it.front.group].path; }},
      {"low", [](auto& it) { return it.front.at[kLow]; }},
      {"build", [](auto& it) { return it.front.at[kBuild]; }},
      {"high", [](auto& it) { return it.front.at[kHigh]; }}};
};

template <>
struct JsonObject<WeightsTold> : JsonObjectDefaults {
  static constexpr JsonKey<WeightsTold> keys[] = {
      {"kilograms", [](auto& it) { return Thousandths{it.weights.whole.kilograms}; }},
      {"parts", [](auto& it) { return weights_of_parts(it); }},
      {"not_weighed",
       [](auto& it) { return if_any(marks_of(it.report.wood, it.weights.whole.unknown)); }},
      {"leaves", [](auto& it) { return weights_of_leaves(it); }}};
};

template <>
struct JsonObject<SeasonRemedy> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<SeasonRemedy> keys[] = {{"key", the<&SeasonRemedy::key>},
                                                   {"from", the<&SeasonRemedy::from>},
                                                   {"to", the<&SeasonRemedy::to>},
                                                   {"helps", the<&SeasonRemedy::helps>}};
};

template <>
struct JsonObject<SeasonRemedies> : JsonObjectDefaults {
  static constexpr JsonKey<SeasonRemedies> keys[] = {
      {"remedies", the<&SeasonRemedies::tried>},
      {"remedy_search", [](auto& it) { return search_of(it.all_tried); }}};
};

template <>
struct JsonObject<SeasonTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "season";
  static constexpr JsonKey<SeasonTold> keys[] = {
      {"moisture", [](auto& it) { return it.report.seasons->moisture; }},
      {"panels", [](auto& it) { return each_in<PanelTold>(it.report, it.report.seasons->panels); }},
      {"leaf", [](auto& it) { return leaf_named(it, "leaf"); }},
      {"pair", [](auto& it) { return leaf_named(it, "pair"); }},
      {"left_leaf", [](auto& it) { return leaf_named(it, "left leaf"); }},
      {"right_leaf", [](auto& it) { return leaf_named(it, "right leaf"); }},
      {"tenons",
       [](auto& it) { return each_in<TenonTold>(*it.report.seasons, it.report.seasons->tenons); }},
      {"mitres", [](auto& it) { return if_any(it.report.seasons->mitres); }},
      {"boards",
       [](auto& it) { return if_any(each_in<WidthTold>(it.report, it.report.seasons->widths)); }},
      {"fronts",
       [](auto& it) { return if_any(each_in<FrontTold>(it.report, it.report.seasons->fronts)); }},
      {"weight", [](auto& it) { return weight_of(it.report); }},
      {among, [](auto& it) { return it.report.season_remedies.value_or(SeasonRemedies()); }}};
};

void JsonValue<SeasonTold>::write(JsonText& json, const SeasonTold& season) {
  write_object(json, season);
}

std::vector<SchemaDefinition> season_definitions() {
  return {definition_of<SeasonTold>(), definition_of<Moisture>(),  definition_of<LeafSeason>(),
          definition_of<PanelState>(), definition_of<LeafState>(), definition_of<FrontState>(),
          definition_of<MitreState>()};
}

}  // namespace haunch
