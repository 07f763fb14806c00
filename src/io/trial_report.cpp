#include "trial_report.h"

#include <fmt/core.h>

#include <algorithm>

namespace haunch {
namespace {

constexpr std::size_t kEnoughReadings = 3;

std::size_t count_of(const std::optional<Readings>& readings) {
  return readings ? readings->count : 0;
}

std::string spread_text(const JointOutcome& outcome, const LengthPrinter& lengths) {
  const Outlook& outlook = outcome.trial.outlook;
  const std::size_t count =
      std::min(count_of(outcome.readings.tenon.across), count_of(outcome.readings.mortise.across));
  if (*outlook.spread == Length())
    return fmt::format("all {} readings are alike, so the spread is less than the calipers show",
                       count);
  return fmt::format(
      "the fit spreads by {}; from {} readings it may be {:.1f} times as large (nine times in ten "
      "it is no more), or {:.2f} times (nine in ten, no less)",
      lengths.one(*outlook.spread), count, spread_factor(count), least_spread_factor(count));
}

/// "; 7 more of each would tell, if they spread alike", of readings too few to tell.
std::string more_text(const Outlook& outlook) {
  if (!outlook.would_tell) return "; not even 100 that spread alike would tell";
  return fmt::format("; {} more of both would tell, if they spread alike",
                     *outlook.would_tell - outlook.count);
}

void ask_for_places(std::vector<std::string>& asked, const JointOutcome& joint,
                    const std::string& slot) {
  const JointReadings& read = joint.readings;
  if (!joint.trial.tenon.from_face.known())
    asked.push_back("the face side to the tenon's near cheek: it tells the cheeks apart");
  if (!joint.trial.mortise.from_face.known())
    asked.push_back("the face side to the near wall of the " + slot +
                    ": it tells how flush the pieces come");
  if (!read.tenon.stock || !read.mortise.stock)
    asked.push_back(fmt::format("the thickness of {} and {}: it proves the other readings",
                                joint.design.tenon_role, joint.design.mortise_role));
}

void ask_across(std::vector<std::string>& asked, const JointOutcome& joint,
                const std::string& slot) {
  const JointReadings& read = joint.readings;
  if (count_of(read.tenon.across) < kEnoughReadings)
    asked.push_back(
        "the tenon's thickness on at least three cuts, each at mid-length and at both "
        "edges");
  if (count_of(read.mortise.across) < kEnoughReadings)
    asked.push_back("the width of at least three " + slot + "s, with the inside jaws at the mouth");
}

std::string after_joint(const JointOutcome& joint, const LengthPrinter& lengths) {
  const std::string wanted = lengths.one(joint.trial.tenon_wanted);
  return "after the settings are moved, one more cut: the tenon's thickness should read " + wanted +
         (joint.trial.mortise.across.known() ? "" : " if the mortise is as wide as designed");
}

}  // namespace

bool TrialReport::fails() const {
  if (const auto* tenon = std::get_if<JointOutcome>(&outcome))
    return tenon->trial.outlook.hold == Hold::cannot;
  return !std::get<PanelOutcome>(outcome).trial.fits();
}

TrialReport report_trial(const std::string& item, const Assembly& wood, std::size_t number,
                         const TrialDesign& design, const TrialReadings& readings, Unit unit) {
  const Joint& joint = wood.joints[number];
  const Piece& enters = wood.pieces[joint.enters];
  const Piece& receives = wood.pieces[joint.receives];
  TrialReport report{item,          joint_id(number), enters.mark, enters.name,
                     receives.mark, receives.name,    {}};
  if (const auto* tenon = std::get_if<JointDesign>(&design)) {
    const auto& read = std::get<JointReadings>(readings);
    report.outcome = JointOutcome{*tenon, read, try_joint(*tenon, read)};
  } else {
    const auto& panel = std::get<PanelDesign>(design);
    const auto& read = std::get<PanelReadings>(readings);
    report.outcome = PanelOutcome{panel, read, try_panel(panel, read, unit)};
  }
  return report;
}

std::string_view setting_words(Setting setting) {
  switch (setting) {
    case Setting::face_cheek:
      return "tenon, face cheek cutter";
    case Setting::back_cheek:
      return "tenon, back cheek cutter";
    case Setting::tenon_depth:
      return "tenon, depth stop";
    case Setting::mortise_place:
      return "mortise cutter at fence";
    case Setting::mortise_depth:
      return "mortise, depth stop";
  }
  return {};
}

std::string_view direction_words(const Correction& correction) {
  const bool is_depth =
      correction.setting == Setting::tenon_depth || correction.setting == Setting::mortise_depth;
  if (correction.move() == Length()) return "stays";
  if (is_depth) return correction.move() > Length() ? "deeper" : "shallower";
  return correction.move() > Length() ? "towards the back" : "towards the face side";
}

namespace {

/// Readings of trial cuts are too few for more figures.
std::string percent_words(double share) {
  constexpr double kMost = 0.995, kLeast = 0.005;
  if (share >= kMost) return "over 99 %";
  if (share < kLeast) return "under 1 %";
  return fmt::format("about {:.0f} %", share * 100);
}

}  // namespace

std::string hold_message(const JointOutcome& outcome, const LengthPrinter& lengths) {
  const Outlook& outlook = outcome.trial.outlook;
  const std::string band =
      "the band " + lengths.one(outlook.band.min) + " to " + lengths.one(outlook.band.max);
  if (outlook.hold == Hold::unknown)
    return "whether " + band +
           " can be kept is not known: that takes several readings of both the tenon's thickness "
           "and the width it goes into";
  const std::string spread = spread_text(outcome, lengths);
  const std::string three = "three spreads either side of " + lengths.one(outlook.wanted);
  const std::string share = "; " + percent_words(*outlook.share) + " of joints come out inside";
  switch (outlook.hold) {
    case Hold::keeps:
      return band + " is kept: " + three + " lie in it, even the largest likely" + share + "; " +
             spread;
    case Hold::unsure:
      return (outlook.is_kept_as_read()
                  ? band + " is kept if the readings are like the rest: " + three + " lie in it"
                  : band +
                        " is not kept if the readings are like the rest: six spreads are wider "
                        "than it") +
             share + "; but " + spread + more_text(outlook);
    case Hold::off_centre: {
      const Length middle = outlook.band.min + floor_half(outlook.band.max - outlook.band.min);
      return band + " is not kept at a fit of " + lengths.one(outlook.wanted) + share +
             "; in its middle, " + lengths.one(middle) + ", it would be: " + spread;
    }
    default:
      return band + " cannot be kept: six spreads are wider than it, whatever the setting" + share +
             "; " + spread + "; steady the machine or the stock first, or fit each joint by hand";
  }
}

std::string advice_message(PanelAdvice advice, const PanelOutcome& outcome, Unit unit,
                           const LengthPrinter& lengths) {
  const PanelTrial& trial = outcome.trial;
  const std::string limit = lengths.one(most_unequal(unit));
  switch (advice) {
    case PanelAdvice::go_on:
      return "go on: the tongue comes out inside its band everywhere";
    case PanelAdvice::let_rest: {
      const Length hundredth =
          unit == Unit::mm ? Length::from_mm_thousandths(10) : Length::from_inch_parts(5, 10'000);
      return "let it rest, on stickers with air to both faces, until the cup is no more than " +
             lengths.one(floor_multiple(*trial.flat_enough, hundredth)) +
             "; read it again before the second face, or press it flat as it is cut: \"held\": "
             "\"flat\"";
    }
    case PanelAdvice::register_on_first:
      return "take the register from the first face (its worked border on the bed or fence): the "
             "stock differs too much from point to point, and so the tongue no longer depends on "
             "it";
    case PanelAdvice::alternate_faces:
      return "work the next panels on both faces in turn, no more than " + limit +
             " from one face at a time: this one cupped after " + lengths.one(trial.removed) +
             " from one";
    case PanelAdvice::unequal_in_the_end:
      return "the faces will lose unequally, " + lengths.one(trial.removed) + " and " +
             lengths.one(trial.tongue.depth) + "; more than " + limit +
             " of difference lets a panel cup: house it soon";
    case PanelAdvice::too_thin:
      return "no second cut mends it: a point is thinner already than the groove lets pass, " +
             lengths.one(trial.allowed.min);
  }
  return {};
}

std::vector<std::string> next_readings(const TrialReport& report, const LengthPrinter& lengths) {
  std::vector<std::string> asked;
  if (const auto* joint = std::get_if<JointOutcome>(&report.outcome)) {
    const std::string slot = joint->design.stub ? "groove" : "mortise";
    ask_for_places(asked, *joint, slot);
    ask_across(asked, *joint, slot);
    asked.push_back(after_joint(*joint, lengths));
    return asked;
  }
  const auto& panel = std::get<PanelOutcome>(report.outcome);
  if (panel.readings.remaining.size() < kEnoughReadings)
    asked.push_back("what remains at more points: the four corners and the middle of each edge");
  if (panel.trial.removed_is_designed)
    asked.push_back(
        "how much came off the first face; it was reckoned from the designed thickness");
  asked.push_back("after the second face, the tongue at the same points: it should read " +
                  lengths.one(panel.design.tongue));
  return asked;
}

}  // namespace haunch
