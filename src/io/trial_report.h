// What a trial cut came to: the model that the page and the JSON are views of.
#pragma once

#include <string>
#include <variant>

#include "panel_trial.h"
#include "text_table.h"
#include "trial.h"
#include "trial_reading.h"

namespace haunch {

struct JointOutcome {
  JointDesign design;
  JointReadings readings;
  JointTrial trial;
};

struct PanelOutcome {
  PanelDesign design;
  PanelReadings readings;
  PanelTrial trial;
};

struct TrialReport {
  std::string item;
  std::string joint;  // "J1"
  std::string enters, enters_name;
  std::string receives, receives_name;
  std::variant<JointOutcome, PanelOutcome> outcome;

  /// The spread does not let the band be kept, or the panel's tongue does not come out inside its
  /// band.
  bool fails() const;
};

/// Works out what was read of a joint that trial_design() and read_trial() know. `unit` is the
/// item's.
TrialReport report_trial(const std::string& item, const Assembly& wood, std::size_t joint,
                         const TrialDesign& design, const TrialReadings& readings, Unit unit);

/// Of one setting, as the machine has it.
std::string_view setting_words(Setting setting);
std::string_view direction_words(const Correction& correction);

/// Whether the band can be kept, in a sentence or two.
std::string hold_message(const JointOutcome& outcome, const LengthPrinter& lengths);

/// What to do with the panel, in a sentence for each advice.
std::string advice_message(PanelAdvice advice, const PanelOutcome& outcome, Unit unit,
                           const LengthPrinter& lengths);

/// What to measure at the next cut, and why.
std::vector<std::string> next_readings(const TrialReport& report, const LengthPrinter& lengths);

}  // namespace haunch
