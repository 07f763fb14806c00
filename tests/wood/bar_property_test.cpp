// Random doors with glazing bars, judged by asking of single points whether there is wood.
// HAUNCH_TEST_SEED=n runs the one with that seed again.
#include "catch.h"
#include "checks.h"
#include "property_runs.h"
#include "random_spec.h"
#include "sloping_wood.h"

namespace haunch::test {
namespace {

constexpr double kBeside = 100;  // steps off a face, so that the answer is clear

double steps(Length length) {
  return static_cast<double>(length.steps());
}

/// Glass in every tier, its sizes left to their usual ones or drawn.
std::string random_glass(Dice& dice) {
  const auto size = [&](std::string_view key, std::int64_t low, std::int64_t high) {
    return ", \"" + std::string(key) + "\": \"" + std::to_string(dice.between(low, high)) + " mm\"";
  };
  std::string text = R"("panel": {"kind": "glass", "thickness": "4 mm")";
  text += R"(, "panes": {"across": )" + std::to_string(dice.between(1, 3)) + R"(, "up": )" +
          std::to_string(dice.between(2, 4)) + "}";
  std::string bars = R"(, "bars": {"through": ")";
  bars += dice.chance(50) ? "upright\"" : "level\"";
  if (dice.chance(50)) bars += size("rebate", 6, 12) + size("width", 28, 36);
  if (dice.chance(30)) bars += size("tenon_depth", 18, 40);
  return text + bars + "}}";
}

/// One leaf, looked at from outside.
class BarJudge {
 public:
  explicit BarJudge(const Assembly& wood) : wood_(wood) {}

  std::string faults() {
    for (std::size_t a = 0; a < wood_.pieces.size(); ++a)
      for (std::size_t b = a + 1; b < wood_.pieces.size(); ++b)
        if (share_at_points(wood_.pieces[a], wood_.pieces[b]))
          fault(wood_.pieces[a], "shares wood with " + wood_.pieces[b].mark);
    for (const Joint& joint : wood_.joints) {
      if (wood_.pieces[joint.enters].role == Role::glass) pane(joint);
      if (wood_.pieces[joint.enters].role != Role::glazing_bar) continue;
      if (joint.kind == JointKind::half_lap)
        crossing(joint);
      else
        end(joint);
    }
    return std::move(faults_);
  }

 private:
  void fault(const Piece& piece, const std::string& what) {
    faults_ += piece.mark + " (" + piece.name + "): " + what + "\n";
  }
  void expect(bool good, const Piece& piece, const std::string& what) {
    if (!good) fault(piece, what);
  }

  /// At the middle of each of its edges glass stands off the wood by its clearance, and before it
  /// there is wood for as far as its bite.
  void pane(const Joint& joint) {
    const Piece& pane = wood_.pieces[joint.enters];
    const Piece& holder = wood_.pieces[joint.receives];
    const Box box = placed_blank(pane);
    const auto in = static_cast<std::size_t>(joint.heading.axis);
    const double way = joint.heading.upwards ? 1 : -1;
    Point at{};
    for (std::size_t axis = 0; axis < 3; ++axis)
      at[axis] = (steps(box.low[axis]) + steps(box.high[axis])) / 2;
    at[in] = steps(joint.heading.upwards ? box.high[in] : box.low[in]);
    const double clearance = steps(*joint.design.bottom);
    Point off = at;
    off[in] += way * (clearance - kBeside);
    if (clearance > kBeside) expect(!holds(holder, off), pane, "less clearance than designed");
    off[in] = at[in] + way * (clearance + kBeside);
    expect(holds(holder, off), pane, "more clearance than designed");
    Point before = at;
    before[2] = steps(box.low[2]) - steps(*joint.design.bearing) - kBeside;
    before[in] = at[in] - way * kBeside;
    expect(holds(holder, before), pane, "no wood before its edge");
    before[in] = at[in] - way * (steps(*joint.design.bite) - kBeside);
    expect(holds(holder, before), pane, "less cover than designed");
    before[in] = at[in] - way * (steps(*joint.design.bite) + kBeside);
    expect(!holds(holder, before), pane, "more cover than designed");
  }

  /// In the middle of a crossing there is wood of one of the two through all of the thickness, and
  /// at the face no gap beside the one that goes through.
  void crossing(const Joint& joint) {
    const Piece& keeps_face = wood_.pieces[joint.receives];
    const Piece& keeps_back = wood_.pieces[joint.enters];
    const Box one = placed_blank(keeps_face);
    const Box other = placed_blank(keeps_back);
    const auto in = static_cast<std::size_t>(joint.heading.axis);
    Point at{};
    at[in] = (steps(one.low[in]) + steps(one.high[in])) / 2;
    at[1 - in] = (steps(other.low[1 - in]) + steps(other.high[1 - in])) / 2;
    for (int i = 0; i < 40; ++i) {
      at[2] = steps(wood_.size[2]) * (i + 0.37) / 40;
      expect(holds(keeps_face, at) != holds(keeps_back, at), keeps_back, "a void at a crossing");
    }
    at[2] = kBeside;
    for (const double side : {steps(one.low[in]) - kBeside, steps(one.high[in]) + kBeside}) {
      at[in] = side;
      expect(holds(keeps_back, at), keeps_back, "open at the face beside a crossing");
    }
    at[in] = steps(one.low[in]) + kBeside;
    expect(holds(keeps_face, at), keeps_face, "open at the face in a crossing");
  }

  /// The face shoulder stands on the sight edge; the tongue goes on to the bottom of the rebate, at
  /// the back too.
  void end(const Joint& joint) {
    const Piece& bar = wood_.pieces[joint.enters];
    const Piece& holder = wood_.pieces[joint.receives];
    const Box box = placed_blank(bar);
    const Box frame = placed_blank(holder);
    const auto in = static_cast<std::size_t>(joint.heading.axis);
    const double way = joint.heading.upwards ? 1 : -1;
    const double edge = steps(joint.heading.upwards ? frame.low[in] : frame.high[in]);
    Point at{};
    at[1 - in] = (steps(box.low[1 - in]) + steps(box.high[1 - in])) / 2;
    for (const double z : {kBeside, steps(wood_.size[2]) - kBeside}) {
      at[2] = z;
      bool met = false;
      for (double past = -kBeside; past < steps(joint.tenon->depth); past += 2 * kBeside) {
        at[in] = edge + way * past;
        const bool of_bar = holds(bar, at);
        const bool of_frame = holds(holder, at);
        if (of_bar || of_frame) {
          met = of_frame;
          if (met) break;
          continue;
        }
        fault(bar, "open beside its shoulder");
        return;
      }
      expect(met, bar, "does not come to what it stands on");
    }
  }

  const Assembly& wood_;
  std::string faults_;
};

/// Whether the checks fail a leaf, so that points of it say nothing new.
bool has_failed(const Assembly& wood) {
  for (const Finding& finding : check_assembly(wood, Unit::mm))
    if (finding.status == Status::fail) return true;
  return false;
}

}  // namespace

TEST_CASE("glazing bars leave nothing open, and their panes the cover they were designed to have",
          "[wood][property]") {
  const Seeds seeds = seeds_for(60);
  const Tally tally = run_over(seeds, [&](std::uint64_t seed, std::string& wrong) {
    Dice dice(seed);
    DoorSpec spec = random_door(seed, Keys::all);
    spec.edge.clear();
    spec.moulding.clear();
    spec.moulded_faces.clear();
    spec.tiers.clear();
    spec.rebate = spec.raised = spec.profile = spec.grain = spec.kind = "";
    std::erase_if(spec.lengths, [](const SpecLength& it) {
      return it.key.starts_with("edge.") || it.key.starts_with("panel.");
    });
    if (dice.chance(30)) {  // the glass lies in the rebate of the edges
      spec.edge = "rebated";
      std::erase_if(spec.lengths, [](const SpecLength& it) {
        return it.key.starts_with("groove") || it.key.starts_with("mortise.from_face");
      });
    }
    std::string json = to_json(spec, {spec.unit, seed, false, true});
    json.insert(1, random_glass(dice) + ", ");
    const Trial trial = work(json);
    if (!trial.assembly) return Outcome::refused;
    if (has_failed(*trial.assembly)) return Outcome::aside;
    wrong += BarJudge(*trial.assembly).faults();
    if (!wrong.empty()) wrong = json + "\n" + wrong;
    return Outcome::worked;
  });
  if (seeds.count > 1) require_worked_share(tally, 30);
}

}  // namespace haunch::test
