#include "report.h"

#include <algorithm>
#include <utility>

#include "allowance.h"
#include "bare_gap.h"
#include "cabinet_work.h"
#include "carrying.h"
#include "change.h"
#include "checks.h"
#include "extras.h"
#include "materials.h"
#include "sawn.h"

namespace haunch {
std::string several_of(Role role) {
  std::string text(word_of(role));
  std::replace(text.begin(), text.end(), '-', ' ');
  if (role == Role::shelf) return "shelves";
  if (role == Role::packing) return "packing strips";
  return text + (role == Role::glass ? "" : "s");
}

bool goes_back(const Assembly& wood) {
  return is_cabinet_work(wood) || wood.whole().kind == GroupKind::drawer;
}

namespace {

std::string_view grain_of(const Piece& piece) {
  if (piece.matter == Matter::glass) return "none";
  if (piece.role != Role::panel) return "along";
  return piece.place.axes[0] == Axis::y ? "upright" : "level";
}

/// What is sawn to a curve is picked out for it: its grain, and which edge is sound.
bool is_arched_blank(const Piece& piece) {
  return std::any_of(piece.features.begin(), piece.features.end(), [](const Feature& feature) {
    return feature.kind == FeatureKind::arch || feature.kind == FeatureKind::arched_head ||
           feature.kind == FeatureKind::arched_top;
  });
}

/// The edge that a strip is glued to, as the piece stands: "front", "left".
std::string edge_of(const Piece& piece, const EdgeStrip& strip) {
  const Surface side = side_of(piece, {strip.along == 0 ? std::size_t{1} : 0, strip.high});
  if (side == Surface::face) return "front";
  return std::string(side == Surface::back ? "rear" : word_of(side));
}

std::vector<CutStrip> strips_of(const Piece& piece) {
  std::vector<CutStrip> strips;
  for (const EdgeStrip& strip : piece.strips)
    strips.push_back({edge_of(piece, strip), strip.thickness, strip.material, strip.along == 1});
  return strips;
}

}  // namespace

CutRow cut_row_of(const Piece& piece, const Job& job) {
  const Triple sizes = sawn_sizes(piece);
  const Triple cut = cut_sizes(piece);
  return {piece.role,
          {piece.mark},
          1,
          sizes[0],
          cut[0] + piece.horn * 2,
          sizes[1],
          sizes[2],
          grain_of(piece),
          material_of(piece, job),
          is_arched_blank(piece),
          lies_beside(piece) ? extra_name(piece) : piece.name,
          cut[1],
          strips_of(piece)};
}

bool cut_alike(const CutRow& a, const CutRow& b) {
  const bool one_extra = a.part != Role::extra || a.called == b.called;
  return a.part == b.part && one_extra && a.arched == b.arched && a.grain == b.grain &&
         a.material == b.material && same_size(a.length, b.length) &&
         same_size(a.saw_length, b.saw_length) && same_size(a.width, b.width) &&
         same_size(a.thickness, b.thickness) && same_size(a.saw_width, b.saw_width) &&
         a.strips == b.strips;
}

void merge(CutRow& row, const CutRow& other) {
  if (row.part != Role::extra) row.called = several_of(row.part);
  row.marks.insert(row.marks.end(), other.marks.begin(), other.marks.end());
  row.quantity += other.quantity;
  row.length = std::min(row.length, other.length);
  row.saw_length = std::min(row.saw_length, other.saw_length);
  row.width = std::min(row.width, other.width);
  row.saw_width = std::min(row.saw_width, other.saw_width);
  row.thickness = std::min(row.thickness, other.thickness);
}

Status ItemReport::worst() const {
  Status worst = Status::ok;
  for (const Finding& finding : findings)
    worst = std::max(worst, finding.status);
  return worst;
}

std::int64_t ItemReport::count_of(Status status) const {
  return std::count_if(findings.begin(), findings.end(),
                       [&](const Finding& it) { return it.status == status; });
}

namespace {

void take_seasons(ItemReport& report, const Job& job) {
  report.seasons = check_seasons(report.wood, *job.season, job.unit);
  report.findings.insert(report.findings.end(), report.seasons->findings.begin(),
                         report.seasons->findings.end());
}

void take_checks(ItemReport& report, const Job& job, Wanted wanted) {
  const std::int64_t before = effort_spent();
  report.findings = check_built(report.wood, job);
  if (job.season) take_seasons(report, job);
  report.weights = weigh(report.wood, job);
  for (Caution& caution : weight_cautions(*report.weights, report.wood, job))
    report.cautions.push_back(std::move(caution));
  for (Caution& caution : carrying_cautions(carried(report.wood, job), job))
    report.cautions.push_back(std::move(caution));
  const std::int64_t one_try = effort_spent() - before;
  if (wanted.season_remedies && job.season)
    report.season_remedies = find_season_remedies(job, report.findings, one_try);
  if (wanted.remedies) report.remedies = find_remedies(job, report.findings, one_try);
}

/// How what is in it is put together: without what is laid beside it.
void take_together(ItemReport& report) {
  report.together.rectangles = rectangles_of(report.wood);
  if (report.together.rectangles.empty()) return;
  report.together.orders = assembly_order(report.wood);
  report.together.hardware = hardware_of(report.wood);
}

}  // namespace

Wanted wanted_for(const View& view) {
  const bool sheet = view.section == Section::sheet;
  const bool check = view.section == Section::check;
  const bool season = view.section == Section::season;
  const bool csv = view.format == Format::csv;
  Wanted wanted{true};
  wanted.cutlist = sheet || view.section == Section::cutlist;
  wanted.making = view.section == Section::joints || (sheet && !csv);
  wanted.fits = (sheet || check) && !csv;
  wanted.remedies = check || (sheet && !csv);
  wanted.season_remedies =
      (sheet && !csv) || (season && !csv) || (check && view.format == Format::json);
  return wanted;
}

ItemOutcome report_item(std::unique_ptr<Job> job, Wanted wanted) {
  try {
    Worked worked = job->work();
    if (!worked.problems.empty()) return {{}, std::move(worked.problems)};
    ItemReport report;
    report.wood = std::move(worked.assembly);
    report.rooms = std::move(worked.rooms);
    report.chains = std::move(worked.chains);
    for (Chain& chain : bare_gap_chains(*job, worked.assumed))
      report.chains.push_back(std::move(chain));
    report.cautions = std::move(worked.cautions);
    for (Caution& caution : doubts_of_names(*job))
      report.cautions.push_back(std::move(caution));
    if (auto caution = shelves_not_looked_at(report.wood, *job))
      report.cautions.push_back(*std::move(caution));
    report.assumed = job->assumed_names;
    report.assumed.insert(report.assumed.end(), worked.assumed.begin(), worked.assumed.end());
    report.assumed.insert(report.assumed.end(), job->assumed_tolerances.begin(),
                          job->assumed_tolerances.end());
    if (wanted.fits && job->tolerances)
      report.fits = forecast_fits(report.wood, *job->tolerances, job->unit);
    if (wanted.making) take_together(report);
    report.assumed.insert(report.assumed.end(), job->assumed_season.begin(),
                          job->assumed_season.end());
    if (wanted.checks) take_checks(report, *job, wanted);
    lay_beside(report.wood, job->extras);
    if (wanted.checks && !job->extras.empty()) report.weights = weigh(report.wood, *job);
    if (wanted.cutlist) report.cutlist = cut_list(report.wood, *job);
    if (wanted.making) report.making = making_of(report.wood);
    report.job = std::move(job);
    return {std::move(report), {}};
  } catch (const LengthOverflow& overflow) {
    return {{}, {{"", std::string(overflow.what()) + "; make the sizes less", {}}}};
  }
}

std::vector<CutRow> cut_list(const Assembly& wood, const Job& job) {
  std::vector<CutRow> rows;
  for (const Piece& piece : wood.pieces) {
    CutRow row = cut_row_of(piece, job);
    const auto same = std::find_if(rows.begin(), rows.end(),
                                   [&](const CutRow& other) { return cut_alike(other, row); });
    if (same == rows.end())
      rows.push_back(std::move(row));
    else
      merge(*same, row);
  }
  for (CutRow& row : rows) {
    row.quantity *= job.quantity;
    if (row.quantity > 1 && row.called == word_of(row.part)) row.called = several_of(row.part);
  }
  return rows;
}

std::vector<StripTotal> strip_totals(const std::vector<CutRow>& cuts) {
  std::vector<StripTotal> totals;
  for (const CutRow& cut : cuts)
    for (const CutStrip& strip : cut.strips) {
      const Length length = (strip.across ? cut.width : cut.length) * cut.quantity;
      const auto same = std::find_if(totals.begin(), totals.end(), [&](const StripTotal& it) {
        return it.material == strip.material && it.thickness == strip.thickness &&
               same_size(it.width, cut.thickness);
      });
      if (same == totals.end())
        totals.push_back({strip.material, strip.thickness, cut.thickness, length});
      else
        same->length += length;
    }
  return totals;
}

Surface side_of(const Piece& piece, WorkedSide side) {
  constexpr Surface kLowAndHigh[][2] = {{Surface::left, Surface::right},
                                        {Surface::lower, Surface::upper},
                                        {Surface::face, Surface::back}};
  const Axis axis = piece.place.axes[side.into];
  const bool high = side.from_high != piece.place.backwards[side.into];
  return kLowAndHigh[static_cast<std::size_t>(axis)][high ? 1 : 0];
}

std::vector<std::string> marks_of(const Assembly& wood, const std::vector<std::size_t>& pieces) {
  std::vector<std::string> marks;
  for (const std::size_t piece : pieces)
    marks.push_back(wood.pieces[piece].mark);
  return marks;
}

std::string joined(const std::vector<std::string>& marks) {
  std::string all;
  for (const std::string& mark : marks)
    all += (all.empty() ? "" : " ") + mark;
  return all;
}

bool search_stopped(const ItemReport& report, std::size_t finding) {
  return report.remedies && !report.remedies->all_tried[finding];
}

std::string moisture_text(const Finding& finding) {
  return finding.moisture ? "at " + percent_words(*finding.moisture) + " moisture: " : "";
}

std::string finding_message(const Finding& finding, Unit unit) {
  if (!finding.measured)
    return "nothing to measure " + std::string(finding.rule->words) + ": " +
           std::string(finding.rule->reason);
  constexpr std::size_t kUsualSize = 160;
  const bool turned = finding.value < Length() && !finding.rule->below_zero.empty();
  std::string message;
  message.reserve(kUsualSize);
  if (!finding.fitting.empty()) message.append(finding.fitting).append(": ");
  message += moisture_text(finding);
  message += in_words(turned ? -finding.value : finding.value, unit);
  message.append(" ").append(turned ? finding.rule->below_zero : finding.rule->words);
  const std::string_view then = turned ? " " : "; ";
  if (finding.min && finding.min == finding.max)
    message += finding.value == *finding.min ? ", as designed"
                                             : "; designed: " + in_words(*finding.min, unit);
  else if (finding.min)
    message.append(then).append("at least ").append(in_words(*finding.min, unit));
  if (finding.max && finding.min != finding.max)
    message += (finding.min ? ", at most " : "; at most ") + in_words(*finding.max, unit);
  if (finding.ok_min && finding.min && *finding.ok_min > *finding.min)
    message += ", better " + in_words(*finding.ok_min, unit);
  if (finding.status != Status::ok) message += ": " + std::string(finding.rule->reason);
  return message;
}

namespace {

/// "move it up by 20 mm, to ", of a place.
std::string move_text(const Remedy& remedy, Unit unit) {
  if (remedy.moves == Moves::nothing) return {};
  const bool more = remedy.to > remedy.from;
  const std::string by = in_words(more ? remedy.to - remedy.from : remedy.from - remedy.to, unit);
  if (remedy.moves == Moves::along)
    return "move it by " + by + (more ? " up or to the right, to " : " down or to the left, to ");
  const bool up = more == (remedy.moves == Moves::up);
  return std::string("move it ") + (up ? "up" : "down") + " by " + by + ", to ";
}

}  // namespace

std::string remedy_message(const Remedy& remedy, Unit unit) {
  return remedy.key + (remedy.what.empty() ? "" : " (" + remedy.what + ")") + ": " +
         move_text(remedy, unit) + in_words(remedy.to, unit) + " instead of " +
         in_words(remedy.from, unit) + " (tried: this passes, and nothing else is worse)";
}

}  // namespace haunch
