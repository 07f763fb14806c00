// Keys of a layout's nodes; see layout.h.
#pragma once

#include "key_row.h"

namespace haunch::rows {

inline constexpr KeyRow kLayoutKeys[] = {
    own("layout", kOfCabinet | kOfFaceFrame, "an object",
        "how the front is divided: {\"columns\": […]}, {\"rows\": […]} or what closes it",
        "one opening"),
    own("layout_node.columns", kOfNode, "a list of nodes", "the parts of it, from the left", ""),
    own("layout_node.rows", kOfNode, "a list of nodes", "the parts of it, from the top", ""),
    length("layout_node.width", kOfNode, Change::none, "of one in columns: width of its opening",
           "its share of what is left"),
    length("layout_node.height", kOfNode, Change::none, "of one in rows: height of its opening",
           "its share of what is left"),
    length("layout_node.front_width", kOfNode, Change::none,
           "of one in columns, in place of width: the finished front that closes it", ""),
    length("layout_node.front_height", kOfNode, Change::none,
           "of one in rows, in place of height: the finished front that closes it", ""),
    count("layout_node.share", kOfNode, 1, 1000, "its part of what is left beside the others", "1"),
    word<Between>("layout_node.between", kOfNode,
                  "of one that is divided: what stands between its parts",
                  "partition and mullion between columns; between rows a rail of the face frame; "
                  "without one a shelf where a part stays open or two doors meet, a rail between "
                  "drawers on wooden runners, else nothing"),
    word<FrontKind>("layout_node.front", kOfNode, "what closes it", "none"),
    object("layout_node.shelves", kOfNode, "shelves behind it", Plain::first),
    count("layout_node.shelves.count", kOfNode, 0, 50, "how many", "none"),
    length("layout_node.shelves.thickness", kOfNode, Change::size, "of each", "as the case"),
    text("layout_node.shelves.material", kOfNode, "what they are made of", "as the case"),
    word<ShelfJoint>("layout_node.shelves.joint", kOfNode,
                     "loose on pins, or fixed, evenly spaced: how they meet what bounds them",
                     "loose"),
    own("layout_node.shelves.load", kOfNode, "kilograms, or what they carry: \"books\", …",
        "what each carries", "as \"books\""),
    formed(object("layout_node.grade", kOfNode,
                  "rows of one kind that grow downwards: what closes the node closes each"),
           R"(write such as {"count": 4, "step": 20})"),
    needed(count("layout_node.grade.count", kOfNode, 2, 50, "how many", ""), "write how many"),
    needed(length_or_zero("layout_node.grade.step", kOfNode, Change::none,
                          "how much higher each is than the one above it", ""),
           "write how much higher each is than the one above it"),
};

}  // namespace haunch::rows
