#include "labels.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <utility>

#include "datum.h"
#include "mates.h"

namespace haunch {
namespace {

/// The way out of a surface.
Heading outwards(Surface surface) {
  switch (surface) {
    case Surface::face:
      return {Axis::z, false};
    case Surface::back:
      return {Axis::z, true};
    case Surface::left:
      return {Axis::x, false};
    case Surface::right:
      return {Axis::x, true};
    case Surface::upper:
      return {Axis::y, true};
    case Surface::lower:
      return {Axis::y, false};
  }
  return {};
}

/// Which way of the assembly is to the right, and which one up, for whoever looks at a surface.
struct Outlook {
  Heading right, up;
};
Outlook outlook_at(Surface surface) {
  const Heading up{Axis::y, true};
  switch (surface) {
    case Surface::face:
      return {{Axis::x, true}, up};
    case Surface::back:
      return {{Axis::x, false}, up};
    case Surface::left:
      return {{Axis::z, false}, up};
    case Surface::right:
      return {{Axis::z, true}, up};
    case Surface::upper:
      return {{Axis::x, true}, {Axis::z, true}};
    case Surface::lower:
      return {{Axis::x, true}, {Axis::z, false}};
  }
  return {};
}

LabelView view_of(const Piece& piece, Surface face, Surface edge) {
  const Outlook outlook = outlook_at(face);
  const Heading to_edge = outwards(edge);
  const Box blank = placed_blank(piece);
  const auto size_along = [&](Axis axis) { return blank.extent(static_cast<std::size_t>(axis)); };
  LabelView view;
  view.across = size_along(outlook.right.axis);
  view.upright = size_along(outlook.up.axis);
  view.grain_upright = piece.place.axes[0] == outlook.up.axis;
  if (to_edge.axis == outlook.right.axis)
    view.edge = to_edge.upwards == outlook.right.upwards ? Surface::right : Surface::left;
  else
    view.edge = to_edge.upwards == outlook.up.upwards ? Surface::upper : Surface::lower;
  return view;
}

Label label_of(const ItemReport& item, std::size_t number, const CutRow& cut) {
  const Piece& piece = item.wood.pieces[number];
  const Datum datum = datum_of(piece);
  Label label;
  label.piece = piece.mark;
  label.name = piece.name;
  label.role = piece.role;
  label.matter = piece.matter;
  label.length = cut.length;
  label.width = cut.width;
  label.thickness = cut.thickness;
  label.material = cut.material;
  label.grain = cut.grain;
  label.face = side_of(piece, {2, datum.face_high});
  label.edge = side_of(piece, {1, datum.edge_high});
  label.view = view_of(piece, label.face, label.edge);
  for (Mate& mate : mates_of(item.wood, number))
    label.mates.push_back({item.wood.pieces[mate.piece].mark, mate.kind, std::move(mate.joints)});
  return label;
}

template <std::size_t kCount>
bool is_one_of(Role role, const Role (&roles)[kCount]) {
  return std::find(std::begin(roles), std::end(roles), role) != std::end(roles);
}

/// Alike but for which piece it is, and what it goes to.
bool are_alike(const Label& a, const Label& b) {
  return a.role == b.role && a.length == b.length && a.width == b.width &&
         a.thickness == b.thickness && a.material == b.material;
}

/// The bag that a label goes into; null where it begins one.
LabelBag* bag_for(const Label& label, std::vector<LabelBag>& bags) {
  if (!label.in_bag()) return nullptr;
  const auto bag = std::find_if(bags.begin(), bags.end(),
                                [&](const LabelBag& it) { return are_alike(*it.front(), label); });
  return bag == bags.end() ? nullptr : &*bag;
}

}  // namespace

bool Label::in_bag() const {
  constexpr Role kSmall[] = {Role::wedge,       Role::pin,    Role::dowel,
                             Role::loose_tenon, Role::spline, Role::button};
  return is_one_of(role, kSmall);
}

bool Label::is_marked() const {
  constexpr Role kPlainStrips[] = {Role::bead, Role::stop, Role::packing};
  return !in_bag() && matter != Matter::glass && !is_one_of(role, kPlainStrips);
}

ItemLabels labels_of(const ItemReport& item) {
  std::map<std::string_view, const CutRow*> cuts;
  for (const CutRow& cut : item.cutlist)
    for (const std::string& mark : cut.marks)
      cuts.emplace(mark, &cut);
  ItemLabels its{item.job->id, item.job->name, item.job->quantity, {}};
  for (std::size_t number = 0; number < item.wood.pieces.size(); ++number)
    its.labels.push_back(label_of(item, number, *cuts.at(item.wood.pieces[number].mark)));
  return its;
}

std::size_t count_of(const std::vector<ItemLabels>& items) {
  std::size_t count = 0;
  for (const ItemLabels& item : items)
    count += item.count();
  return count;
}

std::vector<LabelBag> bagged(const std::vector<Label>& labels) {
  std::vector<LabelBag> bags;
  for (const Label& label : labels)
    if (LabelBag* bag = bag_for(label, bags))
      bag->push_back(&label);
    else
      bags.push_back({&label});
  return bags;
}

// ---- in words

std::string_view side_words(Surface side) {
  return side == Surface::face ? "front" : word_of(side);
}

std::string wood_words(const Label& label) {
  const std::string grain = label.grain == "none"    ? ""
                            : label.grain == "along" ? "grain lengthwise"
                                                     : "grain " + std::string(label.grain);
  return label.material + (label.material.empty() || grain.empty() ? "" : ", ") + grain;
}

std::string mates_words(const std::vector<LabelMate>& mates, const std::string& before) {
  std::vector<std::pair<JointKind, std::string>> kinds;
  for (const LabelMate& mate : mates) {
    auto known = std::find_if(kinds.begin(), kinds.end(),
                              [&](const auto& it) { return it.first == mate.kind; });
    if (known == kinds.end()) known = kinds.insert(known, {mate.kind, {}});
    if (!known->second.empty()) known->second += " ";
    known->second += before;
    known->second += mate.mark;
  }
  std::string text;
  for (const auto& [kind, marks] : kinds) {
    std::string words(word_of(kind));
    std::replace(words.begin(), words.end(), '-', ' ');
    if (!text.empty()) text += "; ";
    text += marks;
    text += " ";
    text += words;
  }
  return text;
}

}  // namespace haunch
