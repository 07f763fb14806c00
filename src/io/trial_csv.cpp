#include "trial_csv.h"

#include "csv_row.h"

namespace haunch {
namespace {

/// What a row has beside the item, the joint, of what it tells and what that is.
struct TrialRow {
  std::optional<Length> value = {};
  std::string_view source = {};
  const Readings* read = nullptr;
  const Correction* correction = nullptr;
  std::string message = {};
};

class TrialTable {
 public:
  TrialTable(const TrialReport& report, Unit unit, Unit item_unit, CsvProfile profile)
      : report_(report),
        unit_(unit),
        item_unit_(item_unit),
        profile_(profile),
        lengths_(unit, LengthStyle{0}),
        out_(csv_start(profile)) {}

  std::string text() {
    add_head();
    if (const auto* joint = std::get_if<JointOutcome>(&report_.outcome))
      add_joint(*joint);
    else
      add_panel(std::get<PanelOutcome>(report_.outcome));
    for (const std::string& each : next_readings(report_, lengths_))
      add("next", "measure", {.message = each});
    return std::move(out_);
  }

 private:
  void add_head() {
    CsvRow head(out_, unit_, profile_);
    for (const char* title : {"item", "joint", "of", "what"})
      head.plain(title);
    const std::string suffix = "_" + std::string(word_of(unit_));
    head.plain("value" + suffix);
    for (const char* title : {"source", "readings"})
      head.plain(title);
    for (const char* title : {"mean_within", "spread", "spread_at_most", "from", "to", "move"})
      head.plain(title + suffix);
    for (const char* title : {"way", "message"})
      head.plain(title);
    head.end();
  }

  void add(std::string_view of, std::string_view what, const TrialRow& row) {
    CsvRow line(out_, unit_, profile_);
    line.text(report_.item);
    line.plain(report_.joint);
    line.plain(of);
    line.plain(what);
    line.length(row.value);
    line.plain(row.source);
    line.plain(row.read == nullptr ? "" : std::to_string(row.read->count));
    line.length(row.read == nullptr ? std::nullopt : mean_within(*row.read));
    line.length(row.read == nullptr ? std::nullopt : row.read->spread);
    line.length(row.read == nullptr ? std::nullopt : spread_at_most(*row.read));
    const Correction* set = row.correction;
    line.length(set == nullptr ? std::nullopt : std::optional(set->from));
    line.length(set == nullptr ? std::nullopt : std::optional(set->to));
    line.length(set == nullptr ? std::nullopt : std::optional(set->move()));
    line.plain(set == nullptr ? "" : direction_words(*set));
    line.text(row.message);
    line.end();
  }

  void add_cut(std::string_view of, std::string_view what, const Taken& cut,
               const std::optional<Readings>& read) {
    add(of, what,
        {.value = cut.size, .source = word_of(cut.source), .read = read ? &*read : nullptr});
  }

  void add_piece(std::string_view of, std::string_view across, const AsCut& cut,
                 const CheekReadings& read) {
    add_cut(of, "stock", cut.stock, read.stock);
    add_cut(of, "from_face", cut.from_face, read.from_face);
    add_cut(of, across, cut.across, read.across);
    add_cut(of, "depth", cut.depth, read.depth);
  }

  /// What is not known has no row.
  void add_figure(std::string_view of, std::string_view what, const std::optional<Length>& value) {
    if (value) add(of, what, {.value = value});
  }

  void add_joint(const JointOutcome& joint) {
    const JointTrial& trial = joint.trial;
    add_piece("tenon", "thickness", trial.tenon, joint.readings.tenon);
    add_piece("mortise", "width", trial.mortise, joint.readings.mortise);
    add_figure("joint", "fit", trial.fit);
    add_figure("joint", "bottom", trial.bottom);
    if (trial.flush) {
      add_figure("joint", "flush_face", trial.flush->face);
      add_figure("joint", "flush_back", trial.flush->back);
    }
    add_figure("joint", "tenon_wanted", trial.tenon_wanted);
    for (const Correction& each : trial.corrections)
      add("set", word_of(each.setting),
          {.correction = &each,
           .message = each.in_doubt ? "no more than the readings can tell" : ""});
    add("outlook", word_of(trial.outlook.hold), {.message = hold_message(joint, lengths_)});
  }

  void add_panel(const PanelOutcome& panel) {
    for (const PanelPoint& point : panel.readings.remaining)
      add("panel", "remaining", {.value = point.thickness, .source = "measured"});
    add_figure("panel", "cup", panel.readings.cup);
    add_figure("panel", "removed", panel.trial.removed);
    const PanelTongue& tongue = panel.trial.tongue;
    add("set", "depth", {.value = tongue.depth});
    add_figure("tongue", "wanted", panel.design.tongue);
    add_figure("tongue", "thinnest", tongue.thinnest);
    add_figure("tongue", "thickest", tongue.thickest);
    for (const PanelAdvice each : panel.trial.advice)
      add("advice", word_of(each), {.message = advice_message(each, panel, item_unit_, lengths_)});
  }

  const TrialReport& report_;
  Unit unit_, item_unit_;
  CsvProfile profile_;
  LengthPrinter lengths_;
  std::string out_;
};

}  // namespace

std::string trial_csv(const TrialReport& report, Unit unit, Unit item_unit, CsvProfile profile) {
  return TrialTable(report, unit, item_unit, profile).text();
}

}  // namespace haunch
