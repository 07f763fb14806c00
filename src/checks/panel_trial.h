// A panel worked from both faces: after the first one, how deep to go into the second.
#pragma once

#include <optional>
#include <vector>

#include "haunch/length_text.h"
#include "haunch/wood.h"
#include "tolerances.h"

namespace haunch {

/// A panel as it was set out to be, in its groove.
struct PanelDesign {
  Length thickness;  // of its stock
  Length width;      // across the grain
  Length tongue;
  Length groove;  // its width
};

/// Of a joint of a panel in its groove; nothing of any other.
std::optional<PanelDesign> panel_design(const Assembly& wood, std::size_t joint);

/// One reading of what the first face left.
struct PanelPoint {
  Length thickness;
  std::optional<Length> at;  // across the width from one edge; nothing: at an edge
};

enum class Face { first, second };

struct PanelReadings {
  std::vector<PanelPoint> remaining;  // never empty
  Length cup;                         // across the whole width
  Face hollow = Face::first;          // which face is hollow; no matter where there is no cup
  std::optional<Length> removed;      // from the first face
  FitBand play;                       // groove less tongue, that is let pass
  bool pressed = false;               // flat, by vacuum or clamps, as its second face is cut
};

/// Groove less tongue: from none to what the trade lets rattle, 0.8 mm or 1/32 in.
FitBand usual_play(Unit unit);

/// The two faces may lose so much unequally, 1.5 mm or 1/16 in; more lets a panel cup.
Length most_unequal(Unit unit);

/// What comes of a depth for the second face.
struct PanelTongue {
  Length depth;
  Length thinnest, thickest;
  std::size_t worst_point = 0;  // by its place in the readings
  Length worst;                 // how much it is thicker than wanted there; negative: thinner
};

/// The depth that leaves the worst point least wrong: half of the range of what the points ask for.
/// The panel lies on its second face, not pressed flat: hollow there it stands on its edges and its
/// middle is lifted, else it rests on its middle and its edges are lifted. What is lifted comes out
/// thicker. A panel that is thinner than its tongue already is not worked at all: depth 0.
PanelTongue best_depth(const std::vector<PanelPoint>& remaining, Length cup, Face hollow,
                       const PanelDesign& design);

enum class PanelAdvice {
  go_on,
  let_rest,            // flat, it would come out to size; cupped it does not
  register_on_first,   // even flat, its stock is too unequal
  alternate_faces,     // cupped, after more than most_unequal() was taken from one face at a time
  unequal_in_the_end,  // the faces will differ by more than that
  too_thin             // a point is thinner than the groove lets pass: nothing mends it
};

template <>
inline constexpr std::string_view kWords<PanelAdvice>[] = {
    "go-on", "let-rest", "register-on-first", "alternate-faces", "unequal-in-the-end", "too-thin"};

struct PanelTrial {
  PanelTongue tongue;                 // as the panel is held
  PanelTongue other;                  // held the other way: pressed flat, or lying free
  Length removed;                     // from the first face
  bool removed_is_designed = false;   // reckoned from the designed thickness
  Length stock_varies;                // thickest less thinnest reading
  std::optional<Length> flat_enough;  // let_rest: the largest cup that will do
  std::vector<PanelAdvice> advice;    // never empty
  FitBand allowed;                    // of the tongue's thickness

  /// The tongue comes out inside the band everywhere.
  bool fits() const { return tongue.thinnest >= allowed.min && tongue.thickest <= allowed.max; }
};

PanelTrial try_panel(const PanelDesign& design, const PanelReadings& readings, Unit unit);

}  // namespace haunch
