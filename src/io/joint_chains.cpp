#include "joint_chains.h"

#include <algorithm>

#include "polyhedron.h"

namespace haunch {
namespace {

std::size_t number_of(Axis axis) {
  return static_cast<std::size_t>(axis);
}

bool holds(const std::vector<std::size_t>& numbers, std::size_t number) {
  return std::find(numbers.begin(), numbers.end(), number) != numbers.end();
}

/// It, and those of what holds it together.
std::vector<std::size_t> joints_within(const Assembly& wood, const JointView& view) {
  std::vector<std::size_t> joints;
  for (std::size_t i = 0; i < wood.joints.size(); ++i)
    if (holds(view.pieces, wood.joints[i].receives) && holds(view.pieces, wood.joints[i].enters))
      joints.push_back(i);
  return joints;
}

class JointChains {
 public:
  JointChains(const NotedView& view, const JointView& joint, const CutAway& cut)
      : view_(view),
        joints_(joints_within(view.wood(), joint)),
        joint_(view.wood().joints[joint.joints.front()]),
        cut_(cut) {}

  std::vector<PlacedChain> all() const {
    const Axis across = cut_.plane.across, heading = joint_.heading.axis;
    std::vector<PlacedChain> chains;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
      if (axis == across) continue;
      const auto [receiver, entrant] = sides(axis, heading);
      chains.push_back({receiver, axis, places(joint_.receives, axis)});
      std::vector<Length> entering = places(joint_.enters, axis);
      if (axis == heading && !entering.empty()) add_bottom(entering);
      chains.push_back({entrant, axis, std::move(entering)});
    }
    return chains;
  }

 private:
  struct TwoSides {
    PaperSide receiver, entrant;
  };

  /// Figures of a piece stand on its side of the view.
  TwoSides sides(Axis axis, Axis heading) const {
    const bool level = view_.runs_level(axis);
    if (axis == heading || !view_.shows(heading) || cut_.plane.across == heading)
      return level ? TwoSides{PaperSide::below, PaperSide::above}
                   : TwoSides{PaperSide::left, PaperSide::right};
    const Extent receiver = extent(joint_.receives), entrant = extent(joint_.enters);
    const bool first =
        level ? middle(receiver.low.v, receiver.high.v) < middle(entrant.low.v, entrant.high.v)
              : middle(receiver.low.u, receiver.high.u) < middle(entrant.low.u, entrant.high.u);
    const PaperSide low = level ? PaperSide::below : PaperSide::left;
    const PaperSide high = level ? PaperSide::above : PaperSide::right;
    return first ? TwoSides{low, high} : TwoSides{high, low};
  }

  static double middle(double low, double high) { return (low + high) / 2; }

  Extent extent(std::size_t piece) const {
    Box box = placed_blank(view_.wood().pieces[piece]);
    if (cut_.region)
      for (std::size_t axis = 0; axis < 3; ++axis) {
        box.low[axis] = std::clamp(box.low[axis], cut_.region->low[axis], cut_.region->high[axis]);
        box.high[axis] =
            std::clamp(box.high[axis], cut_.region->low[axis], cut_.region->high[axis]);
      }
    return view_.paper(box);
  }

  /// Whether the plane goes through it where it is drawn.
  bool is_cut(const Box& box) const {
    const std::size_t across = number_of(cut_.plane.across);
    const Length at = cut_.plane.at;
    const bool meets = cut_.plane.looks_upwards ? box.low[across] <= at && at < box.high[across]
                                                : box.low[across] < at && at <= box.high[across];
    return meets && (!cut_.region || interiors_meet(box, *cut_.region));
  }

  void add(std::vector<Length>& places, const Box& box, Axis axis, const Box& blank) const {
    const std::size_t number = number_of(axis);
    for (const Length at : {box.low[number], box.high[number]})
      if (at >= blank.low[number] && at <= blank.high[number] && view_.has_end_at(axis, at) &&
          (!cut_.region || (at >= cut_.region->low[number] && at <= cut_.region->high[number])))
        places.push_back(at);
  }

  /// Panels are worked round their edges for no single joint.
  bool is_worked_for_it(const Piece& piece, const Feature& feature) const {
    return piece.role == Role::panel ||
           std::any_of(feature.joints.begin(), feature.joints.end(),
                       [&](std::size_t joint) { return holds(joints_, joint); });
  }

  std::vector<Box> worked_boxes(std::size_t piece) const {
    std::vector<Box> boxes;
    const Piece& its = view_.wood().pieces[piece];
    for (const Feature& feature : its.features) {
      if (!is_worked_for_it(its, feature)) continue;
      for (const Box& box : feature.cuts)
        boxes.push_back(placed(box, its.place));
      for (const Prism& prism : feature.prisms)
        boxes.push_back(bounds_of(placed(prism, its.place)));
    }
    return boxes;
  }

  std::vector<Length> places(std::size_t piece, Axis axis) const {
    const Box blank = placed_blank(view_.wood().pieces[piece]);
    if (!is_cut(blank)) return {};
    std::vector<Length> all;
    add(all, blank, axis, blank);
    for (const Box& box : worked_boxes(piece))
      if (is_cut(box)) add(all, box, axis, blank);
    return all;
  }

  /// How deep the hollow is that what enters stands in: what is left free there is told so.
  void add_bottom(std::vector<Length>& places) const {
    const std::size_t number = number_of(joint_.heading.axis);
    const Box blank = placed_blank(view_.wood().pieces[joint_.receives]);
    std::optional<Length> deepest;
    for (const Box& box : worked_boxes(joint_.receives)) {
      if (!is_cut(box)) continue;
      const Length at = joint_.heading.upwards ? box.high[number] : box.low[number];
      if (!deepest || (joint_.heading.upwards ? at > *deepest : at < *deepest)) deepest = at;
    }
    if (!deepest) return;
    add(places, {{*deepest, *deepest, *deepest}, {*deepest, *deepest, *deepest}},
        joint_.heading.axis, blank);
    const Length edge = sight_edge(view_.wood(), joint_);
    add(places, {{edge, edge, edge}, {edge, edge, edge}}, joint_.heading.axis, blank);
  }

  const NotedView& view_;
  std::vector<std::size_t> joints_;
  const Joint& joint_;
  const CutAway& cut_;
};

}  // namespace

std::vector<PlacedChain> joint_chains(const NotedView& view, const JointView& joint,
                                      const CutAway& cut) {
  return JointChains(view, joint, cut).all();
}

}  // namespace haunch
