#include "doorset_leaf.h"

#include <algorithm>
#include <utility>

namespace haunch {
namespace {

Value text(std::string words) {
  Value value;
  value.kind = Value::Kind::text;
  value.text = std::move(words);
  return value;
}

Value length(Length size) {
  return text(decimal(size, Unit::mm) + " mm");
}

Value sizes(std::initializer_list<std::pair<const char*, Length>> members) {
  Value value;
  value.kind = Value::Kind::object;
  for (const auto& [key, size] : members)
    value.entries.push_back({key, 0, length(size)});
  return value;
}

void add(Value& document, const char* key, Value value) {
  document.entries.push_back({key, 0, std::move(value)});
}

void add_pair(Value& document, const PairKeys& pair) {
  Value leaves;
  leaves.kind = Value::Kind::number;
  leaves.text = "2";
  add(document, "leaves", std::move(leaves));
  add(document, "meeting_clearance", length(pair.clearance));
  add(document, "meeting_lap", length(pair.lap));
  if (pair.lap > Length()) add(document, "meeting_rest", length(pair.rest));
  add(document, "active", text(pair.right_first ? "right" : "left"));
}

}  // namespace

Value leaf_document(const Value* leaf, const LeafRoom& room, const ItemHead& head) {
  Value document;
  document.kind = Value::Kind::object;
  if (leaf != nullptr) document = *leaf;
  add(document, "kind", text("door"));
  if (head.units) add(document, "units", text(std::string(unit_word(*head.units))));
  if (!head.species.empty()) add(document, "species", text(head.species));
  if (room.pair) add_pair(document, *room.pair);
  const Sides& lip = room.lip;
  if (lip.across() + lip.upright() > Length()) {
    add(document, "meets", text("rebate"));
    add(document, "lap",
        sizes({{"left", lip.left}, {"right", lip.right}, {"head", lip.head}, {"foot", lip.foot}}));
  }
  add(document, "opening",
      sizes({{"width", room.width - lip.across()}, {"height", room.height - lip.upright()}}));
  add(document, "clearance", length(Length()));
  return document;
}

bool hangs_right(const Value* leaf, const Value* shop) {
  for (const Value* document : {leaf, shop})
    if (const Value* hangs = document != nullptr ? document->find("hangs") : nullptr;
        hangs != nullptr)
      return hangs->text == "right";
  return false;
}

bool leaf_speaks_of(const Value& leaf, const Value* shop, std::string_view key) {
  return leaf.find(key) != nullptr || (shop != nullptr && shop->find(key) != nullptr);
}

Problem of_the_set(Problem problem) {
  for (const std::string_view key : {"/meeting_clearance", "/meeting_lap", "/meeting_rest"})
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

void bevel_lock_edge(Assembly& set, const Hanging& hung, Length bevel) {
  if (bevel == Length()) return;
  const bool at_right = !hung.hinged_right;
  Piece& stile = set.pieces[outermost(set, hung.first, hung.count, at_right)];
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
