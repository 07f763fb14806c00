#include "leaves.h"

#include <optional>
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

/// Numbers in the part of what is told by its number in the whole.
class Renumbered {
 public:
  explicit Renumbered(std::size_t of) : to_(of) {}

  void take(std::size_t number) { to_[number] = taken_++; }
  bool has(std::size_t number) const { return to_[number].has_value(); }
  std::size_t operator[](std::size_t number) const { return *to_[number]; }

 private:
  std::vector<std::optional<std::size_t>> to_;
  std::size_t taken_ = 0;
};

/// A group is told after the one that it is a part of.
Renumbered groups_within(const Assembly& whole, std::size_t group) {
  Renumbered groups(whole.groups.size());
  groups.take(group);
  for (std::size_t i = group + 1; i < whole.groups.size(); ++i)
    if (whole.groups[i].in && groups.has(*whole.groups[i].in)) groups.take(i);
  return groups;
}

class Alone {
 public:
  Alone(const Assembly& whole, std::size_t group, const Box& room)
      : whole_(whole),
        room_(room),
        within_(whole.groups[group].path + "/"),
        groups_(groups_within(whole, group)),
        pieces_(whole.pieces.size()),
        joints_(whole.joints.size()) {}

  AloneGroup taken() {
    for (std::size_t axis = 0; axis < 3; ++axis) {
      to_zero_.origin[axis] = -room_.low[axis];
      alone_.wood.size[axis] = room_.extent(axis);
    }
    take_groups();
    for (std::size_t i = 0; i < whole_.pieces.size(); ++i)
      if (groups_.has(whole_.pieces[i].group)) {
        pieces_.take(i);
        alone_.pieces.push_back(i);
      }
    take_joints();
    for (const std::size_t piece : alone_.pieces)
      take_piece(whole_.pieces[piece]);
    take_fits();
    return std::move(alone_);
  }

 private:
  void take_groups();
  void take_joints();
  void take_piece(Piece piece);
  void take_fits();

  const Assembly& whole_;
  const Box& room_;
  std::string within_;  // before the paths of what is in it
  Renumbered groups_, pieces_, joints_;
  Place to_zero_;
  AloneGroup alone_;
};

void Alone::take_groups() {
  alone_.wood.groups.clear();
  for (std::size_t i = 0; i < whole_.groups.size(); ++i) {
    if (!groups_.has(i)) continue;
    Group group = whole_.groups[i];
    group.in =
        group.in && groups_.has(*group.in) ? std::optional(groups_[*group.in]) : std::nullopt;
    group.at = placed(group.at, to_zero_);
    if (group.path.starts_with(within_)) group.path.erase(0, within_.size());
    alone_.wood.groups.push_back(std::move(group));
  }
}

void Alone::take_joints() {
  for (std::size_t i = 0; i < whole_.joints.size(); ++i) {
    Joint joint = whole_.joints[i];
    if (!pieces_.has(joint.receives) || !pieces_.has(joint.enters)) continue;
    joints_.take(i);
    joint.receives = pieces_[joint.receives];
    joint.enters = pieces_[joint.enters];
    alone_.wood.joints.push_back(std::move(joint));
  }
}

void Alone::take_piece(Piece piece) {
  piece.group = groups_[piece.group];
  piece.place = placed(piece.place, to_zero_);
  for (Feature& feature : piece.features) {
    std::erase_if(feature.joints, [&](std::size_t joint) { return !joints_.has(joint); });
    for (std::size_t& joint : feature.joints)
      joint = joints_[joint];
  }
  alone_.wood.pieces.push_back(std::move(piece));
}

void Alone::take_fits() {
  for (Fit fit : whole_.fits) {
    if (!groups_.has(fit.group) || !groups_.has(fit.other)) continue;
    fit.group = groups_[fit.group];
    fit.other = groups_[fit.other];
    fit.moves = placed(fit.moves, to_zero_);
    alone_.wood.fits.push_back(std::move(fit));
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

AloneGroup group_alone(const Assembly& whole, std::size_t group, const Box& room) {
  return Alone(whole, group, room).taken();
}

}  // namespace haunch
