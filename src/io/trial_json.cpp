#include "trial_json.h"

#include <cmath>

#include "formats.h"
#include "schema.h"

namespace haunch {
namespace {

/// One piece at the joint: a tenon, whose size across is its thickness, or a mortise.
struct PieceTold {
  const CheekReadings& read;
  const AsCut& cut;
  bool tenon;
};
struct ReadTold {
  const PieceTold& piece;
};
struct CutTold {
  const PieceTold& piece;
};

struct OutlookTold {
  const JointOutcome& joint;
  const LengthPrinter& lengths;

  const Outlook& it() const { return joint.trial.outlook; }
};
struct JointTold {
  const JointOutcome& joint;
  const LengthPrinter& lengths;

  PieceTold tenon() const { return {joint.readings.tenon, joint.trial.tenon, true}; }
  PieceTold mortise() const { return {joint.readings.mortise, joint.trial.mortise, false}; }
};

/// The panel held otherwise than it was for the trial.
struct HeldOtherwise {
  const PanelTongue& tongue;
};
struct AdviceTold {
  PanelAdvice advice;
  const PanelOutcome& panel;
  Unit item_unit;
  const LengthPrinter& lengths;
};
struct PanelTold {
  const PanelOutcome& panel;
  Unit item_unit;
  const LengthPrinter& lengths;

  std::optional<HeldOtherwise> otherwise(bool when_pressed) const {
    return only_if(panel.readings.pressed == when_pressed, HeldOtherwise{panel.trial.other});
  }
  std::vector<AdviceTold> advice() const {
    std::vector<AdviceTold> all;
    for (const PanelAdvice each : panel.trial.advice)
      all.push_back({each, panel, item_unit, lengths});
    return all;
  }
};

struct TrialTold {
  const TrialReport& report;
  Unit unit, item_unit;
  LengthPrinter lengths;

  std::optional<JointTold> joint() const {
    const auto* joint = std::get_if<JointOutcome>(&report.outcome);
    return joint == nullptr ? std::nullopt : std::optional(JointTold{*joint, lengths});
  }
  std::optional<PanelTold> panel() const {
    const auto* panel = std::get_if<PanelOutcome>(&report.outcome);
    return panel == nullptr ? std::nullopt : std::optional(PanelTold{*panel, item_unit, lengths});
  }
};

}  // namespace

template <>
struct JsonObject<Readings> : JsonObjectDefaults {
  static constexpr std::string_view definition = "readings";
  static constexpr JsonKey<Readings> keys[] = {
      {"count", the<&Readings::count>, R"("minimum": 1)"},
      {"mean", the<&Readings::mean>},
      {"mean_within", [](auto& it) { return mean_within(it); }},
      {"spread", the<&Readings::spread>},
      {"spread_at_most", [](auto& it) { return spread_at_most(it); }}};
};

template <>
struct JsonObject<Taken> : JsonObjectDefaults {
  static constexpr std::string_view definition = "as_cut";
  static constexpr JsonKey<Taken> keys[] = {{"size", the<&Taken::size>},
                                            {"source", the<&Taken::source>}};
};

template <>
struct JsonObject<ReadTold> : JsonObjectDefaults {
  static constexpr JsonKey<ReadTold> keys[] = {
      {"stock", [](auto& it) { return it.piece.read.stock; }},
      {"from_face", [](auto& it) { return it.piece.read.from_face; }},
      {"thickness", [](auto& it) { return it.piece.tenon ? it.piece.read.across : std::nullopt; }},
      {"width", [](auto& it) { return it.piece.tenon ? std::nullopt : it.piece.read.across; }},
      {"from_back", [](auto& it) { return it.piece.read.from_back; }},
      {"depth", [](auto& it) { return it.piece.read.depth; }}};
};

template <>
struct JsonObject<CutTold> : JsonObjectDefaults {
  static constexpr JsonKey<CutTold> keys[] = {
      {"stock", [](auto& it) { return it.piece.cut.stock; }},
      {"from_face", [](auto& it) { return it.piece.cut.from_face; }},
      {"thickness", [](auto& it) { return only_if(it.piece.tenon, it.piece.cut.across); }},
      {"width", [](auto& it) { return only_if(!it.piece.tenon, it.piece.cut.across); }},
      {"depth", [](auto& it) { return it.piece.cut.depth; }}};
};

template <>
struct JsonObject<PieceTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "piece";
  static constexpr JsonKey<PieceTold> keys[] = {{"read", [](auto& it) { return ReadTold{it}; }},
                                                {"as_cut", [](auto& it) { return CutTold{it}; }}};
};

template <>
struct JsonObject<Flush> : JsonObjectDefaults {
  static constexpr std::string_view definition = "flush";
  static constexpr JsonKey<Flush> keys[] = {{"face", the<&Flush::face>},
                                            {"face_least", the<&Flush::face_least>},
                                            {"face_most", the<&Flush::face_most>},
                                            {"back", the<&Flush::back>}};
};

template <>
struct JsonObject<Correction> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<Correction> keys[] = {
      {"set", the<&Correction::setting>},
      {"from", the<&Correction::from>},
      {"to", the<&Correction::to>},
      {"move", [](auto& it) { return it.move(); }},
      {"way", [](auto& it) { return direction_words(it); }},
      {"within", [](auto& it) { return OrNull<Length>{it.within}; }},
      {"in_doubt", the<&Correction::in_doubt>}};
};

template <>
struct JsonObject<FitBand> : JsonObjectDefaults {
  static constexpr std::string_view definition = "band";
  static constexpr JsonKey<FitBand> keys[] = {{"min", the<&FitBand::min>},
                                              {"max", the<&FitBand::max>}};
};

template <>
struct JsonObject<OutlookTold> : JsonObjectDefaults {
  static constexpr JsonKey<OutlookTold> keys[] = {
      {"band", [](auto& it) { return it.it().band; }},
      {"wanted", [](auto& it) { return it.it().wanted; }},
      {"spread", [](auto& it) { return OrNull<Length>{it.it().spread}; }},
      {"spread_at_most", [](auto& it) { return OrNull<Length>{it.it().spread_at_most}; }},
      {"inside_of_10000",
       [](auto& it) {
         constexpr double kOf = 10'000;
         const auto& share = it.it().share;
         return OrNull<std::int64_t>{share ? std::optional(std::int64_t{std::llround(*share * kOf)})
                                           : std::nullopt};
       }},
      {"readings_that_tell", [](auto& it) { return it.it().would_tell; }},
      {"holds", [](auto& it) { return it.it().hold; }},
      {"message", [](auto& it) { return hold_message(it.joint, it.lengths); }}};
};

template <>
struct JsonObject<JointTold> : JsonObjectDefaults {
  static constexpr JsonKey<JointTold> keys[] = {
      {on_row, "tenon", [](auto& it) { return it.tenon(); }},
      {on_row, "mortise", [](auto& it) { return it.mortise(); }},
      {on_row, "fit", [](auto& it) { return OrNull<Length>{it.joint.trial.fit}; }},
      {"bottom", [](auto& it) { return OrNull<Length>{it.joint.trial.bottom}; }},
      {"flush", [](auto& it) { return OrNull<Flush>{it.joint.trial.flush}; }},
      {"flush_after", [](auto& it) { return it.joint.trial.after; }},
      {"tenon_wanted", [](auto& it) { return it.joint.trial.tenon_wanted; }},
      {on_row, "corrections", [](auto& it) { return it.joint.trial.corrections; }},
      {on_row, "outlook", [](auto& it) {
         return OutlookTold{it.joint, it.lengths};
       }}};
};

template <>
struct JsonObject<PanelPoint> : JsonObjectDefaults {
  static constexpr JsonKey<PanelPoint> keys[] = {
      {"thickness", the<&PanelPoint::thickness>},
      {"at", [](auto& it) { return OrNull<Length>{it.at}; }}};
};

template <>
struct JsonObject<HeldOtherwise> : JsonObjectDefaults {
  static constexpr std::string_view definition = "held_otherwise";
  static constexpr JsonKey<HeldOtherwise> keys[] = {
      {"depth", [](auto& it) { return it.tongue.depth; }},
      {"thinnest", [](auto& it) { return it.tongue.thinnest; }},
      {"thickest", [](auto& it) { return it.tongue.thickest; }}};
};

template <>
struct JsonObject<AdviceTold> : JsonObjectDefaults {
  static constexpr JsonKey<AdviceTold> keys[] = {
      {"do", [](auto& it) { return it.advice; }},
      {"message",
       [](auto& it) { return advice_message(it.advice, it.panel, it.item_unit, it.lengths); }}};
};

template <>
struct JsonObject<PanelTold> : JsonObjectDefaults {
  static constexpr JsonKey<PanelTold> keys[] = {
      {on_row, "remaining", [](auto& it) { return it.panel.readings.remaining; },
       R"("minItems": 1)"},
      {"cup", [](auto& it) { return it.panel.readings.cup; }},
      {"held",
       [](auto& it) { return std::string_view(it.panel.readings.pressed ? "flat" : "free"); },
       R"({"enum": ["flat", "free"]})"},
      {"removed", [](auto& it) { return it.panel.trial.removed; }},
      {on_row, "depth", [](auto& it) { return it.panel.trial.tongue.depth; }},
      {"tongue_wanted", [](auto& it) { return it.panel.design.tongue; }},
      {"thinnest", [](auto& it) { return it.panel.trial.tongue.thinnest; }},
      {"thickest", [](auto& it) { return it.panel.trial.tongue.thickest; }},
      {"free", [](auto& it) { return it.otherwise(true); }},
      {"flat", [](auto& it) { return it.otherwise(false); }},
      {"worst", [](auto& it) { return it.panel.trial.tongue.worst; }},
      {"worst_point", [](auto& it) { return it.panel.trial.tongue.worst_point + 1; },
       R"("minimum": 1)"},
      {"band", [](auto& it) { return it.panel.trial.allowed; }},
      {"flat_enough", [](auto& it) { return OrNull<Length>{it.panel.trial.flat_enough}; }},
      {on_row, "advice", [](auto& it) { return it.advice(); }, R"("minItems": 1)"}};
};

/// Of a joint or of a panel: which of the keys after "receives" there are says which.
template <>
struct JsonObject<TrialTold> : JsonObjectDefaults {
  static constexpr JsonKey<TrialTold> keys[] = {
      {among, [](auto&) { return DocumentHead<kTrialFormat>(); }},
      {"units", the<&TrialTold::unit>},
      {"item", [](auto& it) -> const std::string& { return it.report.item; }},
      {"joint", [](auto& it) -> const std::string& { return it.report.joint; }},
      {"enters", [](auto& it) -> const std::string& { return it.report.enters; }},
      {"receives", [](auto& it) -> const std::string& { return it.report.receives; }},
      {among, [](auto& it) { return it.joint(); }},
      {among, [](auto& it) { return it.panel(); }},
      {on_row, "measure_next", [](auto& it) { return next_readings(it.report, it.lengths); }}};
};

std::string trial_json(const TrialReport& report, Unit unit, Unit item_unit) {
  std::string out;
  JsonText json(out, unit);
  write_json(json, TrialTold{report, unit, item_unit, LengthPrinter(unit, LengthStyle{0})});
  return out + "\n";
}

std::string trial_schema() {
  constexpr std::string_view kHead = R"(
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "$id": "urn:haunch:trial-1",
    "title": "What 'haunch trial' says",
    "description": "Lengths are numbers in 'units'. Of a joint: tenon to outlook; of a panel: remaining to advice. A move is positive towards the back or deeper.")";
  return schema_document(
      kHead, object_schema<TrialTold>(),
      {definition_of<PieceTold>(), definition_of<Readings>(), definition_of<Taken>(),
       definition_of<Flush>(), definition_of<FitBand>(), definition_of<HeldOtherwise>()});
}

}  // namespace haunch
