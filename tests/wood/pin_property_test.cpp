// Random doors with pins through their tenons, judged by asking of single points on both sides of
// pins and holes. HAUNCH_TEST_SEED=n runs the one with that seed again.
#include <set>

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

std::string_view one_of(Dice& dice, const std::vector<std::string_view>& words) {
  return words[static_cast<std::size_t>(
      dice.between(0, static_cast<std::int64_t>(words.size()) - 1))];
}

/// What a door's pins are; sizes are left to their usual ones, or carry their unit.
std::string random_pins(Dice& dice) {
  std::string text = dice.chance(50) ? R"("pin": {"at": "both")" : R"("pin": {"at": "all")";
  const auto add = [&](std::string_view key, std::int64_t tenths) {
    text += ", \"" + std::string(key) + "\": \"" + std::to_string(tenths / 10) + "." +
            std::to_string(tenths % 10) + " mm\"";
  };
  if (dice.chance(50)) add("diameter", dice.between(40, 125));
  if (dice.chance(30)) add("from_shoulder", dice.between(80, 300));
  if (dice.chance(30)) add("offset", dice.between(0, 30));
  if (dice.chance(30)) text += R"(, "number": )" + std::to_string(dice.between(1, 2));
  return text + "}";
}

/// One pin in its joint, looked at from outside.
class PinJudge {
 public:
  PinJudge(const Assembly& wood, std::size_t number) : wood_(wood), of_tenon_(wood.joints[number]) {
    for (const Joint& joint : wood.joints) {
      if (joint.enters == of_tenon_.enters && joint.receives != of_tenon_.receives)
        stile_ = joint.receives;
    }
    for (const Joint& joint : wood.joints)
      if (joint.receives == stile_ && joint.enters == of_tenon_.receives && joint.tenon)
        main_ = &joint;
    in_ = static_cast<std::size_t>(main_->heading.axis);
    across_ = 1 - in_;
  }

  std::string faults() {
    const Box pin = placed_blank(wood_.pieces[of_tenon_.enters]);
    const double way = main_->heading.upwards ? 1 : -1;
    const double middle = (steps(pin.low[across_]) + steps(pin.high[across_])) / 2;
    const double tip = way > 0 ? steps(pin.high[in_]) : steps(pin.low[in_]);
    const double root = way > 0 ? steps(pin.low[in_]) : steps(pin.high[in_]);
    const double draw = steps(*of_tenon_.design.draw);
    const double in_tenon = steps(main_->tenon->from_face) + steps(main_->tenon->thickness) / 2;
    // The pin presses on the tenon at its tip's side, by the draw and no more.
    if (draw > 4 * kBeside) {
      expect(tenon_at(tip - way * kBeside, middle, in_tenon), "a pin does not press");
      expect(tenon_at(tip - way * (draw - kBeside), middle, in_tenon), "a pin draws less");
      expect(!tenon_at(tip - way * (draw + kBeside), middle, in_tenon), "a pin draws more");
      // At the other side the tenon's hole goes on beyond the pin by as much.
      expect(!tenon_at(root - way * (draw - kBeside), middle, in_tenon), "no room behind a pin");
    }
    expect(tenon_at(root - way * (draw + kBeside), middle, in_tenon), "tenon before its hole");
    // In the cheek at the face side the pin fills its hole, all round.
    const double in_cheek = steps(main_->tenon->from_face) / 4;
    for (const double side : {-1.0, 1.0}) {
      cheek(at((side > 0) == (way > 0) ? tip : root, middle, in_cheek), in_, side);
      cheek(at((tip + root) / 2, side > 0 ? steps(pin.high[across_]) : steps(pin.low[across_]),
               in_cheek),
            across_, side);
    }
    return std::move(faults_);
  }

 private:
  /// A place along the way the tenon goes in, across it, and from the face side.
  Point at(double in, double across, double through) const {
    Point point{};
    point[in_] = in;
    point[across_] = across;
    point[2] = through;
    return point;
  }
  bool tenon_at(double in, double across, double through) const {
    return holds(wood_.pieces[of_tenon_.receives], at(in, across, through));
  }

  void cheek(Point place, std::size_t axis, double side) {
    place[axis] -= side * kBeside;
    expect(holds(wood_.pieces[of_tenon_.enters], place), "a pin is less than its hole");
    expect(!holds(wood_.pieces[stile_], place), "a hole in a cheek is less than its pin");
    place[axis] += 2 * side * kBeside;
    expect(holds(wood_.pieces[stile_], place), "a hole in a cheek is more than its pin");
  }

  void expect(bool good, const std::string& what) {
    if (!good)
      faults_ +=
          joint_id(static_cast<std::size_t>(&of_tenon_ - wood_.joints.data())) + ": " + what + "\n";
  }

  const Assembly& wood_;
  const Joint& of_tenon_;
  std::size_t stile_ = 0;
  const Joint* main_ = nullptr;
  std::size_t in_ = 0, across_ = 1;
  std::string faults_;
};

/// Whether the checks find too little wood beside a pin's hole, so that a point there says nothing.
bool comes_out(const Assembly& wood) {
  for (const Finding& finding : check_assembly(wood, Unit::mm))
    if (finding.rule->check.starts_with("pin-") && finding.rule->check != "pin-draw" &&
        finding.status == Status::fail)
      return true;
  return false;
}

/// Pins share wood with nothing but the tenon that they draw.
std::string shared_with_others(const Assembly& wood) {
  std::set<std::array<std::size_t, 2>> drawn;
  for (const Joint& joint : wood.joints)
    if (joint.design.draw) drawn.insert({joint.receives, joint.enters});
  std::string wrong;
  for (std::size_t a = 0; a < wood.pieces.size(); ++a)
    for (std::size_t b = a + 1; b < wood.pieces.size(); ++b) {
      const bool pins = wood.pieces[a].role == Role::pin || wood.pieces[b].role == Role::pin;
      if (pins && !drawn.contains({a, b}) && share_at_points(wood.pieces[a], wood.pieces[b]))
        wrong += wood.pieces[a].mark + " and " + wood.pieces[b].mark + " share wood\n";
    }
  return wrong;
}

}  // namespace

TEST_CASE("pins draw their tenons home, and fill their holes in the cheeks", "[wood][property]") {
  const Seeds seeds = seeds_for(250);
  const Tally tally = run_over(seeds, [&](std::uint64_t seed, std::string& wrong) {
    Dice dice(seed);
    DoorSpec spec = random_door(seed, Keys::all);
    spec.edge.clear();
    spec.moulding.clear();
    spec.moulded_faces.clear();
    std::erase_if(spec.lengths, [](const SpecLength& it) { return it.key.starts_with("edge."); });
    const std::string_view joint = one_of(dice, {"haunched", "through", "bridle", "haunched"});
    std::string json = to_json(spec, {spec.unit, seed, false, true});
    json.insert(1, R"("joint": ")" + std::string(joint) + "\", " + random_pins(dice) + ", ");
    const Trial trial = work(json);
    if (!trial.assembly) return Outcome::refused;
    const Assembly& wood = *trial.assembly;
    if (comes_out(wood)) return Outcome::aside;
    for (std::size_t number = 0; number < wood.joints.size(); ++number)
      if (wood.joints[number].design.draw) wrong += PinJudge(wood, number).faults();
    wrong += shared_with_others(wood);
    if (!wrong.empty()) wrong = json + "\n" + wrong;
    return Outcome::worked;
  });
  require_worked_share(tally, 12);
}

}  // namespace haunch::test
