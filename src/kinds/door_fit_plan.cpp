#include <fmt/core.h>

#include <algorithm>

#include "door_plan_steps.h"

namespace haunch {
namespace {

// ---- depths

/// A piece that has grooves, and how many.
struct Grooved {
  Where key;  // of its width
  std::string name;
  Length width;
  int grooves;

  Length room() const { return floor_divide(width, grooves); }
};

std::vector<Grooved> grooved_pieces(const FramePlan& frame) {
  std::vector<Grooved> pieces{{"stile_width", "stile", frame.narrow_stile(), 1}};
  for (std::size_t i = 0; i < frame.rails.size(); ++i)
    pieces.push_back({{"rail_widths", i},
                      frame.rails[i].name,
                      frame.rails[i].width - frame.rebate_of_rail(i) - frame.arched(i),
                      frame.is_end_rail(i) ? 1 : 2});
  if (frame.has_muntins()) pieces.push_back({"muntin_width", "muntin", frame.muntin_width, 2});
  return pieces;
}

/// What is sunk into the edges of a piece, `size` from each, must leave some of it.
void demand_wood_behind(DoorLedger& ledger, const Grooved& piece, Key key, std::string_view what,
                        Length size) {
  if (size * piece.grooves < piece.width) return;
  ledger.problem(
      {key, piece.key},
      fmt::format("a {} of {} {}goes through the {}, {} wide; make {} less than {}, "
                  "or the {} wider",
                  what, ledger.say(size), piece.grooves == 2 ? "from both edges " : "", piece.name,
                  ledger.say(piece.width), key.path(), ledger.say(piece.room()), piece.name));
}

void settle_groove_depth(DoorLedger& ledger, DoorPlan& plan) {
  const Reasoned usual = usual_edge_depth(ledger, plan);
  const Length depth = plan.groove.depth = ledger.take(depth_key(plan), usual.size, usual.why);
  const std::vector<Grooved> pieces = grooved_pieces(plan.frame);
  const Grooved& least =
      *std::min_element(pieces.begin(), pieces.end(),
                        [](const Grooved& a, const Grooved& b) { return a.room() < b.room(); });
  demand_wood_behind(ledger, least, depth_key(plan), sunk_word(plan), depth);
  if (plan.edge.moulded() && ledger.clean())
    demand_wood_behind(ledger, least, "edge.width", "moulding", plan.edge.width);
}

/// Whether muntins above and below a rail stand so that less than `margin` of wood would be between
/// their mortises along the rail. A mortise begins `inset` within the muntin's width.
bool mortises_meet(const FramePlan& frame, std::size_t rail, Length inset, Length margin) {
  if (frame.is_end_rail(rail)) return false;
  const auto& above = frame.tiers[rail - 1].sights;
  const auto& below = frame.tiers[rail].sights;
  const Length apart = margin - inset * 2;  // of the muntins themselves
  for (std::size_t i = 0, j = 0; i + 1 < above.size() && j + 1 < below.size();) {
    if (above[i].high < below[j + 1].low + apart && below[j].high < above[i + 1].low + apart)
      return true;
    above[i].high < below[j].high ? ++i : ++j;
  }
  return false;
}

/// The deepest tenon, up to `wanted`, that a muntin can have in every rail it enters.
Length deepest_muntin_tenon(const DoorLedger& ledger, const DoorPlan& plan, Length wanted) {
  const Length bottom =
      ledger.spec.size("tenon.bottom_clearance").value_or(ledger.defaults.bottom_clearance);
  const Length edge =
      ledger.spec.size("tenon.edge_clearance").value_or(ledger.defaults.edge_clearance);
  return deepest_in_rails(ledger, plan, wanted,
                          {bottom + plan.edge.set_back(), plan.muntin_edge() - edge});
}

std::string muntin_depth_reason(const DoorPlan& plan, Length depth, Length wanted, Length whole) {
  if (depth == wanted) return "as deep as the rails' tenons";
  return depth > whole ? fmt::format("never less than the {}", sunk_word(plan))
                       : "as deep as leaves wood behind and between the mortises";
}

/// Whether a tenon so deep goes deeper than the groove, but no deeper than the rebates for glass at
/// its edges: their corners would open its mortise.
bool ends_in_corner(const DoorPlan& plan, Length depth, Length rebate) {
  return depth > plan.groove.depth && depth <= rebate;
}

void demand_past_corner(DoorLedger& ledger, const DoorPlan& plan, Key key, Length depth,
                        Length rebate) {
  if (!ends_in_corner(plan, depth, rebate)) return;
  ledger.problem({key, "panel.glass.rebate"},
                 fmt::format("a tenon of {} ends beside the rebate for glass, {} deep, whose "
                             "corner opens its mortise; make {} more than that, or at most "
                             "groove_depth, {}",
                             ledger.say(depth), ledger.say(rebate), key.path(),
                             ledger.say(plan.groove.depth)));
}

/// Of blind tenons that begin where the edges' work ends; loose ones stand farther in.
void demand_past_corners(DoorLedger& ledger, const DoorPlan& plan) {
  for (const JointPlace place : kJointPlaces) {
    const DoorJoint& joint = plan.joint_at(place);
    if (!plan.occurs(place) || !joint.has_own_tenons() || joint.through) continue;
    if (place == JointPlace::muntin)
      demand_past_corner(ledger, plan, "tenon.muntin_depth", plan.join.muntin_depth,
                         plan.muntin_edge());
    else if (ledger.clean())
      demand_past_corner(ledger, plan, "tenon_depth", plan.join.rail_depth, plan.deepest_edge());
  }
}

void settle_muntin_depth(DoorLedger& ledger, DoorPlan& plan) {
  const Length wanted = plan.join.rail_depth;
  const Length deepest = deepest_muntin_tenon(ledger, plan, wanted);
  const Length whole = deepest == wanted ? wanted : floor_multiple(deepest, ledger.defaults.whole);
  const bool into_corner = ends_in_corner(plan, whole, plan.muntin_edge());
  const Length fallback = into_corner ? plan.groove.depth : std::max(whole, plan.groove.depth);
  const Length depth = ledger.take(
      "tenon.muntin_depth", fallback,
      into_corner ? std::string("a stub in the groove: deeper, it ends beside the glass")
                  : muntin_depth_reason(plan, fallback, wanted, whole));
  plan.join.muntin_depth = depth;
  for (std::size_t i = 0; i < plan.frame.rails.size(); ++i) {
    const RailPlan& rail = plan.frame.rails[i];
    const Length width = plan.frame.width_over_muntins(i);
    if (plan.frame.takes_muntins(i) && depth + plan.edge.set_back() >= width)
      ledger.problem(
          {"tenon.muntin_depth", {"rail_widths", i}, "tenon_depth"},
          fmt::format(
              "a muntin's tenon of {} goes through the {}, {} wide; make tenon.muntin_depth less",
              ledger.say(depth), rail.name, ledger.say(width)));
  }
}

/// No stub stands in a rebate, or beyond a moulding that is cut away.
void demand_past_sunk(DoorLedger& ledger, const DoorPlan& plan, Key key, Length depth) {
  if (!plan.edge.own_haunch() || depth > plan.groove.depth) return;
  ledger.problem(
      {key, Key(depth_key(plan))},
      fmt::format("a tenon of {} does not go past the {}, {} deep; make {} more", ledger.say(depth),
                  sunk_word(plan), ledger.say(plan.groove.depth), key.path()));
}

// ---- mortise, tenon and groove across the thickness

/// How wide mortises are where no width is stated.
Reasoned usual_mortise(const DoorLedger& ledger, Length thickness) {
  const Spec& spec = ledger.spec;
  if (spec.size("tenon.thickness"))
    return {*spec.size("tenon.thickness") +
                spec.size("fit_allowance").value_or(ledger.defaults.fit_allowance),
            "tenon thickness and fit allowance"};
  if (spec.size("groove.width")) return {*spec.size("groove.width"), "as wide as the groove"};
  return usual_mortise_width(thickness, ledger.cutters(), !spec.cutters.empty());
}

/// Where mortise, tenon and allowance are all given: true when they agree, or when one of the
/// shop's gives way.
bool reconcile_fit(Spec& spec) {
  const auto mortise = spec.size("mortise.width");
  const auto tenon = spec.size("tenon.thickness");
  const auto allowance = spec.size("fit_allowance");
  if (!mortise || !tenon || !allowance) return true;
  if (*mortise - *tenon == *allowance) return true;
  for (const Key key :
       std::initializer_list<Key>{"tenon.thickness", "mortise.width", "fit_allowance"}) {
    if (!spec[key].by_shop) continue;
    spec.forget(key);
    return true;
  }
  return false;
}

void tell_of_disagreement(DoorLedger& ledger) {
  const Spec& spec = ledger.spec;
  ledger.problem(
      {"fit_allowance"},
      fmt::format("mortise {} less tenon {} is {}, not {}; give two of mortise.width, "
                  "tenon.thickness and fit_allowance",
                  ledger.say(*spec.size("mortise.width")),
                  ledger.say(*spec.size("tenon.thickness")),
                  ledger.say(*spec.size("mortise.width") - *spec.size("tenon.thickness")),
                  ledger.say(*spec.size("fit_allowance"))));
}

Length settle_allowance(DoorLedger& ledger, Length mortise) {
  const Spec& spec = ledger.spec;
  if (spec.size("mortise.width") && spec.size("tenon.thickness"))
    return ledger.take("fit_allowance", mortise - *spec.size("tenon.thickness"),
                       "mortise width less tenon thickness");
  return ledger.take("fit_allowance", ledger.defaults.fit_allowance,
                     "a film of glue on each cheek");
}

/// Whether the rebate behind a lip would leave a part of the thickness of tenons that come out of
/// mortises so far from the face.
bool comes_out_in_lip(const DoorPlan& plan, Length from_face) {
  const Length lip = plan.frame.lip_thickness;
  return plan.has(&DoorJoint::through) && from_face < lip &&
         lip < from_face + plan.join.mortise.width;
}

void demand_tenons_behind_lip(DoorLedger& ledger, const DoorPlan& plan) {
  const Length from_face = plan.join.mortise.from_face;
  const Length lip = plan.frame.lip_thickness;
  if (!comes_out_in_lip(plan, from_face)) return;
  ledger.problem({"mortise.from_face", "lip_thickness", "joint"},
                 fmt::format("the rebate behind a lip of {} would leave {} of tenons that come out "
                             "{} from the face side, too little to hold there; put them at least "
                             "{} from it, or make the lip at most {}",
                             ledger.say(lip), ledger.say(lip - from_face), ledger.say(from_face),
                             ledger.say(lip), ledger.say(from_face)));
}

/// Where a mortise or groove lies across the thickness, unless stated.
struct ThicknessPlace {
  std::string_view name;
  SizeKey key, width_key;
  Length width;
  Reasoned usual;
};

/// In the middle; where a stated rebate begins behind that, the mortise ends at it. Tenons that
/// come out stand behind a lip, if that leaves wood behind them.
Reasoned usual_mortise_place(const DoorLedger& ledger, const DoorPlan& plan) {
  const Length thickness = plan.frame.thickness;
  const Length width = plan.join.mortise.width;
  const Length lip = plan.frame.lip_thickness;
  Reasoned middle = in_the_middle(thickness, width);
  if (comes_out_in_lip(plan, middle.size) && lip + width < thickness)
    middle = {lip, "behind the lip, whose rebate then cuts off all that comes out of the tenons"};
  if (!plan.edge.rebated()) return middle;
  const Length wall = thickness - ledger.spec.size("edge.width").value_or(thickness);
  if (wall <= middle.size + width) return middle;
  return {wall - width, "before the rebate, to which the tenon then loses nothing"};
}

/// In the middle, but where the mortises stand behind a lip, in line with them.
Reasoned usual_groove_place(const DoorPlan& plan) {
  const MortiseDesign& mortise = plan.join.mortise;
  const Length lip = plan.frame.lip_thickness;
  const bool behind_lip = lip > Length() && mortise.from_face == lip;
  if (behind_lip && plan.has(&DoorJoint::through) && mortise.width == plan.groove.width)
    return {lip, "in line with the mortises, behind the lip"};
  return in_the_middle(plan.frame.thickness, plan.groove.width);
}

Length settle_from_face(DoorLedger& ledger, const ThicknessPlace& place, Length thickness) {
  const Length from_face = ledger.take(place.key, place.usual.size, place.usual.why);
  if (from_face < Length() || from_face + place.width > thickness)
    ledger.problem(
        {Key(place.key), Key(place.width_key), "groove.width", "mortise.width", "thickness"},
        fmt::format("a {} of {}, {} from the face side, does not lie within the "
                    "thickness of {}; make them less, or thickness more",
                    place.name, ledger.say(place.width), ledger.say(from_face),
                    ledger.say(thickness)));
  return from_face;
}

}  // namespace

Length deepest_in_rails(const DoorLedger& ledger, const DoorPlan& plan, Length wanted,
                        const SunkInRail& sunk) {
  const FramePlan& frame = plan.frame;
  const Length left = ledger.defaults.left_behind_mortise;
  Length deepest = wanted;
  for (std::size_t i = 0; i < frame.rails.size(); ++i) {
    if (!frame.takes_muntins(i)) continue;
    const Length width = frame.width_over_muntins(i);
    const Length behind = frame.is_end_rail(i) ? width : width - plan.deepest_edge();
    const bool meet = mortises_meet(frame, i, sunk.inset, left);
    deepest = std::min(deepest, (meet ? floor_half(width - left) : behind - left) - sunk.bottom);
  }
  return deepest;
}

const char* usual_depth_reason(const DoorPlan& plan) {
  const FramePlan& frame = plan.frame;
  const bool rebated = frame.narrow_stile() != std::min(frame.stile_left, frame.stile_right);
  if (plan.edge.set_back() > Length())
    return rebated ? "two thirds of what the outer rebate leaves of the stile, less the moulding "
                     "that is cut away"
                   : "two thirds of the stile, less the moulding that is cut away";
  return rebated ? "two thirds of what the outer rebate leaves of the stile"
                 : "two thirds of the stile";
}

void settle_depths(DoorLedger& ledger, DoorPlan& plan) {
  settle_groove_depth(ledger, plan);
  settle_glass_rebates(ledger, plan);
  const Length narrow = plan.frame.narrow_stile();
  const Length set_back = plan.edge.set_back();
  JoinPlan& join = plan.join;
  const Length usual =
      nearest_multiple(floor_divide(narrow * 2, 3) - set_back, ledger.defaults.whole);
  const bool counts = plan.has_blind_tenons() || ledger.spec.size("tenon_depth");
  join.rail_depth = counts ? ledger.take("tenon_depth", usual, usual_depth_reason(plan)) : usual;
  if (join.rail_depth + set_back >= narrow)
    ledger.problem(
        {"tenon_depth", "stile_width"},
        fmt::format(
            "a tenon of {} goes through the stile, {} wide; make tenon_depth less than that",
            ledger.say(join.rail_depth), ledger.say(narrow)));
  const bool muntins = plan.frame.has_muntins();
  if (muntins && plan.joint_at(JointPlace::muntin).tenons) settle_muntin_depth(ledger, plan);
  if (plan.has_blind_tenons()) demand_past_sunk(ledger, plan, "tenon_depth", join.rail_depth);
  if (muntins && plan.joint_at(JointPlace::muntin).tenons)
    demand_past_sunk(ledger, plan, "tenon.muntin_depth", join.muntin_depth);
  demand_past_corners(ledger, plan);
  join.rail_stub = join.rail_depth <= plan.groove.depth;
  join.muntin_stub = join.muntin_depth <= plan.groove.depth;
  join.has_mortises = std::any_of(kJointPlaces.begin(), kJointPlaces.end(),
                                  [&](JointPlace place) { return plan.has_mortises_at(place); });
}

void settle_fit(DoorLedger& ledger, DoorPlan& plan) {
  Spec& spec = ledger.spec;
  JoinPlan& join = plan.join;
  // Without a mortise, a tenon's thickness is fitted to the groove.
  if (!join.single_mortises && !spec.size("mortise.width"))
    spec.edit("mortise.width") = spec["groove.width"];
  if (!reconcile_fit(spec)) return tell_of_disagreement(ledger);
  const Reasoned usual = usual_mortise(ledger, plan.frame.thickness);
  const Length mortise = join.mortise.width = spec.size("mortise.width").value_or(usual.size);
  if (join.single_mortises) ledger.take("mortise.width", mortise, usual.why);
  const Length fit = join.fit_allowance = settle_allowance(ledger, mortise);
  if (plan.edge.rebated()) {
    plan.groove.width = mortise;
  } else {
    const Reasoned groove =
        groove_for_board(ledger, plan.frame)
            .value_or(
                Reasoned{mortise, join.single_mortises ? "as wide as the mortise" : usual.why});
    plan.groove.width = ledger.take("groove.width", groove.size, groove.why);
  }
  if (join.single_mortises)
    ledger.take("tenon.thickness", mortise - fit, "mortise width less fit allowance");
  if (fit < Length())
    ledger.problem(
        {"tenon.thickness", "mortise.width"},
        fmt::format("a tenon of {} is thicker than its mortise is wide; make it at most {}",
                    ledger.say(mortise - fit), ledger.say(mortise)));
  else if (fit >= std::min(mortise, plan.groove.width))
    ledger.problem(
        {"fit_allowance", "mortise.width", "groove.width"},
        fmt::format(
            "a fit allowance of {} leaves nothing of a tenon or haunch; make it less than {}",
            ledger.say(fit), ledger.say(std::min(mortise, plan.groove.width))));
}

void settle_places(DoorLedger& ledger, DoorPlan& plan) {
  Spec& spec = ledger.spec;
  MortiseDesign& mortise = plan.join.mortise;
  const Length thickness = plan.frame.thickness;
  if (plan.join.single_mortises)
    mortise.from_face = settle_from_face(ledger,
                                         {"mortise", "mortise.from_face", "mortise.width",
                                          mortise.width, usual_mortise_place(ledger, plan)},
                                         thickness);
  else if (!spec.size("groove.from_face"))
    spec.edit("groove.from_face") =
        spec["mortise.from_face"];  // the groove is the mortise of a stub
  if (ledger.clean()) demand_tenons_behind_lip(ledger, plan);
  if (plan.edge.rebated()) return;
  // A groove that only goes along with the mortise is at fault with it, and need not be told of.
  if (!ledger.clean() && !spec.size("groove.from_face") && !spec.size("groove.width")) return;
  plan.groove.from_face = settle_from_face(
      ledger,
      {"groove", "groove.from_face", "groove.width", plan.groove.width, usual_groove_place(plan)},
      thickness);
}

}  // namespace haunch
