// What is bought, measured and done to put cabinets together, from their wood.
#include "assembly_order.h"
#include "hardware.h"
#include "squareness.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

std::string cabinet(std::string_view more) {
  return R"({"kind": "cabinet", "units": "mm", "size": {"width": 600, "height": 800, "depth": 400}, )" +
         std::string(more) + "}";
}

/// The step of the first piece of a role in a group's order.
std::size_t step_of(const Assembly& wood, const GroupOrder& order, Role role) {
  for (std::size_t step = 0; step < order.steps.size(); ++step)
    for (const std::size_t piece : order.steps[step].pieces)
      if (wood.pieces[piece].role == role) return step;
  return order.steps.size();
}
std::size_t last_step_of(const Assembly& wood, const GroupOrder& order, Role role) {
  std::size_t last = order.steps.size();
  for (std::size_t step = 0; step < order.steps.size(); ++step)
    for (const std::size_t piece : order.steps[step].pieces)
      if (wood.pieces[piece].role == role) last = step;
  return last;
}

const GroupOrder& order_of(const Assembly& wood, const std::vector<GroupOrder>& orders,
                           std::string_view path) {
  for (const GroupOrder& order : orders)
    if (wood.groups[order.group].path == path) return order;
  FAIL("no such group");
  return orders.front();
}

std::int64_t count_of(const std::vector<Hardware>& all, std::string_view what) {
  for (const Hardware& its : all)
    if (its.what.starts_with(what)) return its.number;
  return 0;
}

}  // namespace

TEST_CASE("A back in grooves all round is in before the second side closes it") {
  const Assembly wood = test::wood(
      cabinet(R"("case": {"thickness": 18, "joint": "housed"}, "layout": {"front": "none"})"));
  const auto orders = assembly_order(wood);
  const GroupOrder& order = order_of(wood, orders, "case");
  CHECK(order.stuck.empty());
  CHECK(step_of(wood, order, Role::back) < last_step_of(wood, order, Role::side));
  REQUIRE(order.closed_in.size() == 1);
  CHECK(order.closed_in.front().step == last_step_of(wood, order, Role::side));
}

TEST_CASE("A back that is planted or rebated goes on when the case is together") {
  for (const char* fit : {"planted", "rebated"}) {
    const Assembly wood =
        test::wood(cabinet(R"("case": {"thickness": 18, "back": {"fit": ")" + std::string(fit) +
                           R"("}}, "layout": {"front": "none"})"));
    const auto orders = assembly_order(wood);
    const GroupOrder& order = order_of(wood, orders, "case");
    INFO(fit);
    CHECK(order.stuck.empty());
    CHECK(order.closed_in.empty());
    CHECK(step_of(wood, order, Role::back) > last_step_of(wood, order, Role::side));
  }
}

TEST_CASE("Loose shelves are laid in after all that is glued") {
  const Assembly wood = test::wood(
      cabinet(R"("case": {"thickness": 18}, "layout": {"front": "none", "shelves": 2})"));
  const auto orders = assembly_order(wood);
  const GroupOrder& order = order_of(wood, orders, "case");
  REQUIRE(order.steps.size() > 2);
  CHECK(order.steps.back().how == StepHow::laid_in);
  CHECK(order.steps[order.steps.size() - 2].how == StepHow::laid_in);
}

TEST_CASE("A drawer's bottom slides in from behind when its corners are together") {
  const Assembly wood = test::wood(R"({"kind": "drawer", "units": "mm",
      "opening": {"width": 420, "height": 150, "depth": 520}, "species": "European oak"})");
  const auto orders = assembly_order(wood);
  REQUIRE(orders.size() == 1);
  const AssemblyStep& last = orders.front().steps.back();
  CHECK(wood.pieces[last.pieces.front()].role == Role::drawer_bottom);
  CHECK(last.how == StepHow::slides);
  REQUIRE(last.move);
  CHECK(last.move->axis == Axis::z);
  CHECK(!last.move->upwards);
}

TEST_CASE("Three pieces that each hold the next another way cannot be put together") {
  // C goes into A to the left and into B downwards, A into B to the back: whichever is last would
  // have to go two ways at once.
  Assembly wood;
  const Box mortise{{mm(10), mm(10), mm(10)}, {mm(20), mm(20), mm(20)}};
  for (int i = 0; i < 3; ++i) {
    Piece piece;
    piece.blank = {mm(100), mm(100), mm(100)};
    wood.pieces.push_back(piece);
  }
  const auto join = [&](std::size_t receives, std::size_t enters, Heading heading) {
    Feature feature;
    feature.kind = FeatureKind::mortise;
    feature.joints = {wood.joints.size()};
    feature.cuts = {mortise};
    wood.pieces[receives].features.push_back(feature);
    Joint joint;
    joint.receives = receives;
    joint.enters = enters;
    joint.heading = heading;
    wood.joints.push_back(joint);
  };
  join(0, 2, {Axis::x, false});
  join(1, 2, {Axis::y, false});
  const auto before = assembly_order(wood);
  CHECK(before.front().stuck.empty());
  join(1, 0, {Axis::z, true});
  const auto orders = assembly_order(wood);
  CHECK(orders.front().stuck.size() == 3);
}

TEST_CASE(
    "The diagonals of a case 3 to 4 are 5, and a thousandth of that is what they may differ") {
  const Assembly wood =
      test::wood(cabinet(R"("case": {"thickness": 18}, "layout": {"front": "none"})"));
  const auto all = rectangles_of(wood);
  REQUIRE(all.size() == 2);
  CHECK(all[0].what == "case outside");
  CHECK(all[0].diagonal() == mm(1000));
  CHECK(all[0].may_differ() == mm(1));
  // Inside 564 wide; 764 high.
  CHECK(all[1].width == mm(564));
  CHECK(all[1].height == mm(764));
}

TEST_CASE("A leaf by itself has no rectangle to be told, in a cabinet it has") {
  CHECK(rectangles_of(test::wood(house_mm())).empty());
  const auto all = rectangles_of(test::wood(cabinet(R"("layout": {"front": "door"})")));
  CHECK(all.back().what == "door 1");
}

TEST_CASE("Hardware is counted from the wood: runners in pairs, four pins a shelf, cups") {
  const auto all = hardware_of(test::wood(cabinet(R"("fronts": {"hinges": {"number": 2},
      "drawer": {"runner": {"side": 12.7, "length": 300}}},
      "layout": {"rows": [{"front": "drawer", "height": 150}, {"front": "door", "shelves": 1}]})")));
  CHECK(count_of(all, "pairs of runners") == 1);
  CHECK(count_of(all, "shelf pins") == 4);
  CHECK(count_of(all, "hinges with a cup") == 2);
}

TEST_CASE("Drawers on wooden runners ask for none of metal") {
  const auto all = hardware_of(
      test::wood(cabinet(R"("layout": {"rows": [{"front": "drawer"}, {"front": "drawer"}]})")));
  CHECK(count_of(all, "pairs of runners") == 0);
}

}  // namespace haunch::test
