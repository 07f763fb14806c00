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

/// The upright at one edge of a leaf.
Piece& edge_stile(Assembly& leaf, bool at_right) {
  const auto out = [&](const Piece& piece) {
    const Box blank = placed_blank(piece);
    return at_right ? blank.high[0] : -blank.low[0];
  };
  return *std::max_element(leaf.pieces.begin(), leaf.pieces.end(),
                           [&](const Piece& a, const Piece& b) { return out(a) < out(b); });
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

Problem of_the_set(Problem problem) {
  const bool made = problem.path.starts_with("/opening") || problem.path.starts_with("/clearance");
  problem.path = made ? "/frame" : "/leaf" + problem.path;
  if (made) problem.message = "the leaf that it leaves: " + problem.message;
  return problem;
}

void bevel_lock_edge(Assembly& leaf, bool at_right, Length bevel) {
  if (bevel == Length()) return;
  Piece& stile = edge_stile(leaf, at_right);
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

void let_in_jamb(Assembly& set, Piece& jamb, Length jamb_face) {
  const Hanging& hung = set.hung.back();
  for (std::size_t number = hung.first; number < hung.first + hung.count; ++number) {
    const Piece& piece = set.pieces[number];
    for (const Feature& feature : piece.features) {
      if (feature.kind != "gain" || feature.cuts.empty()) continue;
      Box box = placed(feature.cuts.front(), piece.place);
      const Length depth = box.extent(0);
      box.low[0] = hung.hinged_right ? jamb_face : jamb_face - depth;
      box.high[0] = box.low[0] + depth;
      const Box cut = in_own_axes(box, jamb.place);
      jamb.features.push_back({"gain",
                               {},
                               {cut},
                               {{"length", cut.extent(0)},
                                {"width", cut.extent(1)},
                                {"depth", cut.extent(2)},
                                {"from_foot", cut.low[0]},
                                {"from_face", cut.low[1]}}});
    }
  }
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
