// Random doors made pairs, overlay and rebated leaves, and arched ones below and at the top: each
// is judged by the second opinion on its wood, and by where blanks, rebates and curves lie.
#include <array>
#include <cmath>
#include <set>
#include <stdexcept>

#include "catch.h"
#include "property_runs.h"
#include "random_spec.h"
#include "sloping_wood.h"
#include "wood_oracle.h"

namespace haunch::test {
namespace {

std::string mm_of(std::int64_t thousandths) {
  return decimal(Length::from_mm_thousandths(thousandths), Unit::mm) + " mm";
}

/// A random door with further keys, written before its own.
std::string with_keys(const DoorSpec& spec, std::uint64_t seed, const std::string& keys) {
  return "{" + keys + ", " + to_json(spec, {spec.unit, seed, false, true}).substr(1);
}

/// The pieces of one leaf, which follow one another, as a leaf of its own.
Assembly leaf_of(const Assembly& pair, std::size_t group) {
  const std::size_t first = pieces_of(pair, group).front();
  const std::size_t count = pieces_of(pair, group).size();
  Assembly leaf;
  Length low = pair.size[0];
  Length high;
  for (std::size_t i = first; i < first + count; ++i) {
    const Box blank = placed_blank(pair.pieces[i]);
    low = std::min(low, blank.low[0]);
    high = std::max(high, blank.high[0]);
  }
  std::size_t joints_before = 0;
  for (const Joint& joint : pair.joints) {
    if (joint.receives < first) ++joints_before;
    if (joint.receives < first || joint.receives >= first + count) continue;
    leaf.joints.push_back(joint);
    leaf.joints.back().receives -= first;
    leaf.joints.back().enters -= first;
  }
  for (std::size_t i = first; i < first + count; ++i) {
    Piece piece = pair.pieces[i];
    piece.group = 0;
    piece.place.origin[0] -= low;
    for (Feature& feature : piece.features)
      for (std::size_t& joint : feature.joints)
        joint -= joints_before;
    leaf.pieces.push_back(std::move(piece));
  }
  leaf.size = {high - low, pair.size[1], pair.size[2]};
  return leaf;
}

/// Faults of sizes that a spec did not ask for. What a rebate and a mortise do to each other is for
/// the checks of walls.
std::string faults_of(const Assembly& leaf, const std::set<FaultKind>& but = {}) {
  std::string wrong;
  for (const Fault& fault : judge(leaf))
    if (!asked_for(fault.kind) && !but.contains(fault.kind)) wrong += fault.what + "\n";
  return wrong;
}

/// The outer upright of a leaf at one side, as a block of the pair.
Block stile_at(const std::vector<Wood>& wood, const std::vector<std::size_t>& leaf, bool right) {
  Block best = wood[leaf.front()].blank;
  for (const std::size_t i : leaf) {
    const Block& blank = wood[i].blank;
    if (right ? blank.high[0] > best.high[0] : blank.low[0] < best.low[0]) best = blank;
  }
  return best;
}

/// How far the wood of a leaf reaches towards the other at one depth.
std::int64_t reach_at(const std::vector<Wood>& wood, const std::vector<std::size_t>& leaf,
                      bool right, std::int64_t depth) {
  std::optional<std::int64_t> most;
  for (const std::size_t i : leaf)
    for (const Block& block : wood[i].blocks)
      if (block.low[2] <= depth && depth < block.high[2]) {
        const std::int64_t reach = right ? block.high[0] : block.low[0];
        if (!most || (right ? reach > *most : reach < *most)) most = reach;
      }
  return *most;
}

std::string faults_where_they_meet(const Assembly& pair) {
  const Fit& meeting = *fits_that_stand(pair, StandsIn::beside).front();
  const Neighbours leaves = neighbours_of(pair, meeting);
  const std::vector<std::size_t> left_leaf = pieces_of(pair, leaves.left);
  const std::vector<std::size_t> right_leaf = pieces_of(pair, leaves.right);
  const Length gap = meeting.room.across();
  const Length lapped = meeting.meets == Meets::rebate ? meeting.lap.across() + gap : Length();
  const std::vector<Wood> wood = wood_of(pair);
  const std::int64_t back = pair.size[2].steps() - 1;
  std::string wrong;
  std::array<std::int64_t, 2> left{};
  for (const std::int64_t depth : {std::int64_t{0}, back}) {
    const auto its = reach_at(wood, left_leaf, true, depth);
    const auto other = reach_at(wood, right_leaf, false, depth);
    if (other - its != gap.steps()) wrong += "the gap is not as designed\n";
    left[depth == 0 ? 0 : 1] = its;
  }
  const std::int64_t lap = meeting.group == leaves.right ? left[1] - left[0] : left[0] - left[1];
  if (lap != lapped.steps()) wrong += "the lap is not as designed\n";
  // Seen from the face both leaves are equally wide, but for an odd step.
  const std::int64_t seen_right = pair.size[0].steps() - left[0] - gap.steps();
  if (seen_right - left[0] < 0 || seen_right - left[0] > 1) wrong += "the leaves are not alike\n";
  const Block one = stile_at(wood, left_leaf, true);
  const Block other = stile_at(wood, right_leaf, false);
  if (left[0] - one.low[0] != other.high[0] - left[0] - gap.steps())
    wrong += "the meeting stiles are not seen equally wide\n";
  return wrong;
}

/// How far a rail's tenons and haunches reach across it at one end.
std::array<Length, 2> reach_across(const TenonSizes& tenon) {
  std::array<Length, 2> reach{tenon.each.front().from_edge, {}};
  for (const auto* spans : {&tenon.each, &tenon.haunches})
    for (const TenonSpan& span : *spans)
      reach = {std::min(reach[0], span.from_edge), std::max(reach[1], span.from_edge + span.width)};
  return reach;
}

/// What is ploughed in a stile comes out at its ends, in the lip too: haunches and stubs fill it
/// there as far as the rail's edge.
std::string faults_at_stile_ends(const Assembly& leaf) {
  std::string wrong;
  for (const Joint& joint : leaf.joints) {
    const Piece& rail = leaf.pieces[joint.enters];
    if (rail.role != Role::rail || !joint.tenon) continue;
    if (joint.tenon->haunches.empty() && joint.kind != JointKind::stub_tenon) continue;
    const auto reach = reach_across(*joint.tenon);
    const Box blank = placed_blank(rail);
    if (blank.low[1] == Length() && reach[0] != Length())
      wrong += "a groove stays open at the foot of a stile\n";
    if (blank.high[1] == leaf.size[1] && reach[1] != rail.blank[1])
      wrong += "a groove stays open at the head of a stile\n";
  }
  return wrong;
}

/// What of a rebated leaf stands in its opening, against what the spec leaves it there.
std::string faults_behind_lip(const Assembly& leaf, std::int64_t lip, const DoorSpec& spec) {
  const std::vector<Wood> wood = wood_of(leaf);
  const std::vector<std::size_t> all = pieces_of(leaf, 0);
  const std::int64_t back = leaf.size[2].steps() - 1;
  std::string wrong;
  const auto width = reach_at(wood, all, true, back) - reach_at(wood, all, false, back);
  const auto clearance = spec.find("clearance");
  if (clearance && spec.find("opening.width")->steps() - clearance->steps() * 2 != width)
    wrong += "what stands in the opening is not as wide as it leaves\n";
  const auto before = reach_at(wood, all, true, lip - 1) - reach_at(wood, all, false, lip - 1);
  if (before != leaf.size[0].steps()) wrong += "the lip is not as thick as the spec says\n";
  return wrong + faults_at_stile_ends(leaf);
}

/// Faults of a rebated leaf as it is glued up, and once its rebate is worked, which takes of
/// haunches, stubs and copes what stands there.
std::string faults_round_rebate(const Assembly& leaf) {
  Assembly glued = leaf;
  for (Piece& piece : glued.pieces)
    std::erase_if(piece.features,
                  [](const Feature& it) { return it.kind == FeatureKind::lip_rebate; });
  return faults_of(glued) + faults_of(leaf, {FaultKind::haunch, FaultKind::tenon_sizes,
                                             FaultKind::clearance, FaultKind::shoulder});
}

// ---- arches

constexpr double kHundredth = Length::kStepsPerMm / 100.0;

/// The circle of an arch, reckoned from the uprights and the spec's rise.
struct Circle {
  double x, y, radius, half;  // its middle, and half the span

  Point at(double outward, double angle, double z) const {
    return {x + (radius + outward) * std::sin(angle), y + (radius + outward) * std::cos(angle), z};
  }
};

const Piece& extreme(const Assembly& leaf, Role role, std::size_t axis, bool high) {
  const Piece* best = nullptr;
  for (const Piece& piece : leaf.pieces) {
    if (piece.role != role) continue;
    const auto key = [&](const Piece& it) {
      const Box blank = placed_blank(it);
      return high ? blank.high[axis] : -blank.low[axis];
    };
    if (best == nullptr || key(piece) > key(*best)) best = &piece;
  }
  if (best == nullptr) throw std::invalid_argument("no such piece");
  return *best;
}

Circle circle_of(const Assembly& leaf, Length rise) {
  const double left =
      static_cast<double>(placed_blank(extreme(leaf, Role::stile, 0, false)).high[0].steps());
  const double right =
      static_cast<double>(placed_blank(extreme(leaf, Role::stile, 0, true)).low[0].steps());
  const auto springing =
      static_cast<double>(placed_blank(extreme(leaf, Role::rail, 1, true)).low[1].steps());
  const auto h = static_cast<double>(rise.steps());
  const double half = (right - left) / 2;
  const double radius = (half * half + h * h) / (2 * h);
  return {(left + right) / 2, springing + h - radius, radius, half};
}

/// Asks of points beside the three curves whether there is wood: of the rail's underside and its
/// groove, and of the panel's top.
std::string faults_of_arch(const Assembly& leaf, const Circle& circle, double tolerance) {
  const Piece& rail = extreme(leaf, Role::rail, 1, true);
  const Joint* joint = nullptr;
  for (const Joint& it : leaf.joints)
    if (it.arched && it.design.bite) joint = &it;  // not that of a bead
  if (joint == nullptr) return "no panel stands under the arch\n";
  const Piece& panel = leaf.pieces[joint->enters];
  const auto gap = static_cast<double>(joint->design.bottom->steps());
  const double groove = gap + static_cast<double>(joint->design.bite->steps());
  const Feature& ploughed =
      *std::find_if(rail.features.begin(), rail.features.end(), [](const Feature& it) {
        return it.kind == FeatureKind::groove || it.kind == FeatureKind::rebate ||
               it.kind == FeatureKind::glass_rebate;
      });
  const Prism& trench = ploughed.prisms.front();
  const auto near = static_cast<double>(trench.from.steps());
  const auto thick = static_cast<double>(rail.blank[2].steps());
  // A panel in a groove lies in its middle; what lies in a rebate is flat.
  const Box lies = placed_blank(panel);
  const double middle = ploughed.kind == FeatureKind::groove
                            ? (near + static_cast<double>(trench.to.steps())) / 2
                            : static_cast<double>((lies.low[2] + lies.high[2]).steps()) / 2;
  // A groove may lie at one of the faces, and a moulding in front of it.
  const double solid = trench.from > Length() ? near - kHundredth : thick - kHundredth;
  const Box panel_blank = placed_blank(panel);
  const double panel_half =
      static_cast<double>((panel_blank.high[0] - panel_blank.low[0]).steps()) / 2;
  std::string wrong;
  const auto expect = [&](const Piece& piece, const Point& point, bool wood, const char* what) {
    const double half = &piece == &panel ? std::min(panel_half, circle.half) : circle.half;
    if (std::abs(point[0] - circle.x) < half - kHundredth && holds(piece, point) != wood)
      wrong += std::string(what) + "\n";
  };
  for (int i = -9; i <= 9; ++i) {
    const double angle = i * 0.1;
    expect(rail, circle.at(-tolerance - kHundredth, angle, kHundredth), false,
           "wood below the arch");
    if (std::cos(angle) * (circle.radius + groove) >
        static_cast<double>(placed_blank(rail).high[1].steps()) - circle.y - kHundredth)
      continue;
    expect(rail, circle.at(kHundredth, angle, solid), true, "no wood above the arch");
    expect(rail, circle.at(groove - tolerance - kHundredth, angle, middle), false, "no groove");
    expect(rail, circle.at(groove + kHundredth, angle, middle), true, "no wood above the groove");
    expect(panel, circle.at(groove - gap - tolerance - kHundredth, angle, middle), true,
           "no panel in the groove");
    expect(panel, circle.at(groove - gap + kHundredth, angle, middle), false,
           "the panel stands too high");
  }
  for (const Piece& piece : leaf.pieces)
    if (&piece != &panel && share_at_points(panel, piece)) wrong += "the panel shares wood\n";
  if (share_at_points(rail, extreme(leaf, Role::stile, 0, false)))
    wrong += "the rail shares wood\n";
  return wrong;
}

// ---- arched tops

double steps(Length length) {
  return static_cast<double>(length.steps());
}

/// The circle of a leaf's top, reckoned from its opening's span and rise and the gap at its head.
Circle circle_of_top(const Assembly& leaf, Length span, Length rise) {
  const double half = steps(span) / 2;
  const double radius = (half * half + steps(rise) * steps(rise)) / (2 * steps(rise));
  const double gap = steps(fit_in_opening(leaf)->room.head);
  return {steps(leaf.size[0]) / 2, steps(leaf.size[1]) + gap - radius, radius - gap,
          steps(leaf.size[0]) / 2};
}

double top_over(const Circle& circle, double x) {
  return circle.y +
         std::sqrt(std::max(circle.radius * circle.radius - (x - circle.x) * (x - circle.x), 0.0));
}

/// Whether there is wood at a place of the face, however deep.
bool is_closed(const Assembly& leaf, double x, double y) {
  constexpr int kDepths = 9;
  const double last = steps(leaf.size[2]) - 2 * kHundredth;
  for (int i = 0; i < kDepths; ++i)
    for (const Piece& piece : leaf.pieces)
      if (holds(piece, {x, y, kHundredth + last * i / (kDepths - 1)})) return true;
  return false;
}

/// Asks of places beside the curve, and anywhere below it, whether there is wood.
std::string faults_of_outline(const Assembly& leaf, const Circle& circle, double tolerance,
                              Dice& dice) {
  std::string wrong;
  const double widest = std::asin(std::min(circle.half / circle.radius, 1.0));
  for (int i = -20; i <= 20; ++i) {
    const double angle = widest * i / 20;
    const Point in = circle.at(-tolerance - kHundredth, angle, 0);
    const Point out = circle.at(kHundredth, angle, 0);
    if (std::abs(in[0] - circle.x) < circle.half && !is_closed(leaf, in[0], in[1]))
      wrong += "no wood below the curve\n";
    if (is_closed(leaf, out[0], out[1])) wrong += "wood above the curve\n";
  }
  for (int i = 0; i < 60; ++i) {
    const double x = steps(leaf.size[0]) * static_cast<double>(dice.between(1, 9'999)) / 10'000;
    const double y = top_over(circle, x) * static_cast<double>(dice.between(1, 9'999)) / 10'000;
    const bool beside = y > circle.y && std::hypot(x - circle.x, y - circle.y) >
                                            circle.radius - tolerance - kHundredth;
    if (!beside && !is_closed(leaf, x, y)) wrong += "one can see through the leaf\n";
  }
  return wrong;
}

/// The relish over the highest mortises in the stiles: as said or more, by what is marked down.
std::string faults_of_relish(const Assembly& leaf, const Circle& circle, double relish,
                             double tolerance) {
  const Piece& rail = extreme(leaf, Role::rail, 1, true);
  std::string wrong;
  for (std::size_t number = 0; number < leaf.joints.size(); ++number) {
    const Joint& joint = leaf.joints[number];
    if (&leaf.pieces[joint.enters] != &rail || !joint.mortise) continue;
    const Piece& stile = leaf.pieces[joint.receives];
    double least = circle.radius;
    double upright = 0;  // what a chord may leave the curve there
    for (const Feature& feature : stile.features)
      for (const Box& cut : feature.cuts) {
        if (feature.kind != FeatureKind::mortise || feature.joints.front() != number) continue;
        const Box hole = placed(cut, stile.place);
        for (const Length x : {hole.low[0], hole.high[0]}) {
          const double top = top_over(circle, steps(x));
          least = std::min(least, top - steps(hole.high[1]));
          upright = std::max(upright, tolerance * circle.radius / (top - circle.y));
        }
      }
    const double design = relish - steps(*joint.design.edges) / 2;
    if (least < design - 2) wrong += "less relish than said\n";
    if (least > design + Length::kStepsPerInch / 16.0 + upright + 2)
      wrong += "more relish than said\n";
  }
  return wrong;
}

/// The opening's arch, from corner to corner of it.
std::string faults_of_opening(const Assembly& leaf, const Circle& circle) {
  const Fit& opening = *fit_in_opening(leaf);
  std::string wrong;
  for (const Corner& corner : opening.arch) {
    const double off = std::hypot(steps(corner.u) - circle.x, steps(corner.v) - circle.y) -
                       circle.radius - steps(opening.room.head);
    if (std::abs(off) > 2) wrong += "the opening's arch is off its circle\n";
  }
  if (opening.arch.front().u != -opening.room.left ||
      opening.arch.back().u != leaf.size[0] + opening.room.right)
    wrong += "the opening's arch does not span it\n";
  return wrong;
}

std::string faults_of_sharing(const Assembly& leaf) {
  std::string wrong;
  const Piece& rail = extreme(leaf, Role::rail, 1, true);
  for (const bool high : {false, true})
    if (share_at_points(rail, extreme(leaf, Role::stile, 0, high)))
      wrong += "rail and stile share wood\n";
  return wrong;
}

void set_length(DoorSpec& spec, std::string_view key, Length length) {
  std::erase_if(spec.lengths, [&](const SpecLength& it) { return it.key == key; });
  spec.lengths.push_back({key, length});
}

/// Alike at both sides, as an arched top asks, and with square sight edges.
void stand_in_middle(DoorSpec& spec) {
  const auto gap = spec.find("clearance") ? spec.find("clearance") : spec.find("clearance.left");
  const auto stile =
      spec.find("stile_width") ? spec.find("stile_width") : spec.find("stile_width.left");
  std::erase_if(spec.lengths, [](const SpecLength& it) {
    return it.key.starts_with("clearance") || it.key.starts_with("stile_width") ||
           it.key.starts_with("edge.");
  });
  set_length(spec, "clearance", *gap);
  set_length(spec, "stile_width", *stile);
  spec.edge.clear();
  spec.moulding.clear();
  spec.moulded_faces.clear();
}

/// A random slope may wedge in its groove, which is not what is asked here.
void leave_panels_flat(DoorSpec& spec) {
  spec.raised.clear();
  spec.tiers.clear();
  std::erase_if(spec.lengths,
                [](const SpecLength& it) { return it.key.starts_with("panel.raise"); });
}

}  // namespace

TEST_CASE("a random arch follows its circle, and so do groove and panel", "[wood][property]") {
  const Seeds seeds = seeds_for(200);
  const Tally tally = run_over(seeds, [&](std::uint64_t seed, std::string& wrong) {
    DoorSpec spec = random_door(seed, Keys::some);
    Dice dice(seed + 3);
    leave_panels_flat(spec);
    if (!spec.across.empty()) spec.across.front() = 1;
    spec.panels_as = spec.rails.empty() ? PanelsAs::left_out : PanelsAs::each_tier;
    const std::int64_t rise = dice.between(4'000, 120'000);
    const std::int64_t tolerance = dice.between(50, 400);
    const std::string json = with_keys(
        spec, seed,
        R"("arch": {"rise": ")" + mm_of(rise) + R"(", "tolerance": ")" + mm_of(tolerance) + "\"}");
    const Trial trial = work(json);
    if (!trial.assembly) return Outcome::refused;
    wrong = faults_of_arch(*trial.assembly,
                           circle_of(*trial.assembly, Length::from_mm_thousandths(rise)),
                           static_cast<double>(Length::from_mm_thousandths(tolerance).steps()));
    if (!wrong.empty()) wrong = json + "\n" + wrong;
    return Outcome::worked;
  });
  require_worked_share(tally, 30);
}

TEST_CASE("a random arched top follows the circle of its opening over rail and stiles",
          "[wood][property]") {
  std::uint64_t even = 0;
  std::uint64_t round = 0;
  const Seeds seeds = seeds_for(200);
  const Tally tally = run_over(seeds, [&](std::uint64_t seed, std::string& wrong) {
    DoorSpec spec = random_door(seed, Keys::all);
    Dice dice(seed + 4);
    leave_panels_flat(spec);
    stand_in_middle(spec);
    const bool both = dice.chance(50);
    const bool half = dice.chance(15);
    const Length span = *spec.find("opening.width");
    const Length rise =
        half ? floor_half(span) : Length::from_mm_thousandths(dice.between(4'000, 60'000));
    const Length tolerance = Length::from_mm_thousandths(dice.between(50, 400));
    if (both) spec.across.front() = 1;
    if (both) spec.panels_as = PanelsAs::each_tier;
    if (half) spec.rails.front().width = both ? *spec.find("stile_width") : floor_half(span);
    const std::string json =
        with_keys(spec, seed,
                  R"("arch": {"at": ")" + std::string(both ? "both" : "top") +
                      (half ? R"(", "shape": "semicircular")"
                            : R"(", "rise": ")" + decimal(rise, Unit::mm) + R"( mm")") +
                      R"(, "tolerance": ")" + decimal(tolerance, Unit::mm) + R"( mm"})");
    const Trial trial = work(json);
    if (!trial.assembly) return Outcome::refused;
    const Assembly& leaf = *trial.assembly;
    const Circle circle = circle_of_top(leaf, span, rise);
    wrong = faults_of_outline(leaf, circle, steps(tolerance), dice) +
            faults_of_relish(leaf, circle, steps(*spec.find("tenon.relish")), steps(tolerance)) +
            faults_of_opening(leaf, circle) + faults_of_sharing(leaf);
    const double width = steps(spec.rails.front().width);
    if (both)
      wrong += faults_of_arch(leaf,
                              {circle.x, circle.y, circle.radius - width,
                               circle.half - steps(*spec.find("stile_width"))},
                              steps(tolerance));
    even += both ? 1U : 0U;
    round += half ? 1U : 0U;
    if (!wrong.empty()) wrong = json + "\n" + wrong;
    return Outcome::worked;
  });
  require_worked_share(tally, 40);
  if (seeds.count == 1) return;
  CHECK(even >= seeds.count / 10);
  CHECK(round >= seeds.count / 50);
}

TEST_CASE("a random overlay or rebated leaf goes together", "[wood][property]") {
  std::uint64_t rebated = 0;
  const Seeds seeds = seeds_for(2'000);
  const Tally tally = run_over(seeds, [&](std::uint64_t seed, std::string& wrong) {
    DoorSpec spec = random_door(seed, Keys::some);
    leave_panels_flat(spec);
    Dice dice(seed + 2);
    const bool overlay = dice.chance(40);
    const std::string lap = R"("lap": ")" + mm_of(dice.between(4'000, 16'000)) + '"';
    const std::int64_t lip = dice.between(4'000, 18'000);
    if (overlay)
      std::erase_if(spec.lengths,
                    [](const SpecLength& it) { return it.key.starts_with("clearance"); });
    const std::string keys =
        overlay ? R"("meets": "overlay", )" + lap
                : R"("meets": "rebate", "lip_thickness": ")" + mm_of(lip) + R"(", )" + lap;
    const std::string json = with_keys(spec, seed, keys);
    const Trial trial = work(json);
    if (!trial.assembly) return Outcome::refused;
    wrong = overlay ? faults_of(*trial.assembly)
                    : faults_round_rebate(*trial.assembly) +
                          faults_behind_lip(*trial.assembly,
                                            Length::from_mm_thousandths(lip).steps(), spec);
    rebated += overlay ? 0U : 1U;
    if (!wrong.empty()) wrong = json + "\n" + wrong;
    return Outcome::worked;
  });
  require_worked_share(tally, 50);
  if (seeds.count > 1) CHECK(rebated >= seeds.count / 5);
}

TEST_CASE("a random pair is two leaves that go together and meet as designed", "[wood][property]") {
  std::uint64_t rebated = 0;
  const Seeds seeds = seeds_for(2'000);
  const Tally tally = run_over(seeds, [&](std::uint64_t seed, std::string& wrong) {
    DoorSpec spec = random_door(seed, Keys::some);
    leave_panels_flat(spec);
    Dice dice(seed + 1);
    for (SpecLength& each : spec.lengths)
      if (each.key == "opening.width") each.length = each.length * 2;
    std::string keys =
        R"("leaves": 2, "meeting_clearance": ")" + mm_of(dice.between(0, 5'000)) + '"';
    if (dice.chance(60))
      keys += R"(, "meeting_lap": ")" + mm_of(dice.between(5'001, 15'000)) +
              R"(", "meeting_rest": ")" + mm_of(dice.between(0, 3'000)) + '"';
    if (dice.chance(50)) keys += R"(, "active": "left")";
    const std::string json = with_keys(spec, seed, keys);
    const Trial trial = work(json);
    if (!trial.assembly) return Outcome::refused;
    const Fit& meeting = *fits_that_stand(*trial.assembly, StandsIn::beside).front();
    if (meeting.meets == Meets::rebate) ++rebated;
    wrong = faults_of(leaf_of(*trial.assembly, meeting.group)) +
            faults_of(leaf_of(*trial.assembly, meeting.other)) +
            faults_where_they_meet(*trial.assembly);
    if (!wrong.empty()) wrong = json + "\n" + wrong;
    return Outcome::worked;
  });
  require_worked_share(tally, 60);
  if (seeds.count > 1) CHECK(rebated >= seeds.count / 4);
}

}  // namespace haunch::test
