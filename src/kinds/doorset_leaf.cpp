#include "doorset_leaf.h"

#include <utility>

namespace haunch {
namespace {

void set_pair(Spec& leaf, const PairKeys& pair) {
  leaf.set("leaves", 2);
  leaf.set("meeting_clearance", pair.clearance);
  leaf.set("meeting_lap", pair.lap);
  if (pair.lap > Length()) leaf.set("meeting_rest", pair.rest);
  leaf.set("active", static_cast<int>(pair.right_first ? Side::right : Side::left));
}

void set_lip(Spec& leaf, const Sides& lip) {
  leaf.set("meets", static_cast<int>(Meets::rebate));
  leaf.set("lap.left", lip.left);
  leaf.set("lap.right", lip.right);
  leaf.set("lap.head", lip.head);
  leaf.set("lap.foot", lip.foot);
}

}  // namespace

Spec leaf_in_room(Spec leaf, const LeafRoom& room) {
  if (room.pair) set_pair(leaf, *room.pair);
  const Sides& lip = room.lip;
  if (lip.across() + lip.upright() > Length()) set_lip(leaf, lip);
  leaf.set("opening.width", room.width - lip.across());
  leaf.set("opening.height", room.height - lip.upright());
  for (const Key side : std::initializer_list<Key>{"clearance.left", "clearance.right",
                                                   "clearance.head", "clearance.foot"})
    leaf.set(side, Length());
  return leaf;
}

void take_from_whole(Spec& leaf, const Spec& whole, std::initializer_list<Key> groups) {
  leaf.woods = whole.woods;
  leaf.one_setting = whole.one_setting;
  for (const auto& [key, value] : whole.all())
    for (const Key group : groups)
      if (value.stated && (key == group || key.is_below(group))) leaf.edit(key) = value;
}

Problem of_the_set(Problem problem) {
  for (const std::string_view key :
       {"", "/species", "/meeting_clearance", "/meeting_lap", "/meeting_rest"})
    if (problem.path == key) return problem;
  if (problem.path.starts_with("/lap")) {
    problem.path = "/frame/lip" + problem.path.substr(4);
    return problem;
  }
  const bool made = problem.path.starts_with("/opening") || problem.path.starts_with("/clearance");
  problem.path = made ? "/frame" : "/leaf" + problem.path;
  if (made) problem.message = "the leaf that it leaves: " + problem.message;
  return problem;
}

void bevel_lock_edge(Assembly& set, const Fit& hung, Length bevel) {
  if (bevel == Length()) return;
  const bool at_right = !hung.swing()->at_high;
  Piece& stile = set.pieces[outermost(set, hung.group, at_right)];
  const Length none;
  const Length width = stile.blank[1];
  const Length back = stile.blank[2];
  Prism prism{0, none, stile.blank[0], {}};
  if (at_right)
    prism.outline = {{width, none}, {width, back}, {width - bevel, back}};
  else
    prism.outline = {{none, none}, {bevel, back}, {none, back}};
  Feature feature{FeatureKind::bevel, {}, {}, {{SizeName::width, bevel}, {SizeName::depth, back}}};
  feature.prisms.push_back(std::move(prism));
  stile.features.push_back(std::move(feature));
}

}  // namespace haunch
