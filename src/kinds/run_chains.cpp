#include "run_chains.h"

#include <algorithm>
#include <string>
#include <utility>

#include "run_plan.h"

namespace haunch {
namespace {

using What = RunEntry::What;

class RunChains {
 public:
  RunChains(const WallRunPlan& plan, const RunSpec& spec)
      : plan_(plan), spec_(spec), unit_(spec.own.units.value_or(Unit::mm)) {}

  std::vector<Chain> all() {
    for (const WallReading& reading : plan_.wall.readings)
      along_wall(reading.at);
    if (!plan_.floor.empty())
      for (const RunMember& member : plan_.members)
        if (member.what == What::cabinet) up_from_floor(member);
    for (Chain& chain : frame_chains(plan_, spec_))
      chains_.push_back(std::move(chain));
    if (plan_.worktop)
      for (Chain& chain : worktop_chains(*plan_.worktop))
        chains_.push_back(std::move(chain));
    return std::move(chains_);
  }

 private:
  static void link(Chain& chain, std::string what, Length length) {
    if (length != Length()) chain.links.push_back({std::move(what), length});
  }

  void along_wall(Length at);
  void end_link(Chain& chain, bool right, Length at) const;
  void corner_link(Chain& chain, bool right) const {
    if (const auto& corner = plan_.corners[right ? 1 : 0])
      link(chain, corner->with + ", to the fronts of its cases", corner->cases);
  }
  void up_from_floor(const RunMember& member);
  Length open_at(bool right, Length at) const;
  const Assembly& wood_of(const RunMember& cabinet) const {
    return spec_.order[*cabinet.entry].taken->worked().assembly;
  }

  const WallRunPlan& plan_;
  const RunSpec& spec_;
  Unit unit_;
  std::vector<Chain> chains_;
};

/// What is open beside the wall at an end, where no filler closes it.
Length RunChains::open_at(bool right, Length at) const {
  const RunMember& last = right ? plan_.members.back() : plan_.members.front();
  const bool closed = right ? last.at_right_wall : last.at_left_wall;
  const bool out = plan_.wall.out_at_right == right;
  return (right ? plan_.spare_right : plan_.spare_left) +
         (out && !closed ? plan_.wall.back_at(at) : Length());
}

void RunChains::end_link(Chain& chain, bool right, Length at) const {
  const Length open = open_at(right, at);
  const std::string end = right ? "right" : "left";
  const RunEnd its = right ? plan_.wall.right : plan_.wall.left;
  const bool wall = its == RunEnd::wall;
  link(chain,
       open < Length()        ? "too long by"
       : its == RunEnd::blind ? "left in the corner, to the " + end + " wall"
       : wall                 ? "open to the " + end + " wall"
                              : "left over at the " + end + " end",
       open);
}

void RunChains::along_wall(Length at) {
  const bool several = plan_.wall.readings.size() > 1;
  const std::string height = several ? ", " + in_words(at, unit_) + " above the floor" : "";
  Chain chain{"along the wall" + height + ", from the left", {}};
  end_link(chain, false, at);
  corner_link(chain, false);
  Length end = plan_.spare_left + plan_.in_corner(false);
  for (const RunMember& member : plan_.members) {
    link(chain, "between", member.left - end);
    end = member.right();
    const bool out = plan_.wall.out_at_right ? member.at_right_wall : member.at_left_wall;
    link(chain, member.name, member.width + (out ? plan_.wall.back_at(at) : Length()));
  }
  corner_link(chain, true);
  end_link(chain, true, at);
  chains_.push_back(std::move(chain));
}

/// Where a case begins that stands on legs, on which its only toe board hangs; else on the floor.
Length foot_of(const Assembly& wood) {
  const auto is_toe = [](const Piece& it) { return it.role == Role::toe_board; };
  const bool lone = std::count_if(wood.pieces.begin(), wood.pieces.end(), is_toe) == 1;
  Length foot = wood.size[1];
  for (const Piece& piece : wood.pieces)
    if (!lone || !is_toe(piece)) foot = std::min(foot, placed_blank(piece).low[1]);
  return foot;
}

/// The packing below it there, or how long its legs are turned out.
void RunChains::up_from_floor(const RunMember& member) {
  const Assembly& wood = wood_of(member);
  const Length foot = foot_of(wood);
  for (const bool right : {false, true}) {
    Chain chain{"up from the floor at " + member.name + ", " + (right ? "right" : "left"), {}};
    const Length packed = plan_.packed_at(right ? member.right() : member.left);
    link(chain, foot > Length() ? "legs" : "packed", foot + packed);
    link(chain, "case", wood.size[1] - foot);
    chains_.push_back(std::move(chain));
  }
}

}  // namespace

std::vector<Chain> chains_of(const WallRunPlan& plan, const RunSpec& spec) {
  return RunChains(plan, spec).all();
}

}  // namespace haunch
