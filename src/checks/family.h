// What the families of checks share: the bench they work at, and how they report.
#pragma once

#include <optional>
#include <vector>

#include "finding.h"
#include "joint_measure.h"
#include "seasons.h"
#include "solid.h"
#include "trade_limits.h"

namespace haunch {

class Job;
struct Season;
struct Service;

/// An assembly with its wood rebuilt and its joints measured, and the findings so far.
struct Bench {
  const Assembly& assembly;
  Limits limits;
  std::vector<Solid> solids;           // of each piece
  std::vector<JointMeasure> measures;  // of each joint
  std::vector<Finding> findings;
  std::optional<double> moisture;  // percent, when the wood is not as built
};

/// A bench with the assembly's wood on it, nothing reported yet.
Bench bench_of(const Assembly& assembly, Unit unit, MeasuredOver where = MeasuredOver::all_over);

/// One limit each way for each of two degrees. Zero lengths are limits too.
struct Bounds {
  std::optional<Length> fail_min, fail_max;
  std::optional<Length> caution_min, caution_max;
};

/// Reports a figure against its bounds. Without a figure there is nothing left to measure: a fail,
/// with a zero figure.
void report(Bench& bench, const Rule& rule, std::vector<std::size_t> parts,
            std::optional<std::size_t> joint, std::optional<Length> value, const Bounds& bounds);

/// The wood of a group, and the piece by which its findings name it.
Wood wood_of(const Bench& bench, std::size_t group);
std::size_t first_of(const Assembly& assembly, std::size_t group);
/// The box around all their wood.
Box bounds_of_wood(const std::vector<Solid>& solids);
/// Where an opening is, in x and y, and the box around what stands in it: of a rebated leaf what
/// lies behind its lip.
Box opening_of(const Fit& fit);
Box room_in_opening(const std::vector<Solid>& solids, const Fit& fit);
/// The room that solids leave on each side of the opening that they were built for.
SideGaps side_gaps(const std::vector<Solid>& solids, const Fit& opening);

/// Whether a group is another, or a part of it.
bool is_within(const Assembly& assembly, std::size_t group, std::size_t whole);
/// Whether a piece is of a front, or of what is behind one and moves with it.
bool is_of_front(const Bench& bench, std::size_t piece);
/// What a front that swings leaves of room as its far corner passes what is beside it.
void check_swing_room(Bench& bench, const Fit& hung);

// The families, each in a file of its name.
void check_whole(Bench& bench);
/// Of wood that has moved as well: nothing is as designed any more then, but must still have room.
void check_fits(Bench& bench);
void check_walls(Bench& bench);
void check_proportions(Bench& bench);
/// Of each leaf as a whole, for what it serves.
void check_leaves(Bench& bench, Unit unit, const Service& service);
/// Of panels, where nothing is said of moisture.
void check_usual_year(Bench& bench, const Season& usual, Unit unit);
void check_pins(Bench& bench);
void check_clashes(Bench& bench);
void check_hanging(Bench& bench);
void check_meetings(Bench& bench);
/// Of a leaf, moved or not, that lies over the edges of the opening it was built for.
void check_laps(Bench& bench, const Assembly& built);
void check_as_found(Bench& bench);
void check_glazing(Bench& bench);
/// Of fronts among others: at rest, and on their way as they are opened.
void check_fronts(Bench& bench);
/// Of what lies loose in a case, on its way in.
void check_loose_pieces(Bench& bench);
void check_pin_rows(Bench& bench);
void check_screws(Bench& bench);
/// Of shelves under what they carry, which go by what they are made of.
void check_shelves(Bench& bench, const Job& job);
/// Of the whole on its feet, and on the way there. Without a job nothing of weights.
void check_standing(Bench& bench, const Job* job);
void check_tails(Bench& bench);
/// Where members meet in sight.
void check_seen_joints(Bench& bench);
/// Whether anything in it may be fixed across the grain.
bool holds_across(const Assembly& assembly);
/// What is fixed across wood that moves, told of that at the bench's moisture.
void check_fixings(Bench& bench, const Assembly& built, const Assembly& moved);

/// Why what lies over the edge of an opening must lie over it far enough.
inline constexpr std::string_view kGapShows =
    "under 3 mm (1/8 in) the gap shows as the wood shrinks (trade practice)";

/// Whether a joint is of glass or of a bead, which have checks of their own.
bool is_glazing(const Bench& bench, const Joint& joint);

// Of wood that has moved.
void check_moved_whole(Bench& bench, const Assembly& built);
void check_moved_hanging(Bench& bench);
/// Beside a leaf: the opening, or the other leaf of its pair, whose gap is told by itself.
enum class Beside : unsigned char { opening, leaf };
/// Tells what a leaf that has moved leaves on each side of its opening; `leaf`: its first piece
/// where it hangs.
void report_moved_sides(Bench& bench, const SideGaps& gaps, std::optional<std::size_t> leaf,
                        Beside left, Beside right);
void check_moved_meetings(Bench& bench);
/// Of a drawer: between it and its opening; `front`: its first piece where it stands among others.
void report_moved_slide(Bench& bench, const SideGaps& gaps, const Fit& fit,
                        std::optional<std::size_t> front);
void check_moved_fronts(Bench& bench);
void check_moved_glazing(Bench& bench);
void check_moved_mitres(Bench& bench);

std::vector<const Rule*> rules_of_whole();
std::vector<const Rule*> rules_of_fits();
std::vector<const Rule*> rules_of_walls();
std::vector<const Rule*> rules_of_proportions();
std::vector<const Rule*> rules_of_leaves();
std::vector<const Rule*> rules_of_usual_year();
std::vector<const Rule*> rules_of_pins();
std::vector<const Rule*> rules_of_clashes();
std::vector<const Rule*> rules_of_hanging();
std::vector<const Rule*> rules_of_meetings();
std::vector<const Rule*> rules_of_laps();
std::vector<const Rule*> rules_of_as_found();
std::vector<const Rule*> rules_of_glazing();
std::vector<const Rule*> rules_of_fronts();
std::vector<const Rule*> rules_of_loose_pieces();
std::vector<const Rule*> rules_of_pin_rows();
std::vector<const Rule*> rules_of_screws();
std::vector<const Rule*> rules_of_shelves();
std::vector<const Rule*> rules_of_standing();
std::vector<const Rule*> rules_of_tails();
std::vector<const Rule*> rules_of_seen_joints();
std::vector<const Rule*> rules_of_fixings();
std::vector<const Rule*> rules_of_mitres();

}  // namespace haunch
