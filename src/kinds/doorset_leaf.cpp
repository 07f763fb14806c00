#include "doorset_leaf.h"

#include <algorithm>
#include <utility>

#include "marks.h"

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

/// The right leaf of a pair is the left one seen in a mirror: what it says of its sides changes
/// places.
void mirror(Value& document) {
  for (Entry& entry : document.entries) {
    if (entry.key != "stile_width") continue;
    for (Entry& side : entry.value.entries)
      side.key = side.key == "left" ? "right" : side.key == "right" ? "left" : side.key;
  }
}

void shift(Feature& feature, std::size_t joints) {
  for (std::size_t& joint : feature.joints)
    joint += joints;
}

}  // namespace

Value leaf_document(const Value* leaf, const LeafRoom& room, const ItemHead& head) {
  Value document;
  document.kind = Value::Kind::object;
  if (leaf != nullptr) document = *leaf;
  if (room.right) mirror(document);
  const auto add = [&](const char* key, Value value) {
    document.entries.push_back({key, 0, std::move(value)});
  };
  add("kind", text("door"));
  if (head.units) add("units", text(std::string(unit_word(*head.units))));
  if (!head.species.empty()) add("species", text(head.species));
  const bool fitted = document.find("hinges") != nullptr || document.find("lock") != nullptr;
  if (room.of_pair && fitted) add("hangs", text(room.right ? "right" : "left"));
  add("opening", sizes({{"width", room.width}, {"height", room.height}}));
  add("clearance", length(Length()));
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
  const bool made = problem.path.starts_with("/opening") || problem.path.starts_with("/clearance");
  problem.path = made ? "/frame" : "/leaf" + problem.path;
  if (made) problem.message = "the leaf that it leaves: " + problem.message;
  return problem;
}

std::size_t edge_stile(const Assembly& assembly, std::size_t first, std::size_t count,
                       bool at_right) {
  const auto out = [&](const Piece& piece) {
    const Box blank = placed_blank(piece);
    return at_right ? blank.high[0] : -blank.low[0];
  };
  const auto begin = assembly.pieces.begin() + static_cast<std::ptrdiff_t>(first);
  const auto outermost =
      std::max_element(begin, begin + static_cast<std::ptrdiff_t>(count),
                       [&](const Piece& a, const Piece& b) { return out(a) < out(b); });
  return static_cast<std::size_t>(outermost - assembly.pieces.begin());
}

void bevel_lock_edge(Assembly& leaf, bool at_right, Length bevel) {
  if (bevel == Length()) return;
  Piece& stile = leaf.pieces[edge_stile(leaf, 0, leaf.pieces.size(), at_right)];
  const Length none;
  const Length width = stile.blank[1];
  const Length back = stile.blank[2];
  Prism prism{0, none, stile.blank[0], {}};
  if (at_right)
    prism.outline = {{width, none}, {width, back}, {width - bevel, back}};
  else
    prism.outline = {{none, none}, {bevel, back}, {none, back}};
  Feature feature{"bevel", {}, {}, {{"width", bevel}, {"depth", back}}};
  feature.prisms.push_back(std::move(prism));
  stile.features.push_back(std::move(feature));
}

void hang(Assembly& set, Assembly leaf, const Triple& place, const std::string& before_names,
          Hanging hung) {
  const std::size_t pieces = set.pieces.size();
  const std::size_t joints = set.joints.size();
  hung.first = pieces;
  hung.count = leaf.pieces.size();
  for (Piece& piece : leaf.pieces) {
    piece.mark = piece_mark(set.pieces.size());
    piece.name = before_names + piece.name;
    for (std::size_t axis = 0; axis < 3; ++axis)
      piece.place.origin[axis] += place[axis];
    for (Feature& feature : piece.features)
      shift(feature, joints);
    set.pieces.push_back(std::move(piece));
  }
  for (Joint& joint : leaf.joints) {
    joint.receives += pieces;
    joint.enters += pieces;
    set.joints.push_back(std::move(joint));
  }
  set.hung.push_back(hung);
}

}  // namespace haunch
