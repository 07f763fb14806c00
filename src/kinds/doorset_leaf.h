// The leaf of a set: its spec made from the set's, and its wood hung in the frame.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "document.h"
#include "haunch/wood.h"
#include "key_table.h"
#include "kind.h"

namespace haunch {

/// What a set's frame leaves to one leaf.
struct LeafRoom {
  Length width, height;  // of the leaf
  bool of_pair = false;
  bool right = false;  // the right leaf of a pair, which is the left one seen in a mirror
};

/// Whether a leaf hangs on its right stile: as its keys say, else as the shop file does.
bool hangs_right(const Value* leaf, const Value* shop);

/// Whether a leaf's keys, or the shop file, have one of that name.
bool leaf_speaks_of(const Value& leaf, const Value* shop, std::string_view key);

/// A door's spec for one leaf of a set: `leaf`, an object or null, with what the set says instead.
Value leaf_document(const Value* leaf, const LeafRoom& room, const ItemHead& head);

/// Where a problem of that spec stands in the set's.
Problem of_the_set(Problem problem);

/// Planes the back of a leaf's lock edge off: the stile's wood slopes from nothing at the face to
/// `bevel` at the back.
void bevel_lock_edge(Assembly& leaf, bool at_right, Length bevel);

/// The upright at one edge of a leaf, its number among `first` and the `count` pieces from there.
std::size_t edge_stile(const Assembly& assembly, std::size_t first, std::size_t count,
                       bool at_right);

/// Adds a leaf's pieces and joints to `set` at a place, and hangs it.
void hang(Assembly& set, Assembly leaf, const Triple& place, const std::string& before_names,
          Hanging hung);

}  // namespace haunch
