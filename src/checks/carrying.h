// Getting work to where it stands: what is carried as one, whether it goes by the way that is told,
// and what it weighs.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "finding.h"
#include "kind.h"
#include "weight.h"

namespace haunch {

struct Bench;

/// How a box goes by something on its way: the room that it leaves there as it is best turned; less
/// than none where it does not go.
struct Passing {
  Length room;
  bool tilted = false;  // with an end or an edge raised

  bool goes() const { return room >= Length(); }
};

/// A box in any of its positions through a door, moved straight on: its two smaller sizes must go
/// through upright, or tilted as a rectangle in a rectangle (J. E. Wetzel, Rectangles in
/// Rectangles, Mathematics Magazine 73, 2000). There must be room before and behind the door.
Passing through_door(const Triple& box, const DoorOnTheWay& door);

/// A box round the right-angled turns between the flights of a stair and its landing. Plain
/// geometry: seen from above, a rectangle of length L and width t that touches both outer walls at
/// an angle a clears the inner corner where L sin a cos a <= width cos a + landing sin a - t, at
/// every a. Its length is that of the box as far as it can be raised under the headroom.
Passing round_stair(const Triple& box, const StairOnTheWay& stair);

/// A box in a lift's car: one of its sizes straight along it, the others as a rectangle in what the
/// car has across that.
Passing in_lift(const Triple& box, const LiftOnTheWay& lift);

/// A group that is carried as one; a case with the face frame on it; or a piece that is first fixed
/// there, as a run's own are.
struct Carried {
  std::string name;                 // "case"
  std::vector<std::size_t> groups;  // by index into Assembly::groups; none of a piece
  std::vector<std::size_t> pieces;  // by index into Assembly::pieces
  Triple size;                      // width, height, depth as it stands
  Weight weight;
  std::optional<Passing> door, stair, lift;  // where the way has one
  bool pieces_go = true;                     // of what does not go as a whole: one by one

  bool goes() const;
};

/// Of work whose way is told, else nothing. What lies beside it is left out.
std::vector<Carried> carried(const Assembly& wood, const Job& job);

/// "48 kg with two people": what is over the weight that those who carry it may lift.
std::vector<Caution> carrying_cautions(const std::vector<Carried>& all, const Job& job);

/// What does not go by its way.
void check_carrying(Bench& bench, const Job& job);
std::vector<const Rule*> rules_of_carrying();

}  // namespace haunch
