#include "leaves.h"

#include <utility>

#include "marks.h"

namespace haunch {
namespace {

void add_groups(Assembly& whole, std::vector<Group>& groups, const Place& at) {
  const std::size_t before = whole.groups.size();
  for (Group& group : groups) {
    group.in = group.in ? *group.in + before : 0;
    group.at = placed(group.at, at);
    whole.groups.push_back(std::move(group));
  }
}

/// How a part moves, in the axes of the whole.
Movement placed(Movement moves, const Place& at) {
  const auto its = [&](Axis axis) { return at.axes[static_cast<std::size_t>(axis)]; };
  if (auto* swing = std::get_if<Swing>(&moves)) {
    swing->pin = placed(Box{swing->pin, swing->pin}, at).low;
    swing->axis = its(swing->axis);
  }
  if (auto* slide = std::get_if<Slide>(&moves)) {
    if (at.backwards[static_cast<std::size_t>(slide->along)]) slide->by = -slide->by;
    slide->along = its(slide->along);
  }
  return moves;
}

void add_fits(Assembly& whole, std::vector<Fit>& fits, std::size_t groups_before, const Place& at) {
  for (Fit& fit : fits) {
    if (fit.stands == StandsIn::opening) continue;
    fit.group += groups_before;
    fit.other += groups_before;
    fit.moves = placed(fit.moves, at);
    whole.fits.push_back(std::move(fit));
  }
}

}  // namespace

std::size_t add_group(Assembly& whole, Assembly part, const Place& at, const std::string& path) {
  const std::size_t groups = whole.groups.size();
  const std::size_t pieces = whole.pieces.size();
  const std::size_t joints = whole.joints.size();
  if (!path.empty()) part.groups.front().path = path;
  const std::string before_names = path.empty() ? "" : group_name(part.whole()) + ", ";
  add_groups(whole, part.groups, at);
  add_fits(whole, part.fits, groups, at);
  for (Piece& piece : part.pieces) {
    piece.mark = piece_mark(whole.pieces.size());
    piece.name.insert(0, before_names);
    piece.group += groups;
    piece.place = placed(piece.place, at);
    for (Feature& feature : piece.features)
      for (std::size_t& joint : feature.joints)
        joint += joints;
    whole.pieces.push_back(std::move(piece));
  }
  for (Joint& joint : part.joints) {
    joint.receives += pieces;
    joint.enters += pieces;
    joint.through = at.axes[static_cast<std::size_t>(joint.through)];
    const auto along = static_cast<std::size_t>(joint.heading.axis);
    joint.heading = {at.axes[along], joint.heading.upwards != at.backwards[along]};
    whole.joints.push_back(std::move(joint));
  }
  return groups;
}

}  // namespace haunch
