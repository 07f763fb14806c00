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
  if (!plan.join.has_mortises) return around;
  const MortiseDesign& mortise = plan.join.mortise;
  return {std::min(around.front, mortise.from_face),
          std::min(around.back, thickness - mortise.from_face - mortise.width)};
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

/// Leaves whose other edges are worked too are set out with square sight edges.
void refuse_other_leaves(DoorLedger& ledger, const DoorPlan& plan) {
  const FramePlan& frame = plan.frame;
  if (!frame.arch && !frame.head && !frame.rebated_outside()) return;
  ledger.problem(
      {"edge.kind", "arch.rise", "meets", "meeting_lap"},
      fmt::format("{} edges go with straight heads and with leaves that do not lap; take "
                  "it out",
                  word_of(plan.edge.kind)));
}

/// Other joints than haunched and stub tenons are set out for square edges only.
void refuse_other_joints(DoorLedger& ledger, const DoorPlan& plan) {
  for (const JointPlace place : kJointPlaces) {
    const JointWord joint = plan.join.at(place);
    if (joint == JointWord::haunched || !plan.occurs(place)) continue;
    ledger.problem({"joint", "edge.kind"},
                   fmt::format("\"{}\" joints go with square edges; with {} ones write "
                               "\"haunched\"",
                               word_of(joint), word_of(plan.edge.kind)));
    return;
  }
  const Ends ends = ledger.spec.word<Ends>("mortise.ends").value_or(Ends::squared);
  if (!plan.edge.own_haunch() || ends == Ends::squared) return;
  if (!ledger.stated("mortise.ends").by_shop)
    ledger.problem({"mortise.ends"},
                   fmt::format("with {} edges the ends of mortises are squared; take this out",
                               word_of(plan.edge.kind)));
  ledger.spec.forget("mortise.ends");
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
  if (edge.kind != EdgeKind::square) {
    refuse_other_joints(ledger, plan);
    refuse_other_leaves(ledger, plan);
  }
  if (plan.edge.rebated()) {
    refuse_what_is_of_grooves(ledger);
    refuse_keys(ledger, {"edge.profile", "edge.faces", "edge.fillet"}, "a rebated");
  } else if (!plan.edge.moulded()) {
    refuse_keys(ledger, {"edge.profile", "edge.faces", "edge.width", "edge.depth", "edge.fillet"},
                "a square");
  } else {
    edge.faces = ledger.choose<MouldedFaces>("edge.faces", MouldedFaces::front, ledger.usual());
    if (!ledger.spec.text("edge.profile").empty()) return settle_own_moulding(ledger, edge);
    edge.profile = ledger.choose<Moulding>("edge.profile", Moulding::ovolo, ledger.usual());
    settle_moulding(ledger, edge);
  }
}

void demand_room_for_moulding(DoorLedger& ledger, const DoorPlan& plan) {
  const EdgeDesign& edge = plan.edge;
  if (!edge.moulded() || !ledger.clean()) return;
  const Length around = around_sunk(plan).least(edge);
  if (edge.depth >= around)
    ledger.problem({"edge.depth", "edge.width", "groove.from_face", "mortise.from_face"},
                   fmt::format("a moulding {} deep comes to the groove or mortise, {} from the "
                               "face; make it less",
                               ledger.say(edge.depth), ledger.say(around)));
  const Length least = plan.frame.has_muntins()
                           ? std::min(plan.join.rail_depth, plan.join.muntin_depth)
                           : plan.join.rail_depth;
  if (edge.kind == EdgeKind::coped && edge.width > least)
    ledger.problem({"edge.width", "edge.depth", "tenon_depth"},
                   fmt::format("a shoulder coped over a moulding {} wide reaches further than its "
                               "tenon, {} deep; make the moulding narrower",
                               ledger.say(edge.width), ledger.say(least)));
}

void settle_rebate(DoorLedger& ledger, DoorPlan& plan) {
  const MortiseDesign& mortise = plan.join.mortise;
  const Length thickness = plan.frame.thickness;
  const Length width = plan.groove.width =
      ledger.take("edge.width", thickness - mortise.from_face,
                  "from the back as far as the mortise's near wall");
  const Length wall = plan.groove.from_face = thickness - width;
  const Length far_wall = mortise.from_face + mortise.width;
  if (wall <= Length())
    ledger.problem({"edge.width", "mortise.from_face", "thickness"},
                   fmt::format("a rebate of {} leaves nothing of {} at the face side; make it less",
                               ledger.say(width), ledger.say(thickness)));
  else if (wall < mortise.from_face || wall > far_wall)
    ledger.problem(
        {"edge.width", "mortise.from_face", "mortise.width"},
        fmt::format("a rebate of {} from the back does not end at the tenon, so that no one plane "
                    "is a shoulder; make edge.width from {} to {}",
                    ledger.say(width), ledger.say(thickness - far_wall),
                    ledger.say(thickness - mortise.from_face)));
}

void settle_bedded_panel(DoorLedger& ledger, const DoorPlan& plan, PanelPlan& panel) {
  for (const Key key : std::initializer_list<Key>{
           "panel.allowance", "panel.raised", "panel.flush", "panel.rebate", "panel.raise.width",
           "panel.raise.tongue", "panel.raise.shoulder", "panel.raise.profile"})
    if (ledger.is_own(key))
      ledger.problem({key}, "a panel that lies in a rebate is flat; take this out");
  const Length width = plan.groove.width;
  panel.thickness =
      ledger.take("panel.thickness", floor_multiple(floor_half(width), ledger.defaults.whole),
                  "half of the rebate, the rest for what holds it there");
  panel.tongue = panel.thickness;
  if (panel.thickness > width && ledger.clean())
    ledger.problem({"panel.thickness", "edge.width"},
                   fmt::format("a panel of {} stands out of a rebate {} wide; make it thinner",
                               ledger.say(panel.thickness), ledger.say(width)));
}

}  // namespace haunch
