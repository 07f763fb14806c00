#include "tolerance_spec.h"

#include <fmt/core.h>

#include <algorithm>
#include <cstdint>
#include <string>

namespace haunch {
namespace {

constexpr bool kFromZero = true;
constexpr int kMostDeviations = 6;
constexpr int kMostSettingShare = 90;
constexpr int kMostWantedShare = 99;

const std::vector<std::string_view> kWorkWords = {"hand", "router", "nc"};
const std::vector<std::string_view> kDimensionWords = {
    "tenon_thickness", "mortise_width", "groove_width", "panel_tongue",
    "shoulder_length", "mortise_place", "piece_width"};
constexpr std::string_view kDeviations = "deviations";
constexpr std::string_view kOneSetting = "one_setting";
constexpr std::string_view kSettingShare = "setting_share";
const std::vector<std::string_view> kFitWords = {"min", "max", "share"};

// ---- reading

std::vector<std::string_view> tolerance_words() {
  std::vector<std::string_view> words = kDimensionWords;
  words.insert(words.end(), {kDeviations, kOneSetting, kSettingShare});
  return words;
}

std::string object_of(const std::vector<std::string_view>& keys) {
  return "an object; the keys in it are " + quoted_list(keys, "and");
}

std::optional<std::vector<Dimension>> read_one_setting(ValueReader& read, const Value& value,
                                                       const std::string& path) {
  if (value.kind != Value::Kind::list) {
    read.wrong_type(value, path,
                    "a list; write what is cut at one setting, such as [\"tenon_thickness\"]");
    return {};
  }
  std::vector<Dimension> dimensions;
  for (std::size_t i = 0; i < value.list.size(); ++i) {
    const std::string its_path = child_path(path, i);
    const auto word = read.choice(value.list[i], its_path, kDimensionWords);
    if (!word) continue;
    const auto dimension = static_cast<Dimension>(*word);
    if (std::find(dimensions.begin(), dimensions.end(), dimension) != dimensions.end())
      read.problem(its_path, as_written(value.list[i]) + " stands here twice; keep one");
    dimensions.push_back(dimension);
  }
  return dimensions;
}

void read_tolerance_entry(ValueReader& read, const Entry& entry, const std::string& path,
                          ToleranceSpec& spec) {
  const auto word = std::find(kDimensionWords.begin(), kDimensionWords.end(), entry.key);
  if (word != kDimensionWords.end())
    spec.plus_minus[static_cast<std::size_t>(word - kDimensionWords.begin())] =
        read.length(entry.value, path, kFromZero);
  else if (entry.key == kDeviations)
    spec.deviations = read.whole_number(entry.value, path, 1, kMostDeviations);
  else if (entry.key == kSettingShare)
    spec.setting_share = read.whole_number(entry.value, path, 0, kMostSettingShare);
  else if (entry.key == kOneSetting)
    spec.one_setting = read_one_setting(read, entry.value, path);
  else
    read.unknown_key(entry, path, tolerance_words());
}

void read_fit_entry(ValueReader& read, const Entry& entry, const std::string& path,
                    ToleranceSpec& spec) {
  if (entry.key == "min")
    spec.fit_min = read.length(entry.value, path, kFromZero);
  else if (entry.key == "max")
    spec.fit_max = read.length(entry.value, path, kFromZero);
  else if (entry.key == "share")
    spec.wanted_share = read.whole_number(entry.value, path, 1, kMostWantedShare);
  else
    read.unknown_key(entry, path, kFitWords);
}

// ---- what is usual

/// The plus/minus of each dimension, in hundredths of a millimetre and thousandths of an inch.
/// Router and nc from what is usually said of the machines (trade background, not of a standard):
/// routing by numerical control repeats within 0.1 mm; a tenoner within 0.1 to 0.2, of which the
/// larger is taken; a hand-held router within 0.2; a table saw within 0.25. For hand work, before
/// anything is pared, no figure was found in print: the coarsest of these is taken.
struct Usual {
  std::int64_t mm_hundredths, inch_thousandths;
};
constexpr Usual kSaw{25, 10}, kRouter{20, 8}, kNumericalControl{10, 4};

Usual usual_of(Work work, Dimension dimension) {
  if (work == Work::nc) return kNumericalControl;
  const bool sawn = dimension == Dimension::shoulder_length || dimension == Dimension::piece_width;
  return work == Work::hand || sawn ? kSaw : kRouter;
}

Length length_of(Usual usual, Unit unit) {
  return unit == Unit::mm ? Length::from_mm_thousandths(usual.mm_hundredths * 10)
                          : Length::from_inch_parts(usual.inch_thousandths, 1000);
}

/// By machine everything is cut at one setting. By hand, what a tool's own width makes: the
/// chisel's the mortises, the plough iron's the grooves.
std::vector<Dimension> usual_settings(Work work) {
  if (work == Work::hand) return {Dimension::mortise_width, Dimension::groove_width};
  std::vector<Dimension> all;
  for (std::size_t i = 0; i < kDimensions; ++i)
    all.push_back(static_cast<Dimension>(i));
  return all;
}

/// In teaching-shop tests joints with more slack failed; it is also where the checks caution.
Length usual_loosest(Unit unit) {
  return unit == Unit::mm ? Length::from_mm_thousandths(250) : Length::from_inch_parts(1, 100);
}

std::string words_of(const std::vector<Dimension>& dimensions) {
  std::string text;
  for (const Dimension dimension : dimensions)
    text += (text.empty() ? "" : ", ") + std::string(dimension_word(dimension));
  return text.empty() ? "nothing" : text;
}

// ---- settling

class Settler {
 public:
  Settler(const ToleranceSpec& spec, const ToleranceSpec& shop, Unit unit)
      : spec_(spec), shop_(shop), unit_(unit) {}

  SettledTolerances settle() {
    Tolerances& its = settled_.tolerances;
    its.work =
        choose(spec_.work, shop_.work, Work::router, "work", "for want of a word", work_word);
    settle_each();
    settle_settings();
    const auto number = [](int value) { return std::to_string(value); };
    its.deviations = choose(spec_.deviations, shop_.deviations, its.deviations,
                            "tolerance.deviations", "a plus/minus that 99.7 % keep", number);
    its.setting_share = choose(spec_.setting_share, shop_.setting_share, its.setting_share,
                               "tolerance.setting_share",
                               "half of the spread, in percent, is the setting's", number);
    settle_band();
    its.wanted_share = choose(spec_.wanted_share, shop_.wanted_share, its.wanted_share, "fit.share",
                              "percent; one leaf in twenty may want a plane", number);
    return std::move(settled_);
  }

 private:
  /// The value to take, noted as assumed, in the words of `say`, where the spec does not give it.
  template <typename Value, typename Say>
  Value choose(const std::optional<Value>& spec, const std::optional<Value>& shop, Value usual,
               std::string_view key, std::string_view why, Say say) {
    Value value = spec ? *spec : shop.value_or(usual);
    if (!spec) assume(key, std::string(say(value)), shop ? "the shop file" : why);
    return value;
  }

  Length choose_length(const std::optional<Length>& spec, const std::optional<Length>& shop,
                       Length usual, std::string_view key, std::string_view why) {
    const Length value = spec ? *spec : shop.value_or(usual);
    if (!spec) assume(key, value, shop ? "the shop file" : why);
    return value;
  }

  void assume(std::string_view key, decltype(Assumed::value) value, std::string_view why) {
    settled_.assumed.push_back({std::string(key), std::move(value), std::string(why)});
  }

  std::string usual_for_work() const {
    switch (settled_.tolerances.work) {
      case Work::hand:
        return "for hand work before paring, as by saw";
      case Work::router:
        return "usual for work by router and saw";
      case Work::nc:
        return "usual for numerically controlled work";
    }
    return {};
  }

  void settle_each() {
    Tolerances& its = settled_.tolerances;
    for (std::size_t i = 0; i < kDimensions; ++i)
      its.each[i].plus_minus =
          choose_length(spec_.plus_minus[i], shop_.plus_minus[i],
                        length_of(usual_of(its.work, static_cast<Dimension>(i)), unit_),
                        "tolerance." + std::string(kDimensionWords[i]), usual_for_work());
  }

  void settle_settings() {
    Tolerances& its = settled_.tolerances;
    const std::string_view why =
        its.work == Work::hand ? "made by a tool's own width" : "usual for work by machine";
    for (const Dimension dimension :
         choose(spec_.one_setting, shop_.one_setting, usual_settings(its.work),
                "tolerance.one_setting", why, words_of))
      its.each[static_cast<std::size_t>(dimension)].one_setting = true;
  }

  void settle_band() {
    FitBand& fit = settled_.tolerances.fit;
    fit.min = choose_length(spec_.fit_min, shop_.fit_min, Length(), "fit.min",
                            "a tenon that fills its mortise still goes home");
    fit.max = choose_length(spec_.fit_max, shop_.fit_max, usual_loosest(unit_), "fit.max",
                            "looser joints have failed in teaching-shop tests");
    if (fit.min <= fit.max) return;
    const bool at_min = spec_.fit_min || !spec_.fit_max;
    settled_.problems.push_back(
        {spec_.fit_min || spec_.fit_max ? (at_min ? "/fit/min" : "/fit/max") : "/fit",
         at_min ? fmt::format("the tightest fit, {}, is over the loosest, {}{}; make it less, or "
                              "\"max\" more",
                              in_words(fit.min, unit_), in_words(fit.max, unit_),
                              source_of(spec_.fit_max, shop_.fit_max))
                : fmt::format("the loosest fit, {}, is under the tightest, {}{}; make it more, or "
                              "\"min\" less",
                              in_words(fit.max, unit_), in_words(fit.min, unit_),
                              source_of(spec_.fit_min, shop_.fit_min)),
         {}});
  }

  static std::string_view source_of(const std::optional<Length>& spec,
                                    const std::optional<Length>& shop) {
    return spec ? "" : shop ? " (the shop file's)" : " (the usual one)";
  }

  const ToleranceSpec& spec_;
  const ToleranceSpec& shop_;
  Unit unit_;
  SettledTolerances settled_;
};

}  // namespace

std::string_view work_word(Work work) {
  return kWorkWords[static_cast<std::size_t>(work)];
}

std::string_view dimension_word(Dimension dimension) {
  return kDimensionWords[static_cast<std::size_t>(dimension)];
}

ToleranceSpec read_tolerance_spec(ValueReader& read, const Value& document) {
  ToleranceSpec spec;
  if (const Value* work = document.find("work"); work != nullptr)
    if (const auto word = read.choice(*work, "/work", kWorkWords))
      spec.work = static_cast<Work>(*word);
  if (const Value* tolerance = document.find("tolerance");
      tolerance != nullptr &&
      read.is_object(*tolerance, "/tolerance", object_of(tolerance_words())))
    for (const Entry& entry : tolerance->entries)
      read_tolerance_entry(read, entry, child_path("/tolerance", entry.key), spec);
  if (const Value* fit = document.find("fit");
      fit != nullptr && read.is_object(*fit, "/fit", object_of(kFitWords)))
    for (const Entry& entry : fit->entries)
      read_fit_entry(read, entry, child_path("/fit", entry.key), spec);
  return spec;
}

SettledTolerances settle_tolerances(const ToleranceSpec& spec, const ToleranceSpec* shop,
                                    Unit unit) {
  static const ToleranceSpec kNoShop;
  return Settler(spec, shop != nullptr ? *shop : kNoShop, unit).settle();
}

}  // namespace haunch
