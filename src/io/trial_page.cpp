#include "trial_page.h"

namespace haunch {
namespace {

Cell cell(const std::optional<Length>& length) {
  return length ? Cell(*length) : Cell(std::string("-"));
}

Length size_of(Length length) {
  return length < Length() ? -length : length;
}

std::string head(const TrialReport& report, const LengthPrinter& lengths) {
  return report.item + ", trial of " + report.joint + ": " + report.enters + " (" +
         report.enters_name + ") into " + report.receives + " (" + report.receives_name +
         "); sizes in " + (lengths.unit() == Unit::mm ? "mm" : "inches") + "\n";
}

void add_reading(TextTable& table, const std::string& what, const std::optional<Readings>& read,
                 Length designed) {
  if (!read) return;
  table.add({what, std::to_string(read->count), designed, read->mean, cell(mean_within(*read)),
             cell(read->spread), cell(spread_at_most(*read))});
}

void add_readings(TextTable& table, const std::string& piece, const std::string& part,
                  const std::string& across, const CheekReadings& read, const CheekDesign& design) {
  add_reading(table, piece + ", thickness", read.stock, design.stock);
  add_reading(table, part + ", from the face side", read.from_face, design.from_face);
  add_reading(table, part + ", " + across, read.across, design.across);
  add_reading(table, part + ", from the back", read.from_back,
              design.stock - design.from_face - design.across);
  add_reading(table, part + ", depth", read.depth, design.depth);
}

std::string readings_page(const JointOutcome& joint, const LengthPrinter& lengths) {
  TextTable table({"", "readings", "designed", "mean", "sure to", "spread", "at most"});
  add_readings(table, std::string(joint.design.tenon_role), "tenon", "thickness",
               joint.readings.tenon, joint.design.tenon);
  add_readings(table, std::string(joint.design.mortise_role),
               joint.design.stub ? "groove" : "mortise", "width", joint.readings.mortise,
               joint.design.mortise);
  return "\nREAD\n" + table.text(lengths, 2) +
         hanging(
             "sure to, at most: nine times in ten, what the calipers themselves are out apart; - "
             "stands where one reading shows no spread");
}

std::string proud_text(const std::string& piece, const std::string& other, Length proud,
                       const LengthPrinter& lengths) {
  if (proud == Length()) return "flush";
  return piece + " " + lengths.one(size_of(proud)) + (proud > Length() ? " proud of" : " below") +
         " the " + other;
}

std::string flush_text(const JointOutcome& joint, const Flush& flush,
                       const LengthPrinter& lengths) {
  const std::string piece(joint.design.tenon_role);
  const std::string other(joint.design.mortise_role);
  return "face side: " + proud_text(piece, other, flush.face, lengths) +
         "; back: " + proud_text(piece, other, flush.back, lengths);
}

std::string fit_text(Length fit, const Outlook& outlook, const LengthPrinter& lengths) {
  std::string text = fit < Length() ? "too tight by " + lengths.one(-fit) + " to go in"
                                    : "fit " + lengths.one(fit) + ", both cheeks together";
  const Length off = fit - outlook.wanted;
  if (off == Length()) return text + ", as wanted";
  text += ": " + lengths.one(size_of(off)) + (off > Length() ? " looser" : " tighter") +
          " than the " + lengths.one(outlook.wanted) + " wanted";
  const bool inside = fit >= outlook.band.min && fit <= outlook.band.max;
  return text + (inside ? ", inside" : ", outside") + " the band " + lengths.one(outlook.band.min) +
         " to " + lengths.one(outlook.band.max);
}

std::string source_note(const Taken& taken, const std::string& what) {
  if (taken.source == Source::designed) return "; " + what + " not measured, taken as designed";
  return taken.source == Source::added_up ? "; " + what + " added up from the other readings" : "";
}

std::string bottom_text(const JointOutcome& joint, const LengthPrinter& lengths) {
  const Length bottom = *joint.trial.bottom;
  const std::string text = bottom < Length() ? "the tenon meets the bottom: the shoulder stays " +
                                                   lengths.one(-bottom) + " open"
                                             : lengths.one(bottom) + " left below the tenon's end";
  return text + ", designed " + lengths.one(joint.design.mortise.depth - joint.design.tenon.depth);
}

std::string as_cut_page(const JointOutcome& joint, const LengthPrinter& lengths) {
  const JointTrial& trial = joint.trial;
  const std::string slot = joint.design.stub ? "groove" : "mortise";
  std::string page = "\nAS CUT\n";
  if (trial.fit)
    page += hanging(fit_text(*trial.fit, trial.outlook, lengths) +
                    source_note(trial.tenon.across, "the tenon's thickness") +
                    source_note(trial.mortise.across, "the width of the " + slot));
  if (trial.flush) {
    page += hanging(flush_text(joint, *trial.flush, lengths));
    if (trial.flush->face_least < trial.flush->face_most)
      page += hanging("(with the tenon in the middle; as it lies, the face side goes from " +
                      lengths.one(trial.flush->face_least) + " to " +
                      lengths.one(trial.flush->face_most) + " proud)");
  }
  if (trial.bottom) page += hanging(bottom_text(joint, lengths));
  return page == "\nAS CUT\n" ? "" : page;
}

std::string other_machines(const JointOutcome& joint, const LengthPrinter& lengths) {
  const JointTrial& trial = joint.trial;
  const Length over = trial.too_thick();
  if (!trial.tenon.across.known() || over == Length()) return {};
  const bool thick = over > Length();
  return hanging("one cutter and the work turned over: " + lengths.one(size_of(floor_half(over))) +
                 (thick ? " more" : " less") + " off each cheek, half of the difference") +
         hanging(
             "two cutters with a spacer between: the spacer " + lengths.one(size_of(over)) +
             (thick ? " thinner" : " thicker") + ", all of the difference" +
             (trial.tenon.from_face.known() ? "; then shift the pair as the face cheek says" : ""));
}

std::string set_page(const JointOutcome& joint, const LengthPrinter& lengths) {
  TextTable table({"", "makes", "is to make", "move by", "which way"});
  std::string doubts;
  for (const Correction& each : joint.trial.corrections) {
    table.add({std::string(setting_words(each.setting)), each.from, each.to, size_of(each.move()),
               std::string(direction_words(each))});
    if (each.in_doubt)
      doubts += (doubts.empty() ? "" : "; ") + std::string(setting_words(each.setting));
  }
  std::string page = "\nSET\n";
  if (!table.empty())
    page += table.text(lengths, 2) + hanging("cheeks and mortise are places from the face side");
  if (!doubts.empty())
    page += hanging("no more than the readings can tell, better measured again first: " + doubts);
  page += hanging("tenon thickness " + lengths.one(joint.trial.tenon_wanted) + ", for the " +
                  (joint.design.stub ? "groove" : "mortise") + " " +
                  (joint.trial.mortise.across.known() ? "as it is" : "as designed"));
  page += other_machines(joint, lengths);
  page += hanging("then " + fit_text(joint.trial.outlook.wanted, joint.trial.outlook, lengths) +
                  "; " + flush_text(joint, joint.trial.after, lengths) +
                  (joint.trial.tenon.stock.known() && joint.trial.mortise.stock.known()
                       ? ""
                       : ", if the stock is as designed"));
  return page + hanging(hold_message(joint, lengths));
}

std::string joint_page(const JointOutcome& joint, const LengthPrinter& lengths) {
  return readings_page(joint, lengths) + as_cut_page(joint, lengths) + set_page(joint, lengths);
}

/// What lies where as the second face is cut.
std::string held_text(bool pressed) {
  return pressed
             ? "the panel lying on that face and pressed flat on the table by vacuum or clamps, "
               "the cutter coming out of the table"
             : "the panel lying free on that face, not pressed flat, the cutter coming out of "
               "the table";
}

/// "inside the band 14.2 to 15"
std::string band_text(const PanelTrial& trial, const PanelTongue& tongue,
                      const LengthPrinter& lengths) {
  const bool inside = tongue.thinnest >= trial.allowed.min && tongue.thickest <= trial.allowed.max;
  return std::string(inside ? "inside" : "outside") + " the band " +
         lengths.one(trial.allowed.min) + " to " + lengths.one(trial.allowed.max);
}

std::string panel_readings_page(const PanelOutcome& panel, const LengthPrinter& lengths) {
  const PanelTongue& tongue = panel.trial.tongue;
  TextTable table({"point", "across the width", "remains"});
  for (std::size_t i = 0; i < panel.readings.remaining.size(); ++i) {
    const PanelPoint& point = panel.readings.remaining[i];
    table.add({std::to_string(i + 1), point.at ? Cell(*point.at) : Cell(std::string("at an edge")),
               point.thickness});
  }
  std::string page = "\nREAD after the first face\n" + table.text(lengths, 2);
  page += hanging("thickness differs by " + lengths.one(panel.trial.stock_varies) + "; cup " +
                  lengths.one(panel.readings.cup) +
                  (panel.readings.cup > Length()
                       ? std::string(", hollow on the ") +
                             (panel.readings.hollow == Face::first ? "first" : "second") + " face"
                       : ""));
  page +=
      hanging("from the first face came " + lengths.one(panel.trial.removed) +
              (panel.trial.removed_is_designed ? ", reckoned from the designed thickness" : ""));
  page += "\nSET\n";
  page += hanging("second face: " + lengths.one(tongue.depth) + " deep, " +
                  held_text(panel.readings.pressed));
  return page;
}

std::string panel_page(const PanelOutcome& panel, Unit unit, const LengthPrinter& lengths) {
  const PanelTrial& trial = panel.trial;
  const PanelTongue& tongue = trial.tongue;
  std::string page = panel_readings_page(panel, lengths);
  page += hanging("then the tongue is " + lengths.one(tongue.thinnest) + " to " +
                  lengths.one(tongue.thickest) + " thick, wanted " +
                  lengths.one(panel.design.tongue) + ", " + band_text(trial, tongue, lengths));
  if (panel.readings.cup > Length())
    page += hanging(std::string(panel.readings.pressed ? "lying free" : "pressed flat") +
                    " instead: " + lengths.one(trial.other.depth) + " deep, and the tongue " +
                    lengths.one(trial.other.thinnest) + " to " + lengths.one(trial.other.thickest) +
                    " thick, " + band_text(trial, trial.other, lengths));
  if (tongue.worst != Length())
    page += hanging("worst at point " + std::to_string(tongue.worst_point + 1) + ": " +
                    lengths.one(size_of(tongue.worst)) +
                    (tongue.worst > Length() ? " too thick" : " too thin"));
  for (const PanelAdvice each : trial.advice)
    page += hanging(advice_message(each, panel, unit, lengths));
  return page;
}

}  // namespace

std::string trial_page(const TrialReport& report, Unit unit, const LengthPrinter& lengths) {
  std::string page = head(report, lengths);
  if (const auto* joint = std::get_if<JointOutcome>(&report.outcome))
    page += joint_page(*joint, lengths);
  else
    page += panel_page(std::get<PanelOutcome>(report.outcome), unit, lengths);
  page += "\nMEASURE NEXT\n";
  for (const std::string& each : next_readings(report, lengths))
    page += hanging("- " + each);
  return page;
}

}  // namespace haunch
