// Frames with their leaves, set out and checked together, by hand.
#include <cmath>

#include "findings.h"
#include "tolerance.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A lining in a wall's opening of 910 x 2100 mm and its leaf of 840 x 2043.
std::string set_mm(std::string_view more = {}, std::string_view frame = {}) {
  return R"({"kind": "doorset", "units": "mm", "frame": {"wall_opening": {"width": 910, "height": 2100})" +
         std::string(frame.empty() ? "" : ", ") + std::string(frame) + "}" +
         std::string(more.empty() ? "" : ", ") + std::string(more) + "}";
}

/// Millimetres, from a length.
double in_mm(Length length) {
  return static_cast<double>(length.steps()) / Length::kStepsPerMm;
}

}  // namespace

TEST_CASE("The leaf hangs in its frame with the gaps that the frame leaves it") {
  const Assembly wood = work(set_mm()).assembly;
  // 25 of jamb and 3 of gap; 10 above the floor; flush with the face.
  CHECK(piece(wood, "left stile").place.origin == Triple{mm(28), mm(10), mm(0)});
  CHECK(piece(wood, "left stile").blank[0] == mm(2043));
  CHECK(finding(wood, "gap-left").value == mm(3));
  CHECK(finding(wood, "gap-right").value == mm(3));
  CHECK(finding(wood, "gap-head").value == mm(3));
  CHECK(finding(wood, "gap-foot").value == mm(10));
  CHECK(finding(wood, "gap-stop").value == mm(1.5));
  CHECK(failing(wood) == kNothing);
}

TEST_CASE("The set says how its leaf is worked, and not the leaf") {
  const auto its = job(set_mm(R"("work": "nc", "tolerance": {"mortise_width": 0.05,
                                 "one_setting": ["groove_width"]}, "fit": {"max": 0.3})"));
  REQUIRE(its->tolerances);
  CHECK(its->tolerances->work == Work::nc);
  CHECK(its->tolerances->of(Dimension::mortise_width).plus_minus == mm(0.05));
  CHECK_FALSE(its->tolerances->of(Dimension::mortise_width).one_setting);
  CHECK(its->tolerances->of(Dimension::groove_width).one_setting);
  CHECK(its->tolerances->fit.max == mm(0.3));
  CHECK(refusal(set_mm(R"("leaf": {"work": "router"})")) ==
        "/leaf/work: does not belong to the leaf of a set: the set has it; take it out");
  CHECK(refused_at(set_mm(R"("fit": {"min": 0.4})")) == "/fit/min");
}

TEST_CASE("As many leaves of a set go together as of the leaf alone, and the gaps vary") {
  const auto forecast = [](const Job& of) {
    return forecast_fits(of.work().assembly, *of.tolerances, Unit::mm);
  };
  const auto set = job(set_mm(R"("work": "router")"));
  const FitForecast its = forecast(*set);
  const Box leaf = placed_blanks(set->work().assembly, 2);
  const auto alone =
      job(door_spec(R"("units": "mm", "opening": {"width": )" + decimal(leaf.extent(0), Unit::mm) +
                        R"(, "height": )" + decimal(leaf.extent(1), Unit::mm) + "}",
                    R"("work": "router", "clearance": 0)"));
  CHECK(its.leaf.share == forecast(*alone).leaf.share);
  CHECK(its.width.size.nominal == leaf.extent(0));
  // The head between the jambs to 0.25, and the leaf of two stiles and a rail to 0.75.
  REQUIRE(its.across);
  CHECK(its.across->size.nominal == mm(6));
  CHECK(its.across->size.worst_max == mm(7));
}

TEST_CASE("A set in an old opening tells of its paint once") {
  const auto told = [](const std::string& spec) {
    std::size_t number = 0;
    for (const Caution& caution : work(spec).cautions)
      number += caution.about == "old paint" ? 1U : 0U;
    return number;
  };
  CHECK(told(set_mm()) == 0);
  CHECK(told(set_mm({}, R"("existing_opening": true)")) == 1);
  CHECK(told(set_mm(R"("leaf": {"existing_opening": true})", R"("existing_opening": true)")) == 1);
}

TEST_CASE("Gaps are measured in the wood: a leaf that is moved has others") {
  Assembly wood = work(set_mm()).assembly;
  for (const std::size_t i : pieces_of(wood, hangings_of(wood).front().group))
    for (std::size_t axis = 0; axis < 3; ++axis)
      wood.pieces[i].place.origin[axis] += mm(0.5);
  CHECK(finding(wood, "gap-left").value == mm(3.5));
  CHECK(finding(wood, "gap-right").value == mm(2.5));
  CHECK(finding(wood, "gap-head").value == mm(2.5));
  CHECK(finding(wood, "gap-foot").value == mm(10.5));
  CHECK(finding(wood, "gap-stop").value == mm(1));
  CHECK(failing(wood) ==
        std::vector<std::string>{"gap-left", "gap-right", "gap-head", "gap-foot", "gap-stop"});
}

TEST_CASE("Every piece of a set has a mark of its own, and joints name its pieces") {
  const Assembly wood = work(set_mm(R"("leaf": {"panels": 4})")).assembly;
  for (std::size_t i = 0; i < wood.pieces.size(); ++i)
    for (std::size_t j = i + 1; j < wood.pieces.size(); ++j)
      CHECK(wood.pieces[i].mark != wood.pieces[j].mark);
  CHECK(joint(wood, "left stile", "top rail").kind == JointKind::mortise_and_tenon);
  for (const Piece& its : wood.pieces)
    for (const Feature& feature : its.features)
      for (const std::size_t number : feature.joints)
        CHECK((&wood.pieces[wood.joints[number].receives] == &its ||
               &wood.pieces[wood.joints[number].enters] == &its));
}

TEST_CASE("The leaf's thickness makes the rebate and the place of the stops") {
  const Assembly planted = work(set_mm(R"("leaf": {"thickness": 40})")).assembly;
  CHECK(piece(planted, "left stop").place.origin[2] == mm(41.5));
  const Assembly rebated =
      work(set_mm(R"("leaf": {"thickness": 40})", R"("stop": {"kind": "rebate"})")).assembly;
  CHECK(cuts(piece(rebated, "left jamb"), "rebate").front().high[1] == mm(41.5));
  CHECK(finding(rebated, "gap-stop").value == mm(1.5));
}

// The housing of the head, 10 deep, ends where the lip does: 13 less 3 of clearance over the jamb.
TEST_CASE("A lip that ends where the head's housing does passes the jamb it lies on") {
  const Assembly set = work(R"({"kind": "doorset", "units": "mm", "leaf": {"thickness": 40},
      "frame": {"rule": "din-18101-rebated", "wall_opening": {"width": 885, "height": 2005}}})")
                           .assembly;
  CHECK(finding(set, "swing-room").status == Status::ok);
  CHECK(failing(set) == kNothing);
}

// ---- pairs

TEST_CASE("A pair shares its room evenly, less the gap between the two") {
  const Worked worked = work(
      R"({"kind": "doorset", "units": "mm", "leaves": 2, "meeting_clearance": 4,
          "frame": {"leaf": {"width": 1200, "height": 1981}, "exterior": true},
          "leaf": {"stile_width": {"left": 95, "right": 110}}})");
  const Assembly& wood = worked.assembly;
  REQUIRE(hangings_of(wood).size() == 2);
  // (1200 - 4) / 2 = 598 each. 57 - 12 + 3 = 48 to the left leaf, 48 + 598 + 4 = 650 to the right.
  CHECK(piece(wood, "left leaf, left stile").place.origin[0] == mm(48));
  CHECK(piece(wood, "right leaf, left stile").place.origin[0] == mm(650));
  // Hanging stiles 95, meeting stiles 110.
  CHECK(piece(wood, "left leaf, right stile").blank[1] == mm(110));
  CHECK(piece(wood, "right leaf, left stile").blank[1] == mm(110));
  CHECK(finding(wood, "gap-right", 0).value == mm(4));
  CHECK(finding(wood, "gap-left", 1).value == mm(4));
  CHECK(failing(wood) == kNothing);
}

// ---- swing

TEST_CASE("The far corner of a leaf passes by what its circle leaves") {
  // Pin at 25 + 1.5, 6 before the face. Lock edge 841.5 from it, the corner 50 deep behind the pin:
  // it comes out of the face at sqrt(841.5^2 + 50^2 - 6^2) = 842.963; the jamb stands at 844.5.
  const double reach = std::sqrt(841.5 * 841.5 + 50.0 * 50 - 6.0 * 6);
  const Finding room = finding(work(set_mm()).assembly, "swing-room");
  CHECK(std::abs(in_mm(room.value) - (844.5 - reach)) < 1e-5);
  CHECK(room.status == Status::ok);
}

TEST_CASE("A narrow thick leaf strikes the jamb unless its lock edge is bevelled") {
  const std::string narrow =
      R"({"kind": "doorset", "units": "mm", "frame": {"leaf": {"width": 350, "height": 1981}},
          "leaf": {"thickness": 54, "stile_width": 80}, "lock_bevel": )";
  // sqrt(351.5^2 + 60^2 - 36) - 354.5 = 2.03: it strikes by that much.
  const Finding square = finding(work(narrow + "0}").assembly, "swing-room");
  CHECK(square.status == Status::fail);
  CHECK(std::abs(in_mm(square.value) - (354.5 - std::sqrt(351.5 * 351.5 + 3564))) < 1e-5);
  // With b off its back the corner is at 351.5 - b; 354^2 = (351.5 - b)^2 + 3564 leaves half a
  // millimetre at b = 351.5 - 348.93 = 2.57.
  CHECK(finding(work(narrow + "2.5}").assembly, "swing-room").status == Status::caution);
  const Assembly bevelled = work(narrow + "2.6}").assembly;
  CHECK(finding(bevelled, "swing-room").status == Status::ok);
  CHECK(failing(bevelled) == kNothing);
  CHECK(finding(bevelled, "gap-right").value == mm(3));
}

TEST_CASE("A leaf hung at the right swings alike") {
  const std::string keys = R"("leaf": {"hangs": "right"}, "lock_bevel": 2)";
  const Assembly right = work(set_mm(keys)).assembly;
  const Assembly left = work(set_mm(R"("lock_bevel": 2)")).assembly;
  CHECK(finding(right, "swing-room").value == finding(left, "swing-room").value);
  CHECK(hangings_of(right).front().swing()->pin[0] == mm(869.5));  // 896 - 25 - 1.5
  CHECK(piece(right, "left stile").features.back().kind == FeatureKind::bevel);
  CHECK(piece(left, "right stile").features.back().kind == FeatureKind::bevel);
}

// ---- hinges

TEST_CASE("Hinges are let in to the jamb across from the leaf's") {
  const Assembly wood =
      work(set_mm(
               R"("leaf": {"hinges": {"number": 2, "length": 100, "width": 35, "thickness": 3}})"))
          .assembly;
  // The lowest hinge stands 230 above the leaf's foot, which is 10 above the floor.
  const std::vector<Box> gains = cuts(piece(wood, "left jamb"), "gain");
  REQUIRE(gains.size() == 2);
  CHECK(gains.front() == box(240, 0, 22, 340, 35, 25));
  CHECK(cuts(piece(wood, "right jamb"), "gain").empty());
  CHECK(failing(wood) == kNothing);
}

TEST_CASE("A pair has hinges in both jambs") {
  const Assembly wood = work(R"({"kind": "doorset", "units": "mm", "leaves": 2,
              "frame": {"leaf": {"width": 1300, "height": 1981}},
              "leaf": {"hinges": {"number": 3}}})")
                            .assembly;
  CHECK(cuts(piece(wood, "left jamb"), "gain").size() == 3);
  CHECK(cuts(piece(wood, "right jamb"), "gain").size() == 3);
}

// ---- refused

TEST_CASE("What the set says, its leaf may not") {
  CHECK(refused_at(set_mm(R"("leaf": {"opening": {"width": 9, "height": 9}, "clearance": 2})")) ==
        "/leaf/opening\n/leaf/clearance");
  CHECK(refused_at(set_mm("", R"("leaf": {"thickness": 40})")) == "/frame/leaf/thickness");
  CHECK(refused_at(set_mm(R"("meeting_clearance": 3)")) == "/meeting_clearance");
  CHECK(refused_at(set_mm(R"("leaves": 2, "leaf": {"hangs": "left"})")) == "/leaf/hangs");
  CHECK(refused_at(set_mm(R"("leaves": 3)")) == "/leaves");
  CHECK(refused_at(set_mm("", R"("fire_rated": true)")) == "/frame/fire_rated");
  CHECK(refused_at(set_mm("", R"("lip": 13, "reveal": 2)")) == "/frame/reveal");
  CHECK(refused_at(R"({"kind": "doorset", "units": "mm"})").empty());
  CHECK(refusal(R"({"kind": "doorset", "units": "mm"})").starts_with(": \"frame\" is missing"));
}

TEST_CASE("Faults of frame and leaf are told at their places in the set") {
  CHECK(refused_at(set_mm(R"("leaf": {"stile_width": 500})")) == "/leaf/stile_width");
  CHECK(refused_at(set_mm(R"("leaf": {"stile_widht": 100})")) == "/leaf/stile_widht");
  CHECK(refused_at(set_mm("", R"("jamb_widht": 100)")) == "/frame/jamb_widht");
  CHECK(refused_at(set_mm("", R"("jamb_width": 60)")) == "/frame/jamb_width");
  CHECK(refused_at(R"({"kind": "doorset", "units": "mm", "frame": {"leaf": {"width": 840}}})") ==
        "/frame");
}

TEST_CASE("A set's levers are those of its frame and its leaf, and each may be set") {
  const auto its = job(set_mm());
  bool of_frame = false;
  bool of_leaf = false;
  for (const Lever& lever : its->levers()) {
    INFO(lever.key);
    of_frame = of_frame || lever.key == "frame.jamb_thickness";
    of_leaf = of_leaf || lever.key == "leaf.stile_width";
    const auto changed = its->with(lever, lever.value + lever.step);
    const std::vector<Lever> after = changed->levers();
    const auto found = std::find_if(after.begin(), after.end(),
                                    [&](const Lever& it) { return it.key == lever.key; });
    REQUIRE(found != after.end());
    CHECK(found->value == lever.value + lever.step);
  }
  CHECK(of_frame);
  CHECK(of_leaf);
}

TEST_CASE("What the frame makes of its leaf is not told as given") {
  const auto its = job(set_mm(R"("leaf": {"thickness": 40, "lip_thickness": 14.5})",
                              R"("rule": "uk-doorset", "lip": 13, "stop": {"kind": "rebate"})"));
  std::vector<std::string> of_leaf;
  for (const Given& given : its->given)
    if (given.key.starts_with("leaf.")) of_leaf.push_back(given.key);
  CHECK(of_leaf == std::vector<std::string>{"leaf.thickness", "leaf.lip_thickness"});
}

}  // namespace haunch::test
