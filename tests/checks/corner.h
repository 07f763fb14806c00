// A corner of a leaf, made by hand: a stile, a rail tenoned into it, a muntin that stands in the
// rail's groove as a stub, and a panel between them. Nothing in it comes from a spec.
//
//        stile
//        |    |  rail                   |
//        |    |_________________________|      y
//        |    |  panel        | muntin  |      ^
//        |____|_______________|_________|      +--> x
#pragma once

#include <string>
#include <vector>

#include "checks.h"
#include "vocabulary.h"

namespace haunch::test {

/// The sizes it is made to; as they stand, every check is ok.
struct CornerSizes {
  Length thickness = mm(24);
  Length stile = mm(60);        // width
  Length sight_width = mm(80);  // of the panel
  Length muntin = mm(60);       // width; its right edge has no groove
  Length sight_height = mm(100);
  Length groove_depth = mm(10), groove_width = mm(8), groove_from_face = mm(8);
  Length mortise_width = mm(8), mortise_from_face = mm(8);
  Length fit = mm(0.2);  // of tenon and stub, half on each side
  Length tenon_width = mm(60), tenon_depth = mm(40), relish = mm(30);
  Length gap;  // if there is one, the lower tenon is 20 wide and the upper has the rest
  Length edge = mm(0.5), bottom = mm(2);
  Length haunch_depth = mm(9.5);
  Length stub_depth = mm(9.6);
  Length panel_gap = mm(3), panel_play = mm(0.4);
  bool is_lock_rail = false;

  Length rail_width() const { return groove_depth + tenon_width + relish; }
  Length width() const { return stile + sight_width + muntin; }
  Length height() const { return sight_height + rail_width(); }
};

// Its pieces and joints, by number.
inline constexpr std::size_t kStile = 0, kRail = 1, kMuntin = 2, kPanel = 3;
inline constexpr std::size_t kTenon = 0, kStub = 1, kPanelLeft = 2, kPanelTop = 3, kPanelRight = 4;

Assembly corner(const CornerSizes& sizes = {});

/// A corner with one thing changed after it was made.
template <typename Change>
Assembly corner_but(Change change, const CornerSizes& sizes = {}) {
  Assembly assembly = corner(sizes);
  change(assembly);
  return assembly;
}

/// The cuts of the first feature of a kind.
std::vector<Box>& cuts_of(Assembly& assembly, std::size_t piece, std::string_view kind);

/// A block besides, of no joint.
void add_block(Assembly& assembly, const Box& box);

/// Every check that is not ok, once: "mortise-wall caution, fouling fail"; empty if all is
/// well.
std::string verdict(const Assembly& assembly, Unit unit = Unit::mm);

/// Whether a verdict is the one wanted. Where one piece stands in another there is no telling the
/// play between the two: then the wanted ones must be there, and others may be.
bool agrees(const std::string& verdict, const std::string& wanted);

/// One rule and how it is broken: the wood at the limit, and a step beyond it.
struct Breakage {
  std::string says;
  Assembly at;
  std::string verdict_at;  // as verdict() has it
  Assembly beyond;
  std::string verdict_beyond;
  Unit unit = Unit::mm;
};

/// Where the wood at the limit is doubted too.
Breakage doubted(std::string verdict_at, Breakage row);

// One list for each family of checks.
std::vector<Breakage> breakages_of_the_whole();
std::vector<Breakage> breakages_of_fits();
std::vector<Breakage> breakages_of_walls();
std::vector<Breakage> breakages_of_proportions();

std::vector<Breakage> breakages_of_edges();

std::vector<Breakage> all_breakages();

/// Those of frames, and of leaves in them, which have a foot and a face that a leaf does not.
std::vector<Breakage> breakages_of_frames();

/// Checks every row of a list.
void check_breakages(const std::vector<Breakage>& list);

}  // namespace haunch::test
