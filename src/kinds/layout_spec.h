// Reading a layout from a spec.
#pragma once

#include "document.h"
#include "layout.h"
#include "spec_reader.h"
#include "value_reader.h"

namespace haunch {

/// What the table of keys has before those of a node.
inline constexpr std::string_view kNodeRoot = "layout_node.";

/// What a front of a cabinet cannot say, as the cabinet does.
bool is_said_by_cabinet(Key key_of_front);

/// What to tell who writes such a key, for fronts and for what is said of all doors.
const std::vector<Elsewhere>& said_by_cabinet();

/// What the nodes of a layout may say besides how they divide: of a cabinet the keys of leaves and
/// drawers that close them.
enum class NodesOf : unsigned char { face_frame, cabinet };

/// Reads what stands under "layout" in an item; where nothing does it is one opening. What is
/// wrong is told by `read`.
LayoutNode read_layout(ValueReader& read, const Value& item, NodesOf of);

}  // namespace haunch
