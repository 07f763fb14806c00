// The keys of a shop file that tell of its machines.
#pragma once

#include "key_row.h"
#include "machine.h"

namespace haunch::rows {

inline constexpr std::string_view kNoLimit = "no limit";
inline constexpr std::string_view kMinutesForm = "a number of minutes";

inline constexpr KeyRow kMachineKeys[] = {
    list("machines", kOfShop, 1, 100,
         R"(a list of machines; write such as [{"name": "mortiser", "does": ["mortise"]}])",
         "the shop's machines, those first that it likes best; in place of usual ones",
         "usual ones"),
    formed(object("machines[]", kOfShop, "a machine, or a place to work by hand"),
           R"(write such as {"name": "mortiser", "does": ["mortise"]})"),
    needed(text("machines[].name", kOfShop, "what the shop calls it", ""),
           "write what it is called"),
    needed(
        list("machines[].does", kOfShop, 1, 30,
             R"(a list of what it does; write such as ["groove", "rebate"])", "what it does", ""),
        R"(write what it does, such as ["mortise"])"),
    word<Process>("machines[].does[]", kOfShop, "one of them", ""),
    list("machines[].cutters", kOfShop, 1, 200,
         R"(a list of cutters; write such as [{"name": "16 mm chisel", "width": 16, "reach": 90}])",
         "the cutters and blades that are at hand for it", "any that is needed"),
    formed(object("machines[].cutters[]", kOfShop, "a cutter"),
           R"(write such as {"name": "16 mm chisel", "width": 16, "reach": 90})"),
    needed(text("machines[].cutters[].name", kOfShop, "what the shop calls it", ""),
           "write what it is called"),
    length("machines[].cutters[].width", kOfShop, Change::none,
           "how wide it cuts, of what turns about itself its diameter", "any width"),
    length("machines[].cutters[].reach", kOfShop, Change::none, "the deepest that it cuts",
           kNoLimit),
    length("machines[].cutters[].step", kOfShop, Change::none, "the deepest in one pass",
           "all at once"),
    list("machines[].holds", kOfShop, 1, 50,
         R"(a list of ways to hold the work; write such as [{"name": "vice", "worked": "up"}])",
         "ways of holding the work; the first that a piece goes into is taken", "as is usual"),
    formed(object("machines[].holds[]", kOfShop, "a way of holding the work"),
           R"(write such as {"name": "vice", "worked": "up"})"),
    needed(text("machines[].holds[].name", kOfShop, "what the shop calls it", ""),
           "write what it is called"),
    word<WorkedLooks>("machines[].holds[].worked", kOfShop, "where the side that is worked looks",
                      "up"),
    word<DatumLies>("machines[].holds[].datum", kOfShop,
                    "what the face side lies against, of what is worked in a face the face edge",
                    "fence"),
    object("machines[].holds[].length", kOfShop, "of the pieces that go into it"),
    length("machines[].holds[].length.least", kOfShop, Change::none, "not shorter", kNoLimit),
    length("machines[].holds[].length.most", kOfShop, Change::none, "not longer", kNoLimit),
    object("machines[].holds[].width", kOfShop, "of the pieces that go into it"),
    length("machines[].holds[].width.least", kOfShop, Change::none, "not narrower", kNoLimit),
    length("machines[].holds[].width.most", kOfShop, Change::none, "not wider", kNoLimit),
    object("machines[].holds[].thickness", kOfShop, "of the pieces that go into it"),
    length("machines[].holds[].thickness.least", kOfShop, Change::none, "not thinner", kNoLimit),
    length("machines[].holds[].thickness.most", kOfShop, Change::none, "not thicker", kNoLimit),
    length("machines[].holds[].room_below", kOfShop, Change::none,
           "for a piece that stands on its end to be worked at the other", kNoLimit),
    object("machines[].smallest", kOfShop, "the smallest piece that runs safely"),
    length("machines[].smallest.length", kOfShop, Change::none, "its length", kNoLimit),
    length("machines[].smallest.width", kOfShop, Change::none, "its width", kNoLimit),
    length("machines[].smallest.thickness", kOfShop, Change::none, "its thickness", kNoLimit),
    own("machines[].set_minutes", kOfShop, kMinutesForm, "to set it up for a run", "not told"),
    own("machines[].piece_minutes", kOfShop, kMinutesForm, "for each piece", "not told"),
    own("machines[].metre_minutes", kOfShop, kMinutesForm, "for each metre of cut", "not told"),
};

}  // namespace haunch::rows
