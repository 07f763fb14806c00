#include "choices.h"
#include "report_rows.h"
#include "tolerance_page.h"

namespace haunch {
namespace {

using Share = Rounded<4>;

constexpr double kPercent = 100;

struct LeafTold {
  const FitForecast& forecast;

  /// Of leaves of which nothing is told there is no share.
  OrNull<Share> share(double of_them) const {
    if (forecast.joints.empty()) return {};
    return {Share{of_them}};
  }
};

FitBand worst_of(const Spread& spread) {
  return {spread.worst_min, spread.worst_max};
}

FitBand rss_of(const Spread& spread) {
  return {spread.rss_min, spread.rss_max};
}

ByName<Length> plus_minus_of(const Tolerances& tolerances) {
  ByName<Length> all;
  for (std::size_t i = 0; i < kDimensions; ++i)
    all.each.emplace_back(word_of(static_cast<Dimension>(i)), tolerances.each[i].plus_minus);
  return all;
}

std::vector<std::string_view> at_one_setting(const Tolerances& tolerances) {
  std::vector<std::string_view> dimensions;
  for (std::size_t i = 0; i < kDimensions; ++i)
    if (tolerances.each[i].one_setting) dimensions.push_back(word_of(static_cast<Dimension>(i)));
  return dimensions;
}

/// A size across the leaf, if anything makes it up.
struct StackTold {
  const Assembly& wood;
  const Stack& stack;
};

/// The gaps of leaves in their frame along one line.
struct GapsTold {
  const Assembly& wood;
  const Gaps& gaps;
};

std::optional<GapsTold> gaps_of(const FitsTold& it, const std::optional<Gaps>& gaps) {
  if (!gaps) return {};
  return GapsTold{it.wood, *gaps};
}

std::optional<StackTold> stack_of(const FitsTold& it, const Stack& stack) {
  if (stack.pieces.empty()) return {};
  return StackTold{it.wood, stack};
}

}  // namespace

template <>
struct JsonObject<FitBand> : JsonObjectDefaults {
  static constexpr JsonKey<FitBand> keys[] = {{"min", the<&FitBand::min>},
                                              {"max", the<&FitBand::max>}};
};

template <>
struct JsonObject<Spread> : JsonObjectDefaults {
  static constexpr JsonKey<Spread> keys[] = {{"size", the<&Spread::nominal>},
                                             {"worst", [](auto& it) { return worst_of(it); }},
                                             {"rss", [](auto& it) { return rss_of(it); }}};
};

template <>
struct JsonObject<StackTold> : JsonObjectDefaults {
  static constexpr JsonKey<StackTold> keys[] = {
      {"parts", [](auto& it) { return marks_of(it.wood, it.stack.pieces); }},
      {among, [](auto& it) { return it.stack.size; }}};
};

template <>
struct JsonObject<GapsTold> : JsonObjectDefaults {
  static constexpr JsonKey<GapsTold> keys[] = {
      {"frame", [](auto& it) { return it.wood.pieces[it.gaps.frame].mark; }},
      {"leaves", [](auto& it) { return marks_of(it.wood, it.gaps.leaves); }},
      {among, [](auto& it) { return it.gaps.size; }}};
};

template <>
struct JsonObject<JointFit> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<JointFit> keys[] = {
      {"joint", [](auto& it) { return JointId{it.joint}; }},
      {"fits", the<&JointFit::fits>},
      {"play", [](auto& it) { return it.play.nominal; }},
      {"worst", [](auto& it) { return worst_of(it.play); }},
      {"rss", [](auto& it) { return rss_of(it.play); }},
      {"band", the<&JointFit::band>},
      {"share", [](auto& it) { return Share{it.share}; }}};
};

template <>
struct JsonObject<LeftOut> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<LeftOut> keys[] = {
      {"kind", [](auto& it) { return word_of(it.kind); }, R"({"enum": ["dowel", "half-lap"]})"},
      {"joints", [](auto& it) { return joint_ids(it.joints); }},
      {"why", the<&LeftOut::why>}};
};

template <>
struct JsonObject<LeafTold> : JsonObjectDefaults {
  static constexpr JsonKey<LeafTold> keys[] = {
      {"share", [](auto& it) { return it.share(it.forecast.leaf.share); }},
      {"best_allowance", [](auto& it) { return OrNull<Length>{it.forecast.leaf.best_allowance}; }},
      {"best_share", [](auto& it) { return it.share(it.forecast.leaf.best_share); }},
      {"wanted_share",
       [](auto& it) { return Share{it.forecast.tolerances.wanted_share / kPercent}; }},
      {"least_allowance",
       [](auto& it) { return OrNull<Length>{it.forecast.leaf.least_allowance}; }}};
};

template <>
struct JsonObject<Tolerances> : JsonObjectDefaults {
  static constexpr JsonKey<Tolerances> keys[] = {
      {"work", the<&Tolerances::work>},
      {"tolerance", [](auto& it) { return plus_minus_of(it); }},
      {"one_setting", [](auto& it) { return at_one_setting(it); }},
      {"deviations", the<&Tolerances::deviations>},
      {"setting_share", [](auto& it) { return Share{it.setting_share / kPercent}; }},
      {"band", the<&Tolerances::fit>}};
};

template <>
struct JsonObject<FitsTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "fits";
  static constexpr JsonKey<FitsTold> keys[] = {
      {among, [](auto& it) -> const Tolerances& { return it.forecast.tolerances; }},
      {"joints", [](auto& it) -> const std::vector<JointFit>& { return it.forecast.joints; }},
      {"left_out", [](auto& it) { return left_out_of(it.wood, it.forecast); }},
      {"leaf", [](auto& it) { return LeafTold{it.forecast}; }},
      {"width", [](auto& it) { return stack_of(it, it.forecast.width); }},
      {"height", [](auto& it) { return stack_of(it, it.forecast.height); }},
      {"gaps_across", [](auto& it) { return gaps_of(it, it.forecast.across); }},
      {"gaps_upright", [](auto& it) { return gaps_of(it, it.forecast.upright); }},
      {"flush", [](auto& it) { return it.forecast.flush; }}};
};

void JsonValue<FitsTold>::write(JsonText& json, const FitsTold& fits) {
  write_object(json, fits);
}

std::vector<SchemaDefinition> fits_definitions() {
  return {definition_of<FitsTold>()};
}

}  // namespace haunch
