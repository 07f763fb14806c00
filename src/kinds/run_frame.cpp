#include "run_frame.h"

#include <fmt/core.h>

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "cabinet.h"
#include "cabinet_plan.h"
#include "ledger.h"
#include "run_spec.h"
#include "value_reader.h"

namespace haunch {
namespace {

using What = RunEntry::What;

constexpr Key kOfOneSide[] = {"face_frame.stile_width", "face_frame.scribe", "face_frame.over"};

/// Whether a key says how the whole of a frame is made, and not what is at one side of a case.
bool is_of_whole_frame(Key key) {
  return key.is_below("face_frame") &&
         std::none_of(std::begin(kOfOneSide), std::end(kOfOneSide),
                      [&](Key side) { return key == side || key.is_below(side); });
}

bool same(const KeyValue& a, const KeyValue& b) {
  return a.size == b.size && a.number == b.number && a.figure == b.figure && a.text == b.text;
}

std::string in_quotes(const std::string& text) {
  return "\"" + text + "\"";
}

/// A cabinet behind a frame.
struct FramedCase {
  std::size_t entry = 0;
  std::string name;
  CabinetSpec spec;
  CabinetPlan plan;  // as far as it goes while its share is not known
};

/// Gives the cases of one frame their shares.
class Sharing {
 public:
  Sharing(RunSpec& spec, std::string path, std::vector<Problem>& problems)
      : spec_(spec), path_(std::move(path)), problems_(problems), ledger_(spec.own, kRunRoot) {}

  /// Whether it could.
  bool share(const std::vector<std::pair<std::size_t, std::string>>& cases) {
    return take(cases) && take_one_saying() && stand_in_line() && settle_mullion() &&
           keep_nothing_to_scribe() && give();
  }

 private:
  bool refuse(std::string message) {
    problems_.push_back({path_, std::move(message), {}});
    return false;
  }
  bool take(const std::vector<std::pair<std::size_t, std::string>>& cases);
  bool take_one_saying();
  bool stand_in_line();
  bool stands_with_first(const FramedCase& its);
  bool settle_mullion();
  bool keep_nothing_to_scribe();
  bool give();
  FrameShare share_of(std::size_t number) const;
  Length between() const {
    return ledger_.spec.size("run.between").value_or(ledger_.pick(3'000, 1, 8));
  }

  RunSpec& spec_;
  const std::string path_;
  std::vector<Problem>& problems_;
  const Ledger ledger_;
  std::vector<FramedCase> cases_;
  Length mullion_;
};

bool Sharing::take(const std::vector<std::pair<std::size_t, std::string>>& cases) {
  for (const auto& [entry, name] : cases) {
    const CabinetSpec* its = spec_of_cabinet(spec_.order[entry].taken->job());
    if (its == nullptr)
      return refuse(in_quotes(name) +
                    " is a twin, by \"mirror\"; behind a frame it is written as it stands: give it "
                    "a layout of its own, left and right changed over");
    if (its->own.said_by("face_frame") != SaidBy::spec)
      return refuse(in_quotes(name) +
                    " has no face frame; write \"face_frame\": {} in it, or take it out here");
    cases_.push_back({entry, name, *its, {}});
  }
  return true;
}

/// What one of the cases says of the frame goes for the whole of it.
bool Sharing::take_one_saying() {
  std::map<Key, std::pair<KeyValue, std::string>> said;
  for (const FramedCase& its : cases_)
    for (const auto& [key, value] : its.spec.own.all()) {
      if (!is_of_whole_frame(key) || !value.by_spec()) continue;
      const auto [known, is_new] = said.emplace(key, std::pair(value, its.name));
      if (!is_new && !same(known->second.first, value))
        return refuse(
            fmt::format("{} and {} do not say the same of \"{}\", and the frame is one; "
                        "write it alike, or in one of them",
                        in_quotes(known->second.second), in_quotes(its.name), key.path()));
    }
  for (FramedCase& its : cases_)
    for (const auto& [key, value] : said)
      its.spec.own.edit(key) = value.first;
  return true;
}

bool Sharing::stands_with_first(const FramedCase& its) {
  const FramedCase& first = cases_.front();
  const auto differ = [&](std::string_view what, Length a, Length b) {
    if (a == b) return false;
    refuse(fmt::format(
        "{} has {} {}, {} {}; one frame lies on cases that are alike in it: make "
        "them so, or give each a frame of its own",
        in_quotes(first.name), what, ledger_.say(a), in_quotes(its.name), ledger_.say(b)));
    return true;
  };
  const Spec& one = first.spec.own;
  const Spec& other = its.spec.own;
  if (first.plan.meets != its.plan.meets)
    return refuse(
        fmt::format("fronts of {} are {}, those of {} {}; before one frame they meet it "
                    "in one way: write \"fronts\": {{\"meets\": …}} alike",
                    in_quotes(first.name), word_of(first.plan.meets), in_quotes(its.name),
                    word_of(its.plan.meets)));
  if (differ("a height of", *one.size("size.height"), *other.size("size.height")) ||
      differ("a toe of", first.plan.carcase.toe.height, its.plan.carcase.toe.height) ||
      differ("a depth of", *one.size("size.depth"), *other.size("size.depth")) ||
      differ("gaps round its fronts of", first.plan.gap, its.plan.gap))
    return false;
  const OfRoles<std::string> woods = species_of(one), its_woods = species_of(other);
  for (const Role role : {Role::stile, Role::rail, Role::mullion})
    if (woods.of(role) != its_woods.of(role))
      return refuse(
          fmt::format("{} and {} are not of the same wood; a frame is of one: write "
                      "\"species\" alike",
                      in_quotes(first.name), in_quotes(its.name)));
  return true;
}

bool Sharing::stand_in_line() {
  for (FramedCase& its : cases_) {
    const Length any = ledger_.pick(20'000, 3, 4);
    its.spec.share = FrameShare{SharedSide{any, {}}, SharedSide{any, {}}, any};
    its.plan = plan_cabinet(its.spec).plan;
  }
  return std::all_of(cases_.begin() + 1, cases_.end(),
                     [&](const FramedCase& its) { return stands_with_first(its); });
}

/// It covers the sides of two cases, and the packing between them.
bool Sharing::settle_mullion() {
  Length side;
  for (const FramedCase& its : cases_)
    side = std::max(side, its.plan.carcase.side_thickness());
  const Length joint = side * 2 + between();
  const KeyValue& stated = cases_.front().spec.own["face_frame.mullion_width"];
  mullion_ = stated.by_spec() ? *stated.size : std::max(joint, stated.size.value_or(joint));
  if (mullion_ >= joint) return true;
  return refuse(
      fmt::format("mullions of {} do not cover the sides of two cases and the packing "
                  "between them, {} in all; make \"mullion_width\" so wide at least, or "
                  "leave it out",
                  ledger_.say(mullion_), ledger_.say(joint)));
}

bool Sharing::keep_nothing_to_scribe() {
  for (std::size_t i = 0; i < cases_.size(); ++i)
    for (const bool right : {false, true}) {
      if (i == (right ? cases_.size() - 1 : 0)) continue;
      const SizeKey key =
          right ? SizeKey("face_frame.scribe.right") : SizeKey("face_frame.scribe.left");
      const KeyValue& its = cases_[i].spec.own[key];
      if (!its.by_spec() || its.size.value_or(Length()) == Length()) continue;
      return refuse(
          fmt::format("{} leaves {} to scribe at its {}, where the frame goes on over "
                      "{}; say \"scribe\" of its other side alone",
                      in_quotes(cases_[i].name), ledger_.say(*its.size), right ? "right" : "left",
                      in_quotes(cases_[right ? i + 1 : i - 1].name)));
    }
  return true;
}

/// An odd step of a mullion or of the packing is the right case's.
FrameShare Sharing::share_of(std::size_t number) const {
  FrameShare share{{}, {}, mullion_};
  const Length half = floor_half(mullion_), over = floor_half(between());
  if (number > 0) share.left = SharedSide{mullion_ - half, between() - over};
  if (number + 1 < cases_.size()) share.right = SharedSide{half, over};
  return share;
}

bool Sharing::give() {
  for (std::size_t i = 0; i < cases_.size(); ++i) {
    FramedCase& its = cases_[i];
    its.spec.share = share_of(i);
    its.spec.own.set("face_frame.mullion_width", mullion_);
    RunEntry& entry = spec_.order[its.entry];
    entry.taken = std::make_shared<TakenCabinet>(with_spec(entry.taken->job(), std::move(its.spec)),
                                                 entry.taken->set_lines);
  }
  return true;
}

// ---- the cases that a frame names

std::string_view what_stands(const RunEntry& entry) {
  switch (entry.what) {
    case What::cabinet:
      return "another case";
    case What::filler:
      return "a filler";
    case What::gap:
      return "a gap";
    case What::end_panel:
      return "an end panel";
  }
  return {};
}

/// Finds what frames name in the order; each case stands behind one frame at most.
class NamedInOrder {
 public:
  NamedInOrder(const RunSpec& spec, std::vector<Problem>& problems)
      : spec_(spec), problems_(problems) {
    std::map<std::string, int> times;
    for (std::size_t i = 0; i < spec.order.size(); ++i) {
      const RunEntry& entry = spec.order[i];
      if (entry.what != What::cabinet) continue;
      const int time = ++times[entry.id];
      places_.emplace(entry.id + (time == 1 ? "" : "-" + std::to_string(time)), i);
    }
  }

  /// Empty where some of it cannot be.
  std::vector<std::pair<std::size_t, std::string>> cases_of(const KeyValues& frame,
                                                            const std::string& path) {
    std::vector<std::pair<std::size_t, std::string>> cases;
    const std::vector<KeyValues>& names = frame["run.frames[]"].items;
    for (std::size_t i = 0; i < names.size(); ++i) {
      const std::string& name = names[i].text("run.frames[][]");
      if (!find(name, child_path(path, i), cases)) return {};
    }
    if (cases.size() > 1) return cases;
    refuse(path,
           "names one case, and a frame before one is its own; take it out, or name the "
           "next case too");
    return {};
  }

 private:
  bool refuse(const std::string& path, std::string message) {
    problems_.push_back({path, std::move(message), {}});
    return false;
  }

  bool find(const std::string& name, const std::string& path,
            std::vector<std::pair<std::size_t, std::string>>& cases) {
    const auto its = places_.find(name);
    if (its == places_.end()) return refuse(path, unknown(name));
    if (!cases.empty() && !goes_on(cases.back(), name, its->second, path)) return false;
    if (!used_.insert(its->second).second)
      return refuse(path, in_quotes(name) + " is named in two frames; keep one of them");
    cases.emplace_back(its->second, name);
    return spec_.order[its->second].taken != nullptr;  // else it was refused there
  }

  bool goes_on(const std::pair<std::size_t, std::string>& before, const std::string& name,
               std::size_t place, const std::string& path) {
    if (place == before.first + 1) return true;
    if (place <= before.first)
      return refuse(path, in_quotes(name) + " does not stand at the right of " +
                              in_quotes(before.second) +
                              "; name each case once, from the left as in \"order\"");
    return refuse(path, fmt::format("between {} and {} stands {}; a frame spans cases side by "
                                    "side: move it, or write a frame for each side of it",
                                    in_quotes(before.second), in_quotes(name),
                                    what_stands(spec_.order[before.first + 1])));
  }

  std::string unknown(const std::string& name) const {
    std::vector<std::string_view> names;
    for (const auto& [known, place] : places_)
      names.push_back(known);
    const std::string_view nearest = nearest_word(name, names);
    return "no cabinet in \"order\" is called " + in_quotes(name) +
           (nearest.empty() ? "; name one that stands there"
                            : "; did you mean " + in_quotes(std::string(nearest)) + "?");
  }

  const RunSpec& spec_;
  std::vector<Problem>& problems_;
  std::map<std::string, std::size_t> places_;
  std::set<std::size_t> used_;
};

}  // namespace

void share_frames(RunSpec& spec, std::vector<Problem>& problems) {
  NamedInOrder named(spec, problems);
  const std::vector<KeyValues> frames = spec.own["run.frames"].items;
  for (std::size_t i = 0; i < frames.size(); ++i) {
    const std::string path = child_path("/frames", i);
    const auto cases = named.cases_of(frames[i], path);
    if (cases.empty() || !Sharing(spec, path, problems).share(cases)) continue;
    RunFrame frame{fmt::format("frame {}", i + 1), {}};
    for (const auto& [entry, name] : cases)
      frame.entries.push_back(entry);
    spec.frames.push_back(std::move(frame));
  }
}

bool in_one_frame(const RunSpec& spec, std::size_t left, std::size_t right) {
  const auto has = [](const RunFrame& frame, std::size_t entry) {
    return std::find(frame.entries.begin(), frame.entries.end(), entry) != frame.entries.end();
  };
  return std::any_of(spec.frames.begin(), spec.frames.end(),
                     [&](const RunFrame& frame) { return has(frame, left) && has(frame, right); });
}

}  // namespace haunch
