#include "feature_work.h"

#include <algorithm>

#include "bodies.h"
#include "lines.h"
#include "own_axes.h"
#include "polyhedron.h"

namespace haunch {
namespace {

/// What is run by itself: of most features all of it.
std::vector<Box> run_by_itself(const Feature& feature) {
  std::vector<Box> bodies = bodies_of(feature);
  const bool straight = !feature.cuts.empty();
  if (feature.kind == FeatureKind::haunching ||
      (feature.kind == FeatureKind::lip_rebate && straight) || feature.kind == FeatureKind::mitre ||
      feature.kind == FeatureKind::shelf_pin_holes)
    return bodies;
  while (bodies.size() > 1) {
    bodies.front() = around(bodies.front(), bodies.back());
    bodies.pop_back();
  }
  return bodies;
}

/// Across which of the piece's own axes a feature goes in.
std::size_t way_in(const Assembly& wood, const Piece& piece, const Feature& feature,
                   const Box& body) {
  if (feature.fitting) return feature.fitting->into;
  switch (feature.kind) {
    case FeatureKind::groove:
      return opens_in_face(body, {{}, piece.blank}, 1, 2) ? 2 : 1;
    case FeatureKind::raise:
    case FeatureKind::housing:
    case FeatureKind::slot:
      return 2;
    case FeatureKind::pin_hole:
      return feature.prisms.front().along;
    case FeatureKind::rebate: {
      if (feature.joints.empty()) return 2;
      const JointKind kind = wood.joints[feature.joints.front()].kind;
      const bool in_edge = kind == JointKind::panel_in_rebate ||
                           kind == JointKind::glass_in_rebate ||
                           kind == JointKind::sealed_unit_in_rebate;
      return in_edge ? 1 : 2;
    }
    case FeatureKind::screw_hole:
      return size_of(feature, SizeName::from_shoulder) ? 2 : feature.prisms.front().along;
    case FeatureKind::bore:
      return feature.prisms.front().along;
    case FeatureKind::moulding_mitre:
      return feature.cuts.empty() ? 0 : 1;
    case FeatureKind::lip_rebate:
    case FeatureKind::meeting_rebate:
      return body.extent(0) > body.extent(1) ? 1 : 0;
    case FeatureKind::mitre:
    case FeatureKind::scribed_end:
    case FeatureKind::spline_slot:
    case FeatureKind::tongue:
      return 0;
    default:
      return 1;
  }
}

/// A size that is a place on the piece, and no setting.
bool is_place(const Feature& feature, SizeName name) {
  if (name == SizeName::from_foot) return true;
  return name == SizeName::from_edge &&
         (feature.kind == FeatureKind::pin_hole || feature.kind == FeatureKind::screw_hole ||
          (feature.fitting && feature.fitting->into == 0));
}

class FeatureWork {
 public:
  FeatureWork(Making& making, const Assembly& wood, std::size_t number)
      : making_(making),
        wood_(wood),
        number_(number),
        piece_(wood.pieces[number]),
        shoulders_(making.shoulders[number]) {}

  void add(std::size_t number) {
    const Feature& feature = piece_.features[number];
    Operation setting{feature.kind};
    for (const NamedSize& size : feature.sizes)
      if (!is_place(feature, size.name)) setting.settings.push_back(size);
    for (const Box& body : run_by_itself(feature)) {
      const std::size_t into = way_in(wood_, piece_, feature, body);
      if (goes_with_stile(feature, into)) continue;
      const std::size_t along = across_axes(into).u;
      Run run{number_,
              number,
              {},
              {into, body.low[into] > piece_.blank[into] - body.high[into]},
              into == 0 ? edge_line(piece_) : low_line(piece_, shoulders_),
              body.low[along],
              body.high[along]};
      if (feature.joints.size() == 1 && feature.kind != FeatureKind::groove)
        run.joint = feature.joints.front();
      finish(setting, run, feature, body);
      add_run(making_, setting, run);
    }
  }

 private:
  /// Whether a rebate that is worked round a glued-up leaf takes no more of this piece than the end
  /// of a tenon or wedge, in the edge of a stile.
  bool goes_with_stile(const Feature& feature, std::size_t into) const {
    if (feature.kind != FeatureKind::lip_rebate && feature.kind != FeatureKind::meeting_rebate)
      return false;
    const bool has_tenon =
        std::any_of(piece_.features.begin(), piece_.features.end(),
                    [](const Feature& it) { return it.kind == FeatureKind::tenon; });
    return piece_.role == Role::wedge || (has_tenon && into == 0);
  }

  /// What some features have of their own.
  void finish(Operation& setting, Run& run, const Feature& feature, const Box& body) const {
    if (feature.fitting) return let_in(setting, run, feature, body);
    switch (feature.kind) {
      case FeatureKind::moulding:
        setting.profile = feature.profile;
        setting.both_faces = at_both_faces(feature);
        break;
      case FeatureKind::haunching:
        setting.settings = {{SizeName::width, body.extent(2)},
                            {SizeName::depth, body.extent(1)},
                            {SizeName::from_face, body.low[2]}};
        break;
      case FeatureKind::lip_rebate:
        if (feature.cuts.empty()) break;  // along a curve, which says how wide it is
        setting.settings = {{SizeName::width, body.extent(run.side.into)},
                            {SizeName::depth, body.extent(2)}};
        break;
      case FeatureKind::housing:
      case FeatureKind::rebate:
        if (run.joint && shoulders_.low)
          run.from_shoulder = {run.near - shoulders_.low->line, shoulders_.line_at_low_end()};
        break;
      case FeatureKind::pin_hole:
        pin_hole(setting, run, feature);
        break;
      case FeatureKind::screw_hole:
        screw_hole(run, feature);
        break;
      case FeatureKind::bore:
        setting.through = body.extent(run.side.into) == piece_.blank[run.side.into];
        run.near += floor_half(run.extent());
        run.far.reset();
        break;
      default:
        break;
    }
  }

  bool at_both_faces(const Feature& feature) const {
    const std::vector<Box> bodies = bodies_of(feature);
    const auto any = [&](const auto& wanted) {
      return std::any_of(bodies.begin(), bodies.end(), wanted);
    };
    return any([](const Box& it) { return it.low[2] == Length(); }) &&
           any([&](const Box& it) { return it.high[2] == piece_.blank[2]; });
  }

  /// A recess is told from the ends of the leaf, a round hole by its middle.
  void let_in(Operation& setting, Run& run, const Feature& feature, const Box& body) const {
    const std::size_t into = run.side.into;
    run.side.from_high = feature.fitting->from_high;
    setting.through = body.extent(into) == piece_.blank[into];
    const std::size_t along = across_axes(into).u;
    const Axis axis = piece_.place.axes[along];
    const EndLines ends = ends_of(wood_, piece_, shoulders_, axis);
    const Box there = placed(body, piece_.place);
    Length low = there.low[static_cast<std::size_t>(axis)];
    Length high = there.high[static_cast<std::size_t>(axis)];
    const bool hole = !feature.prisms.empty();
    if (hole) low = high = low + floor_half(high - low);
    run.from = ends.from;
    run.to = ends.to;
    run.near = low - ends.low;
    run.far = hole ? std::nullopt : std::optional(high - ends.low);
    run.from_other_end = ends.high - high;
  }

  /// In the cheeks of a mortise told from the edge, along the piece from its foot; in a tenon from
  /// its shoulder, across the piece: where that lies with its edge to the front, its thickness.
  void pin_hole(Operation& setting, Run& run, const Feature& feature) const {
    const std::size_t through = feature.prisms.front().along;
    const auto from_foot = size_of(feature, SizeName::from_foot);
    run.side.from_high = false;
    run.far.reset();
    if (!from_foot) return across_tenon(run, *size_of(feature, SizeName::from_edge), through);
    run.from = low_line(piece_, shoulders_);
    run.near = *from_foot;
    setting.through = size_of(feature, SizeName::depth) == piece_.blank[through];
    for (NamedSize& size : setting.settings)
      if (size.name == SizeName::from_shoulder)
        size = {SizeName::from_edge, size.size + set_back()};
  }

  void across_tenon(Run& run, Length from_edge, std::size_t through) const {
    run.from = edge_line(piece_);
    run.near = from_edge;
    if (through == 2) return;
    run.from = is_upright(piece_) ? Line::inner_face : Line::lower_face;
    if (piece_.role == Role::jamb && !inner_face_is_low(piece_))
      run.near = piece_.blank[2] - from_edge;
  }

  /// By its middle; of a pocket in the back across the width.
  void screw_hole(Run& run, const Feature& feature) const {
    if (const auto middle = size_of(feature, SizeName::from_edge)) {
      run.from = edge_line(piece_);
      run.near = *middle;
    } else {
      run.near += floor_half(run.extent());
    }
    run.far.reset();
  }

  /// How far shoulders stand past the face edge, where mouldings are cut away for them: in one
  /// assembly all as far.
  Length set_back() const {
    Length most;
    for (const Joint& joint : wood_.joints)
      if (joint.tenon) most = std::max(most, joint.tenon->set_back);
    return most;
  }

  Making& making_;
  const Assembly& wood_;
  std::size_t number_;
  const Piece& piece_;
  const Shoulders& shoulders_;
};

/// These are worked for one joint each: joint_work.
bool is_of_joint(FeatureKind kind) {
  return kind == FeatureKind::mortise || kind == FeatureKind::tenon || kind == FeatureKind::lap ||
         kind == FeatureKind::dowel_hole || kind == FeatureKind::tails ||
         kind == FeatureKind::sockets || kind == FeatureKind::fingers;
}

}  // namespace

void add_feature_work(Making& making, const Assembly& wood, std::size_t piece) {
  FeatureWork work(making, wood, piece);
  const auto& features = wood.pieces[piece].features;
  for (std::size_t number = 0; number < features.size(); ++number)
    if (!is_of_joint(features[number].kind)) work.add(number);
}

}  // namespace haunch
