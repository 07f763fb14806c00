#include "trial_json.h"

#include <cmath>

#include "formats.h"

namespace haunch {
namespace {

void append_reading(JsonText& json, std::string_view name, const std::optional<Readings>& read) {
  if (!read) return;
  json.key(name);
  json.open_object();
  json.member("count", static_cast<std::int64_t>(read->count));
  json.member("mean", read->mean);
  if (const auto within = mean_within(*read)) json.member("mean_within", *within);
  if (read->spread) json.member("spread", *read->spread);
  if (const auto most = spread_at_most(*read)) json.member("spread_at_most", *most);
  json.close_object();
}

std::string_view source_word(Source source) {
  constexpr std::string_view kWords[] = {"measured", "added up", "designed"};
  return kWords[static_cast<std::size_t>(source)];
}

void append_taken(JsonText& json, std::string_view name, const Taken& taken) {
  json.key(name);
  json.open_object();
  json.member("size", taken.size);
  json.member("source", source_word(taken.source));
  json.close_object();
}

void append_cheeks(JsonText& json, std::string_view part, std::string_view across,
                   const CheekReadings& read, const AsCut& cut) {
  json.row();
  json.key(part);
  json.open_object();
  json.key("read");
  json.open_object();
  append_reading(json, "stock", read.stock);
  append_reading(json, "from_face", read.from_face);
  append_reading(json, across, read.across);
  append_reading(json, "from_back", read.from_back);
  append_reading(json, "depth", read.depth);
  json.close_object();
  json.key("as_cut");
  json.open_object();
  append_taken(json, "stock", cut.stock);
  append_taken(json, "from_face", cut.from_face);
  append_taken(json, across, cut.across);
  append_taken(json, "depth", cut.depth);
  json.close_object();
  json.close_object();
}

void append_optional(JsonText& json, std::string_view name, const std::optional<Length>& length) {
  json.key(name);
  if (length)
    json.number(*length);
  else
    json.null();
}

void append_flush(JsonText& json, std::string_view name, const std::optional<Flush>& flush) {
  json.key(name);
  if (!flush) {
    json.null();
    return;
  }
  json.open_object();
  json.member("face", flush->face);
  json.member("face_least", flush->face_least);
  json.member("face_most", flush->face_most);
  json.member("back", flush->back);
  json.close_object();
}

void append_correction(JsonText& json, const Correction& each) {
  constexpr std::string_view kNames[] = {"face-cheek", "back-cheek", "tenon-depth",
                                         "mortise-from-face", "mortise-depth"};
  json.row();
  json.open_object();
  json.member("set", kNames[static_cast<std::size_t>(each.setting)]);
  json.member("from", each.from);
  json.member("to", each.to);
  json.member("move", each.move());
  json.member("way", direction_words(each));
  append_optional(json, "within", each.within);
  json.key("in_doubt");
  json.truth(each.in_doubt);
  json.close_object();
}

void append_band(JsonText& json, std::string_view name, const FitBand& band) {
  json.key(name);
  json.open_object();
  json.member("min", band.min);
  json.member("max", band.max);
  json.close_object();
}

void append_outlook(JsonText& json, const JointOutcome& joint, const LengthPrinter& lengths) {
  constexpr std::string_view kHolds[] = {"unknown", "keeps", "unsure", "off-centre", "cannot"};
  constexpr double kShareUnit = 10'000;
  const Outlook& outlook = joint.trial.outlook;
  json.row();
  json.key("outlook");
  json.open_object();
  append_band(json, "band", outlook.band);
  json.member("wanted", outlook.wanted);
  append_optional(json, "spread", outlook.spread);
  append_optional(json, "spread_at_most", outlook.spread_at_most);
  json.key("inside_of_10000");
  if (outlook.share)
    json.number(static_cast<std::int64_t>(std::llround(*outlook.share * kShareUnit)));
  else
    json.null();
  if (outlook.would_tell)
    json.member("readings_that_tell", static_cast<std::int64_t>(*outlook.would_tell));
  json.member("holds", kHolds[static_cast<std::size_t>(outlook.hold)]);
  json.member("message", hold_message(joint, lengths));
  json.close_object();
}

void append_joint(JsonText& json, const JointOutcome& joint, const LengthPrinter& lengths) {
  const JointTrial& trial = joint.trial;
  append_cheeks(json, "tenon", "thickness", joint.readings.tenon, trial.tenon);
  append_cheeks(json, "mortise", "width", joint.readings.mortise, trial.mortise);
  json.row();
  append_optional(json, "fit", trial.fit);
  append_optional(json, "bottom", trial.bottom);
  append_flush(json, "flush", trial.flush);
  append_flush(json, "flush_after", trial.after);
  json.member("tenon_wanted", trial.tenon_wanted);
  json.row();
  json.key("corrections");
  json.open_list();
  for (const Correction& each : trial.corrections)
    append_correction(json, each);
  json.close_list();
  append_outlook(json, joint, lengths);
}

void append_points(JsonText& json, const std::vector<PanelPoint>& points) {
  json.key("remaining");
  json.open_list();
  for (const PanelPoint& point : points) {
    json.open_object();
    json.member("thickness", point.thickness);
    append_optional(json, "at", point.at);
    json.close_object();
  }
  json.close_list();
}

void append_panel(JsonText& json, const PanelOutcome& panel, Unit item_unit,
                  const LengthPrinter& lengths) {
  constexpr std::string_view kAdvice[] = {
      "go-on",           "let-rest",           "register-on-first",
      "alternate-faces", "unequal-in-the-end", "too-thin"};
  const PanelTrial& trial = panel.trial;
  json.row();
  append_points(json, panel.readings.remaining);
  json.member("cup", panel.readings.cup);
  json.member("held", panel.readings.pressed ? "flat" : "free");
  json.member("removed", trial.removed);
  json.row();
  json.member("depth", trial.tongue.depth);
  json.member("tongue_wanted", panel.design.tongue);
  json.member("thinnest", trial.tongue.thinnest);
  json.member("thickest", trial.tongue.thickest);
  json.key(panel.readings.pressed ? "free" : "flat");
  json.open_object();
  json.member("depth", trial.other.depth);
  json.member("thinnest", trial.other.thinnest);
  json.member("thickest", trial.other.thickest);
  json.close_object();
  json.member("worst", trial.tongue.worst);
  json.member("worst_point", static_cast<std::int64_t>(trial.tongue.worst_point + 1));
  append_band(json, "band", trial.allowed);
  append_optional(json, "flat_enough", trial.flat_enough);
  json.row();
  json.key("advice");
  json.open_list();
  for (const PanelAdvice each : trial.advice) {
    json.open_object();
    json.member("do", kAdvice[static_cast<std::size_t>(each)]);
    json.member("message", advice_message(each, panel, item_unit, lengths));
    json.close_object();
  }
  json.close_list();
}

}  // namespace

std::string trial_json(const TrialReport& report, Unit unit, Unit item_unit) {
  const LengthPrinter lengths(unit, LengthStyle{0});
  std::string out;
  JsonText json(out, unit);
  json.open_object();
  JsonMembers<DocumentHead<kTrialFormat>>::write(json, {});
  json.member("units", word_of(unit));
  json.member("item", report.item);
  json.member("joint", report.joint);
  json.member("enters", report.enters);
  json.member("receives", report.receives);
  if (const auto* joint = std::get_if<JointOutcome>(&report.outcome))
    append_joint(json, *joint, lengths);
  else
    append_panel(json, std::get<PanelOutcome>(report.outcome), item_unit, lengths);
  json.row();
  json.key("measure_next");
  json.open_list();
  for (const std::string& each : next_readings(report, lengths))
    json.text(each);
  json.close_list();
  json.close_object();
  return out + "\n";
}

}  // namespace haunch
