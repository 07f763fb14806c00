// Shelves under what they carry, by hand: 5 P L3 / (384 E I), and what creep adds.
#include "box_case.h"

namespace haunch::test {
namespace {

std::unique_ptr<Job> of_wood(std::string_view species) {
  return job(R"({"kind": "face-frame", "units": "mm", "size": {"width": 600, "height": 720}, )"
             R"("species": ")" +
             std::string(species) + "\"}");
}

/// A shelf by itself, so long, deep and thick, that carries so many kilograms.
Assembly shelf(Length length, Length deep, Length thick, double kilograms) {
  Assembly wood;
  wood.groups = {{GroupKind::cabinet, "cabinet", {}, {}}};
  wood.size = {length, thick, deep};
  Box lies;
  lies.high = {length, thick, deep};
  const std::size_t piece = add_board(wood, "shelf", Role::shelf, lies, 0);
  wood.pieces[piece].load = kilograms;
  return wood;
}

std::optional<Finding> sag(const Assembly& wood, const Job& job) {
  for (const Finding& it : check_built(wood, job))
    if (it.rule->check == "shelf-sag") return it;
  return {};
}

double in_mm(Length length) {
  return static_cast<double>(length.steps()) / static_cast<double>(mm(1).steps());
}

}  // namespace

TEST_CASE(
    "Red oak 36 x 11 1/4 x 3/4 in under 60 lb of books sags 1.29 mm, and half more with time") {
  // I = 285.75 * 19.05^3 / 12 = 164,622 mm4; 27.2 kg are 267 N;
  // 5 * 267 * 914.4^3 / (384 * 12,500 * 164,622) = 1.29.
  const Assembly wood = shelf(inch(36), inch(11, 1, 4), inch(0, 3, 4), 27.2155);
  const auto found = sag(wood, *of_wood("red oak"));
  REQUIRE(found);
  CHECK(std::abs(in_mm(found->value) - 1.291 * 1.5) < 0.003);
  CHECK(found->status == Status::ok);
  // 914.4 / 384
  CHECK(std::abs(in_mm(*found->ok_max) - 2.381) < 0.001);
}

TEST_CASE("A metre of plywood under 30 kg is seen to sag, with an oak lip on its edge it is not") {
  // E I = 7000 * 300 * 18^3 / 12 = 1.0206e9; 5 * 294.3 * 1e9 / (384 * 1.0206e9) = 3.755; * 1.8.
  Assembly wood = shelf(mm(1000), mm(300), mm(18), 30);
  wood.pieces[0].matter = Matter::board;
  wood.pieces[0].material = "birch plywood";
  const auto job = of_wood("white oak");
  const auto bare = sag(wood, *job);
  REQUIRE(bare);
  CHECK(std::abs(in_mm(bare->value) - 6.758) < 0.005);
  CHECK(bare->status == Status::caution);
  // A lip 18 x 40 flush with the top: the common axis lies 28.91 above its foot, E I = 3.0696e9.
  const std::size_t lip = add_board(wood, "lip", Role::slip, box(0, -22, -18, 1000, 18, 0), 0);
  Joint joint;
  joint.kind = JointKind::planted;
  joint.receives = 0;
  joint.enters = lip;
  joint.heading = {Axis::z, true};
  joint.through = Axis::y;
  joint.has_shoulder = false;
  wood.joints.push_back(joint);
  const auto lipped = sag(wood, *job);
  REQUIRE(lipped);
  CHECK(std::abs(in_mm(lipped->value) - 2.247) < 0.005);
  CHECK(lipped->status == Status::ok);
}

TEST_CASE("Across the grain, and of particleboard, the same shelf sags more") {
  Assembly wood = shelf(mm(600), mm(300), mm(18), 10);
  wood.pieces[0].matter = Matter::board;
  wood.pieces[0].material = "plywood";
  const auto job = of_wood("white oak");
  const Length along = sag(wood, *job)->value;
  wood.pieces[0].place.axes = {Axis::z, Axis::x, Axis::y};
  wood.pieces[0].blank = {mm(300), mm(600), mm(18)};
  CHECK(std::abs(in_mm(sag(wood, *job)->value) - 2 * in_mm(along)) < 0.001);
  // 1600 for 7000, and 1 + 2.25 for 1 + 0.8.
  Assembly chips = shelf(mm(600), mm(300), mm(18), 10);
  chips.pieces[0].matter = Matter::board;
  chips.pieces[0].material = "particleboard";
  CHECK(std::abs(in_mm(sag(chips, *job)->value) - in_mm(along) * 7000 / 1600 * 3.25 / 1.8) < 0.001);
}

TEST_CASE("Of a wood whose stiffness is nowhere printed nothing is said") {
  CHECK_FALSE(sag(shelf(mm(600), mm(300), mm(18), 10), *of_wood("apple")));
  CHECK_FALSE(sag(shelf(mm(600), mm(300), mm(18), 0), *of_wood("white oak")));
}

}  // namespace haunch::test
