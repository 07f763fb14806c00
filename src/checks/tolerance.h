// Fits by tolerance: what a shop's plus/minus make of the clearances that a job was designed with.
//
// The model. A size comes out as drawn, plus the error of its setting, plus a scatter of its own.
// All sizes of one dimension that are cut at one setting share that setting's error; scatters are
// independent. Both are normal and centred. A plus/minus stands for so many standard deviations of
// the two together; which part of the variance is the setting's is Tolerances::setting_share, and
// none is of a dimension that is not cut at one setting.
//
// A fit is one tenon in its mortise, one stub or panel edge in its groove, or one end of a loose
// tenon or spline, each a size against a size: joints of divided or twin tenons have several. A
// loose tenon or spline is planed to one thickness, which both of its ends have. Dowels and
// half-laps have no fit here: no plus/minus is taken for holes and dowels, nor for depths of laps.
//
// Of a set only the joints of its leaves count among the leaves that go together: a frame's are cut
// at other settings, and put together apart. They are told each by itself.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "haunch/length_text.h"
#include "haunch/wood.h"
#include "tolerances.h"

namespace haunch {

/// A size as drawn, and how far it may come out from that.
struct Spread {
  Length nominal;
  Length worst_min, worst_max;  // every plus/minus against it
  Length rss_min, rss_max;  // root-sum-square, to the nearest step; what shares a setting summed
};

/// The play of the cheeks, both together, of each of a joint's fits, which are all alike.
struct JointFit {
  std::size_t joint = 0;
  int fits = 1;  // how many: one for each of its tenons
  Spread play;
  FitBand band;
  double share = 0;  // of such fits expected inside the band, 0 to 1
};

/// Sizes that add up across the leaf.
struct Stack {
  std::vector<std::size_t> pieces;  // from the left or the foot
  Spread size;
};

/// The room that is left about leaves in their frame: what the frame opens less what they take.
struct Gaps {
  std::size_t frame = 0;            // the piece of the frame whose length makes the room
  std::vector<std::size_t> leaves;  // what the leaves are made of there
  Spread size;                      // of all gaps in that line together
};

/// How many leaves go together without a plane: every fit inside its band.
struct LeafFit {
  double share = 0;  // as designed
  std::optional<Length>
      best_allowance;     // none where nothing is glued, or the share is 0 throughout
  double best_share = 0;  // at that fit allowance
  std::optional<Length> least_allowance;  // the smallest that reaches the wanted share, if any does
};

struct FitForecast {
  Tolerances tolerances;
  std::vector<JointFit> joints;       // in the order of the assembly's
  std::vector<std::size_t> left_out;  // joints that have a fit of which nothing is told
  LeafFit leaf;
  Stack width, height;                  // of a pair those of its left leaf
  std::optional<Gaps> across, upright;  // of leaves that hang in a frame
  std::optional<Spread>
      flush;  // a rail's face above (minus: below) its stile's, if it has mortises
};

/// Whether a joint is of a leaf, not of the frame that it hangs in.
bool is_of_leaf(const Assembly& assembly, const Joint& joint);

/// `unit` is the shop's: it sets the limit of a panel's play, and the steps of fit allowances tried
/// (0.001 mm or 0.0001 in).
FitForecast forecast_fits(const Assembly& assembly, const Tolerances& tolerances, Unit unit);

/// The share of leaves that go together when every glued joint is designed with `allowance`; where
/// there is none, as they were designed.
double leaf_share(const Assembly& assembly, const Tolerances& tolerances, Unit unit,
                  std::optional<Length> allowance);

/// The probability that a normal variable lies between two bounds, both included: exact to the
/// error of std::erfc, in the tails too. Without deviation it is 0 or 1.
double normal_share(double low, double high, double mean, double deviation);

}  // namespace haunch
