// The parts of the joinery page, each of one kind of work.
#pragma once

#include <string>
#include <vector>

#include "making.h"
#include "page_part.h"
#include "text_table.h"

namespace haunch {

/// None where an assembly has none of it.
using JoineryPart = PageParts(const Assembly& wood, const Making& making,
                              const LengthPrinter& lengths);

/// "39, 335.6 x 34.5, 103.5" of holes in rows and columns; else each by itself.
std::string middles_text(const std::vector<Length>& all_along,
                         const std::vector<Length>& all_across, const LengthPrinter& lengths);

// Along edges and on faces: edge_page.
JoineryPart groove_page;
JoineryPart edge_rebate_page;  // along the edges of a frame's members, in which panels lie
JoineryPart moulding_page;
JoineryPart moulding_mitre_page;  // where mouldings are cut away for shoulders
JoineryPart scribed_end_page;     // flat ends, fitted over the edges that they stand on
JoineryPart rebate_page;          // of panels
JoineryPart raise_page;
JoineryPart panel_page;  // the panels in their grooves and rebates

// Mortises, those of tenons and of loose tenons, and seats of haunches that have none in a groove.
JoineryPart mortise_page;
JoineryPart haunching_page;

// Tenons, those of rails, muntins and frames and loose ones.
JoineryPart tenon_page;
JoineryPart loose_tenon_page;

// Half-laps, mitres, dowels and wedges: corner_page.
JoineryPart lap_page;
JoineryPart mitre_page;
JoineryPart hole_page;
JoineryPart wedge_page;

JoineryPart tail_page;  // dovetails and fingers

JoineryPart pin_page;       // the holes in cheeks and tenons, piece by piece, and the pins
JoineryPart glass_page;     // its rebates, its sizes, its beads
JoineryPart fittings_page;  // what is let in for locks, hinges and others
/// The same in words, a line for each recess, under one for its side.
std::vector<std::string> fitting_lines(const Assembly& wood, const Making& making,
                                       const LengthPrinter& lengths);
JoineryPart leaf_page;  // arches, lips and meeting stiles
/// What is told of a leaf's arches there; nothing where it has none.
std::vector<std::string> arch_lines(const Assembly& wood, const LengthPrinter& lengths);
JoineryPart rod_page;         // all that is marked along the pieces of a case
JoineryPart cup_page;         // hinges with a cup
JoineryPart face_frame_page;  // holes for screws, and where openings are
JoineryPart frame_page;       // housings, rebates for the leaf, bevels and planted stops

}  // namespace haunch
