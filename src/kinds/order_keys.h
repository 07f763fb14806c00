// The keys of what comes with an item of any kind: extras, its finish, the way it is carried; and
// a shop's list of fittings.
#pragma once

#include "bought_fitting.h"
#include "extra_spec.h"
#include "finish_spec.h"
#include "key_row.h"

namespace haunch::rows {

inline constexpr Owners kAllItems = kOfItems | kOfRun;
inline constexpr Owners kItemsAndShop = kAllItems | kOfShop;
inline constexpr std::string_view kKilogramsForm = "a number of kilograms";
inline constexpr std::string_view kMoneyForm = "a number";

inline constexpr KeyRow kOrderKeys[] = {
    object("finish", kItemsAndShop,
           "what is put on its wood: its name in the rates file, none for nothing; or more of it",
           Plain::first),
    text("finish.system", kItemsAndShop, "its name in the rates file; none for nothing",
         "the first of the rates file"),
    word<FinishedFaces>("finish.faces", kItemsAndShop, "which faces are coated; edges always are",
                        "both"),
    count("finish.coats", kItemsAndShop, 1, 20, "how many", "as the rates file says"),
    length_or_zero("finish.film", kItemsAndShop, Change::none,
                   "thickness of all coats together, dry: gaps round leaves, drawers and fronts "
                   "are cut wider by two of it",
                   "not told: gaps are cut as they are said"),
    word<FinishedWhen>("finish.when", kItemsAndShop, "before or after it is put together",
                       "not told"),

    list("extras", kAllItems, 1, 100,
         R"(a list of extras; write such as [{"name": "cornice", "length": 900, "width": 60, )"
         R"("thickness": 20}])",
         "what comes with it but has no place in it: cornice, pelmet, packers, staves", "none"),
    formed(object("extras[]", kAllItems, "one, or several alike"),
           R"(write such as {"name": "cornice", "length": 900, "width": 60, "thickness": 20})"),
    needed(text("extras[].name", kAllItems, "what it is called", ""), "write what it is called"),
    count("extras[].quantity", kAllItems, 1, 200, "how many each item has", "1"),
    needed(length("extras[].length", kAllItems, Change::none, "along the grain", ""),
           "an extra has a length, a width and a thickness"),
    needed(length("extras[].width", kAllItems, Change::none, "across it", ""),
           "an extra has a length, a width and a thickness"),
    needed(length("extras[].thickness", kAllItems, Change::none, "of it", ""),
           "an extra has a length, a width and a thickness"),
    text("extras[].material", kAllItems, "a wood, or a board such as \"birch plywood\"",
         "the species of the item"),
    list("extras[].edges", kAllItems, 1, 4,
         R"(a list of worked edges; write such as [{"edge": "lower", "profile": "ovolo", )"
         R"("width": 8}])",
         "mouldings stuck on its long edges", "square"),
    formed(object("extras[].edges[]", kAllItems, "an edge"),
           R"(write such as {"edge": "lower", "profile": "ovolo", "width": 8})"),
    needed(word<Surface>("extras[].edges[].edge", kAllItems, {Surface::lower, Surface::upper},
                         "which of the two, as it lies before one, face up", ""),
           R"(write "lower" or "upper")"),
    needed(word<Moulding>("extras[].edges[].profile", kAllItems, "the moulding", ""),
           R"(write what is stuck on it, such as "bevel")"),
    needed(length("extras[].edges[].width", kAllItems, Change::none,
                  "of the moulding, from the edge across the face", ""),
           "a moulding has a width"),
    length("extras[].edges[].depth", kAllItems, Change::none, "of the moulding, from the face",
           "as wide; of a bead half of what its quirk leaves"),
    length_or_zero("extras[].edges[].fillet", kAllItems, Change::none,
                   "straight down from the face before the profile begins; of a bead its quirk",
                   "0; of a bead a quarter of its width"),
    word<MouldedFaces>("extras[].edges[].faces", kAllItems, "the faces that are moulded", "front"),
    list("extras[].cuts", kAllItems, 1, 50,
         R"(a list of cuts; write such as [{"cut": "groove", "in": "face", "from": 10, )"
         R"("width": 6, "depth": 8}])",
         "what is cut into it", "none"),
    formed(object("extras[].cuts[]", kAllItems, "a cut"),
           R"(write such as {"cut": "mitre", "in": "left", "longer": "lower"})"),
    needed(word<ExtraCutKind>("extras[].cuts[].cut", kAllItems, "what it is", ""),
           R"(write what it is, such as "groove")"),
    needed(word<Surface>("extras[].cuts[].in", kAllItems,
                         "the side that it is cut in to, as the piece lies before one, face up; of "
                         "a mitre the end",
                         ""),
           R"(write the side, such as "face")"),
    word<Surface>("extras[].cuts[].along", kAllItems,
                  {Surface::lower, Surface::upper, Surface::left, Surface::right},
                  "of a rebate: the edge or end that it runs along", ""),
    word<Surface>("extras[].cuts[].longer", kAllItems,
                  {Surface::lower, Surface::upper, Surface::face, Surface::back},
                  "of a mitre, of 45 degrees: the side that stays as long as the piece", ""),
    length_or_zero("extras[].cuts[].at", kAllItems, Change::none,
                   "of a groove: left end to where it begins; of a hole: to its middle", "0"),
    length_or_zero("extras[].cuts[].from", kAllItems, Change::none,
                   "from the lower edge, of what is cut in to an edge or end from the face: to a "
                   "groove's near wall, to the middle of a hole",
                   "of a hole the middle"),
    length("extras[].cuts[].length", kAllItems, Change::none, "of a groove that stops",
           "to the right end"),
    length("extras[].cuts[].width", kAllItems, Change::none, "of a groove or rebate", ""),
    length("extras[].cuts[].diameter", kAllItems, Change::none, "of a hole", ""),
    length("extras[].cuts[].depth", kAllItems, Change::none, "from the side it is cut in to",
           "of a hole right through"),

    object("access", kItemsAndShop, "the way by which it is carried to where it stands"),
    object("access.door", kItemsAndShop, "the narrowest door on it"),
    needed(length("access.door.width", kItemsAndShop, Change::none, "clear", ""),
           "a door on the way has a clear width and height"),
    needed(length("access.door.height", kItemsAndShop, Change::none, "clear", ""),
           "a door on the way has a clear width and height"),
    object("access.stair", kItemsAndShop, "a stair that turns on a landing"),
    needed(length("access.stair.width", kItemsAndShop, Change::none, "clear, of its flights", ""),
           "a stair on the way has a clear width"),
    length("access.stair.landing", kItemsAndShop, Change::none,
           "how deep the landing is, from the flight to the wall", "as the stair is wide"),
    length("access.stair.headroom", kItemsAndShop, Change::none, "clear height over it",
           "2000 mm, 80 in"),
    object("access.lift", kItemsAndShop, "a lift's car, within"),
    needed(length("access.lift.width", kItemsAndShop, Change::none, "of the car", ""),
           "a lift's car has a width, a depth and a height"),
    needed(length("access.lift.depth", kItemsAndShop, Change::none, "of the car", ""),
           "a lift's car has a width, a depth and a height"),
    needed(length("access.lift.height", kItemsAndShop, Change::none, "of the car", ""),
           "a lift's car has a width, a depth and a height"),
    own("access.carry", kItemsAndShop, kKilogramsForm,
        "what those who carry may lift together, in kg", "23, by one person"),

    list("hardware", kOfShop, 1, 500,
         R"(a list of fittings; write such as [{"name": "butt 75", "cuts": {"hinges": {"length": )"
         R"(75}}, "pack": 2}])",
         "fittings that specs take by name", "none"),
    formed(object("hardware[]", kOfShop, "a fitting"),
           R"(write such as {"name": "butt 75", "cuts": {"hinges": {"length": 75}}, "pack": 2})"),
    needed(text("hardware[].name", kOfShop, "by which specs take it", ""), "write its name"),
    own("hardware[].cuts", kOfShop,
        "an object of keys as the shop file has them, below \"hinges\", \"lock\", "
        "\"fronts.hinges\" or \"fronts.drawer.runner\"",
        "what is cut for it, and what it asks for", "nothing of its own"),
    own("hardware[].mass", kOfShop, kKilogramsForm, "of each, in kg; of runners a pair",
        "not told"),
    text("hardware[].code", kOfShop, "its maker's or merchant's", "none"),
    count("hardware[].pack", kOfShop, 1, 10'000, "how many a pack has; of runners pairs", "1"),
    own("hardware[].price", kOfShop, kMoneyForm, "of a pack, in the currency of the rates file",
        "that of the rates file"),
    own("hardware[].priced", kOfShop, "a day as 2031-05-17", "the day of that price", "not told"),
    count("hardware[].lead_days", kOfShop, 0, 1'000, "days from order to delivery", "not told"),
};

}  // namespace haunch::rows
