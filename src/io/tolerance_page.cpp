#include "tolerance_page.h"

#include <fmt/core.h>

#include <algorithm>
#include <vector>

namespace haunch {
namespace {

// ---- the page

/// With one decimal, but never all or none where it is not.
std::string percent(double share) {
  if (share > 0 && share < 0.001) return "under 0.1 %";
  if (share < 1 && share > 0.999) return "over 99.9 %";
  return fmt::format("{:.1f} %", share * 100);
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
  bool of_leaf;
  int joints, fits;
};

std::vector<FitRow> rows_of(const Assembly& wood, const FitForecast& forecast) {
  std::vector<FitRow> rows;
  for (const JointFit& fit : forecast.joints) {
    const JointKind kind = wood.joints[fit.joint].kind;
    const bool of_leaf = is_of_leaf(wood, wood.joints[fit.joint]);
    auto row = std::find_if(rows.begin(), rows.end(), [&](const FitRow& it) {
      return it.kind == kind && it.of_leaf == of_leaf && it.first->play.nominal == fit.play.nominal;
    });
    if (row == rows.end()) row = rows.insert(rows.end(), {&fit, kind, of_leaf, 0, 0});
    ++row->joints;
    row->fits += fit.fits;
  }
  return rows;
}

PageText joint_table(const Assembly& wood, const FitForecast& forecast,
                     const LengthPrinter& lengths) {
  TextTable table({"joints", "fits", "play", "worst", "to", "+/- likely", "in its band"});
  for (const FitRow& row : rows_of(wood, forecast)) {
    const Spread& play = row.first->play;
    table.add({fmt::format("{} {}{}", row.joints, word_of(row.kind), row.of_leaf ? "" : ", frame"),
               std::to_string(row.fits), play.nominal, play.worst_min, play.worst_max,
               about(play.rss_max - play.nominal, lengths), percent(row.first->share)});
  }
  return PageText::table(table, lengths.in_decimals(), 2);
}

std::string range(const FitBand& band, const LengthPrinter& lengths) {
  return lengths.in_decimals().one(band.min) + " to " + lengths.in_decimals().one(band.max);
}

PageText likely_text() {
  return PageText::hanging("worst: all off the same way; likely: each off by chance");
}

PageText several_text(const FitForecast& forecast) {
  const bool several = std::any_of(forecast.joints.begin(), forecast.joints.end(),
                                   [](const JointFit& fit) { return fit.fits > 1; });
  return PageText::hanging(several ? "fits: of a divided or twin tenon each in a mortise of its own"
                                   : "");
}

PageText band_text(const Assembly& wood, const FitForecast& forecast,
                   const LengthPrinter& lengths) {
  if (forecast.joints.empty()) return {};
  std::string text = "bands: " + range(forecast.tolerances.fit, lengths) + " where glued";
  for (const JointFit& fit : forecast.joints) {
    if (!wood.joints[fit.joint].design.bite) continue;
    text += ", " + range(fit.band, lengths) + " for panels";
    break;
  }
  return PageText::hanging(text);
}

PageText left_out_text(const Assembly& wood, const FitForecast& forecast) {
  PageText text;
  for (const LeftOut& it : left_out_of(wood, forecast))
    text += PageText::hanging(
        fmt::format("left out: {} ({} joints); {}", it.plural, it.joints.size(), it.why));
  return text;
}

std::string cutting_text(const Tolerances& tolerances) {
  constexpr std::string_view kWays[] = {"by hand", "by router and saw", "by numerical control"};
  return fmt::format("cut {}; a plus/minus is {} standard deviation{}",
                     kWays[static_cast<std::size_t>(tolerances.work)], tolerances.deviations,
                     tolerances.deviations == 1 ? "" : "s");
}

bool has_pair(const Assembly& wood) {
  return std::any_of(wood.groups.begin(), wood.groups.end(),
                     [](const Group& group) { return group.kind == GroupKind::pair; });
}

bool is_set(const Assembly& wood) {
  return wood.whole().kind == GroupKind::set;
}

/// Joints that are told, but are not among the leaves' that go together.
bool tells_of_frame(const Assembly& wood, const FitForecast& forecast) {
  return std::any_of(forecast.joints.begin(), forecast.joints.end(), [&](const JointFit& fit) {
    return !is_of_leaf(wood, wood.joints[fit.joint]);
  });
}

PageText leaf_text(const Assembly& wood, const FitForecast& forecast,
                   const LengthPrinter& lengths) {
  if (forecast.joints.empty()) return {};
  const LeafFit& leaf = forecast.leaf;
  PageText text = PageText::hanging(
      fmt::format("{} of {} go together without a plane: every fit inside its band{}{}",
                  percent(leaf.share), has_pair(wood) ? "pairs" : "leaves",
                  tells_of_frame(wood, forecast) ? ", the frame's not counted" : "",
                  forecast.left_out.empty() ? "" : ", what is left out not counted"));
  if (!leaf.best_allowance) return text;
  text += PageText::hanging(
      fmt::format("{}fit_allowance for the most of them: {}, {}", is_set(wood) ? "leaf." : "",
                  lengths.in_decimals().one(*leaf.best_allowance), percent(leaf.best_share)));
  const int wanted = forecast.tolerances.wanted_share;
  return text +
         PageText::hanging(
             leaf.least_allowance
                 ? fmt::format("the smallest for {} %: {}", wanted,
                               lengths.in_decimals().one(*leaf.least_allowance))
                 : fmt::format("{} % is out of reach with these tolerances at any fit_allowance",
                               wanted));
}

std::string marks_text(const Assembly& wood, const std::vector<std::size_t>& pieces) {
  std::string marks;
  for (const std::size_t piece : pieces)
    marks += (marks.empty() ? "" : " + ") + wood.pieces[piece].mark;
  return marks;
}

PageText stack_table(const Assembly& wood, const FitForecast& forecast,
                     const LengthPrinter& lengths) {
  TextTable table({"size", "as drawn", "+/- worst", "+/- likely", "made of"});
  const auto add = [&](const std::string& name, const Spread& size, const std::string& made_of) {
    table.add({name, lengths.one(size.nominal), size.worst_max - size.nominal,
               about(size.rss_max - size.nominal, lengths), made_of});
  };
  const auto add_stack = [&](const char* what, const Stack& stack) {
    if (stack.pieces.empty()) return;
    add(std::string(has_pair(wood) ? "left leaf " : "leaf ") + what, stack.size,
        marks_text(wood, stack.pieces));
  };
  add_stack("width", forecast.width);
  add_stack("height", forecast.height);
  const auto add_gaps = [&](const char* what, const std::optional<Gaps>& gaps) {
    if (gaps)
      add(what, gaps->size,
          wood.pieces[gaps->frame].mark + " less " + marks_text(wood, gaps->leaves));
  };
  add_gaps(has_pair(wood) ? "gaps across, all" : "gaps left + right", forecast.across);
  add_gaps("gaps head + foot", forecast.upright);
  if (forecast.flush) add("face to face", *forecast.flush, "rail on stile");
  if (table.empty()) return {};
  return PageText::gap() + PageText::table(table, lengths.in_decimals(), 2);
}

}  // namespace

std::vector<LeftOut> left_out_of(const Assembly& wood, const FitForecast& forecast) {
  std::vector<LeftOut> all = {
      {JointKind::dowel, "dowels", "of holes and dowels no plus/minus is taken", {}},
      {JointKind::half_lap, "half-laps", "of how deep laps are cut no plus/minus is taken", {}}};
  for (LeftOut& it : all)
    for (const std::size_t joint : forecast.left_out)
      if (wood.joints[joint].kind == it.kind) it.joints.push_back(joint);
  std::erase_if(all, [](const LeftOut& it) { return it.joints.empty(); });
  return all;
}

PageParts tolerance_page(const Assembly& wood, const FitForecast& forecast,
                         const LengthPrinter& lengths) {
  if (forecast.joints.empty() && forecast.left_out.empty()) return {};
  return {{"FITS, " + cutting_text(forecast.tolerances),
           joint_table(wood, forecast, lengths) + likely_text() + several_text(forecast) +
               band_text(wood, forecast, lengths) + left_out_text(wood, forecast) +
               leaf_text(wood, forecast, lengths) + stack_table(wood, forecast, lengths)}};
}

}  // namespace haunch
