// Frames and leaves in them as wood: each rule at its limit and a step beyond. The frame is a
// lining of 896 x 2093 x 115 with its head housed 10 deep; its leaf of 840 x 2043 x 44 hangs 3 from
// jambs and head, 10 from the floor and 1.5 before its stops.
#include "corner.h"

namespace haunch::test {
namespace {

Assembly lining(std::string_view more = {}) {
  return wood(R"({"kind": "frame", "units": "mm", "wall_opening": {"width": 910, "height": 2100})" +
              std::string(more) + "}");
}

/// The leaf is a single board, so that what is checked of doors does not come in.
Assembly hung(Length board = mm(840)) {
  Assembly frame = lining();
  frame.groups.push_back({GroupKind::leaf, "leaf", 0, {}});
  frame.open = {box(37, 0, 0, 859, 10, 115), box(25, 2081, 0, 871, 2093, 115)};
  Piece leaf;
  leaf.mark = "Z";
  leaf.name = "leaf";
  leaf.role = Role::panel;
  leaf.blank = {mm(2043), board, mm(44)};
  leaf.place = {{mm(28), mm(10), mm(0)}, {Axis::y, Axis::x, Axis::z}};
  leaf.group = 1;
  Fit hung;
  hung.stands = StandsIn::group;
  hung.group = leaf.group;
  hung.room = {mm(3), mm(3), mm(3), mm(10)};
  hung.behind = mm(1.5);
  hung.moves = Swing{Axis::y, {mm(26.5), mm(0), mm(-6)}, false};
  frame.pieces.push_back(leaf);
  frame.fits.push_back(hung);
  return frame;
}

template <typename Change>
Assembly but(Assembly assembly, Change change) {
  change(assembly);
  return assembly;
}

/// The leaf moved, or made longer at one end of an axis.
Assembly moved(std::size_t axis, Length by) {
  return but(hung(), [&](Assembly& a) { a.pieces.back().place.origin[axis] += by; });
}

Assembly planed_jamb(Length by) {
  return but(lining(), [&](Assembly& a) {
    // Off the outside of the left jamb: its blank, housing and place.
    Piece& jamb = a.pieces.front();
    jamb.blank[2] -= by;
    jamb.place.origin[0] += by;
    for (Feature& feature : jamb.features)
      for (Box& cut : feature.cuts) {
        cut.low[2] -= by;
        cut.high[2] -= by;
      }
    a.size[0] -= by;
    for (Piece& piece : a.pieces)
      if (&piece != &jamb) piece.place.origin[0] -= by;
    jamb.place.origin[0] -= by;
    for (Box& way : a.open) {
      way.low[0] -= by;
      way.high[0] -= by;
    }
    opening_of(a).width -= by;
  });
}

/// The jambs cut off above the housing, so that so much of them is left.
Assembly horn(Length left) {
  return but(lining(), [&](Assembly& a) {
    const Length by = mm(12) - left - floor_half(mm(0.15));
    for (std::size_t jamb : {0U, 1U})
      a.pieces[jamb].blank[0] -= by;
    a.size[1] -= by;
    opening_of(a).height -= by;
    a.open.back().high[1] -= by;
  });
}

}  // namespace

std::vector<Breakage> breakages_of_frames() {
  const auto size = [](std::size_t axis, Length change) {
    return but(lining(), [&](Assembly& a) { a.size[axis] += change; });
  };
  const auto play = [](Length change) {
    return but(lining(), [&](Assembly& a) {
      for (std::size_t jamb : {0U, 1U})
        a.pieces[jamb].features.front().cuts.front().high[0] += change;
      for (Joint& joint : a.joints)
        joint.design.cheeks = mm(0.15) + change;
    });
  };
  const auto rebated = [](Length change) {
    return but(lining(R"(, "head_joint": "rebated")"), [&](Assembly& a) {
      a.pieces.front().features.front().cuts.front().low[0] -= change;
    });
  };
  const auto swinging = [](Length width) {
    return but(hung(), [&](Assembly& a) {
      // A leaf so much narrower, its right jamb so much nearer.
      const Length by = mm(840) - width;
      a.pieces.back().blank[1] -= by;
      a.size[0] -= by;
      opening_of(a).width -= by;
      a.pieces[1].place.origin[0] -= by;
      a.pieces[2].blank[0] -= by;         // the head
      a.pieces[4].place.origin[0] -= by;  // the right stop
      a.pieces[5].blank[0] -= by;
      for (Box& way : a.open)
        way.high[0] -= by;
    });
  };
  const auto threshold = [](Length shorter) {
    return but(lining(R"(, "threshold": {"height": 15})"), [&](Assembly& a) {
      for (Piece& piece : a.pieces)
        if (piece.role == Role::threshold) piece.blank[0] -= shorter;
    });
  };
  const auto face = [] {
    return wood(R"({"kind": "face-frame", "units": "mm", "size": {"width": 600, "height": 700}})");
  };
  const auto face_size = [&](std::size_t axis) {
    return but(face(), [&](Assembly& a) { a.size[axis] += kStep; });
  };
  return {
      {"a threshold stands from jamb to jamb", threshold(Length()), "", threshold(kStep),
       "threshold-ends fail"},
      {"the wood is not wider than the frame", lining(), "", size(0, -kStep), "frame-width fail"},
      {"nor higher", lining(), "", size(1, -kStep), "frame-height fail"},
      {"nor does it stand out of its back", lining(), "", size(2, -kStep), "frame-flush caution"},
      {"the frame goes into the wall with its fitting allowance", lining(), "",
       but(lining(), [](Assembly& a) { opening_of(a).width -= kStep; }), "wall-width fail"},
      {"and under it", lining(), "",
       but(lining(), [](Assembly& a) { opening_of(a).height -= kStep; }), "wall-height fail"},
      {"nothing stands in the way", lining(), "",
       but(lining(), [](Assembly& a) { add_block(a, box(400, 900, 0, 410, 910, 10)); }),
       "way-clear fail"},
      {"beside the way nothing is open but the play of housings", lining(), "",
       but(lining(), [](Assembly& a) { a.pieces.pop_back(); }), "frame-closed fail"},
      {"a housing has at most a quarter of a millimetre of play", play(mm(0.1)), "",
       play(mm(0.1) + kStep), "housing-fit caution"},
      {"a housing is as wide as it was designed", lining(), "",
       but(lining(),
           [](Assembly& a) { a.pieces.front().features.front().cuts.front().high[0] += kStep; }),
       "housing-fit fail"},
      {"the head stands on the bottoms of its housings", lining(), "",
       but(lining(),
           [](Assembly& a) { a.pieces.front().features.front().cuts.front().low[2] -= kStep; }),
       "housed-home fail"},
      {"a rebated head rests on its jambs", rebated(Length()), "", rebated(kStep),
       "housed-bearing fail"},
      {"behind a housing 5 mm of jamb are left", planed_jamb(mm(10)), "",
       planed_jamb(mm(10) + kStep), "housing-behind caution"},
      {"and 10 mm beyond it", horn(mm(10)), "", horn(mm(10) - kStep), "housing-end caution"},
      {"the leaf hangs in the middle of its gaps", hung(), "", moved(0, kStep),
       "gap-left fail, gap-right fail"},
      {"and at its height", hung(), "", moved(1, kStep), "gap-foot fail, gap-head fail"},
      {"and before its stops", hung(), "",
       but(hung(), [](Assembly& a) { a.pieces.back().blank[2] += kStep; }), "gap-stop fail"},
      {"its far corner passes the jamb by half a millimetre", swinging(mm(494)), "",
       swinging(mm(490)), "swing-room caution"},
      {"a face frame is as wide as was said", face(), "", face_size(0), "overall-width fail"},
      {"as high", face(), "", face_size(1), "overall-height fail"},
      {"and as thick", face(), "", face_size(2), "overall-depth fail"},
      {"it is open only where its openings are", face(), "",
       but(face(), [](Assembly& a) { a.open.front().low[0] += mm(4); }), "overall-closed fail"},
      {"which are clear", face(), "",
       but(face(), [](Assembly& a) { add_block(a, box(100, 100, 0, 110, 110, 10)); }),
       "opening-clear fail"},
  };
}

TEST_CASE("Frames, and leaves in them, are right to the step") {
  check_breakages(breakages_of_frames());
}

TEST_CASE("A leaf without a jamb at its side has nothing to be measured to") {
  const Assembly open = but(hung(), [](Assembly& a) {
    a.pieces[1].place.origin[2] += mm(200);
    a.pieces[4].place.origin[2] += mm(200);
  });
  CHECK(verdict(open).find("gap-right fail") != std::string::npos);
}

}  // namespace haunch::test
