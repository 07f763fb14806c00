#include <fmt/core.h>

#include <algorithm>

#include "door_plan_steps.h"
#include "moulding_spec.h"

namespace haunch {
namespace {

/// A size that only a groove has; the shop's gives way, the spec's is a mistake.
void refuse_of_groove(DoorLedger& ledger, Key key, std::string_view instead) {
  if (ledger.stated(key).by_spec())
    ledger.problem({key}, fmt::format("a rebated frame has no groove; {}", instead));
  else
    ledger.spec.forget(key);
}

void refuse_what_is_of_grooves(DoorLedger& ledger) {
  refuse_of_groove(ledger, "groove_depth", "write the rebate's as edge.depth");
  refuse_of_groove(ledger, "groove.width", "write the rebate's as edge.width");
  refuse_of_groove(ledger, "groove.from_face",
                   "edge.width, from the back, says where the rebate lies");
}

/// Keys of `edge` that a kind does not have.
void refuse_keys(DoorLedger& ledger, const std::vector<Key>& keys, std::string_view kind) {
  for (const Key key : keys)
    if (ledger.stated(key).by_spec())
      ledger.problem({key}, fmt::format("{} edge has no such thing; take it out, or write another "
                                        "kind",
                                        kind));
}

/// How much wood lies in front of all that is sunk into the edge, and behind it.
struct AroundSunk {
  Length front, back;

  Length least(const EdgeDesign& edge) const {
    return edge.moulded_back() ? std::min(front, back) : front;
  }
};

AroundSunk around_sunk(const DoorPlan& plan) {
  const Length thickness = plan.frame.thickness;
  AroundSunk around{plan.groove.from_face, thickness - plan.groove.from_face - plan.groove.width};
  const auto take_in = [&](Length from, Length to) {
    around = {std::min(around.front, from), std::min(around.back, thickness - to)};
  };
  const MortiseDesign& mortise = plan.join.mortise;
  if (plan.join.single_mortises) take_in(mortise.from_face, mortise.from_face + mortise.width);
  const TwinPlan& twin = plan.join.twin;
  if (plan.has(JointWord::twin)) take_in(twin.from_face, twin.second_from_face() + twin.width);
  if (plan.has(JointWord::half_lap)) take_in(plan.lap_from_face, plan.lap_from_face);
  return around;
}

/// A bevel is as deep as wide where nothing is said; a quarter round is deeper by its fillet.
void settle_moulding(DoorLedger& ledger, EdgeDesign& edge) {
  const bool bevel = edge.profile == Moulding::bevel;
  const auto width = ledger.stated("edge.width").size;
  const auto depth = ledger.stated("edge.depth").size;
  edge.fillet =
      ledger.take("edge.fillet", bevel ? Length() : ledger.defaults.fillet, ledger.usual());
  edge.width = ledger.take(
      "edge.width", depth && *depth > edge.fillet ? *depth - edge.fillet : ledger.defaults.moulding,
      depth ? "its depth less its fillet" : ledger.usual());
  edge.depth = ledger.take("edge.depth", edge.width + edge.fillet, "its width and its fillet");
  constexpr Length kLeast = Length::from_mm_thousandths(100);
  if (edge.width < kLeast)
    ledger.problem({"edge.width", "edge.depth"},
                   fmt::format("a moulding {} wide is none; make it at least {}",
                               ledger.say(edge.width), ledger.say(kLeast)));
  else if (edge.fillet >= edge.depth)
    ledger.problem({"edge.fillet", "edge.depth"},
                   fmt::format("a fillet of {} leaves nothing of a moulding {} deep; make it less",
                               ledger.say(edge.fillet), ledger.say(edge.depth)));
  else if (!bevel && width && depth && edge.width + edge.fillet != edge.depth)
    ledger.problem({"edge.depth", "edge.width"},
                   fmt::format("a quarter round {} wide under a fillet of {} is {} deep, not {}; "
                               "give width or depth",
                               ledger.say(edge.width), ledger.say(edge.fillet),
                               ledger.say(edge.width + edge.fillet), ledger.say(edge.depth)));
}

/// Names in quotes: "mill ogee", "sill round".
std::string quoted(const std::vector<OwnMoulding>& mouldings) {
  std::string names;
  for (const OwnMoulding& each : mouldings)
    names += (names.empty() ? "\"" : ", \"") + each.name + "\"";
  return names;
}

/// One that is drawn has all its sizes.
void settle_own_moulding(DoorLedger& ledger, EdgeDesign& edge) {
  const std::string& name = ledger.spec.text("edge.profile");
  const std::vector<OwnMoulding> mouldings = mouldings_of(ledger.spec["mouldings"].items);
  const auto found = std::find_if(mouldings.begin(), mouldings.end(),
                                  [&](const OwnMoulding& each) { return each.name == name; });
  if (found == mouldings.end())
    return ledger.problem(
        {"edge.profile"},
        fmt::format("\"{}\" is no moulding; write \"bevel\", \"ovolo\" or \"cove\", or {}", name,
                    mouldings.empty() ? "draw it under \"mouldings\""
                                      : "one that is drawn: " + quoted(mouldings)));
  for (const Key key : std::initializer_list<Key>{"edge.width", "edge.depth", "edge.fillet"})
    if (ledger.stated(key).by_spec())
      ledger.problem({key}, fmt::format("the moulding \"{}\" has the sizes that it is drawn with; "
                                        "take this out",
                                        name));
  edge.own = *found;
  edge.width = found->width();
  edge.depth = found->depth();
  edge.fillet = found->fillet;
}

/// A half-lap is laid in from behind: what is scribed over a moulding would catch on it, and
/// mouldings at the back would run on over the lap.
void refuse_half_laps(DoorLedger& ledger, const DoorPlan& plan) {
  if (!plan.has(JointWord::half_lap) || !plan.edge.moulded()) return;
  if (plan.edge.kind == EdgeKind::coped)
    ledger.problem({"edge.kind", "joint"},
                   "a half-lap is laid in from behind, where a shoulder coped over the moulding "
                   "would catch; write \"mitred\", or another joint");
  else if (plan.edge.moulded_back())
    ledger.problem({"edge.faces", "joint"},
                   "a half-lap covers the back of the other piece and its moulding there; write "
                   "\"front\", or another joint");
}

/// Beside haunches with seats of their own.
void refuse_round_ends(DoorLedger& ledger, const DoorPlan& plan) {
  const Ends ends = ledger.spec.word<Ends>("mortise.ends").value_or(Ends::squared);
  if (!plan.edge.own_haunch() || ends == Ends::squared || !plan.has(&DoorJoint::haunches)) return;
  if (!ledger.stated("mortise.ends").by_shop)
    ledger.problem({"mortise.ends"},
                   fmt::format("with {} edges the ends of mortises are squared; take this out",
                               word_of(plan.edge.kind)));
  ledger.spec.forget("mortise.ends");
}

/// A place through the thickness where a rebate may end so that each shoulder is in one plane.
using Stretches = std::vector<Strip>;

/// Within a tenon: where each of them stands, of twins either. Loose ones stand in both members, of
/// which neither has a step beside them.
Stretches walls_within_tenons(const DoorPlan& plan) {
  const MortiseDesign& mortise = plan.join.mortise;
  const Length far = mortise.from_face + mortise.width;
  const TwinPlan& twin = plan.join.twin;
  Stretches stretches;
  if (plan.has(JointWord::loose))
    stretches = {{mortise.from_face, mortise.from_face}, {far, far}};
  else if (plan.join.single_mortises)
    stretches = {{mortise.from_face, far}};
  else if (plan.has(JointWord::twin))
    stretches = {{twin.from_face, twin.from_face + twin.width},
                 {twin.second_from_face(), twin.second_from_face() + twin.width}};
  return stretches;
}

/// Where the rebate ends if nothing is said: how wide it is from the back.
Reasoned usual_rebate(const DoorLedger& ledger, const DoorPlan& plan) {
  const Length thickness = plan.frame.thickness;
  if (plan.join.single_mortises)
    return {thickness - plan.join.mortise.from_face,
            "from the back as far as the mortise's near wall"};
  if (plan.has(JointWord::twin))
    return {thickness - plan.join.twin.from_face,
            "from the back as far as the first mortise's near wall"};
  if (plan.has(JointWord::half_lap))
    return {thickness - plan.lap_from_face, "from the back as far as the laps meet"};
  return {nearest_multiple(floor_divide(thickness * 2, 3), ledger.defaults.whole),
          "two thirds of the thickness, from the back"};
}

}  // namespace

std::string_view sunk_word(const DoorPlan& plan) {
  return plan.edge.rebated() ? "rebate" : "groove";
}

SizeKey depth_key(const DoorPlan& plan) {
  return plan.edge.rebated() ? SizeKey("edge.depth") : SizeKey("groove_depth");
}

void settle_edge(DoorLedger& ledger, DoorPlan& plan) {
  EdgeDesign& edge = plan.edge;
  plan.edge.kind = ledger.spec.word<EdgeKind>("edge.kind").value_or(EdgeKind::square);
  ledger.note_shops_word("edge.kind");
  if (edge.kind != EdgeKind::square) refuse_round_ends(ledger, plan);
  if (plan.edge.rebated()) {
    refuse_what_is_of_grooves(ledger);
    refuse_keys(ledger, {"edge.profile", "edge.faces", "edge.fillet"}, "a rebated");
  } else if (!plan.edge.moulded()) {
    refuse_keys(ledger, {"edge.profile", "edge.faces", "edge.width", "edge.depth", "edge.fillet"},
                "a square");
  } else {
    const bool is_drawn = !ledger.spec.text("edge.profile").empty();
    if (!is_drawn)
      edge.profile = ledger.choose<Moulding>("edge.profile", Moulding::ovolo, ledger.usual());
    edge.faces = ledger.choose<MouldedFaces>("edge.faces", MouldedFaces::front, ledger.usual());
    refuse_half_laps(ledger, plan);
    if (is_drawn)
      settle_own_moulding(ledger, edge);
    else
      settle_moulding(ledger, edge);
  }
}

void demand_room_for_moulding(DoorLedger& ledger, const DoorPlan& plan) {
  const EdgeDesign& edge = plan.edge;
  if (!edge.moulded() || !ledger.clean()) return;
  const Length around = around_sunk(plan).least(edge);
  if (edge.depth >= around)
    ledger.problem(
        {"edge.depth", "edge.width", "groove.from_face", "mortise.from_face"},
        fmt::format("a moulding {} deep comes to the {}, {} from the "
                    "face; make it less",
                    ledger.say(edge.depth),
                    plan.has(JointWord::half_lap) ? "groove, mortise or lap" : "groove or mortise",
                    ledger.say(around)));
  const bool muntins = plan.has_mortises_at(JointPlace::muntin) || plan.join.muntin_stub;
  const Length least = plan.frame.has_muntins() && muntins
                           ? std::min(plan.join.rail_depth, plan.join.muntin_depth)
                           : plan.join.rail_depth;
  if (edge.kind == EdgeKind::coped && edge.width > least)
    ledger.problem({"edge.width", "edge.depth", "tenon_depth"},
                   fmt::format("a shoulder coped over a moulding {} wide reaches further than its "
                               "tenon, {} deep; make the moulding narrower",
                               ledger.say(edge.width), ledger.say(least)));
}

void settle_rebate(DoorLedger& ledger, DoorPlan& plan) {
  const Length thickness = plan.frame.thickness;
  const Reasoned usual = usual_rebate(ledger, plan);
  const Length width = plan.groove.width = ledger.take("edge.width", usual.size, usual.why);
  const Length wall = plan.groove.from_face = thickness - width;
  const Stretches within = walls_within_tenons(plan);
  const bool fits =
      within.empty() || std::any_of(within.begin(), within.end(), [&](const Strip& tenon) {
        return tenon.low <= wall && wall <= tenon.high;
      });
  if (wall <= Length()) {
    ledger.problem({"edge.width", "mortise.from_face", "thickness"},
                   fmt::format("a rebate of {} leaves nothing of {} at the face side; make it less",
                               ledger.say(width), ledger.say(thickness)));
  } else if (!fits) {
    std::string widths;
    for (const Strip& tenon : within) {
      widths += (widths.empty() ? "" : ", or ") + ledger.say(thickness - tenon.high);
      if (tenon.high > tenon.low) widths += " to " + ledger.say(thickness - tenon.low);
    }
    ledger.problem({"edge.width", "mortise.from_face", "mortise.width", "twin.from_face"},
                   fmt::format("a rebate of {} from the back does not end at the tenon, so that no "
                               "one plane is a shoulder; make edge.width {}{}",
                               ledger.say(width), within.size() == 1 ? "from " : "", widths));
  }
}

}  // namespace haunch
