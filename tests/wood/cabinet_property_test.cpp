// Five thousand random cabinets, face frames and drawers (times HAUNCH_TEST_EFFORT), each judged by
// a second opinion on its wood, at rest and moved. HAUNCH_TEST_SEED=n runs the one with that seed
// again.

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "cabinet_oracle.h"
#include "catch.h"
#include "checks.h"
#include "json_reader.h"
#include "kind.h"
#include "property_runs.h"
#include "random_cabinet.h"
#include "solid.h"

namespace haunch::test {
namespace {

struct Made {
  std::unique_ptr<Job> job;
  Worked worked;
  std::vector<Problem> problems;
  Value spec;
};

Made make(const std::string& json) {
  Made made;
  Reading reading = read_json(json);
  made.spec = std::move(*reading.value);
  JobReading item = read_job(made.spec, nullptr, "job");
  made.problems = std::move(item.problems);
  made.job = std::move(item.job);
  if (!made.job) return made;
  made.worked = made.job->work();
  made.problems = made.worked.problems;
  return made;
}

/// Whether a path leads to something that the spec says.
bool is_said(const Value& spec, std::string_view path) {
  const Value* at = &spec;
  while (!path.empty()) {
    path.remove_prefix(1);
    const std::size_t end = path.find('/');
    const std::string name(path.substr(0, end));
    path = end == std::string_view::npos ? std::string_view() : path.substr(end);
    if (at->kind == Value::Kind::list) {
      const std::size_t number = std::stoul(name);
      if (number >= at->list.size()) return false;
      at = &at->list[number];
    } else {
      at = at->find(name);
      if (at == nullptr) return false;
    }
  }
  return true;
}

void add_lines(std::string& text, const std::vector<std::string>& lines) {
  for (const std::string& line : lines)
    text += line + "\n";
}

// ---- what can be told by counting

int pieces_with(const Assembly& wood, Role role) {
  return static_cast<int>(std::count_if(wood.pieces.begin(), wood.pieces.end(),
                                        [&](const Piece& piece) { return piece.role == role; }));
}

int groups_of(const Assembly& wood, GroupKind kind) {
  return static_cast<int>(std::count_if(wood.groups.begin(), wood.groups.end(),
                                        [&](const Group& group) { return group.kind == kind; }));
}

void count_parts(const CabinetDraw& draw, const Assembly& wood, std::string& wrong) {
  const auto expect = [&](const char* what, int is, int wanted) {
    if (is != wanted) wrong += fmt::format("{} {} where the layout has {}\n", is, what, wanted);
  };
  if (draw.kind == "drawer") return;
  expect("leaves", groups_of(wood, GroupKind::leaf), draw.doors);
  expect("drawers", groups_of(wood, GroupKind::drawer), draw.drawers);
  expect("plain fronts", groups_of(wood, GroupKind::front), draw.plain_fronts);
  const auto loose = std::count_if(wood.pieces.begin(), wood.pieces.end(), [](const Piece& piece) {
    return piece.loose && piece.role == Role::shelf;
  });
  expect("loose shelves", static_cast<int>(loose), draw.loose_shelves);
  if (draw.kind == "cabinet") expect("sides", pieces_with(wood, Role::side), 2);
}

// ---- chains

/// What the outside of the whole has at the ends of a chain.
bool is_outside(const std::string& link) {
  static const std::set<std::string> kOutside{
      "left side", "left stile", "right side",  "right stile",  "top", "top rail",
      "top rails", "bottom",     "bottom rail", "bottom rails", "toe"};
  return kOutside.count(link) > 0;
}

/// What a chain leads through within the outside of the whole.
Length within_outside(const Chain& chain) {
  Length length;
  for (const Chain::Link& link : chain.links)
    if (!is_outside(link.what)) length += link.length;
  return length;
}

/// How long the part is that a chain leads through ("column 1, row 2, across"), as the chain tells
/// that it is a part of; nothing where it goes from side to side.
std::optional<Length> length_of_part(const std::vector<Chain>& chains, const std::string& what) {
  const bool across = what.find("across") != std::string::npos;
  std::string part = what.substr(0, what.rfind(", "));
  const std::string own = across ? "column " : "row ";
  const std::size_t at = part.rfind(own);
  if (at == std::string::npos) return {};
  const std::string link = part.substr(at, part.find(',', at) - at);
  const std::string before = at == 0 ? "" : part.substr(0, at);
  const std::string in = before.empty() ? across ? "across, from the left" : "down, from the top"
                                        : before + (across ? "across" : "down");
  for (const Chain& chain : chains)
    if (chain.what == in)
      for (const Chain::Link& it : chain.links)
        if (it.what == link) return it.length;
  return Length();
}

Length given(const Job& job, std::string_view key) {
  for (const Given& it : job.given)
    if (it.key == key) return it.length;
  return {};
}

/// What of a drawer lies before its opening.
Length before_opening(const Assembly& drawer) {
  const Fit* fit = fit_in_opening(drawer);
  if (fit == nullptr || fit->meets == Meets::inset) return {};
  if (fit->meets == Meets::rebate) return fit->lip;
  const auto front =
      std::find_if(drawer.pieces.begin(), drawer.pieces.end(),
                   [](const Piece& piece) { return piece.role == Role::drawer_front; });
  return front->blank[2];
}

/// The sizes that chains go through from end to end.
std::vector<Length> whole_sizes(const Made& made) {
  if (made.job->kind != "drawer") {
    const auto& size = made.worked.assembly.size;
    return {size.begin(), size.end()};
  }
  return {given(*made.job, "opening.width"), given(*made.job, "opening.height"),
          given(*made.job, "opening.depth") + before_opening(made.worked.assembly)};
}

/// A chain from side to side is as long as the size; one of a part as what it is a part of.
void add_up(const Made& made, std::string& wrong) {
  const std::vector<Length> sizes = whole_sizes(made);
  for (const Chain& chain : made.worked.chains) {
    const auto part = length_of_part(made.worked.chains, chain.what);
    const bool fits = part ? within_outside(chain) == *part
                           : std::find(sizes.begin(), sizes.end(), chain.total()) != sizes.end();
    if (!fits)
      wrong +=
          fmt::format("chain {}: {} in all, {} within\n", chain.what,
                      decimal(chain.total(), Unit::mm), decimal(within_outside(chain), Unit::mm));
  }
}

// ---- blanks less cuts

void rebuild(const Assembly& wood, std::string& wrong) {
  const std::vector<Solid> solids = solids_of(wood);
  for (std::size_t piece = 0; piece < solids.size(); ++piece) {
    const Piece& its = wood.pieces[piece];
    const bool fitted = std::any_of(its.features.begin(), its.features.end(),
                                    [](const Feature& it) { return it.fitting.has_value(); });
    if (fitted) continue;
    const double counted = square_volume(its);
    if (counted < 0) continue;
    const double steps = static_cast<double>(Length::kStepsPerMm);
    const double mm3 = counted / (steps * steps * steps);
    if (std::abs(mm3 - volume_of(solids[piece])) > 0.001)
      wrong += fmt::format("{}: {} cubic mm where blank less cuts leaves {}\n", its.name,
                           volume_of(solids[piece]), mm3);
  }
}

// ---- what the program's checks say of it

/// Checks of what was designed: whatever the spec, the wood is as it was set out.
bool is_of_design(std::string_view check) {
  for (const std::string_view start :
       {"front-gap", "front-lap", "slide-", "pins-", "drawer-", "swing-free", "fouling", "overall-",
        "frame-", "goes-in", "housing-", "housed-"})
    if (check.starts_with(start)) return true;
  return false;
}

void check_design(const Made& made, std::string& wrong) {
  for (const Finding& finding : check_built(made.worked.assembly, *made.job))
    if (finding.status == Status::fail && is_of_design(finding.rule->check)) {
      wrong +=
          fmt::format("{} fails: {} of", finding.rule->check, decimal(finding.value, Unit::mm));
      for (const std::size_t part : finding.parts)
        wrong += " " + made.worked.assembly.pieces[part].name + ",";
      wrong += "\n";
    }
}

/// What comes up in it, so that the property is known to have met it.
std::set<std::string> met_in(const Assembly& wood, const CabinetDraw& draw) {
  std::set<std::string> met;
  if (draw.unit == Unit::inch) met.insert("inch");
  for (const Joint& joint : wood.joints)
    met.emplace(word_of(joint.kind));
  for (const Piece& piece : wood.pieces) {
    met.emplace(word_of(piece.role));
    if (piece.loose) met.insert("loose");
    for (const Feature& feature : piece.features)
      met.emplace(word_of(feature.kind));
  }
  for (const Fit& fit : wood.fits) {
    if (fit.stands != StandsIn::front) continue;
    met.insert(fit.meets == Meets::inset ? "inset" : "overlay");
    if (fit.swing() != nullptr) met.insert("swings");
    if (std::holds_alternative<Slide>(fit.moves)) met.insert("slides");
  }
  return met;
}

/// Of shelves in their room, where nothing is said.
const std::map<Unit, Length> kShelfPlay{{Unit::mm, Length::from_mm(3)},
                                        {Unit::inch, Length::from_inch_parts(1, 8)}};

/// Checks take longer than all the rest: they are asked of one in so many.
constexpr std::uint64_t kCheckedEvery = 10;

TEST_CASE("A cabinet that can be worked goes together, opens and closes, whatever its spec",
          "[wood][property]") {
  const Seeds seeds = seeds_for(5'000);
  std::map<std::string, std::uint64_t> seen;
  const Tally tally = run_over(seeds, [&](std::uint64_t seed, std::string& wrong) {
    const CabinetDraw draw = random_cabinet(seed);
    const Made made = make(draw.json);
    if (!made.problems.empty()) {
      for (const Problem& problem : made.problems)
        if (!is_said(made.spec, problem.path))
          wrong += problem.path + " is not in the spec: " + problem.message + "\n" + draw.json;
      return Outcome::refused;
    }
    const Assembly& wood = made.worked.assembly;
    for (const std::string& what : met_in(wood, draw))
      ++seen[what];
    count_parts(draw, wood, wrong);
    add_up(made, wrong);
    rebuild(wood, wrong);
    add_lines(wrong, faults_at_rest(wood));
    add_lines(wrong, faults_of_gaps(wood));
    add_lines(wrong, faults_of_loose_shelves(wood, kShelfPlay.at(draw.unit)));
    add_lines(wrong, faults_on_the_way(wood));
    if (seed % kCheckedEvery == 0) check_design(made, wrong);
    if (!wrong.empty()) wrong = draw.json + "\n" + wrong;
    return Outcome::worked;
  });
  require_worked_share(tally, 90);
  if (seeds.count == 1) return;
  for (const char* what : {"inch",
                           "housing",
                           "stopped-housing",
                           "rebated-corner",
                           "tongue",
                           "butt",
                           "planted",
                           "mortise-and-tenon",
                           "dowel",
                           "half-lap",
                           "bridle",
                           "screws",
                           "lapped-dovetail",
                           "partition",
                           "shelf",
                           "back",
                           "toe-board",
                           "mullion",
                           "runner",
                           "packing",
                           "shelf-pin-holes",
                           "hinge-cup",
                           "overlay",
                           "inset",
                           "swings",
                           "slides",
                           "loose"}) {
    INFO(what);
    CHECK(seen[what] >= seeds.count / 50);
  }
}

/// What runs and packing fill is what the case's stuff leaves.
bool fills(Role role) {
  return role == Role::packing || role == Role::guide || role == Role::runner ||
         role == Role::kicker;
}

/// The box round all but fronts, which may lie before it.
Box outside_of(const Assembly& wood) {
  std::optional<Box> all;
  for (const Piece& piece : wood.pieces) {
    const GroupKind kind = wood.groups[piece.group].kind;
    if (kind != GroupKind::carcase && kind != GroupKind::face_frame) continue;
    const Box blank = placed_blank(piece);
    all = all ? around(*all, blank) : blank;
  }
  return all.value_or(Box{});
}

/// What differs between a cabinet of one stuff and the same of another, and should not.
std::string differences(const Assembly& one, const Assembly& other, bool framed) {
  std::string wrong;
  if (one.size != other.size || outside_of(one) != outside_of(other)) wrong += "its outside\n";
  if (one.pieces.size() != other.pieces.size()) return wrong + "how many pieces it has\n";
  for (std::size_t i = 0; i < one.pieces.size(); ++i) {
    const Piece& a = one.pieces[i];
    const Piece& b = other.pieces[i];
    const bool of_case = one.groups[a.group].kind == GroupKind::carcase;
    const bool stuff = a.blank[2] == Length::from_mm_thousandths(17'400) &&
                       b.blank[2] == Length::from_mm_thousandths(18'000);
    if (of_case && !fills(a.role) && a.blank[2] != b.blank[2] && !stuff)
      wrong += a.name + ": how thick it is\n";
    if (!of_case && framed && a.blank != b.blank) wrong += a.name + ": its size\n";
  }
  return wrong;
}

TEST_CASE("A nominal 18 that measures 17.4 changes the case within, and nothing else",
          "[wood][property]") {
  const Seeds seeds = seeds_for(1'000);
  const Tally tally = run_over(seeds, [&](std::uint64_t seed, std::string& wrong) {
    const CabinetDraw draw = random_cabinet(seed);
    if (draw.kind != "cabinet" || draw.stuff.empty() || draw.unit != Unit::mm)
      return Outcome::aside;
    const Made thin = make(with_stuff(draw, "17.4"));
    const Made full = make(with_stuff(draw, "18"));
    if (!thin.problems.empty() || !full.problems.empty()) return Outcome::refused;
    wrong = differences(thin.worked.assembly, full.worked.assembly, draw.framed);
    if (!wrong.empty()) wrong = draw.json + "\n" + wrong;
    return Outcome::worked;
  });
  if (seeds.count > 1) CHECK(tally.worked >= seeds.count / 5);
}

}  // namespace
}  // namespace haunch::test
