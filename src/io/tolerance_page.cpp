#include "tolerance_page.h"

#include <fmt/core.h>

#include <algorithm>
#include <iterator>
#include <vector>

#include "choices.h"
#include "json_text.h"

namespace haunch {
namespace {

// ---- the page

/// With one decimal, but never all or none where it is not.
std::string percent(double share) {
  if (share > 0 && share < 0.001) return "under 0.1 %";
  if (share < 1 && share > 0.999) return "over 99.9 %";
  return fmt::format("{:.1f} %", share * 100);
}

/// Fits read better as decimals, in inches too.
LengthPrinter decimals(const LengthPrinter& lengths) {
  return {lengths.unit(), LengthStyle{0}};
}

/// A root-sum-square is worth no finer figure than this.
Length about(Length rss, const LengthPrinter& lengths) {
  return nearest_multiple(rss, lengths.unit() == Unit::mm ? Length::from_mm_thousandths(10)
                                                          : Length::from_inch_parts(1, 2000));
}

/// Joints of which all figures are the same.
struct FitRow {
  const JointFit* first;
  JointKind kind;
  int joints, fits;
};

std::vector<FitRow> rows_of(const Assembly& wood, const FitForecast& forecast) {
  std::vector<FitRow> rows;
  for (const JointFit& fit : forecast.joints) {
    const JointKind kind = wood.joints[fit.joint].kind;
    auto row = std::find_if(rows.begin(), rows.end(), [&](const FitRow& it) {
      return it.kind == kind && it.first->play.nominal == fit.play.nominal;
    });
    if (row == rows.end()) row = rows.insert(rows.end(), {&fit, kind, 0, 0});
    ++row->joints;
    row->fits += fit.fits;
  }
  return rows;
}

std::string joint_table(const Assembly& wood, const FitForecast& forecast,
                        const LengthPrinter& lengths) {
  TextTable table({"joints", "fits", "play", "worst", "to", "+/- rss", "in its band"});
  for (const FitRow& row : rows_of(wood, forecast)) {
    const Spread& play = row.first->play;
    table.add({fmt::format("{} {}", row.joints, word(row.kind)), std::to_string(row.fits),
               play.nominal, play.worst_min, play.worst_max,
               about(play.rss_max - play.nominal, lengths), percent(row.first->share)});
  }
  return table.empty() ? "" : table.text(decimals(lengths), 2);
}

std::string range(const FitBand& band, const LengthPrinter& lengths) {
  return decimals(lengths).one(band.min) + " to " + decimals(lengths).one(band.max);
}

std::string several_text(const FitForecast& forecast) {
  const bool several = std::any_of(forecast.joints.begin(), forecast.joints.end(),
                                   [](const JointFit& fit) { return fit.fits > 1; });
  return several ? hanging("fits: of a divided or twin tenon each in a mortise of its own") : "";
}

std::string band_text(const Assembly& wood, const FitForecast& forecast,
                      const LengthPrinter& lengths) {
  if (forecast.joints.empty()) return {};
  std::string text = "bands: " + range(forecast.tolerances.fit, lengths) + " where glued";
  for (const JointFit& fit : forecast.joints) {
    if (!wood.joints[fit.joint].design.bite) continue;
    text += ", " + range(fit.band, lengths) + " for panels";
    break;
  }
  return hanging(text);
}

/// Joints of one kind that are left out, and what is not known of them.
struct LeftOut {
  JointKind kind;
  std::string_view plural, unknown;
};
constexpr LeftOut kLeftOut[] = {{JointKind::dowel, "dowels", "holes and dowels"},
                                {JointKind::half_lap, "half-laps", "how deep laps are cut"}};

std::vector<std::size_t> left_out_of(const Assembly& wood, const FitForecast& forecast,
                                     JointKind kind) {
  std::vector<std::size_t> joints;
  std::copy_if(forecast.left_out.begin(), forecast.left_out.end(), std::back_inserter(joints),
               [&](std::size_t joint) { return wood.joints[joint].kind == kind; });
  return joints;
}

std::string left_out_text(const Assembly& wood, const FitForecast& forecast) {
  std::string text;
  for (const LeftOut& left_out : kLeftOut)
    if (const std::size_t joints = left_out_of(wood, forecast, left_out.kind).size(); joints > 0)
      text += hanging(fmt::format("left out: {} ({} joints); of {} no plus/minus is taken",
                                  left_out.plural, joints, left_out.unknown));
  return text;
}

std::string cutting_text(const Tolerances& tolerances) {
  constexpr std::string_view kWays[] = {"by hand", "by router and saw", "by numerical control"};
  return fmt::format("cut {}; a plus/minus is {} standard deviation{}",
                     kWays[static_cast<std::size_t>(tolerances.work)], tolerances.deviations,
                     tolerances.deviations == 1 ? "" : "s");
}

std::string leaf_text(const FitForecast& forecast, const LengthPrinter& lengths) {
  if (forecast.joints.empty()) return {};
  const LeafFit& leaf = forecast.leaf;
  std::string text = hanging(percent(leaf.share) +
                             " of leaves go together without a plane: every fit inside its band" +
                             (forecast.left_out.empty() ? "" : ", what is left out not counted"));
  if (!leaf.best_allowance) return text;
  text +=
      hanging(fmt::format("fit_allowance for the most of them: {}, {}",
                          decimals(lengths).one(*leaf.best_allowance), percent(leaf.best_share)));
  const int wanted = forecast.tolerances.wanted_share;
  return text + hanging(leaf.least_allowance
                            ? fmt::format("the smallest for {} %: {}", wanted,
                                          decimals(lengths).one(*leaf.least_allowance))
                            : fmt::format(
                                  "{} % is out of reach with these tolerances at any fit_allowance",
                                  wanted));
}

std::string marks_text(const Assembly& wood, const Stack& stack) {
  std::string marks;
  for (const std::size_t piece : stack.pieces)
    marks += (marks.empty() ? "" : " + ") + wood.pieces[piece].mark;
  return marks;
}

std::string stack_table(const Assembly& wood, const FitForecast& forecast,
                        const LengthPrinter& lengths) {
  TextTable table({"size", "as drawn", "+/- worst", "+/- rss", "made of"});
  const auto add = [&](const std::string& name, const Spread& size, const std::string& made_of) {
    table.add({name, lengths.one(size.nominal), size.worst_max - size.nominal,
               about(size.rss_max - size.nominal, lengths), made_of});
  };
  if (!forecast.width.pieces.empty())
    add("leaf width", forecast.width.size, marks_text(wood, forecast.width));
  if (!forecast.height.pieces.empty())
    add("leaf height", forecast.height.size, marks_text(wood, forecast.height));
  if (forecast.flush) add("face to face", *forecast.flush, "rail on stile");
  return table.empty() ? "" : "\n" + table.text(decimals(lengths), 2);
}

// ---- JSON

void append_share(JsonText& json, std::string_view name, double share) {
  json.key(name);
  json.number(share, 4);
}

void append_range(JsonText& json, std::string_view name, Length min, Length max) {
  json.key(name);
  json.open_object();
  json.member("min", min);
  json.member("max", max);
  json.close_object();
}

void append_spread(JsonText& json, std::string_view name, const Spread& spread) {
  json.member(name, spread.nominal);
  append_range(json, "worst", spread.worst_min, spread.worst_max);
  append_range(json, "rss", spread.rss_min, spread.rss_max);
}

void append_length(JsonText& json, std::string_view name, const std::optional<Length>& length) {
  json.key(name);
  if (length)
    json.number(*length);
  else
    json.null();
}

void append_tolerances(JsonText& json, const Tolerances& tolerances) {
  json.member("work", word_of(tolerances.work));
  json.key("tolerance");
  json.open_object();
  for (std::size_t i = 0; i < kDimensions; ++i)
    json.member(word_of(static_cast<Dimension>(i)), tolerances.each[i].plus_minus);
  json.close_object();
  json.key("one_setting");
  json.open_list();
  for (std::size_t i = 0; i < kDimensions; ++i)
    if (tolerances.each[i].one_setting) json.text(word_of(static_cast<Dimension>(i)));
  json.close_list();
  json.member("deviations", std::int64_t{tolerances.deviations});
  append_share(json, "setting_share", tolerances.setting_share / 100.0);
}

void append_joint(JsonText& json, const JointFit& fit) {
  json.row();
  json.open_object();
  json.member("joint", joint_id(fit.joint));
  json.member("fits", std::int64_t{fit.fits});
  append_spread(json, "play", fit.play);
  append_range(json, "band", fit.band.min, fit.band.max);
  append_share(json, "share", fit.share);
  json.close_object();
}

void append_left_out(JsonText& json, const Assembly& wood, const FitForecast& forecast) {
  json.key("left_out");
  json.open_list();
  for (const LeftOut& left_out : kLeftOut) {
    const std::vector<std::size_t> joints = left_out_of(wood, forecast, left_out.kind);
    if (joints.empty()) continue;
    json.row();
    json.open_object();
    json.member("kind", word(left_out.kind));
    json.key("joints");
    json.open_list();
    for (const std::size_t joint : joints)
      json.text(joint_id(joint));
    json.close_list();
    json.member("why", fmt::format("of {} no plus/minus is taken", left_out.unknown));
    json.close_object();
  }
  json.close_list();
}

/// Of leaves of which nothing is told there is no share.
void append_leaf(JsonText& json, const FitForecast& forecast) {
  const LeafFit& leaf = forecast.leaf;
  const auto append = [&](std::string_view name, double share) {
    if (!forecast.joints.empty()) return append_share(json, name, share);
    json.key(name);
    json.null();
  };
  json.key("leaf");
  json.open_object();
  append("share", leaf.share);
  append_length(json, "best_allowance", leaf.best_allowance);
  append("best_share", leaf.best_share);
  append_share(json, "wanted_share", forecast.tolerances.wanted_share / 100.0);
  append_length(json, "least_allowance", leaf.least_allowance);
  json.close_object();
}

void append_stack(JsonText& json, std::string_view name, const Assembly& wood, const Stack& stack) {
  if (stack.pieces.empty()) return;
  json.key(name);
  json.open_object();
  json.key("parts");
  json.open_list();
  for (const std::size_t piece : stack.pieces)
    json.text(wood.pieces[piece].mark);
  json.close_list();
  append_spread(json, "size", stack.size);
  json.close_object();
}

}  // namespace

std::string tolerance_page(const Assembly& wood, const FitForecast& forecast,
                           const LengthPrinter& lengths) {
  if (forecast.joints.empty() && forecast.left_out.empty()) return {};
  return "\nFITS, " + cutting_text(forecast.tolerances) + "\n" +
         joint_table(wood, forecast, lengths) + several_text(forecast) +
         band_text(wood, forecast, lengths) + left_out_text(wood, forecast) +
         leaf_text(forecast, lengths) + stack_table(wood, forecast, lengths);
}

void append_fits_json(JsonText& json, const Assembly& wood, const FitForecast& forecast) {
  json.key("fits");
  json.open_object();
  append_tolerances(json, forecast.tolerances);
  append_range(json, "band", forecast.tolerances.fit.min, forecast.tolerances.fit.max);
  json.key("joints");
  json.open_list();
  for (const JointFit& fit : forecast.joints)
    append_joint(json, fit);
  json.close_list();
  append_left_out(json, wood, forecast);
  append_leaf(json, forecast);
  append_stack(json, "width", wood, forecast.width);
  append_stack(json, "height", wood, forecast.height);
  if (forecast.flush) {
    json.key("flush");
    json.open_object();
    append_spread(json, "size", *forecast.flush);
    json.close_object();
  }
  json.close_object();
}

}  // namespace haunch
