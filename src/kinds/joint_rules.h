// What several joints have measured alike: that they are home, and what becomes of them as the wood
// moves. What only one has stands in the file that cuts it.
#pragma once

#include <vector>

#include "haunch/measure.h"
#include "trade_limits.h"

namespace haunch {

inline constexpr Rule kBottom{"bottom-clearance", "from the tenon's end to the mortise's bottom",
                              "glue and air need a place to go, and the shoulder must close first"};
inline constexpr Rule kSeat{"shoulder-seat", "between shoulder and sight edge",
                            "the joint is home when its shoulder closes"};
inline constexpr Rule kLongSeat{"long-shoulder-seat",
                                "between the long shoulder and what it stands on",
                                "of a long and a short shoulder both must close together"};

// Of wood that has moved since it was glued.
inline constexpr Rule kMovedCheeks{"cheek-swell",
                                   "of play between tenon and mortise cheeks, both together",
                                   "a tenon that outgrows its mortise presses its cheeks apart"};
inline constexpr Rule kMovedEdges{
    "edge-swell", "of play at the edges of tenon or lap, both together",
    "one that swells against the wood at its edges presses on the glue; the wood gives a little "
    "(trade practice)"};
inline constexpr std::string_view kShutReason =
    "past 0.8 mm (1/32 in) a shoulder opens to be seen, or presses on the piece it stands on (gap "
    "of the Custom grade, ANSI/AWI 0620-2024)";
inline constexpr Rule kMovedSeat{"shoulder-move", "between shoulder and sight edge", kShutReason};
inline constexpr Rule kMovedLongSeat{
    "long-shoulder-move", "between the long shoulder and what it stands on", kShutReason};

inline constexpr Measure kEndFree{Figure::bottom, &kBottom};
inline constexpr Measure kShouldersHome[] = {{Figure::seat, &kSeat},
                                             {Figure::long_seat, &kLongSeat}};

inline constexpr Measure kCheeksUnpressed{Figure::cheeks, &kMovedCheeks, Asked::unpressed};
inline constexpr Measure kEdgesUnpressed{Figure::edges, &kMovedEdges, Asked::unpressed};
inline constexpr Measure kEndStillFree{Figure::bottom, &kBottom, Asked::at_least};
inline constexpr Measure kShouldersShut[] = {
    {Figure::seat, &kMovedSeat, Asked::shut, &Limits::shut_shoulder},
    {Figure::long_seat, &kMovedLongSeat, Asked::shut, &Limits::shut_shoulder}};

/// The rules of all joints' measures, each once.
std::vector<const Rule*> rules_of_joints();

}  // namespace haunch
