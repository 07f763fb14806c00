#include "season_page.h"

#include <fmt/core.h>

#include <algorithm>

#include "choices.h"
#include "rounding.h"

namespace haunch {
namespace {

constexpr std::array<std::string_view, 3> kStateWords{"low", "build", "high"};

AtEach<double> percents_of(const Moisture& moisture) {
  return {moisture.low, moisture.build, moisture.high};
}

/// Moved sizes are rounded for the page: to 0.01 mm or 0.001 in, finer than any rule.
Length for_page(Length length, Unit unit) {
  return nearest_multiple(length, unit == Unit::mm ? Length::from_mm_thousandths(10)
                                                   : Length::from_inch_parts(1, 1000));
}

// ---- the page

std::string woods_text(const ItemReport& report) {
  const Season& season = *report.job->season;
  std::string text = season.species.all.name + ", " + std::string(word_of(season.sawn.all));
  std::vector<std::string> roles;
  for (const auto& [role, species] : season.species.own)
    roles.push_back(role);
  for (const auto& [role, sawn] : season.sawn.own)
    if (std::find(roles.begin(), roles.end(), role) == roles.end()) roles.push_back(role);
  for (const std::string& role : roles)
    text += "; " + role + "s " + season.species.of(role).name + ", " +
            std::string(word_of(season.sawn.of(role)));
  return text;
}

bool any_mixed(const Season& season) {
  return season.sawn.all == Sawn::mixed ||
         std::any_of(season.sawn.own.begin(), season.sawn.own.end(),
                     [](const auto& it) { return it.second == Sawn::mixed; });
}

bool any_derived(const Season& season) {
  const auto derived = [](const Species& species) {
    const auto found = coefficients_of(species);
    return found && found->derived;
  };
  return derived(season.species.all) ||
         std::any_of(season.species.own.begin(), season.species.own.end(),
                     [&](const auto& it) { return derived(it.second); });
}

/// What of the work does not move: panels of board, and glass.
PageText still_text(const ItemReport& report, Matter matter) {
  std::vector<std::size_t> still;
  for (std::size_t piece = 0; piece < report.wood.pieces.size(); ++piece)
    if (report.wood.pieces[piece].matter == matter) still.push_back(piece);
  if (still.empty()) return {};
  return PageText::hanging(joined(marks_of(report.wood, still)) + ": " +
                           (matter == Matter::board ? "board" : "glass") +
                           ", which does not move to matter; only the frame about it does");
}

std::string heading(const Moisture& moisture) {
  return fmt::format("SEASONS: built at {}, from {} at its driest to {} at its wettest",
                     percent_words(moisture.build), percent_words(moisture.low),
                     percent_words(moisture.high));
}

PageText woods_page(const ItemReport& report) {
  const Season& season = *report.job->season;
  PageText text = PageText::hanging(woods_text(report));
  text += still_text(report, Matter::board) + still_text(report, Matter::glass);
  if (any_mixed(season))
    text += PageText::hanging("mixed: the larger movement of flat- and quarter-sawn wood is taken");
  if (any_derived(season))
    text += PageText::hanging(
        "figures of movement follow from the total shrinkage, as none is printed");
  return text;
}

std::vector<std::string> titles(const ItemReport& report, const std::string& first,
                                const std::string& second) {
  std::vector<std::string> all{first, second};
  for (const double percent : percents_of(report.seasons->moisture))
    all.push_back(percent_words(percent));
  return all;
}

/// A row of a figure at each moisture.
template <typename State>
void add_row(TextTable& table, Cell what, const std::string& figure, const AtEach<State>& at,
             Length State::*member, Unit unit) {
  std::vector<Cell> row{std::move(what), figure};
  for (const State& state : at)
    row.emplace_back(for_page(state.*member, unit));
  table.add(std::move(row));
}

bool same_states(const PanelSeason& a, const PanelSeason& b) {
  for (std::size_t i = 0; i < a.at.size(); ++i)
    if (a.at[i].width != b.at[i].width || a.at[i].gap != b.at[i].gap ||
        a.at[i].bite != b.at[i].bite)
      return false;
  return true;
}

/// Whether no figure of it changes by what a joiner would see.
bool stands_still(const PanelSeason& panel) {
  constexpr Length kSeen = Length::from_mm_thousandths(80);
  return std::all_of(panel.at.begin(), panel.at.end(), [&](const PanelState& state) {
    const PanelState& built = panel.at[kBuild];
    const auto near = [&](Length a, Length b) { return a - b < kSeen && b - a < kSeen; };
    return near(state.width, built.width) && near(state.gap, built.gap) &&
           near(state.bite, built.bite);
  });
}

/// Marks of the panels that do the same, in rows of the table.
std::vector<std::pair<std::string, const PanelSeason*>> panel_groups(const ItemReport& report) {
  std::vector<std::pair<std::string, const PanelSeason*>> groups;
  for (const PanelSeason& panel : report.seasons->panels) {
    if (stands_still(panel)) continue;
    const std::string& mark = report.wood.pieces[panel.piece].mark;
    const auto same = std::find_if(groups.begin(), groups.end(), [&](const auto& group) {
      return same_states(*group.second, panel);
    });
    if (same == groups.end())
      groups.emplace_back(mark, &panel);
    else
      same->first += " " + mark;
  }
  return groups;
}

PageText panels_table(const ItemReport& report, const LengthPrinter& lengths) {
  TextTable table(titles(report, "panel", ""));
  const Unit unit = lengths.unit();
  for (const auto& [marks, panel] : panel_groups(report)) {
    add_row(table, Cell::of_mark(marks), "width", panel->at, &PanelState::width, unit);
    const bool glass = report.wood.pieces[panel->piece].matter == Matter::glass;
    add_row(
        table, "",
        glass ? "gap each side, to the rebate's bottom" : "gap each side, to the groove's bottom",
        panel->at, &PanelState::gap, unit);
    add_row(table, "", "in the " + std::string(glass ? "rebate" : "groove") + " each side",
            panel->at, &PanelState::bite, unit);
  }
  return PageText::table(table, lengths.in_decimals(), 2);
}

bool hangs_before_opening(const ItemReport& report) {
  const Fit* fit = fit_in_opening(report.wood);
  return fit != nullptr && fit->meets == Meets::overlay;
}

std::string name_of(const ItemReport& report, const LeafSeason& leaf) {
  return group_name(report.wood.groups[leaf.group]);
}

/// Whether a leaf is the left one of a pair, or the right one: the gap between them is told with
/// the left one only.
bool is_of_pair(const ItemReport& report, const LeafSeason& leaf, bool right) {
  for (const Fit* meeting : fits_that_stand(report.wood, StandsIn::beside)) {
    const Neighbours pair = neighbours_of(report.wood, *meeting);
    if ((right ? pair.right : pair.left) == leaf.group) return true;
  }
  return false;
}

/// How far an overlay leaf lies over its opening: its gaps turned round.
AtEach<SideGaps> over_opening(AtEach<SideGaps> gaps) {
  for (SideGaps& at : gaps)
    at = {-at.left, -at.right, -at.head, -at.foot};
  return gaps;
}

PageText leaf_table(const ItemReport& report, const LeafSeason& season,
                    const LengthPrinter& lengths) {
  TextTable table(titles(report, "leaf", ""));
  const Unit unit = lengths.unit();
  const AtEach<LeafState>& leaf = season.at;
  const bool alone = report.seasons->leaves.size() == 1;
  add_row(table, alone ? "" : name_of(report, season), "width", leaf, &LeafState::width, unit);
  AtEach<SideGaps> gaps;
  for (std::size_t i = 0; i < gaps.size(); ++i)
    gaps[i] = leaf[i].gaps;
  const bool overlay = hangs_before_opening(report);
  if (overlay) gaps = over_opening(gaps);
  const std::string word = overlay ? "over the opening " : "gap ";
  if (!is_of_pair(report, season, true))
    add_row(table, "", word + (overlay ? "at the left" : "left"), gaps, &SideGaps::left, unit);
  const std::string right = is_of_pair(report, season, false) ? "between the leaves"
                            : overlay                         ? "at the right"
                                                              : "right";
  add_row(table, "", word + right, gaps, &SideGaps::right, unit);
  add_row(table, "", word + "at the head", gaps, &SideGaps::head, unit);
  add_row(table, "", word + "at the foot", gaps, &SideGaps::foot, unit);
  return PageText::table(table, lengths.in_decimals(), 2);
}

/// Tenons or laps that are as wide as each other.
struct GluedGroup {
  bool lap = false;
  std::string joints;
  AtEach<Length> widths;
};

/// The widths glued across the grain, those that are alike in one row.
PageText tenons_table(const ItemReport& report, const LengthPrinter& lengths) {
  TextTable table({"glued across", "", percent_words(report.seasons->moisture.low),
                   percent_words(report.seasons->moisture.build),
                   percent_words(report.seasons->moisture.high), "at most"});
  std::vector<GluedGroup> groups;
  for (const TenonSeason& tenon : report.seasons->tenons) {
    AtEach<Length> shown = tenon.width;
    for (Length& width : shown)
      width = for_page(width, lengths.unit());
    const bool lap = report.wood.joints[tenon.joint].kind == JointKind::half_lap;
    const auto same = std::find_if(groups.begin(), groups.end(), [&](const GluedGroup& group) {
      return group.lap == lap && group.widths == shown;
    });
    if (same == groups.end())
      groups.push_back({lap, joint_id(tenon.joint), shown});
    else
      same->joints += " " + joint_id(tenon.joint);
  }
  for (const auto& [lap, joints, widths] : groups)
    table.add({lap ? "width of each lap" : "width of each tenon", "", widths[kLow], widths[kBuild],
               widths[kHigh],
               lengths.in_decimals().one(for_page(report.seasons->widest_glued, lengths.unit())) +
                   "   " + joints});
  return PageText::table(table, lengths.in_decimals(), 2);
}

bool same_mitre(const MitreSeason& a, const MitreSeason& b, Unit unit) {
  for (std::size_t i = 0; i < a.at.size(); ++i)
    if (for_page(a.at[i].at_sight, unit) != for_page(b.at[i].at_sight, unit) ||
        for_page(a.at[i].at_outer, unit) != for_page(b.at[i].at_outer, unit))
      return false;
  return true;
}

/// How far mitres open, those that open alike in one place.
PageText mitres_table(const ItemReport& report, const LengthPrinter& lengths) {
  const Unit unit = lengths.unit();
  std::vector<std::pair<std::string, const MitreSeason*>> groups;
  for (const MitreSeason& mitre : report.seasons->mitres) {
    const auto same = std::find_if(groups.begin(), groups.end(), [&](const auto& group) {
      return same_mitre(*group.second, mitre, unit);
    });
    if (same == groups.end())
      groups.emplace_back(joint_id(mitre.joint), &mitre);
    else
      same->first += " " + joint_id(mitre.joint);
  }
  TextTable table(titles(report, "mitre", "would stand open"));
  for (const auto& [joints, mitre] : groups) {
    add_row(table, joints, "at the sight corner", mitre->at, &MitreState::at_sight, unit);
    add_row(table, "", "at the outer corner", mitre->at, &MitreState::at_outer, unit);
    std::vector<Cell> degrees{"", "faces apart, degrees"};
    for (const MitreState& state : mitre->at)
      degrees.emplace_back(fmt::format("{:.2f}", state.degrees));
    table.add(std::move(degrees));
  }
  return PageText::table(table, lengths.in_decimals(), 2);
}

/// The boards of a case across their grain, those that are as wide as each other in one row.
PageText widths_table(const ItemReport& report, const LengthPrinter& lengths) {
  std::vector<std::pair<std::string, AtEach<Length>>> groups;
  for (const WidthSeason& board : report.seasons->widths) {
    const Piece& piece = report.wood.pieces[board.piece];
    AtEach<Length> shown = board.width;
    for (Length& width : shown)
      width = for_page(width, lengths.unit());
    const auto same = std::find_if(groups.begin(), groups.end(),
                                   [&](const auto& group) { return group.second == shown; });
    if (same == groups.end())
      groups.emplace_back(piece.mark, shown);
    else
      same->first += " " + piece.mark;
  }
  TextTable table(titles(report, "case", ""));
  for (const auto& [marks, widths] : groups)
    table.add(
        {Cell::of_mark(marks), "across the grain", widths[kLow], widths[kBuild], widths[kHigh]});
  return PageText::table(table, lengths.in_decimals(), 2);
}

/// A figure of a front at each moisture, where it has it.
void add_front_row(TextTable& table, const std::string& what, const std::string& figure,
                   const FrontSeason& front, std::optional<Length> FrontState::*member, Unit unit) {
  std::vector<Cell> row{what, figure};
  for (const FrontState& state : front.at) {
    if (!(state.*member)) return;
    row.emplace_back(for_page(*(state.*member), unit));
  }
  if (std::all_of(front.at.begin(), front.at.end(),
                  [&](const FrontState& state) { return *(state.*member) == Length(); }))
    return;  // it stands on what is there
  table.add(std::move(row));
}

/// Each front, and what it has round it in its opening.
PageText fronts_table(const ItemReport& report, const LengthPrinter& lengths) {
  TextTable table(titles(report, "front", ""));
  const Unit unit = lengths.unit();
  for (const FrontSeason& front : report.seasons->fronts) {
    add_row(table, group_name(report.wood.groups[front.group]), "width", front.at,
            &FrontState::width, unit);
    add_row(table, "", "height", front.at, &FrontState::height, unit);
    add_front_row(table, "", "gap left", front, &FrontState::left, unit);
    add_front_row(table, "", "gap right", front, &FrontState::right, unit);
    add_front_row(table, "", "gap at the head", front, &FrontState::head, unit);
    add_front_row(table, "", "gap at the foot", front, &FrontState::foot, unit);
  }
  return PageText::table(table, lengths.in_decimals(), 2);
}

PageText bench_text(const ItemReport& report, const LengthPrinter& lengths) {
  const SeasonReport& seasons = *report.seasons;
  std::string text = fmt::format("at the bench today, with the wood at {}:",
                                 percent_words(seasons.moisture.build));
  const LengthPrinter figures = lengths.in_decimals();
  for (const auto& [marks, panel] : panel_groups(report)) {
    const bool glass = report.wood.pieces[panel->piece].matter == Matter::glass;
    const bool one = marks.find(' ') == std::string::npos;
    text += fmt::format(" leave {} {} a gap of {} at each side;",
                        glass ? "glass"
                        : one ? "panel"
                              : "panels",
                        marks, figures.one(for_page(panel->at[kBuild].gap, lengths.unit())));
  }
  const bool overlay = hangs_before_opening(report);
  for (const LeafSeason& leaf : overlay ? std::vector<LeafSeason>{} : seasons.leaves) {
    const SideGaps& gaps = leaf.at[kBuild].gaps;
    const auto figure = [&](Length gap) { return figures.one(for_page(gap, lengths.unit())); };
    text += fmt::format(" hang the {} with", name_of(report, leaf));
    if (!is_of_pair(report, leaf, true)) text += fmt::format(" {} left,", figure(gaps.left));
    text += fmt::format(" {} {}, {} head and {} foot;", figure(gaps.right),
                        is_of_pair(report, leaf, false) ? "between the leaves" : "right",
                        figure(gaps.head), figure(gaps.foot));
  }
  if (text.ends_with(';')) text.pop_back();
  return PageText::hanging(text);
}

PageText remedies_text(const ItemReport& report) {
  PageText text;
  if (!report.season_remedies) return {};
  for (const SeasonRemedy& remedy : report.season_remedies->tried)
    text += PageText::hanging(
        fmt::format("{}: {} instead of {}: {}", remedy.key, remedy.to, remedy.from,
                    remedy.helps ? "helps" : "does not help by itself, nor does less"),
        4);
  if (!report.season_remedies->all_tried)
    text += PageText::hanging("not all was tried: it would take too long", 4);
  if (text.empty()) return {};
  return PageText::hanging(
             "the wood does not bear its seasons; each of these was tried by itself:") +
         text;
}

// ---- weight

std::string kilograms_text(double kilograms, Unit unit) {
  constexpr double kPoundsInKilogram = 2.2046226218;
  return unit == Unit::mm ? fmt::format("{:.1f} kg", kilograms)
                          : fmt::format("{:.1f} lb", kilograms * kPoundsInKilogram);
}

/// "A 6.9 kg, B 6.9 kg", of the pieces whose density is known.
std::string weights_of_pieces(const ItemReport& report, Unit unit) {
  std::string text;
  for (std::size_t i = 0; i < report.weights->pieces.size(); ++i)
    if (const auto& kilograms = report.weights->pieces[i])
      text += (text.empty() ? "" : ", ") + report.wood.pieces[i].mark + " " +
              kilograms_text(*kilograms, unit);
  return text;
}

PageText weights_text(const ItemReport& report, Unit unit) {
  const Weights& weights = *report.weights;
  const Weight& whole = weights.whole;
  const std::string at = percent_words(weights.percent);
  std::string text =
      whole.is_known()
          ? fmt::format("weight at {}: {}, of which ", at, kilograms_text(whole.kilograms, unit))
          : fmt::format("weight not known: {}: {}", unknown_words(whole, report.wood, *report.job),
                        joined(marks_of(report.wood, whole.unknown)));
  if (!whole.is_known() && weights.any_known())
    text += fmt::format("; at {} the rest comes to {}, of which ", at,
                        kilograms_text(whole.kilograms, unit));
  text += weights_of_pieces(report, unit);
  if (!fits_that_stand(report.wood, StandsIn::group).empty())
    for (const LeafWeight& leaf : weights.leaves)
      text += fmt::format("; the {} {}{}", group_name(report.wood.groups[leaf.group]),
                          kilograms_text(leaf.weight.kilograms, unit),
                          leaf.weight.is_known() ? "" : " and what is not known");
  return PageText::hanging(text);
}

}  // namespace

PageParts season_page(const ItemReport& report, const LengthPrinter& lengths) {
  PageText leaves;
  for (const LeafSeason& leaf : report.seasons->leaves)
    leaves += leaf_table(report, leaf, lengths);
  return {{heading(report.job->season->moisture),
           woods_page(report) + widths_table(report, lengths) + panels_table(report, lengths) +
               leaves + fronts_table(report, lengths) + tenons_table(report, lengths) +
               mitres_table(report, lengths) + bench_text(report, lengths) + remedies_text(report) +
               weights_text(report, lengths.unit())}};
}

void append_season_csv(const CsvRow& row, const ItemReport& report) {
  const SeasonReport& seasons = *report.seasons;
  const AtEach<double> percents = percents_of(seasons.moisture);
  const auto start = [&](std::string_view what, std::size_t state) {
    CsvRow line = row;
    line.text(report.job->id);
    line.plain(what);
    line.plain(kStateWords[state]);
    line.number(fmt::format("{:.4g}", percents[state]));
    return line;
  };
  for (const PanelSeason& panel : seasons.panels)
    for (std::size_t i = 0; i < kStateWords.size(); ++i) {
      CsvRow line = start(report.wood.pieces[panel.piece].mark, i);
      line.length(panel.at[i].width);
      line.length(panel.at[i].gap);
      line.length(panel.at[i].bite);
      for (int empty = 0; empty < 4; ++empty)
        line.plain("");
      line.end();
    }
  for (const LeafSeason& leaf : seasons.leaves)
    for (std::size_t i = 0; i < kStateWords.size(); ++i) {
      const LeafState& state = leaf.at[i];
      CsvRow line = start(name_of(report, leaf), i);
      line.length(state.width);
      line.plain("");
      line.plain("");
      for (const Length gap : {state.gaps.left, state.gaps.right, state.gaps.head, state.gaps.foot})
        line.length(gap);
      line.end();
    }
}

}  // namespace haunch
