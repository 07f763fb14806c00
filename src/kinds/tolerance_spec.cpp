#include "tolerance_spec.h"

#include <fmt/core.h>

#include <cstdint>
#include <string>
#include <utility>

#include "ledger.h"
#include "usual_size.h"

namespace haunch {
namespace {

constexpr SizeKey kDimensionKeys[] = {"tolerance.tenon_thickness", "tolerance.mortise_width",
                                      "tolerance.groove_width",    "tolerance.panel_tongue",
                                      "tolerance.shoulder_length", "tolerance.mortise_place",
                                      "tolerance.piece_width"};
static_assert(std::size(kDimensionKeys) == kDimensions);

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
  return usual_size(unit, usual.mm_hundredths * 10, usual.inch_thousandths, 1000);
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
  return usual_size(unit, 250, 1, 100);
}

std::string words_of(const std::vector<Dimension>& dimensions) {
  std::string text;
  for (const Dimension dimension : dimensions)
    text += (text.empty() ? "" : ", ") + std::string(word_of(dimension));
  return text.empty() ? "nothing" : text;
}

// ---- settling

/// As any other sizes, but that no remedy changes them.
class Settler {
 public:
  explicit Settler(const Spec& spec) : ledger_(spec) {}

  SettledTolerances settle() {
    its_.work = ledger_.choose<Work>("work", Work::router, "for want of a word");
    settle_each();
    settle_settings();
    its_.deviations =
        take_count("tolerance.deviations", its_.deviations, "a plus/minus that 99.7 % keep");
    its_.setting_share = take_count("tolerance.setting_share", its_.setting_share,
                                    "half of the spread, in percent, is the setting's");
    settle_band();
    its_.wanted_share =
        take_count("fit.share", its_.wanted_share, "percent; one leaf in twenty may want a plane");
    return {its_, std::move(ledger_.assumed), std::move(ledger_.problems)};
  }

 private:
  int take_count(Key key, int usual, std::string_view why) {
    const int count = ledger_.spec.count(key).value_or(usual);
    note(key, std::to_string(count), why);
    return count;
  }

  /// Notes what the spec does not say itself.
  void note(Key key, std::string value, std::string_view why) {
    const KeyValue& its = ledger_.stated(key);
    if (its.by_shop)
      ledger_.note_shop(key, std::move(value));
    else if (!its.stated)
      ledger_.assume(key, std::move(value), why);
  }

  std::string usual_for_work() const {
    switch (its_.work) {
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
    for (std::size_t i = 0; i < kDimensions; ++i)
      its_.each[i].plus_minus =
          ledger_.settle(kDimensionKeys[i],
                         length_of(usual_of(its_.work, static_cast<Dimension>(i)), ledger_.unit),
                         usual_for_work());
  }

  void settle_settings() {
    const bool stated = ledger_.stated("tolerance.one_setting").stated;
    const std::vector<Dimension> settings =
        stated ? ledger_.spec.one_setting : usual_settings(its_.work);
    note("tolerance.one_setting", words_of(settings),
         its_.work == Work::hand ? "made by a tool's own width" : "usual for work by machine");
    for (const Dimension dimension : settings)
      its_.each[static_cast<std::size_t>(dimension)].one_setting = true;
  }

  void settle_band() {
    FitBand& fit = its_.fit;
    fit.min = ledger_.settle("fit.min", Length(), "a tenon that fills its mortise still goes home");
    fit.max = ledger_.settle("fit.max", usual_loosest(ledger_.unit),
                             "looser joints have failed in teaching-shop tests");
    if (fit.min <= fit.max) return;
    const bool min_is_own = ledger_.stated("fit.min").by_spec();
    const bool max_is_own = ledger_.stated("fit.max").by_spec();
    const bool at_min = min_is_own || !max_is_own;
    const std::string words =
        at_min ? fmt::format(
                     "the tightest fit, {}, is over the loosest, {}{}; make it less, or "
                     "\"max\" more",
                     ledger_.say(fit.min), ledger_.say(fit.max), whose("fit.max"))
               : fmt::format(
                     "the loosest fit, {}, is under the tightest, {}{}; make it more, or "
                     "\"min\" less",
                     ledger_.say(fit.max), ledger_.say(fit.min), whose("fit.min"));
    ledger_.problems.push_back(
        {min_is_own || max_is_own ? (at_min ? "/fit/min" : "/fit/max") : "/fit", words, {}});
  }

  std::string_view whose(Key key) const {
    const KeyValue& its = ledger_.stated(key);
    return its.by_spec() ? "" : its.by_shop ? " (the shop file's)" : " (the usual one)";
  }

  Ledger ledger_;
  Tolerances its_;
};

}  // namespace

bool speaks_of_tolerances(const Spec& spec) {
  return spec.speaks_of("work") || spec.speaks_of("tolerance") || spec.speaks_of("fit");
}

SettledTolerances settle_tolerances(const Spec& spec) {
  return Settler(spec).settle();
}

void take_tolerances(Job& job, const Spec& leaf, std::vector<Problem>& problems) {
  if (!speaks_of_tolerances(leaf)) return;
  SettledTolerances settled = settle_tolerances(leaf);
  add(problems, std::move(settled.problems));
  job.tolerances = settled.tolerances;
  job.assumed_tolerances = std::move(settled.assumed);
}

}  // namespace haunch
