#include "joint_work.h"

#include <algorithm>
#include <stdexcept>

#include "lines.h"
#include "own_axes.h"

namespace haunch {
namespace {

/// What is free for a tenon with square edges in a mortise whose ends a cutter of its width, or of
/// their radius, leaves round.
Length straight_length(const Joint& joint, const MortiseSpan& span) {
  const MortiseSizes& mortise = *joint.mortise;
  if (mortise.free_width) return *mortise.free_width + span.length - mortise.each.front().length;
  const bool open_end = joint.design.edge.has_value();
  return std::max(span.length - (open_end ? floor_half(mortise.width) : mortise.width), Length());
}

/// Works out what one joint asks for.
class JointWork {
 public:
  JointWork(Making& making, const Assembly& wood, std::size_t number)
      : making_(making),
        number_(number),
        joint_(wood.joints[number]),
        receives_(wood.pieces[joint_.receives]),
        enters_(wood.pieces[joint_.enters]) {}

  void mortises() {
    const MortiseSizes& mortise = *joint_.mortise;
    Operation setting{
        FeatureKind::mortise, Cut::whole, {}, mortise.through, joint_.design.edge.has_value()};
    for (const MortiseSpan& span : mortise.each) {
      setting.settings = {{SizeName::width, mortise.width},
                          {SizeName::depth, mortise.depth},
                          {SizeName::from_face, span.from_face.value_or(mortise.from_face)}};
      if (mortise.end_radius > Length())
        setting.settings.push_back({SizeName::radius, mortise.end_radius});
      Run run = run_in_receiver(FeatureKind::mortise, span);
      run.straight = straight_length(joint_, span);
      add_run(making_, setting, run);
      if (mortise.flare) flare(*mortise.flare, run);
    }
  }

  /// One setting cuts both cheeks where their shoulders are in one line.
  void tenons() {
    const TenonSizes& tenon = *joint_.tenon;
    const bool moulded =
        std::any_of(receives_.features.begin(), receives_.features.end(),
                    [](const Feature& feature) { return feature.kind == FeatureKind::moulding; });
    for (const TenonSpan& span : marked(tenon.each)) {
      const Length from_face = span.from_face.value_or(tenon.from_face);
      if (tenon.straight()) {
        cheeks(Cut::whole, tenon.depth, from_face, span);
        continue;
      }
      const bool face_coped = moulded && tenon.longer_at_face > Length();
      const bool back_coped = moulded && tenon.longer_at_back > Length();
      cheeks(face_coped ? Cut::face_cope : Cut::face_cheek, tenon.depth - tenon.longer_at_face,
             from_face, span);
      cheeks(back_coped ? Cut::back_cope : Cut::back_cheek, tenon.depth - tenon.longer_at_back,
             from_face, span);
    }
    for (const TenonSpan& span : marked(tenon.haunches))
      add_run(making_,
              {FeatureKind::tenon,
               Cut::haunch,
               {{SizeName::thickness, tenon.haunch_thickness},
                {SizeName::depth, tenon.haunch_depth},
                {SizeName::from_face, tenon.haunch_from_face}}},
              run_at_end(span));
  }

  /// The receiver's back and the other's face side are cut away.
  void laps() {
    const Operation recess{
        FeatureKind::lap, Cut::whole, {{SizeName::depth, joint_.mortise->width}}};
    Run run = run_in_receiver(FeatureKind::lap, joint_.mortise->each.front());
    run.side = {2, true};
    add_run(making_, recess, run);
    const std::size_t feature = feature_of(enters_, FeatureKind::lap);
    for (const Box& cut : enters_.features[feature].cuts)
      add_run(making_, {FeatureKind::lap, Cut::whole, {{SizeName::depth, cut.high[2]}}},
              {joint_.enters,
               feature,
               number_,
               {2, false},
               low_line(enters_, making_.shoulders[joint_.enters]),
               cut.low[0],
               cut.high[0]});
  }

  /// Tails or fingers, each by itself: on the end, and in what receives them.
  void tails() {
    const bool fingers = joint_.kind == JointKind::finger;
    const FeatureKind on_end = fingers ? FeatureKind::fingers : FeatureKind::tails;
    const FeatureKind in_receiver = fingers ? FeatureKind::fingers : FeatureKind::sockets;
    const auto across = static_cast<std::size_t>(enters_.place.axes[1]);
    const Length receiver_edge = enters_.place.origin[across] - receives_.place.origin[across];
    for (const TenonSpan& span : joint_.tails->each) {
      const std::vector<NamedSize> settings{{SizeName::width, span.width},
                                            {SizeName::depth, joint_.tails->length}};
      const Length near = span.from_edge;
      add_run(making_, {on_end, Cut::whole, settings},
              {joint_.enters,
               feature_of(enters_, on_end),
               number_,
               {0, own_upwards(enters_.place, joint_.heading)},
               edge_line(enters_),
               near,
               near + span.width});
      add_run(making_, {in_receiver, Cut::whole, settings},
              {joint_.receives,
               feature_of(receives_, in_receiver),
               number_,
               {own_axis(receives_.place, joint_.heading.axis),
                !own_upwards(receives_.place, joint_.heading)},
               edge_line(receives_),
               receiver_edge + near,
               receiver_edge + near + span.width});
    }
  }

  void dowel_hole() {
    const MortiseSizes& hole = *joint_.mortise;
    const Length radius = floor_half(hole.width);
    Run run = run_in_receiver(FeatureKind::dowel_hole, hole.each.front());
    run.near += radius;
    run.far.reset();
    std::vector<NamedSize> settings{{SizeName::diameter, hole.width},
                                    {SizeName::depth, hole.depth}};
    // Holes in a face lie along and across it, each by itself.
    if (run.side.into != 2) settings.push_back({SizeName::from_face, hole.from_face + radius});
    add_run(making_, {FeatureKind::dowel_hole, Cut::whole, std::move(settings)}, run);
  }

 private:
  /// By index into the features of its piece.
  std::size_t feature_of(const Piece& piece, FeatureKind kind) const {
    const auto is_its = [&](const Feature& it) {
      return it.kind == kind &&
             std::find(it.joints.begin(), it.joints.end(), number_) != it.joints.end();
    };
    const auto its = std::find_if(piece.features.begin(), piece.features.end(), is_its);
    if (its == piece.features.end()) throw std::logic_error("a joint that nothing was cut for");
    return static_cast<std::size_t>(its - piece.features.begin());
  }

  Run run_in_receiver(FeatureKind kind, const MortiseSpan& span) const {
    const Shoulders& shoulders = making_.shoulders[joint_.receives];
    const Length near = span.from_edge.value_or(span.from_foot);
    Run run{joint_.receives,
            feature_of(receives_, kind),
            number_,
            {own_axis(receives_.place, joint_.heading.axis),
             !own_upwards(receives_.place, joint_.heading)},
            span.from_edge ? edge_line(receives_) : low_line(receives_, shoulders),
            near,
            near + span.length};
    if (const auto from_shoulder = joint_.mortise->from_shoulder_of(span))
      run.from_shoulder = {*from_shoulder, shoulders.line_at_low_end()};
    return run;
  }

  void flare(const Flare& flare, Run run) {
    run.straight.reset();
    add_run(making_,
            {FeatureKind::mortise,
             Cut::flare,
             {{SizeName::width, flare.width}, {SizeName::depth, flare.depth}}},
            run);
  }

  void cheeks(Cut cut, Length depth, Length from_face, const TenonSpan& span) {
    Operation setting{FeatureKind::tenon,
                      cut,
                      {{SizeName::thickness, joint_.tenon->thickness},
                       {SizeName::depth, depth},
                       {SizeName::from_face, from_face}}};
    if (joint_.tenon->edge_radius > Length())
      setting.settings.push_back({SizeName::radius, joint_.tenon->edge_radius});
    add_run(making_, setting, run_at_end(span));
  }

  bool is_turned() const { return joint_.through != enters_.place.axes[2]; }

  /// Of a jamb, whose outside is the low face, from its inner one.
  std::vector<TenonSpan> marked(std::vector<TenonSpan> spans) const {
    if (enters_.role != Role::jamb || inner_face_is_low(enters_)) return spans;
    for (TenonSpan& span : spans)
      span.from_edge = enters_.blank[2] - span.from_edge - span.width;
    std::reverse(spans.begin(), spans.end());
    return spans;
  }

  Run run_at_end(const TenonSpan& span) const {
    Line from = edge_line(enters_);
    if (is_turned()) from = is_upright(enters_) ? Line::inner_face : Line::lower_face;
    return {joint_.enters,
            feature_of(enters_, FeatureKind::tenon),
            number_,
            {0, own_upwards(enters_.place, joint_.heading)},
            from,
            span.from_edge,
            span.from_edge + span.width};
  }

  Making& making_;
  std::size_t number_;
  const Joint& joint_;
  const Piece& receives_;
  const Piece& enters_;
};

}  // namespace

void add_joint_work(Making& making, const Assembly& wood, std::size_t number) {
  const Joint& joint = wood.joints[number];
  JointWork work(making, wood, number);
  if (joint.kind == JointKind::half_lap) return work.laps();
  if (joint.kind == JointKind::dowel) return work.dowel_hole();
  if (joint.tails) return work.tails();
  if (joint.mortise) work.mortises();
  if (joint.tenon && joint.has_shoulder) work.tenons();
}

}  // namespace haunch
