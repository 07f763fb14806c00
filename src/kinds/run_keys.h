// Keys of runs: the wall that a run stands along, what stands there in order, and what is made for
// all of it.
#pragma once

#include "key_row.h"

namespace haunch {

/// What is at an end of a run: a wall that it is scribed to, or nothing, so that it shows. No words
/// of that key: the fronts of another run in a corner, and a wall that a blind case goes towards.
enum class RunEnd { wall, free, corner, blind };

/// How two runs meet in a corner.
enum class CornerForm { blind, diagonal };

/// Each cabinet with a toe of its own, or one board before them all.
enum class RunToe { each, one_board };

template <>
inline constexpr std::string_view kWords<RunEnd>[] = {"wall", "free"};
template <>
inline constexpr std::string_view kWords<RunToe>[] = {"each", "one board"};
template <>
inline constexpr std::string_view kWords<CornerForm>[] = {"blind", "diagonal"};

static_assert(std::size(kWords<RunEnd>) == static_cast<std::size_t>(RunEnd::free) + 1);
static_assert(std::size(kWords<RunToe>) == static_cast<std::size_t>(RunToe::one_board) + 1);

namespace rows {

inline constexpr Owners kRuns = kOfRun | kOfShop;

/// A list that may be written as its only item.
constexpr KeyRow or_one(KeyRow row) {
  row.plain = Plain::first;
  return row;
}

inline constexpr KeyRow kRunKeys[] = {
    formed(object("run", kOfShop, "what is usual of runs of cabinets"),
           R"(write such as {"between": 3})"),
    needed(formed(object("run.wall", kOfRun, "the wall that it stands along"),
                  R"(write such as {"lengths": [3655, 3648, 3640], "at": [0, 900, 2100]})"),
           R"(give "wall": {"lengths": [3655, 3648, 3640], "at": [0, 900, 2100]})"),
    needed(or_one(list("run.wall.lengths", kOfRun, 1, 9, "a list of lengths, or one length",
                       "its length at each height that it was measured at", "")),
           "write its length, or a list of its lengths at several heights"),
    length("run.wall.lengths[]", kOfRun, Change::none, "a reading", ""),
    or_one(list("run.wall.at", kOfRun, 1, 9, "a list of heights, rising",
                "those heights, above the highest point of the floor", "")),
    length_or_zero("run.wall.at[]", kOfRun, Change::none, "a height", ""),
    word<RunEnd>("run.wall.left", kOfRun, "what is at its left end", "wall"),
    word<RunEnd>("run.wall.right", kOfRun, "what is at its right end", "wall"),
    word<Side>("run.wall.plumb", kOfRun,
               "the end that is upright, so that the other is out by what the lengths differ",
               "the free end; of two walls the left one"),
    formed(object("run.floor", kOfRun, "the floor along the wall, as it was levelled"),
           R"(write such as {"at": [0, 1800, 3600], "rise": [0, 5, 12]})"),
    needed(list("run.floor.at", kOfRun, 1, 50, "a list of lengths, rising",
                "how far from the left end each reading was taken", ""),
           "write where each reading was taken"),
    length_or_zero("run.floor.at[]", kOfRun, Change::none, "a place", ""),
    needed(list("run.floor.rise", kOfRun, 1, 50, "a list of heights",
                "how high the floor lies there, above the lowest reading or any other line", ""),
           "write how high the floor lies at each place"),
    length_or_zero("run.floor.rise[]", kOfRun, Change::none, "a height", ""),
    needed(list("run.order", kOfRun, 1, 60,
                R"(a list; write such as ["b1", {"gap": 600, "for": "oven"}, "b2"])",
                "what stands along the wall, from the left", ""),
           R"(write what stands along the wall, from the left: ["b1", {"filler": 30}, "b2"])"),
    object("run.order[]", kOfRun,
           "the id of a cabinet of the same specs, or what else stands there", Plain::first),
    text("run.order[].cabinet", kOfRun, "the id of a cabinet of the same specs", ""),
    length("run.order[].filler", kOfRun, Change::size,
           "a strip so wide; at a wall at least, with what is left over", ""),
    length("run.order[].gap", kOfRun, Change::size, "nothing is made there, for what is put there",
           ""),
    text("run.order[].for", kOfRun, "what is put in the gap", "nothing"),
    length("run.order[].front_height", kOfRun, Change::none,
           "of what is put in the gap: how high it is", "as high as the cases"),
    length("run.order[].end_panel", kOfRun, Change::size, "a panel so thick beside a case", ""),
    object("run.corner", kOfRun, "inside corners at its ends"),
    text("run.corner.left", kOfRun,
         "the id of the run that goes through to the wall there, beside whose fronts this one "
         "begins",
         "none"),
    text("run.corner.right", kOfRun, "the same at its right end", "none"),
    word<CornerForm>("run.corner.form", kOfRun,
                     "how both meet: with a blind case of the run that goes through; \"diagonal\" "
                     "is refused",
                     "blind"),
    length_or_zero("run.between", kRuns, Change::size, "between two cases, packed there",
                   "3 mm, 1/8 in"),
    length("run.scribe", kRuns, Change::size,
           "at least between a case and a wall, for a filler that is planed to it",
           "12 mm, 1/2 in"),
    length_or_zero("run.void", kRuns, Change::none,
                   "left behind the cases, for pipes and what else is on the wall", "0"),
    length_or_zero("run.handle", kRuns, Change::none, "how far handles stand before the fronts",
                   "35 mm, 1 3/8 in"),
    object("run.fillers", kRuns, "the strips beside cases", Plain::first),
    length("run.fillers.thickness", kRuns, Change::none, "of each", "20 mm, 3/4 in"),
    text("run.fillers.material", kRuns, "what they are made of", "the species"),
    object("run.end_panels", kRuns, "panels beside cases at ends that show", Plain::first),
    text("run.end_panels.material", kRuns, "what they are made of", "the species"),
    list("run.frames", kOfRun, 1, 30, R"(a list of lists of ids; write such as [["b1", "b2"]])",
         "face frames that span several cases", "each case has its own"),
    list("run.frames[]", kOfRun, 1, 30, R"(a list of ids; write such as ["b1", "b2"])",
         "the cases that one spans, from the left", ""),
    text("run.frames[][]", kOfRun, "the id of a cabinet", ""),
    length("run.longest_frame", kRuns, Change::none,
           "the longest that a face frame is made, or carried in; one that is longer is divided "
           "between cases, where two half mullions meet",
           "as long as it is"),
    own("run.lines", kOfRun, R"(an object; write such as {"top-drawer": 140})",
        "heights that line through in all cabinets", ""),
    object("run.worktop", kOfRun, "a worktop over the cases"),
    needed(length("run.worktop.thickness", kOfRun, Change::none, "of the worktop", ""),
           "write how thick it is"),
    text("run.worktop.material", kOfRun, "what it is made of", "the species"),
    object("run.worktop.overhang", kOfRun, "how far it stands over the cases", Plain::each),
    length_or_zero("run.worktop.overhang.front", kOfRun, Change::none,
                   "before the fronts of the cases", "25 mm, 1 in"),
    length_or_zero("run.worktop.overhang.left", kOfRun, Change::none, "at the left",
                   "to the wall; 0 at a free end"),
    length_or_zero("run.worktop.overhang.right", kOfRun, Change::none, "at the right",
                   "to the wall; 0 at a free end"),
    list(
        "run.worktop.cutouts", kOfRun, 1, 30,
        R"(a list; write such as [{"over": "sink", "width": 560, "depth": 440, "from_front": 60}])",
        "what is cut out of it", "none"),
    object("run.worktop.cutouts[]", kOfRun, "one of them"),
    needed(text("run.worktop.cutouts[].over", kOfRun, "the cabinet in whose middle it is", ""),
           "write over which cabinet it is"),
    needed(length("run.worktop.cutouts[].width", kOfRun, Change::none, "along the wall", ""),
           "write how wide it is"),
    needed(length("run.worktop.cutouts[].depth", kOfRun, Change::none, "from front to back", ""),
           "write how deep it is from front to back"),
    length("run.worktop.cutouts[].from_front", kOfRun, Change::size,
           "from the worktop's front edge", "in the middle of its depth"),
    word<RunToe>("run.toe", kOfRun, "what closes the room below the cases", "each"),
};

}  // namespace rows
}  // namespace haunch
