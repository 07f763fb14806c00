#include "trial_reading.h"

#include <algorithm>

#include "value_reader.h"

namespace haunch {
namespace {

constexpr std::size_t kMostReadings = 1000;  // of one size
constexpr int kMostPieces = 1'000'000;       // summed up by the shop itself
constexpr std::string_view kListWanted =
    "a length or a list of lengths; write 14.9 or [14.9, 14.95]";

using Words = std::vector<std::string_view>;

/// A mean that was read in the other unit, put right: "14.9 mm".
std::string in_the_right_unit(Length reading, WrongUnit wrong) {
  return wrong == WrongUnit::read_in_mm ? decimal(reading, Unit::inch) + " mm"
                                        : decimal(reading, Unit::mm) + " in";
}

/// Reads one file of readings and keeps what is wrong with it.
class TrialReader {
 public:
  TrialReader(const Value& measured, const TrialDesign& design, Unit unit,
              const std::optional<FitBand>& band)
      : measured_(measured),
        design_(design),
        unit_(unit),
        band_(band),
        values_(units_of(measured, unit), "") {}

  TrialReading read() {
    if (measured_.kind != Value::Kind::object) {
      values_.wrong_type(measured_, "", "what was measured; write an object of readings");
      return {{}, values_.take_problems()};
    }
    if (const Value* units = measured_.find("units"))
      values_.choice(*units, "/units", {"mm", "in"});
    if (const Value* note = measured_.find("note")) values_.text(*note, "/note");
    TrialReading reading;
    if (const auto* joint = std::get_if<JointDesign>(&design_))
      reading.readings = read_joint(*joint);
    else
      reading.readings = read_panel(std::get<PanelDesign>(design_));
    reading.problems = values_.take_problems();
    if (!reading.problems.empty()) reading.readings.reset();
    return reading;
  }

 private:
  static Unit units_of(const Value& measured, Unit unit) {
    const Value* units = measured.find("units");
    if (units == nullptr || units->kind != Value::Kind::text) return unit;
    return units->text == "mm" ? Unit::mm : units->text == "in" ? Unit::inch : unit;
  }

  /// The object under `key`, its keys found to be `known`; null if it is not there or not one.
  const Value* object(std::string_view key, const Words& known) {
    const Value* value = measured_.find(key);
    if (value == nullptr) return nullptr;
    const std::string path = child_path("", key);
    if (value->kind != Value::Kind::object) {
      values_.wrong_type(*value, path, "an object; its keys are " + quoted_list(known, "and"));
      return nullptr;
    }
    check_keys(*value, path, known);
    return value;
  }

  void check_keys(const Value& object, const std::string& path, const Words& known) {
    for (const Entry& entry : object.entries)
      if (std::find(known.begin(), known.end(), entry.key) == known.end())
        values_.unknown_key(entry, child_path(path, entry.key), known);
  }

  std::optional<Length> length(const Value& value, const std::string& path, Length designed) {
    const auto read = values_.length(value, path, true);
    if (!read) return {};
    const WrongUnit wrong = wrong_unit(*read, designed);
    if (wrong == WrongUnit::no) return read;
    const bool too_large = wrong == WrongUnit::read_in_mm;
    values_.problem(path, as_written(value) + " is " + in_words(*read, unit_) +
                              ", about 25.4 times " + (too_large ? "more" : "less") +
                              " than the designed " + in_words(designed, unit_) +
                              ": a reading in " + (too_large ? "mm" : "inches") + "; write \"" +
                              in_the_right_unit(*read, wrong) + "\"");
    return {};
  }

  /// One or several readings of a size under `key`.
  std::optional<Readings> readings(const Value* part, const std::string& part_path,
                                   std::string_view key, Length designed) {
    const Value* value = part == nullptr ? nullptr : part->find(key);
    if (value == nullptr) return {};
    const std::string path = child_path(part_path, key);
    if (value->kind == Value::Kind::object) return summary(*value, path, designed);
    if (value->kind != Value::Kind::list) {
      if (value->kind != Value::Kind::number && value->kind != Value::Kind::text) {
        values_.wrong_type(*value, path, kListWanted);
        return {};
      }
      const auto one = length(*value, path, designed);
      return one ? std::optional(sum_up({*one})) : std::nullopt;
    }
    return list(*value, path, designed);
  }

  bool count_is_right(const Value& list, const std::string& path) {
    if (!list.list.empty() && list.list.size() <= kMostReadings) return true;
    values_.problem(path, list.list.empty()
                              ? "holds no reading; leave it out, or write one"
                              : "holds " + std::to_string(list.list.size()) +
                                    " readings; the most is " + std::to_string(kMostReadings));
    return false;
  }

  std::optional<Readings> list(const Value& value, const std::string& path, Length designed) {
    if (!count_is_right(value, path)) return {};
    std::vector<Length> lengths;
    for (std::size_t i = 0; i < value.list.size(); ++i)
      if (const auto read = length(value.list[i], child_path(path, i), designed))
        lengths.push_back(*read);
    if (lengths.size() != value.list.size()) return {};
    return sum_up(lengths);
  }

  /// Readings that the shop has summed up itself.
  std::optional<Readings> summary(const Value& value, const std::string& path, Length designed) {
    check_keys(value, path, {"mean", "spread", "count"});
    bool whole = true;
    for (const std::string_view key : {"mean", "spread", "count"}) {
      if (value.find(key) != nullptr || values_.was_meant(child_path(path, key))) continue;
      values_.problem(path, "lacks \"" + std::string(key) +
                                "\"; readings summed up have \"mean\", \"spread\" and \"count\"");
      whole = false;
    }
    const Value* mean = value.find("mean");
    const Value* spread = value.find("spread");
    const Value* count = value.find("count");
    const auto read_mean = mean ? length(*mean, child_path(path, "mean"), designed) : std::nullopt;
    const auto read_spread = spread ? spread_of(*spread, child_path(path, "spread")) : std::nullopt;
    const auto read_count =
        count ? values_.whole_number(*count, child_path(path, "count"), 2, kMostPieces)
              : std::nullopt;
    if (!whole || !read_mean || !read_spread || !read_count) return {};
    return Readings{static_cast<std::size_t>(*read_count), *read_mean, read_spread};
  }

  std::optional<Length> spread_of(const Value& value, const std::string& path) {
    if (value.text.starts_with('-')) {
      values_.problem(
          path, as_written(value) + " is negative; a spread is how far readings stray, at least 0");
      return {};
    }
    return values_.length(value, path, true);
  }

  void read_caliper_and_band(Length& caliper_error, FitBand& band) {
    if (const Value* value = measured_.find("caliper"))
      caliper_error = values_.length(*value, "/caliper", true).value_or(caliper_error);
    read_band(band);
  }

  void read_band(FitBand& band) {
    const Value* fit = object("fit", {"min", "max"});
    if (fit == nullptr) return;
    const Value* min = fit->find("min");
    const Value* max = fit->find("max");
    const auto read_min = min ? values_.length(*min, "/fit/min", true) : band.min;
    const auto read_max = max ? values_.length(*max, "/fit/max", true) : band.max;
    if (!read_min || !read_max) return;
    if (*read_min >= *read_max)
      values_.problem("/fit", "\"min\" " + in_words(*read_min, unit_) + " is not below \"max\" " +
                                  in_words(*read_max, unit_) + "; give the band some room");
    band = {*read_min, *read_max};
  }

  CheekReadings cheeks(std::string_view piece, std::string_view part, std::string_view across,
                       const CheekDesign& design) {
    const std::string piece_path = child_path("", piece);
    const std::string part_path = child_path("", part);
    const Value* stock = object(piece, {"thickness"});
    const Value* cut = object(part, {across, "from_face", "from_back", "depth"});
    const Length from_back = design.stock - design.from_face - design.across;
    CheekReadings read;
    read.stock = readings(stock, piece_path, "thickness", design.stock);
    read.across = readings(cut, part_path, across, design.across);
    read.from_face = readings(cut, part_path, "from_face", design.from_face);
    read.from_back = readings(cut, part_path, "from_back", from_back);
    read.depth = readings(cut, part_path, "depth", design.depth);
    return read;
  }

  JointReadings read_joint(const JointDesign& design) {
    const std::string_view slot = design.stub ? "groove" : "mortise";
    check_top_keys(
        {design.tenon_role, design.mortise_role, "tenon", slot, "caliper", "fit", "units", "note"},
        "the joint has a tenon");
    JointReadings read;
    read.band = band_.value_or(usual_band(unit_));
    read.caliper_error = usual_caliper_error(unit_);
    read.tenon = cheeks(design.tenon_role, "tenon", "thickness", design.tenon);
    read.mortise = cheeks(design.mortise_role, slot, "width", design.mortise);
    read_caliper_and_band(read.caliper_error, read.band);
    const bool any = measured_.find(design.tenon_role) || measured_.find(design.mortise_role) ||
                     measured_.find("tenon") || measured_.find(slot);
    if (!any) nothing_measured("\"tenon\": {\"thickness\": …}");
    for (const Contradiction& each : contradictions(read))
      contradict(each, each.of_tenon ? design.tenon_role : design.mortise_role,
                 each.of_tenon ? "tenon" : slot, read.caliper_error);
    return read;
  }

  void nothing_measured(const std::string& example) {
    values_.problem("", "nothing is measured; write at least " + example);
  }

  /// Unknown keys; one that belongs to the other sort of joint is told apart.
  void check_top_keys(const Words& known, std::string_view is) {
    const Words others = {"rail", "stile", "muntin", "tenon", "mortise", "groove", "panel"};
    for (const Entry& entry : measured_.entries) {
      if (std::find(known.begin(), known.end(), entry.key) != known.end()) continue;
      const std::string path = child_path("", entry.key);
      if (std::find(others.begin(), others.end(), entry.key) == others.end())
        values_.unknown_key(entry, path, known);
      else
        values_.problem(path,
                        "is not measured here, for " + std::string(is) + "; the keys are " +
                            quoted_list(known, "and"),
                        entry.offset);
    }
  }

  void contradict(const Contradiction& found, std::string_view piece, std::string_view part,
                  Length allowed) {
    std::string sum;
    const auto add = [&](const std::optional<Length>& size, const char* what) {
      if (size) sum += (sum.empty() ? "" : " + ") + in_words(*size, unit_) + " " + what;
    };
    add(found.from_face, "from the face side");
    add(found.across, part == "tenon" ? "tenon" : "width");
    add(found.from_back, "from the back");
    const Length out = found.sum() - found.stock;
    values_.problem(child_path("", part),
                    "the readings contradict each other: " + sum + " = " +
                        in_words(found.sum(), unit_) + ", but the " + std::string(piece) + " is " +
                        in_words(found.stock, unit_) + " thick, " +
                        in_words(out < Length() ? -out : out, unit_) + " " +
                        (out < Length() ? "more" : "less") + "; with calipers true to " +
                        in_words(allowed, unit_) + " one of them is wrong: measure again");
  }

  // ---- panels

  PanelReadings read_panel(const PanelDesign& design) {
    check_top_keys({"panel", "fit", "units", "note"}, "the joint is a panel's in its groove");
    PanelReadings read;
    read.play = usual_play(unit_);
    read_band(read.play);
    const Value* panel = object("panel", {"remaining", "cup", "hollow", "held", "removed"});
    const Value* remaining = panel ? panel->find("remaining") : nullptr;
    if (remaining != nullptr)
      read.remaining = points(*remaining, "/panel/remaining", design);
    else if (!values_.was_meant("/panel/remaining") && !values_.was_meant("/panel") &&
             (panel != nullptr || measured_.find("panel") == nullptr))
      nothing_measured("\"panel\": {\"remaining\": […]}");
    if (panel != nullptr) read_cup(*panel, read);
    return read;
  }

  void read_cup(const Value& panel, PanelReadings& read) {
    if (const Value* cup = panel.find("cup"))
      read.cup = values_.length(*cup, "/panel/cup", true).value_or(Length());
    if (const Value* removed = panel.find("removed"))
      read.removed = values_.length(*removed, "/panel/removed", true);
    if (const Value* held = panel.find("held"))
      read.pressed = values_.choice(*held, "/panel/held", {"free", "flat"}) == std::size_t{1};
    const Value* hollow = panel.find("hollow");
    if (hollow != nullptr) {
      const auto choice = values_.choice(*hollow, "/panel/hollow", {"first", "second"});
      read.hollow = choice == std::size_t{1} ? Face::second : Face::first;
    } else if (read.cup > Length() && !values_.was_meant("/panel/hollow")) {
      values_.problem("/panel",
                      "has a cup but no \"hollow\"; write \"first\" or \"second\", the "
                      "face that is hollow");
    }
  }

  std::vector<PanelPoint> points(const Value& value, const std::string& path,
                                 const PanelDesign& design) {
    std::vector<PanelPoint> points;
    if (value.kind != Value::Kind::list) {
      values_.wrong_type(value, path, "a list; write [9.1, {\"thickness\": 9, \"at\": 120}]");
      return points;
    }
    if (!count_is_right(value, path)) return points;
    for (std::size_t i = 0; i < value.list.size(); ++i)
      if (const auto read = point(value.list[i], child_path(path, i), design))
        points.push_back(*read);
    return points;
  }

  std::optional<PanelPoint> point(const Value& value, const std::string& path,
                                  const PanelDesign& design) {
    if (value.kind != Value::Kind::object) {
      const auto thickness = length(value, path, design.thickness);
      return thickness ? std::optional(PanelPoint{*thickness, {}}) : std::nullopt;
    }
    check_keys(value, path, {"thickness", "at"});
    const Value* thickness = value.find("thickness");
    if (thickness == nullptr) {
      if (!values_.was_meant(child_path(path, "thickness")))
        values_.problem(path, "lacks \"thickness\"; write {\"thickness\": …, \"at\": …}");
      return {};
    }
    const auto read = length(*thickness, child_path(path, "thickness"), design.thickness);
    if (!read) return {};
    PanelPoint found{*read, {}};
    if (const Value* at = value.find("at"))
      found.at = place_across(*at, child_path(path, "at"), design);
    return found;
  }

  std::optional<Length> place_across(const Value& value, const std::string& path,
                                     const PanelDesign& design) {
    const auto at = values_.length(value, path, true);
    if (at && *at > design.width)
      values_.problem(path, as_written(value) + " is beyond the panel, which is " +
                                in_words(design.width, unit_) + " wide across the grain");
    return at;
  }

  const Value& measured_;
  const TrialDesign& design_;
  Unit unit_;
  const std::optional<FitBand>& band_;
  ValueReader values_;
};

}  // namespace

std::optional<TrialDesign> trial_design(const Assembly& wood, std::size_t joint) {
  if (const auto tenon = joint_design(wood, joint)) return *tenon;
  if (const auto panel = panel_design(wood, joint)) return *panel;
  return {};
}

TrialReading read_trial(const Value& measured, const TrialDesign& design, Unit unit,
                        const std::optional<FitBand>& band) {
  return TrialReader(measured, design, unit, band).read();
}

}  // namespace haunch
