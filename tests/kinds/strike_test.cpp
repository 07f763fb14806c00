// What is let in across from a leaf's hinges and lock, by hand, and each way it can go wrong.
#include "checks.h"
#include "remedy.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

constexpr std::string_view kLeaf =
    R"("thickness": 44, "stile_width": 118, "rail_widths": [118, {"width": 195, "top": 900}, 230],
       "tenon_depth": 76, "groove_depth": 13,
       "hinges": {"number": 3, "length": 100, "width": 36, "thickness": 3})";
constexpr std::string_view kCase =
    R"("lock": {"height": 1050, "case": {"height": 165, "depth": 80, "thickness": 16},
                "faceplate": {"length": 235, "width": 22, "thickness": 3}})";
constexpr std::string_view kBored = R"("lock": {"height": 1050, "bore": {}})";

/// A lining of 32 mm jambs in a wall of 910 x 2100; its leaf hangs 10 above the floor.
std::string set(std::string_view lock, std::string_view more = {}, std::string_view frame = {}) {
  return R"({"kind": "doorset", "units": "mm", "frame": {"jamb_thickness": 32,
             "wall_opening": {"width": 910, "height": 2100})" +
         std::string(frame.empty() ? "" : ", ") + std::string(frame) + R"(}, "leaf": {)" +
         std::string(kLeaf) + (lock.empty() ? "" : ", ") + std::string(lock) + "}" +
         (more.empty() ? "" : ", ") + std::string(more) + "}";
}

std::string pair(std::string_view more = {}) {
  return R"({"kind": "doorset", "units": "mm", "leaves": 2, "frame": {"exterior": true,
             "leaf": {"width": 1300, "height": 1981}}, "leaf": {)" +
         std::string(kLeaf) + ", " + std::string(kBored) + "}" + (more.empty() ? "" : ", ") +
         std::string(more) + "}";
}

Finding worst(const Assembly& wood, std::string_view check, std::string_view fitting) {
  std::optional<Finding> worst;
  for (const Finding& it : check_assembly(wood, Unit::mm))
    if (it.rule->check == check && it.fitting == fitting && (!worst || it.status > worst->status))
      worst = it;
  if (!worst) throw std::invalid_argument("no check: " + std::string(check));
  return *worst;
}

std::vector<std::string> not_ok(const Assembly& wood) {
  std::vector<std::string> checks;
  for (const Finding& it : check_assembly(wood, Unit::mm))
    if (it.status != Status::ok) checks.emplace_back(it.rule->check);
  return checks;
}

Feature& recess(Assembly& wood, std::string_view name, std::string_view kind) {
  for (Piece& piece : wood.pieces)
    if (piece.name == name)
      for (Feature& feature : piece.features)
        if (word_of(feature.kind) == kind) return feature;
  throw std::invalid_argument("no such recess");
}

/// The remedy of the first finding of a check that is not ok.
std::optional<Remedy> remedy_of(const std::string& spec, std::string_view check) {
  const auto its = job(spec);
  const std::vector<Finding> found = check_assembly(work(*its).assembly, its->unit);
  const auto remedies = find_remedies(*its, found).of;
  for (std::size_t i = 0; i < found.size(); ++i)
    if (found[i].rule->check == check && found[i].status != Status::ok) return remedies[i];
  throw std::invalid_argument("nothing to put right");
}

const std::vector<std::string> kNothing;

}  // namespace

TEST_CASE("The strike of a mortise lock stands across from it in the jamb") {
  const Assembly wood = work(set(kCase)).assembly;
  const Piece& jamb = piece(wood, "right jamb");
  // 10 + 1050 - 165 / 2 = 977.5 up; 16 in the middle of 44 is 14 to 30; the inner face of the right
  // jamb is its low one. The plate is as the lock's.
  CHECK(cuts(jamb, "strike-mortise") == std::vector{box(977.5, 14, 0, 1142.5, 30, 20)});
  CHECK(cuts(jamb, "strike-plate") == std::vector{box(942.5, 11, 0, 1177.5, 33, 3)});
  CHECK(cuts(piece(wood, "left jamb"), "strike-mortise").empty());
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("Of a leaf hung at the right the strike is in the left jamb") {
  const Assembly wood = work(set(std::string(kCase) + R"(, "hangs": "right")")).assembly;
  CHECK(cuts(piece(wood, "left jamb"), "strike-mortise") ==
        std::vector{box(977.5, 14, 12, 1142.5, 30, 32)});
  CHECK(cuts(piece(wood, "right jamb"), "gain").size() == 3);
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("A strike's sizes are as they are said") {
  const Assembly wood =
      work(set(kCase, R"("strike": {"height": 1050.5, "plate": {"length": 180, "width": 24,
                         "thickness": 2}, "mortise": {"length": 125, "width": 18, "depth": 15}})"))
          .assembly;
  const Piece& jamb = piece(wood, "right jamb");
  CHECK(cuts(jamb, "strike-mortise") == std::vector{box(998, 13, 0, 1123, 31, 15)});
  CHECK(cuts(jamb, "strike-plate") == std::vector{box(970.5, 10, 0, 1150.5, 34, 2)});
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("The strike of a bored lock is as its templates say") {
  const Worked worked = work(set(kBored));
  // The latch's bore is 25, the faceplate 57 x 25; the plate of a strike is let in 5.
  CHECK(cuts(piece(worked.assembly, "right jamb"), "strike-mortise") ==
        std::vector{box(1047.5, 9.5, 0, 1072.5, 34.5, 20)});
  CHECK(cuts(piece(worked.assembly, "right jamb"), "strike-plate") ==
        std::vector{box(1031.5, 9.5, 0, 1088.5, 34.5, 5)});
  CHECK(assumed(worked, "strike.plate.thickness").front() == mm(5));
  const Worked inches = work(R"({"kind": "doorset", "units": "in",
      "frame": {"leaf": {"width": 32, "height": 80}}, "leaf": {"lock": {"bore": {}}}})");
  CHECK(assumed(inches, "strike.plate.thickness").front() == inch(0, 3, 16));
  CHECK(assumed(inches, "strike.plate.length").front() == inch(2, 1, 4));
  // 3/4 in of jamb less 1/4 behind it.
  CHECK(assumed(inches, "strike.mortise.depth").front() == inch(0, 1, 2));
}

TEST_CASE("In a rebated frame hinges and strike are let in to the rebate's bottom") {
  const Assembly wood =
      work(set(kCase, "", R"("stop": {"kind": "rebate", "depth": 12}, "clearance": {"left": 1})"))
          .assembly;
  // 32 - 12 = 20 of jamb beside the leaf, of which 14 leave 6 behind the mortise.
  CHECK(cuts(piece(wood, "right jamb"), "strike-mortise").front() ==
        box(977.5, 14, 12, 1142.5, 30, 26));
  CHECK(cuts(piece(wood, "left jamb"), "gain").front() == box(240, 0, 17, 340, 36, 20));
  // Neither the rebate nor the leaf, 1 mm off, is in the hinges' way.
  for (const Finding& it : check_assembly(wood, Unit::mm))
    if (!it.fitting.empty()) CHECK(it.status == Status::ok);
}

TEST_CASE("A plate that reaches beyond the rebate is found") {
  Assembly wood = work(set(kCase, "", R"("stop": {"kind": "rebate", "depth": 12})")).assembly;
  CHECK(worst(wood, "fitting-clash", "strike").status == Status::ok);
  // The rebate is 45.5 wide; the plate, 11 to 33, is made to reach a step beyond.
  recess(wood, "right jamb", "strike-plate").cuts.front().high[1] = mm(45.5) + kStep;
  CHECK(worst(wood, "fitting-clash", "strike").status == Status::fail);
}

TEST_CASE("A planed lock edge is what the lock is let in to, no clash") {
  CHECK(not_ok(work(set(kCase, R"("lock_bevel": 2)")).assembly) == kNothing);
}

TEST_CASE("Of a pair one leaf has the lock, and the other its strike") {
  const Assembly right = work(pair()).assembly;
  CHECK(cuts(piece(right, "left leaf, right stile"), "faceplate").empty());
  CHECK(cuts(piece(right, "right leaf, left stile"), "faceplate").size() == 1);
  // The stile is 118 wide, its meeting edge the high one.
  CHECK(cuts(piece(right, "left leaf, right stile"), "strike-mortise") ==
        std::vector{box(1037.5, 98, 9.5, 1062.5, 118, 34.5)});
  CHECK(cuts(piece(right, "right jamb"), "strike-mortise").empty());
  CHECK(not_ok(right) == kNothing);
  const Assembly left = work(pair(R"("active": "left")")).assembly;
  CHECK(cuts(piece(left, "left leaf, right stile"), "faceplate").size() == 1);
  CHECK(cuts(piece(left, "right leaf, left stile"), "strike-mortise") ==
        std::vector{box(1037.5, 0, 9.5, 1062.5, 20, 34.5)});
  CHECK(not_ok(left) == kNothing);
}

// ---- made on purpose, and found

TEST_CASE("A strike that stands off its lock is found, and moved back") {
  const auto strike = [](std::string_view height) {
    return set(kCase, R"("strike": {"height": )" + std::string(height) + "}");
  };
  const auto found = [&](std::string_view height) {
    return worst(work(strike(height)).assembly, "strike-across", "lock");
  };
  CHECK(found("1050.5").status == Status::ok);
  CHECK(found("1050.5").value == mm(0.5));
  CHECK(found("1051").status == Status::caution);
  CHECK(found("1052").status == Status::caution);
  CHECK(found("1047.5").value == mm(2.5));
  CHECK(found("1047.5").status == Status::fail);
  const auto remedy = remedy_of(strike("1047.5"), "strike-across");
  REQUIRE(remedy);
  CHECK(remedy->key == "strike.height");
  CHECK(remedy->to == mm(1049.5));
  CHECK(remedy->moves == Moves::up);
}

TEST_CASE("A strike deeper in the jamb than its lock in the leaf is found") {
  Assembly wood = work(set(kCase)).assembly;
  for (const std::string_view kind : {"strike-mortise", "strike-plate"}) {
    Box& cut = recess(wood, "right jamb", kind).cuts.front();
    cut.low[1] += mm(1.5);
    cut.high[1] += mm(1.5);
  }
  CHECK(worst(wood, "strike-across", "lock").value == mm(1.5));
  CHECK(worst(wood, "strike-across", "lock").status == Status::caution);
}

TEST_CASE("A lock without a strike, and a hinge without its gain, are found") {
  Assembly wood = work(set(kCase)).assembly;
  for (Piece& its : wood.pieces)
    if (its.role == Role::jamb) its.features.clear();
  CHECK_FALSE(worst(wood, "strike-across", "lock").measured);
  CHECK_FALSE(worst(wood, "gain-across", "top hinge").measured);
}

TEST_CASE("A gain that does not stand across from the leaf's is found") {
  Assembly wood = work(set(kCase)).assembly;
  Box& cut = recess(wood, "left jamb", "gain").cuts.front();
  cut.low[0] += mm(1);
  cut.high[0] += mm(1);
  CHECK(worst(wood, "gain-across", "bottom hinge").value == mm(1));
  CHECK(worst(wood, "gain-across", "bottom hinge").status == Status::fail);
  CHECK(worst(wood, "gain-across", "top hinge").status == Status::ok);
}

TEST_CASE("A gain that runs into the head's housing is found") {
  // The leaf ends at 2046 of the jamb, the housing begins at 2048.9: 2.9 between them.
  const Assembly wood = work(R"({"kind": "doorset", "units": "mm", "frame": {"jamb_thickness": 32,
      "wall_opening": {"width": 910, "height": 2100}}, "leaf": {"hinges": {"number": 2,
      "length": 100, "from_top": 0}}})")
                            .assembly;
  const Finding found = worst(wood, "fitting-clash", "top hinge");
  CHECK(found.status == Status::fail);
  CHECK(found.value == mm(2.925));
}

TEST_CASE("A strike in the head's housing is found, and how far it must come down") {
  const std::string spec = set(kCase, R"("strike": {"height": 1990})");
  // The plate reaches up to 10 + 1990 + 117.5 = 2117.5 of a jamb 2093 long.
  CHECK(refusal(spec) ==
        "/strike/height: at 1990 mm the strike reaches beyond the right jamb; move it, or make it "
        "smaller");
  const Finding found =
      worst(work(set(kCase, R"("strike": {"height": 1950})")).assembly, "fitting-clash", "strike");
  // To 2077.5, the housing from 2048.925.
  CHECK(found.value == -mm(28.575));
}

TEST_CASE("A strike in the tenon behind a passive leaf's meeting edge is found") {
  // 118 - 105 - 2 = 11 behind the mortise, of which the strike takes all 20.
  const std::string deep =
      R"({"kind": "doorset", "units": "mm", "leaves": 2, "frame": {"exterior": true,
          "leaf": {"width": 1300, "height": 1981}}, "leaf": {"stile_width": 118,
          "rail_widths": [118, {"width": 195, "top": 900}, 230], "tenon_depth": 105,
          "lock": {"height": 960, "bore": {}}}, "strike": {"height": 840}})";
  const Assembly wood = work(deep).assembly;
  const Finding found = worst(wood, "fitting-clash", "strike");
  CHECK(found.status == Status::fail);
  CHECK(found.value < Length());
  CHECK(wood.pieces[found.parts.front()].name == "left leaf, right stile");
  CHECK(wood.pieces[found.parts.back()].name == "left leaf, lock rail");
}

TEST_CASE("A strike of no lock, or through the jamb, is refused") {
  CHECK(refused_at(set("", R"("strike": {"height": 900})")) == "/strike/height");
  CHECK(refused_at(set(kCase, R"("strike": {"mortise": {"depth": 32}})")) ==
        "/strike/mortise/depth");
  CHECK(refused_at(set(kCase, R"("active": "left")")) == "/active");
  CHECK(refused_at(set(kCase, R"("strike": {"hieght": 32})")) == "/strike/hieght");
  CHECK(refused_at(set(R"("lock": {"height": 1050, "case": {"height": 165, "depth": 80,
                          "thickness": 16}})",
                       R"("strike": {"plate": {"length": 100}})")) == "/strike/plate/length");
}

}  // namespace haunch::test
