// A label for every piece of an order: what it is, how it lies, what it goes to.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "order_marks.h"
#include "report.h"

namespace haunch {

/// Another piece that one is joined to.
struct LabelMate {
  std::string mark;  // in its item: "C"
  JointKind kind = JointKind::butt;
  std::vector<std::size_t> joints;
};

/// How a piece looks to whoever looks at its face side as it stands in the work.
struct LabelView {
  Length across, upright;
  Surface edge = Surface::left;  // where its face edge is then: left, right, upper or lower
  bool grain_upright = true;
};

/// What a label says of a piece, whichever of several alike its item is.
struct Label {
  std::string piece;  // its mark in the item: "C"
  std::string name;   // "left stile"
  Role role = Role::stile;
  Matter matter = Matter::wood;
  Length length, width, thickness;  // finished
  std::string material;             // empty: not told
  std::string_view grain;           // as in the cut list
  Surface face = Surface::face;     // its face side, and its face edge, as it stands in the work
  Surface edge = Surface::left;
  LabelView view;
  std::vector<LabelMate> mates;

  /// Whether it is too small, or too much like others, to be marked by itself: it lies in a bag
  /// with them.
  bool in_bag() const;
  /// Whether face side and face edge are marked on it: not on glass and plain strips.
  bool is_marked() const;
};

/// The labels of an item, for each time that it is made.
struct ItemLabels {
  std::string id;
  std::string name;  // "side door to the mill yard"
  int quantity = 1;
  std::vector<Label> labels;  // of one of it

  /// "K1", or of several the second: "K1#2".
  std::string one(int copy) const { return one_of_item(id, copy, quantity); }
  std::size_t count() const { return labels.size() * static_cast<std::size_t>(quantity); }
};

/// Labels of all its pieces, as many as the quantities of the cut list are together; the report has
/// one.
ItemLabels labels_of(const ItemReport& item);

std::size_t count_of(const std::vector<ItemLabels>& items);

/// Labels that one sticker does for: one, or those of all that lie in one bag, alike but for their
/// marks and mates.
using LabelBag = std::vector<const Label*>;
std::vector<LabelBag> bagged(const std::vector<Label>& labels);

// ---- in words

/// "front", "left": a side of a piece as it stands in the work.
std::string_view side_words(Surface side);

/// "European oak, grain lengthwise"; of what has neither, nothing.
std::string wood_words(const Label& label);

/// "C D E mortise and tenon; F panel in groove"; `before` stands before each mark.
std::string mates_words(const std::vector<LabelMate>& mates, const std::string& before = {});

}  // namespace haunch
