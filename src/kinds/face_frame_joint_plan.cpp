// What holds the ends of a face frame's rails and mullions.
#include <fmt/core.h>

#include <algorithm>
#include <memory>
#include <utility>

#include "face_frame_plan_steps.h"
#include "pin_plan.h"
#include "species.h"
#include "usual_joint.h"

namespace haunch {
namespace {

constexpr std::string_view kUsualJoint = "usual for such a joint";
constexpr PinKeys kPinKeys{"face_frame.pin",
                           "face_frame.pin.number",
                           "face_frame.pin.diameter",
                           "face_frame.pin.from_shoulder",
                           "face_frame.pin.offset",
                           "face_frame.pin.depth",
                           "face_frame.pin.over",
                           "face_frame.tenon.depth",
                           "face_frame.mortise.from_face",
                           "face_frame.thickness"};

/// An end where it stands.
struct Standing {
  const FaceMember& enters;
  const FaceMember& receives;
  Length across;               // width of what receives it, without what is left to scribe
  bool outer_low, outer_high;  // which edges of what enters are the frame's own
  bool met;                    // another end stands across from it, in the same wood

  bool at_corner() const { return outer_low || outer_high; }
  Length width() const { return enters.width(); }
  /// Its edges that look at openings.
  MitredEdges inner() const { return {!outer_low, !outer_high}; }
};

/// From where to where it stands along what receives it.
Strip along_receiver(const FaceMember& member) {
  return member.upright() ? Strip{member.at.left, member.at.right}
                          : Strip{member.at.low, member.at.high};
}

/// Settles the ends one after the other, once what they have in common is.
class JointPlanner {
 public:
  JointPlanner(FaceLedger& ledger, FaceFramePlan& plan) : ledger_(ledger), plan_(plan) {}

  void settle() {
    joint_ = ledger_.choose<FaceJoint>("face_frame.joint", FaceJoint::mortise_and_tenon,
                                       "the strongest of those that do not show");
    refuse_idle_keys();
    if (!ledger_.clean()) return;
    if (joint_ != FaceJoint::butted && joint_ != FaceJoint::screws)
      fit_ = ledger_.take("face_frame.fit_allowance", ledger_.defaults.fit_allowance,
                          "a film of glue on each side");
    settle_kind();
    tell_notes();
  }

 private:
  void settle_kind() {
    switch (joint_) {
      case FaceJoint::mortise_and_tenon:
      case FaceJoint::stub:
      case FaceJoint::bridle:
        return settle_tenons();
      case FaceJoint::dowel:
        return settle_dowels();
      case FaceJoint::half_lap:
        return settle_laps();
      case FaceJoint::screws:
        return settle_screws();
      case FaceJoint::butted:
        return;
    }
  }
  Standing standing(const FaceEnd& end) const;
  bool is_met(const FaceEnd& end) const;
  Length least_between() const { return ledger_.defaults.left_behind_mortise; }
  void refuse_idle_keys();

  void settle_tenons();
  void settle_tenon_sizes();
  void settle_tenon(FaceEnd& end);
  Reasoned usual_depth(const Standing& at) const;
  Length depth_of(const Standing& at);
  Length relish_of(const Standing& at);
  Strip tenon_strip(const Standing& at, bool bridle);
  void refuse_depth(const Standing& at, Length depth);
  void pin_tenons();
  void settle_dowels();
  void spread_dowels(FaceEnd& end, const DowelSpread& spread);
  void settle_laps();
  void settle_screws();
  void settle_screw_sizes(ScrewDesign& screws);

  /// A value that goes by members, and those that it is of.
  struct Note {
    Key key;
    Length value;
    std::string why;
    std::vector<std::string> members;
  };

  void note(Key key, Length value, std::string why, const std::string& member);
  void tell_notes();

  FaceLedger& ledger_;
  FaceFramePlan& plan_;
  FaceJoint joint_ = FaceJoint::mortise_and_tenon;
  Length fit_;
  Tenoned tenoned_;  // what all tenons have in common
  Length shoulder_;  // lost beside an opening
  DowelDesign dowels_;
  std::vector<Note> notes_;
};

/// Notes such a value, to be told once of all that have it.
void JointPlanner::note(Key key, Length value, std::string why, const std::string& member) {
  const auto same = std::find_if(notes_.begin(), notes_.end(), [&](const Note& it) {
    return it.key == key && it.value == value && it.why == why;
  });
  if (same == notes_.end())
    notes_.push_back({key, value, std::move(why), {member}});
  else if (std::find(same->members.begin(), same->members.end(), member) == same->members.end())
    same->members.push_back(member);
}

/// What is so of all needs no names.
void JointPlanner::tell_notes() {
  for (const Note& note : notes_) {
    const auto of_key = [&](const Note& it) { return it.key == note.key; };
    const bool alone = std::count_if(notes_.begin(), notes_.end(), of_key) == 1;
    std::string of;
    for (const std::string& member : note.members)
      of += (of.empty() ? "" : ", ") + member;
    ledger_.assume(note.key, note.value, alone ? note.why : of + ": " + note.why);
  }
}

bool JointPlanner::is_met(const FaceEnd& end) const {
  const Strip its = along_receiver(plan_.members[end.enters]);
  return std::any_of(plan_.ends.begin(), plan_.ends.end(), [&](const FaceEnd& other) {
    if (other.receives != end.receives || other.high == end.high) return false;
    const Strip there = along_receiver(plan_.members[other.enters]);
    return its.low < there.high + least_between() && there.low < its.high + least_between();
  });
}

Standing JointPlanner::standing(const FaceEnd& end) const {
  const FaceMember& enters = plan_.members[end.enters];
  const FaceMember& receives = plan_.members[end.receives];
  Length across = receives.width();
  if (end.receives == kLeftStile) across -= ledger_.widths.scribe_left;
  if (end.receives == kRightStile) across -= ledger_.widths.scribe_right;
  const bool level = !enters.upright();
  return {enters,
          receives,
          across,
          level && enters.at.low == Length(),
          level && enters.at.high == plan_.height,
          is_met(end)};
}

/// Keys of joints that this frame does not have.
void JointPlanner::refuse_idle_keys() {
  const bool tenons = joint_ == FaceJoint::mortise_and_tenon || joint_ == FaceJoint::stub ||
                      joint_ == FaceJoint::bridle;
  const auto refuse = [&](Key group, bool idle) {
    for (const Key key : AllKeys())
      if (idle && key.is_below(group) && ledger_.stated(key).by_spec())
        ledger_.problem({key},
                        fmt::format("has no part in \"{}\" joints; take it out", word_of(joint_)));
  };
  refuse("face_frame.tenon", !tenons);
  refuse("face_frame.mortise", !tenons);
  if (!tenons && ledger_.stated("face_frame.pin").by_spec())
    ledger_.problem({"face_frame.pin"},
                    fmt::format("has no part in \"{}\" joints; take it out", word_of(joint_)));
  refuse("face_frame.dowel", joint_ != FaceJoint::dowel);
  refuse("face_frame.half_lap", joint_ != FaceJoint::half_lap);
  refuse("face_frame.screws", joint_ != FaceJoint::screws);
  if (plan_.edge.moulded() && !tenons)
    ledger_.problem({"face_frame.joint", "face_frame.bead.by"},
                    fmt::format("a bead that is worked on the edges is mitred at tenons, not at "
                                "\"{}\" joints; plant the bead, or choose tenons",
                                word_of(joint_)));
}

// ---- tenons

void JointPlanner::settle_tenon_sizes() {
  const DoorDefaults& usual = ledger_.defaults;
  MortiseDesign& mortise = tenoned_.mortise;
  TenonDesign& tenon = tenoned_.tenon;
  const Reasoned width =
      usual_mortise_width(plan_.thickness, ledger_.cutters(), !ledger_.spec.cutters.empty());
  mortise.width = ledger_.take("face_frame.mortise.width", width.size, width.why);
  const Reasoned middle = in_the_middle(plan_.thickness, mortise.width);
  mortise.from_face = ledger_.take("face_frame.mortise.from_face", middle.size, middle.why);
  mortise.edge_clearance = ledger_.take("face_frame.tenon.edge_clearance", usual.edge_clearance,
                                        "play at each edge, for setting and glue");
  mortise.bottom_clearance = ledger_.take("face_frame.tenon.bottom_clearance",
                                          usual.bottom_clearance, "room for glue below the tenon");
  tenon.thickness = mortise.width - fit_;
  tenon.from_face = mortise.from_face + floor_half(fit_);
  tenon.set_back = plan_.edge.set_back();
  if (tenon.thickness <= Length())
    ledger_.problem(
        {"face_frame.fit_allowance", "face_frame.mortise.width"},
        fmt::format("takes all of a mortise of {}; make it less", ledger_.say(mortise.width)));
  if (mortise.from_face + mortise.width > plan_.thickness)
    ledger_.problem(
        {"face_frame.mortise.from_face", "face_frame.mortise.width", "face_frame.thickness"},
        fmt::format("a mortise from {} to {} is not within the thickness of {}",
                    ledger_.say(mortise.from_face), ledger_.say(mortise.from_face + mortise.width),
                    ledger_.say(plan_.thickness)));
}

void JointPlanner::settle_tenons() {
  settle_tenon_sizes();
  const Length edge = tenoned_.mortise.edge_clearance;
  shoulder_ = ledger_.take("face_frame.tenon.shoulder",
                           std::max(ledger_.pick(5'000, 3, 16), plan_.edge.set_back()),
                           "so that no end of a mortise shows beside an opening");
  if (shoulder_ <= edge)
    ledger_.problem({"face_frame.tenon.shoulder", "face_frame.tenon.edge_clearance"},
                    fmt::format("{} must be more than tenon.edge_clearance, {}, or the mortise "
                                "shows beside its tenon",
                                ledger_.say(shoulder_), ledger_.say(edge)));
  if (shoulder_ < plan_.edge.set_back())
    ledger_.problem({"face_frame.tenon.shoulder", "face_frame.bead.width"},
                    fmt::format("{} must be at least as much as the bead is wide, {}",
                                ledger_.say(shoulder_), ledger_.say(plan_.edge.set_back())));
  for (FaceEnd& end : plan_.ends)
    if (ledger_.clean()) settle_tenon(end);
  if (ledger_.spec.size("face_frame.tenon.depth")) ledger_.take("face_frame.tenon.depth", {}, {});
  if (ledger_.spec.size("face_frame.tenon.relish")) ledger_.take("face_frame.tenon.relish", {}, {});
  if (ledger_.clean() && ledger_.stated("face_frame.pin").by_spec()) pin_tenons();
}

/// Pins of one size through all tenons, as far from the shoulder as the shortest of them bears.
void JointPlanner::pin_tenons() {
  Length shortest = std::get<Tenoned>(plan_.ends.front().design).tenon.depth;
  for (const FaceEnd& end : plan_.ends)
    shortest = std::min(shortest, std::get<Tenoned>(end.design).tenon.depth);
  const auto species = find_species(species_of(ledger_.spec).of(Role::rail));
  const PinUsual usual = usual_pins(ledger_.defaults, species && species->group == "softwood");
  const PinDesign pins =
      settle_pin_sizes(ledger_, kPinKeys, usual, {plan_.thickness, shortest, Length(), ""});
  for (FaceEnd& end : plan_.ends) {
    auto& its = std::get<Tenoned>(end.design);
    its.pins = pins_across(
        ledger_, kPinKeys, usual, pins,
        {its.tenon, its.mortise, its.tenon.depth, plan_.members[end.enters].name}, plan_.thickness);
  }
}

/// How deep an end's tenon is where nothing is said.
Reasoned JointPlanner::usual_depth(const Standing& at) const {
  const Length set_back = plan_.edge.set_back();
  const Length whole = ledger_.defaults.whole;
  Reasoned free{nearest_multiple(floor_divide(at.across * 2, 3) - set_back, whole),
                set_back > Length()
                    ? "two thirds of what receives it, less the bead that is cut away"
                    : "two thirds of what receives it"};
  if (joint_ == FaceJoint::stub) free = {ledger_.pick(12'000, 1, 2), "usual for a stub"};
  if (!at.met) return free;
  const Length most =
      floor_half(at.across - least_between()) - tenoned_.mortise.bottom_clearance - set_back;
  if (most >= free.size) return free;
  return {floor_multiple(most, whole), "what leaves wood between two that meet there"};
}

Length JointPlanner::depth_of(const Standing& at) {
  if (const auto stated = ledger_.spec.size("face_frame.tenon.depth")) return *stated;
  const Reasoned usual = usual_depth(at);
  note("face_frame.tenon.depth", usual.size, usual.why, at.receives.name);
  return usual.size;
}

void JointPlanner::refuse_depth(const Standing& at, Length depth) {
  const Length deep = depth + plan_.edge.set_back() + tenoned_.mortise.bottom_clearance;
  const Length room = at.met ? floor_half(at.across) : at.across;
  if (depth > Length() && deep < room) return;
  ledger_.problem(
      {"face_frame.tenon.depth", "face_frame.tenon.bottom_clearance", "face_frame.bead.width",
       "face_frame.rail_width.between", "face_frame.mullion_width"},
      fmt::format("a mortise {} deep {} the {}, {} wide; make it less", ledger_.say(deep),
                  at.met ? "from each edge goes through" : "goes through", at.receives.name,
                  ledger_.say(at.across)));
}

/// What a tenon loses at the outside of the frame.
Length JointPlanner::relish_of(const Standing& at) {
  if (const auto stated = ledger_.spec.size("face_frame.tenon.relish")) return *stated;
  const Length least = ledger_.defaults.least_relish;
  const Length relish = usual_relish(at.width(), ledger_.defaults.whole, least);
  note("face_frame.tenon.relish", relish,
       relish == least ? "the least that keeps the stile's end whole" : "a third of the rail",
       at.enters.name);
  return relish;
}

/// Where a tenon stands across its member. A bridle's is open at the outside of the frame, and as
/// wide as the rail but for its play, so that its slot ends at the rail's edge.
Strip JointPlanner::tenon_strip(const Standing& at, bool bridle) {
  const Length play = tenoned_.mortise.edge_clearance;
  const Length inner = bridle ? std::max(play, plan_.edge.set_back()) : shoulder_;
  const Length outer = !at.at_corner() || bridle ? Length() : relish_of(at);
  if (at.at_corner() && !bridle && outer <= play)
    ledger_.problem({"face_frame.tenon.relish", "face_frame.tenon.edge_clearance"},
                    fmt::format("{} must be more than tenon.edge_clearance, {}, or the mortise "
                                "comes out at the stile's end",
                                ledger_.say(outer), ledger_.say(play)));
  return {at.outer_low ? outer : inner, at.width() - (at.outer_high ? outer : inner)};
}

void JointPlanner::settle_tenon(FaceEnd& end) {
  const Standing at = standing(end);
  const bool bridle = joint_ == FaceJoint::bridle && at.at_corner();
  Tenoned its = tenoned_;
  const Strip strip = tenon_strip(at, bridle);
  its.tenon.layout.tenons = {strip};
  its.tenon.mitred = at.inner();
  if (bridle) {
    its.tenon.depth = at.receives.width() - plan_.edge.set_back();
    its.mortise.through = its.mortise.open_end = true;
    its.mortise.bottom_clearance = Length();
  } else {
    its.tenon.depth = depth_of(at);
    refuse_depth(at, its.tenon.depth);
  }
  if (strip.high <= strip.low)
    ledger_.problem({"face_frame.tenon.shoulder", "face_frame.tenon.relish"},
                    fmt::format("leaves no tenon on the {}, {} wide; make it less, or the member "
                                "wider",
                                at.enters.name, ledger_.say(at.width())));
  end.design = std::move(its);
}

// ---- dowels

void JointPlanner::settle_dowels() {
  const DoorDefaults& usual = ledger_.defaults;
  const Length bore = dowels_.bore =
      ledger_.take("face_frame.dowel.diameter", usual_dowel(plan_.thickness, usual.dowels),
                   "the least dowel from a third to half of the thickness");
  dowels_.diameter = bore - fit_;
  dowels_.from_face = floor_half(plan_.thickness - bore);
  const DowelSpread spread{
      ledger_.take("face_frame.dowel.edge", bore, "as much wood as the dowel is thick"),
      ledger_.take("face_frame.dowel.wall", usual.loose_wall, kUsualJoint),
      ledger_.take("face_frame.dowel.spacing", usual.dowel_spacing,
                   "as wide as is glued across the grain (shop rule)")};
  dowels_.bottom = ledger_.take("face_frame.dowel.bottom_clearance", usual.dowel_clearance,
                                "room for glue below the dowel");
  if (bore >= plan_.thickness || dowels_.diameter <= Length())
    ledger_.problem({"face_frame.dowel.diameter", "face_frame.fit_allowance"},
                    fmt::format("a dowel of {} in a hole of {} does not go into a frame {} thick",
                                ledger_.say(dowels_.diameter), ledger_.say(bore),
                                ledger_.say(plan_.thickness)));
  for (FaceEnd& end : plan_.ends)
    if (ledger_.clean()) spread_dowels(end, spread);
  if (ledger_.spec.size("face_frame.dowel.depth")) ledger_.take("face_frame.dowel.depth", {}, {});
}

void JointPlanner::spread_dowels(FaceEnd& end, const DowelSpread& spread) {
  const Standing at = standing(end);
  DowelDesign its = dowels_;
  const Length room =
      (at.met ? floor_half(at.across - least_between()) : at.across - least_between()) - its.bottom;
  // Both of its ends are bored.
  const Length length = at.enters.upright() ? at.enters.at.height() : at.enters.at.width();
  const Length most = std::min(room, floor_half(length - least_between()) - its.bottom);
  const Length usual = std::min(its.bore * 3, floor_multiple(most, ledger_.defaults.whole));
  its.depth = ledger_.spec.size("face_frame.dowel.depth").value_or(usual);
  if (!ledger_.spec.size("face_frame.dowel.depth"))
    note("face_frame.dowel.depth", its.depth,
         usual == its.bore * 3 ? "three times the dowel's thickness"
                               : "as deep as leaves wood behind the holes",
         at.enters.name);
  const Length hole = its.depth + its.bottom;
  if (its.depth <= Length() || hole >= at.across || (at.met && hole * 2 >= at.across) ||
      hole * 2 >= length)
    ledger_.problem({"face_frame.dowel.depth", "face_frame.dowel.bottom_clearance"},
                    fmt::format("holes {} deep leave no wood at the ends of the {}; make it less",
                                ledger_.say(hole), at.enters.name));
  const Length stretch = at.width() - spread.edge * 2;
  if (stretch < its.bore)
    ledger_.problem({"face_frame.dowel.edge", "face_frame.dowel.diameter"},
                    fmt::format("the {}, {} wide, has no room for a dowel of {} with {} at each "
                                "edge; make it less, or the member wider",
                                at.enters.name, ledger_.say(at.width()), ledger_.say(its.bore),
                                ledger_.say(spread.edge)));
  else
    its.from_edge = dowels_along(spread.edge, stretch, its.bore, spread);
  end.design = std::move(its);
}

// ---- laps

/// Two that meet in one member go half over it each. At a corner the edges close up as shoulders
/// do; between others a lap has some play.
void JointPlanner::settle_laps() {
  const Length from_face =
      ledger_.take("face_frame.half_lap.from_face", floor_half(plan_.thickness), "half each");
  if (from_face >= plan_.thickness)
    ledger_.problem({"face_frame.half_lap.from_face", "face_frame.thickness"},
                    fmt::format("leaves no lap of a frame {} thick; make it less",
                                ledger_.say(plan_.thickness)));
  for (FaceEnd& end : plan_.ends) {
    const Standing at = standing(end);
    LapDesign lap{at.receives.width(), from_face, at.at_corner() ? Length() : floor_half(fit_), {}};
    if (at.met) {
      lap.end_clearance = floor_half(fit_);
      lap.reach = floor_half(lap.reach) - lap.end_clearance;
    }
    end.design = lap;
  }
}

// ---- screws

void JointPlanner::settle_screw_sizes(ScrewDesign& screws) {
  screws.by = ledger_.choose<ScrewsBy>("face_frame.screws.by", ScrewsBy::pocket,
                                       "from behind, where they do not show");
  const bool pocket = screws.by == ScrewsBy::pocket;
  screws.hole = ledger_.take("face_frame.screws.hole", ledger_.pick(4'000, 5, 32), kUsualJoint);
  screws.head = ledger_.take("face_frame.screws.head",
                             pocket ? ledger_.pick(9'500, 3, 8) : ledger_.pick(10'000, 3, 8),
                             pocket ? "usual for a pocket" : "usual for a plug");
  screws.seat =
      ledger_.take("face_frame.screws.seat",
                   pocket ? ledger_.pick(12'000, 1, 2) : ledger_.pick(10'000, 3, 8), kUsualJoint);
  if (!pocket)
    screws.pilot = ledger_.take("face_frame.screws.pilot", ledger_.pick(25'000, 1, 1), kUsualJoint);
  else if (ledger_.stated("face_frame.screws.pilot").by_spec())
    ledger_.problem({"face_frame.screws.pilot"},
                    "is of plugged screws; those of pockets cut their own way");
  if (screws.hole >= screws.head)
    ledger_.problem({"face_frame.screws.hole", "face_frame.screws.head"},
                    fmt::format("a hole of {} lets a head of {} through; make it less",
                                ledger_.say(screws.hole), ledger_.say(screws.head)));
  const bool too_wide = pocket ? !screws.fits(plan_.thickness) : screws.head >= plan_.thickness;
  if (too_wide)
    ledger_.problem({"face_frame.screws.head", "face_frame.screws.seat", "face_frame.thickness"},
                    fmt::format("a {} of {} does not go into a frame {} thick; make it less",
                                pocket ? "pocket" : "plug", ledger_.say(screws.head),
                                ledger_.say(plan_.thickness)));
}

void JointPlanner::settle_screws() {
  ScrewDesign screws;
  settle_screw_sizes(screws);
  const Length edge =
      ledger_.take("face_frame.screws.edge", ledger_.pick(6'000, 1, 4), kUsualJoint);
  const DowelSpread spread{
      edge, edge,
      ledger_.take("face_frame.screws.spacing", ledger_.pick(100'000, 4, 1), kUsualJoint)};
  for (FaceEnd& end : plan_.ends) {
    const Standing at = standing(end);
    ScrewDesign its = screws;
    const Length stretch = at.width() - edge * 2;
    if (stretch < its.head) {
      ledger_.problem({"face_frame.screws.edge", "face_frame.screws.head"},
                      fmt::format("the {}, {} wide, has no room for a screw's {} with {} at each "
                                  "edge; make it less, or the member wider",
                                  at.enters.name, ledger_.say(at.width()), ledger_.say(its.head),
                                  ledger_.say(edge)));
      return;
    }
    if (its.by == ScrewsBy::plug && (at.met || its.seat >= at.across)) {
      ledger_.problem(
          {"face_frame.screws.by", "face_frame.joint"},
          fmt::format("no screw goes through the {} to the {}: {}; screw from pockets",
                      at.receives.name, at.enters.name,
                      at.met ? "another member stands there" : "its plug takes all of it"));
      return;
    }
    for (const Length low : dowels_along(edge, stretch, its.head, spread))
      its.middles.push_back(low + floor_half(its.head));
    end.design = std::move(its);
  }
}

template <typename... Each>
struct OneOf : Each... {
  using Each::operator()...;
};
template <typename... Each>
OneOf(Each...) -> OneOf<Each...>;

}  // namespace

void settle_face_joints(FaceLedger& ledger, FaceFramePlan& plan) {
  JointPlanner(ledger, plan).settle();
}

EndJoints joints_of(const EndDesign& design) {
  EndJoints joints;
  std::visit(
      OneOf{[&](const Butted&) { joints.push_back(std::make_unique<Butt>()); },
            [&](const Tenoned& its) {
              joints.push_back(std::make_unique<Tenons>(its.tenon, its.mortise));
              if (!its.pins.empty()) joints.push_back(std::make_unique<Pins>(its.pins));
            },
            [&](const DowelDesign& its) { joints.push_back(std::make_unique<Dowels>(its)); },
            [&](const LapDesign& its) { joints.push_back(std::make_unique<HalfLap>(its)); },
            [&](const ScrewDesign& its) { joints.push_back(std::make_unique<Screws>(its)); }},
      design);
  return joints;
}

}  // namespace haunch
