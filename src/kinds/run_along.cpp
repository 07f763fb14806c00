#include "run_along.h"

#include <algorithm>
#include <utility>

#include "run_set_out.h"

namespace haunch {
namespace {

using What = RunEntry::What;

class AlongReader {
 public:
  AlongReader(const WallRunPlan& plan, const RunSpec& spec)
      : plan_(plan), spec_(spec), zero_(zero_of(plan, spec)) {}

  AlongWall all() {
    along_.left_wall = plan_.wall.left != RunEnd::free;
    along_.right_wall = plan_.wall.right != RunEnd::free;
    along_.level = -zero_[1];
    along_.back = plan_.size[2] + plan_.behind - zero_[2];
    along_.fixed_from_left = plan_.wall.begins_at_left();
    add_corner(false);
    for (const RunMember& member : plan_.members)
      along_.stands.push_back(stand_of(member));
    add_corner(true);
    read_wall();
    read_floor();
    if (plan_.worktop)
      for (const WorktopCutout& cutout : plan_.worktop->cutouts)
        along_.cutouts.push_back(cutout.over);
    return std::move(along_);
  }

 private:
  Length x_of(Length along) const { return along - zero_[0]; }
  AlongStand stand_of(const RunMember& member) const;
  TakenPart part_of(const RunMember& member) const;
  void add_corner(bool right);
  void read_wall();
  void read_floor();

  const WallRunPlan& plan_;
  const RunSpec& spec_;
  Triple zero_;
  AlongWall along_;
};

AlongStand AlongReader::stand_of(const RunMember& member) const {
  AlongStand stand;
  stand.name = member.name;
  stand.low = x_of(member.left);
  stand.high = x_of(member.right());
  if (member.what == What::cabinet) {
    stand.what = AlongStand::What::cabinet;
    stand.part = part_of(member);
    stand.foot = stand.part.room.low[1];
    stand.top = stand.part.room.high[1];
  }
  if (member.what == What::gap) {
    const RunEntry& entry = spec_.order[*member.entry];
    stand.what = AlongStand::What::gap;
    stand.name = entry.purpose;
    stand.foot = along_.level + (plan_.toe ? plan_.toe->top : Length());
    stand.top = along_.level + entry.front_height.value_or(plan_.size[1]);
  }
  return stand;
}

/// What another run takes of the wall there.
void AlongReader::add_corner(bool right) {
  const auto& corner = plan_.corners[right ? 1 : 0];
  if (!corner) return;
  AlongStand stand;
  stand.what = AlongStand::What::corner;
  stand.name = corner->with;
  stand.foot = along_.level;
  stand.top = along_.level + plan_.size[1];
  stand.low = x_of(right ? plan_.wall.least - corner->cases : Length());
  stand.high = stand.low + corner->cases;
  along_.stands.push_back(std::move(stand));
}

TakenPart AlongReader::part_of(const RunMember& member) const {
  const Worked& worked = spec_.order[*member.entry].taken->worked();
  const Triple& size = worked.assembly.size;
  const Triple low{x_of(member.left), along_.level, plan_.size[2] - size[2] - zero_[2]};
  return {member.path,
          {low, {low[0] + size[0], low[1] + size[1], low[2] + size[2]}},
          worked.chains,
          worked.rooms};
}

void AlongReader::read_wall() {
  const RunWall& wall = plan_.wall;
  for (const WallReading& reading : wall.readings) {
    const Length back = wall.back_at(reading.at);
    along_.measured.push_back({reading.at, along_.level + reading.at, reading.length,
                               x_of(wall.out_at_right ? Length() : -back),
                               x_of(wall.least + (wall.out_at_right ? back : Length()))});
    if (reading.length < along_.measured[along_.shortest].length)
      along_.shortest = along_.measured.size() - 1;
  }
}

void AlongReader::read_floor() {
  if (plan_.floor.empty()) return;
  const auto add = [&](Length at, bool is_read) {
    const Length fall = plan_.packed_at(at);
    along_.floor.push_back({x_of(at), along_.level - fall, fall, is_read});
  };
  if (plan_.floor.front().at > Length()) add(Length(), false);
  for (const FloorReading& reading : plan_.floor)
    add(reading.at, true);
  if (plan_.floor.back().at < plan_.wall.least) add(plan_.wall.least, false);
}

}  // namespace

AlongWall along_wall_of(const WallRunPlan& plan, const RunSpec& spec) {
  return AlongReader(plan, spec).all();
}

}  // namespace haunch
