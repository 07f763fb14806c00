// Where joints are cut to be seen, and how they are taken apart.
#include "joint_views.h"

#include <set>

#include "../setups/examples.h"
#include "views.h"

namespace haunch::test {
namespace {

const JointView& view_with(const std::vector<JointView>& views, std::size_t joint) {
  for (const JointView& view : views)
    if (std::count(view.joints.begin(), view.joints.end(), joint) > 0) return view;
  throw std::invalid_argument("the joint is shown nowhere");
}

std::size_t joint_number(const Assembly& wood, std::string_view receives, std::string_view enters) {
  for (std::size_t joint = 0; joint < wood.joints.size(); ++joint)
    if (wood.pieces[wood.joints[joint].receives].name == receives &&
        wood.pieces[wood.joints[joint].enters].name == enters)
      return joint;
  throw std::invalid_argument("there is no such joint");
}

std::vector<DrawnWood> some_of(const std::vector<DrawnWood>& all,
                               const std::vector<std::size_t>& pieces) {
  std::vector<DrawnWood> some;
  for (const std::size_t piece : pieces)
    some.push_back(all[piece]);
  return some;
}

bool cuts(const LineView& view, std::size_t piece) {
  return std::any_of(view.areas.begin(), view.areas.end(),
                     [&](const CutArea& area) { return area.piece == piece; });
}

}  // namespace

TEST_CASE("A panelled door has a joint for each width of rail, and its left and right are alike") {
  const Assembly door = example("side-door.json");
  const auto views = joint_views(door);
  std::vector<std::string> shown;
  for (const JointView& view : views) {
    const Joint& joint = door.joints[view.joints.front()];
    shown.push_back(door.pieces[joint.receives].name + " <- " + door.pieces[joint.enters].name +
                    ", " + std::to_string(view.joints.size()));
  }
  CHECK(shown == Words{"left stile <- top rail, 2", "left stile <- lock rail, 2",
                       "left stile <- bottom rail, 2", "top rail <- muntin, tier 1, 1",
                       "lock rail <- muntin, tier 1, 3", "left stile <- panel 1, tier 1, 8",
                       "top rail <- panel 1, tier 1, 8"});
}

TEST_CASE("A rail that laps the end of a stile is not drawn as one that laps its middle") {
  const Assembly cupboard = example("sieve-cupboard.json");
  const auto views = joint_views(cupboard);
  const JointView& top = view_with(views, joint_number(cupboard, "left stile", "top rail"));
  const JointView& middle = view_with(views, joint_number(cupboard, "left stile", "middle rail"));
  CHECK(top.joints != middle.joints);
  CHECK(middle.joints.size() == 2);
}

TEST_CASE("A rail in a narrower stile is drawn by itself: less wood is left behind its mortise") {
  const Assembly pair = example("cooling-room.json");
  for (const JointView& view : joint_views(pair)) {
    std::set<Length> its;
    for (const std::size_t joint : view.joints) {
      const Joint& it = pair.joints[joint];
      if (it.kind == JointKind::mortise_and_tenon) its.insert(pair.pieces[it.receives].blank[1]);
    }
    CHECK(its.size() <= 1);
  }
}

TEST_CASE("A tenon is cut through the middle of its thickness, of its width and of its depth") {
  const Assembly door = example("side-door.json");
  const std::size_t number = joint_number(door, "left stile", "top rail");
  const Joint& joint = door.joints[number];
  const auto views = joint_views(door);
  const JointView& view = view_with(views, number);
  REQUIRE(view.sections.size() == 3);
  const Box rail = placed_blank(door.pieces[joint.enters]);
  const CutPlane& width = view.sections[0].plane;
  CHECK(width.across == Axis::z);
  CHECK(width.at == joint.tenon->from_face + floor_half(joint.tenon->thickness));
  const CutPlane& thickness = view.sections[1].plane;
  CHECK(thickness.across == Axis::y);
  CHECK(thickness.at ==
        rail.low[1] + joint.tenon->each[0].from_edge + floor_half(joint.tenon->each[0].width));
  CHECK(view.sections[2].plane.across == Axis::x);
  // Whole stile, tenon and shoulder are seen.
  const Box& region = *view.sections[0].region;
  const Box stile = placed_blank(door.pieces[joint.receives]);
  CHECK(region.low[0] == stile.low[0]);
  CHECK(region.high[0] > stile.high[0]);
  CHECK(region.low[1] < rail.low[1]);
}

TEST_CASE("A joint is taken apart as far as it reaches in, and seen from where its mortise is") {
  const Assembly door = example("side-door.json");
  const std::size_t number = joint_number(door, "left stile", "top rail");
  const auto views = joint_views(door);
  const TakenApart& apart = view_with(views, number).apart;
  REQUIRE(apart.pieces.size() == 2);
  CHECK(apart.pieces[0].by == Triple{});
  CHECK(apart.pieces[1].by == Triple{door.joints[number].tenon->depth + mm(20), mm(0), mm(0)});
  CHECK(apart.nearest.right);
  const std::size_t muntin = joint_number(door, "top rail", "muntin, tier 1");
  CHECK_FALSE(view_with(views, muntin).apart.nearest.above);
}

TEST_CASE("Tails come out across their thickness, pins and wedges as they were driven") {
  const Assembly drawer = example("bread-drawer.json");
  const std::size_t corner = joint_number(drawer, "front", "left side");
  const auto of_drawer = joint_views(drawer);
  CHECK(view_with(of_drawer, corner).apart.pieces[1].by[0] < Length());
  CHECK(view_with(of_drawer, corner).apart.pieces[1].by[2] == Length());
  const Assembly store = example("fuel-store.json");
  const std::size_t rail = joint_number(store, "left stile", "top rail");
  const auto of_store = joint_views(store);
  const JointView& pinned = view_with(of_store, rail);
  REQUIRE(pinned.pieces.size() == 3);
  CHECK(store.pieces[pinned.pieces[2]].role == Role::pin);
  CHECK(pinned.apart.pieces[2].by[2] < Length());
}

TEST_CASE("Of every example each joint is shown once, and cut where both pieces are") {
  for (const Assembly& wood : all_examples()) {
    const auto drawn = drawn_of(wood);
    std::set<std::size_t> shown;
    for (const JointView& view : joint_views(wood)) {
      const Joint& joint = wood.joints[view.joints.front()];
      INFO(word_of(joint.kind) << ", " << wood.pieces[joint.receives].name << ", "
                               << wood.pieces[joint.enters].name);
      for (const std::size_t other : view.joints)
        CHECK(shown.insert(other).second);
      REQUIRE_FALSE(view.sections.empty());
      bool receives = false, enters = false;
      for (const CutAway& cut : view.sections) {
        const LineView lines = section_of(some_of(drawn, view.in_sections), cut);
        receives = receives || cuts(lines, joint.receives);
        enters = enters || cuts(lines, joint.enters);
      }
      CHECK(receives);
      CHECK(enters);
    }
  }
}

TEST_CASE("Pieces taken apart stand clear of each other") {
  for (const Assembly& wood : all_examples()) {
    const auto drawn = drawn_of(wood);
    for (const JointView& view : joint_views(wood)) {
      std::vector<DrawnWood> parts;
      for (const MovedPiece& moved : view.apart.pieces)
        if (auto part = within(drawn[moved.piece], view.apart.region)) {
          move_by(*part, moved.by);
          parts.push_back(std::move(*part));
        }
      REQUIRE(parts.size() >= 2);
      INFO(joint_id(view.joints.front()) << " of " << wood.pieces.size());
      CHECK(depth_of_common(parts[0].wood, parts[1].wood) == Length());
      CHECK_FALSE(
          view_of(parts, slanted_sight(view.apart.nearest), HiddenLines::left_out).lines.empty());
    }
  }
}

}  // namespace haunch::test
