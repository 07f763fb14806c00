#include "assembly_order.h"

#include <algorithm>
#include <array>

namespace haunch {
namespace {

/// The six ways along the axes, by number: low and high of x, y, z.
using Ways = std::array<bool, 6>;
constexpr Ways kEvery{true, true, true, true, true, true};

std::size_t way(std::size_t axis, bool upwards) {
  return axis * 2 + (upwards ? 1 : 0);
}
std::size_t opposite(std::size_t a_way) {
  return a_way ^ 1U;
}
Heading heading_of(std::size_t a_way) {
  return {static_cast<Axis>(a_way / 2), a_way % 2 == 1};
}
bool any(const Ways& ways) {
  return std::find(ways.begin(), ways.end(), true) != ways.end();
}

bool is_put_in_later(Role role) {
  return role == Role::glass || role == Role::bead || role == Role::button;
}

bool is_panel_joint(JointKind kind) {
  return kind == JointKind::panel_in_groove || kind == JointKind::panel_in_rebate;
}

/// Whether both have holes for one dowel or loose tenon, which lets them come together along it
/// only.
bool share_a_fastener(const Assembly& wood, std::size_t a, std::size_t b) {
  const auto goes_into = [&](std::size_t fastener, std::size_t piece) {
    return std::any_of(wood.joints.begin(), wood.joints.end(), [&](const Joint& it) {
      return it.enters == fastener && it.receives == piece;
    });
  };
  for (const Joint& joint : wood.joints)
    if (joint.receives == a && is_fastener(wood.pieces[joint.enters].role) &&
        goes_into(joint.enters, b))
      return true;
  return false;
}

/// Which ways what enters may go to come home: where what is cut for it is open on the side that it
/// comes from; what lies on a face any way but out of that; tails across their thickness only.
Ways ways_in(const Assembly& wood, std::size_t number) {
  const Joint& joint = wood.joints[number];
  const std::size_t along =
      way(static_cast<std::size_t>(joint.heading.axis), joint.heading.upwards);
  Ways ways{};
  if (joint.tails) {
    const Piece& tailed = wood.pieces[joint.enters];
    const auto across = static_cast<std::size_t>(tailed.place.axes[2]);
    const Box its = placed_blank(tailed);
    const Box other = placed_blank(wood.pieces[joint.receives]);
    const bool low = its.low[across] + its.high[across] < other.low[across] + other.high[across];
    ways[way(across, low)] = true;
    if (joint.tails->spread == Length()) ways[along] = true;  // fingers
    return ways;
  }
  const Box* cut = cut_for(wood, number);
  if (cut == nullptr) {
    if (share_a_fastener(wood, joint.receives, joint.enters)) {
      ways[along] = true;
      return ways;
    }
    ways = kEvery;
    ways[opposite(along)] = false;
    return ways;
  }
  const Piece& receives = wood.pieces[joint.receives];
  const Box room = placed(*cut, receives.place);
  const Box blank = placed_blank(receives);
  for (std::size_t axis = 0; axis < 3; ++axis) {
    ways[way(axis, true)] = room.low[axis] <= blank.low[axis];
    ways[way(axis, false)] = room.high[axis] >= blank.high[axis];
  }
  ways[along] = true;
  return ways;
}

/// Whether a box on its way home, from far off, would go through another.
bool is_in_the_way(const Box& other, const Box& moved, std::size_t a_way) {
  const std::size_t axis = a_way / 2;
  const AxesAcross across = across_axes(axis);
  const auto meets = [&](std::size_t at) {
    return other.low[at] < moved.high[at] && moved.low[at] < other.high[at];
  };
  if (!meets(across.u) || !meets(across.v)) return false;
  const bool upwards = a_way % 2 == 1;
  return upwards ? other.low[axis] < moved.low[axis] : other.high[axis] > moved.high[axis];
}

/// Takes a group apart.
class TakingApart {
 public:
  TakingApart(const Assembly& wood, const std::vector<Ways>& ways, std::size_t group)
      : wood_(wood), ways_(ways), group_(group), node_of_(wood.pieces.size()) {
    for (std::size_t piece = 0; piece < wood.pieces.size(); ++piece)
      add(piece);
    left_.assign(nodes_.size(), true);
  }

  GroupOrder order() {
    GroupOrder order{group_, {}, {}, {}};
    take_out_what_comes_later(order);
    for (std::size_t left = nodes_.size() - order.steps.size(); left > 0; --left) {
      const std::optional<Taken> next = next_out();
      if (!next) break;
      left_[next->node] = false;
      order.steps.push_back({nodes_[next->node], next->how, {}});
      if (next->joints > 0) order.steps.back().move = heading_of(next->a_way);
    }
    for (std::size_t node = 0; node < nodes_.size(); ++node)
      if (left_[node])
        order.stuck.insert(order.stuck.end(), nodes_[node].begin(), nodes_[node].end());
    std::reverse(order.steps.begin(), order.steps.end());
    find_closed_in(order);
    return order;
  }

 private:
  struct Taken {
    std::size_t node;
    StepHow how;
    std::size_t a_way;  // in which it comes home
    std::size_t rank;
    std::size_t joints;
  };

  /// Whether a piece is a step of this group's, and not only of another's that is a part of it.
  bool belongs(std::size_t piece) const {
    const std::size_t its = wood_.pieces[piece].group;
    if (its == group_) return true;
    const GroupKind kind = wood_.groups[group_].kind;
    const bool of_parts = kind == GroupKind::cabinet || kind == GroupKind::run;
    if (wood_.groups[its].in == group_ && !of_parts) return true;
    if (wood_.groups[group_].kind != GroupKind::carcase) return false;
    return std::any_of(wood_.joints.begin(), wood_.joints.end(), [&](const Joint& joint) {
      const std::size_t a = wood_.pieces[joint.receives].group;
      const std::size_t b = wood_.pieces[joint.enters].group;
      return (a == group_ && b == its) || (b == group_ && a == its);
    });
  }

  void add(std::size_t piece) {
    if (is_fastener(wood_.pieces[piece].role) || !belongs(piece)) return;
    const std::size_t its = wood_.pieces[piece].group;
    for (std::size_t node = 0; its != group_ && node < nodes_.size(); ++node)
      if (wood_.pieces[nodes_[node].front()].group == its) {
        nodes_[node].push_back(piece);
        node_of_[piece] = node;
        return;
      }
    node_of_[piece] = nodes_.size();
    nodes_.push_back({piece});
  }

  void take_out_what_comes_later(GroupOrder& order) {
    const auto take = [&](auto is_it, StepHow how) {
      for (std::size_t node = nodes_.size(); node-- > 0;) {
        if (!left_[node] || !is_it(wood_.pieces[nodes_[node].front()])) continue;
        left_[node] = false;
        order.steps.push_back({nodes_[node], how, {}});
      }
    };
    take([](const Piece& piece) { return piece.loose; }, StepHow::laid_in);
    take([](const Piece& piece) { return is_put_in_later(piece.role); }, StepHow::fixed_on);
  }

  bool is_left(std::size_t piece) const { return node_of_[piece] && left_[*node_of_[piece]]; }

  /// What it can be taken away by now, if it can: of what can, the way that is best.
  std::optional<Taken> taken(std::size_t node) const {
    Ways ways = kEvery;
    Ways strict = kEvery;
    bool receives = false;
    bool cut = false;
    bool panel = true;
    std::size_t joints = 0;
    for (std::size_t number = 0; number < wood_.joints.size(); ++number) {
      const Joint& joint = wood_.joints[number];
      if (!is_left(joint.receives) || !is_left(joint.enters)) continue;
      const bool enters = node_of_[joint.enters] == node;
      if (enters == (node_of_[joint.receives] == node)) continue;
      ++joints;
      receives = receives || !enters;
      const bool has_cut =
          joint.tails || cut_for(wood_, number) != nullptr || stands_between(joint);
      cut = cut || has_cut;
      panel = panel && (!has_cut || is_panel_joint(joint.kind));
      restrict(ways, strict, number, enters, has_cut);
    }
    keep_clear(ways, node);
    for (std::size_t each = 0; each < 6; ++each)
      strict[each] = strict[each] && ways[each];
    if (!any(ways)) return {};
    const bool is_strict = any(strict);
    const Ways& from = is_strict ? strict : ways;
    const auto a_way =
        static_cast<std::size_t>(std::find(from.begin(), from.end(), true) - from.begin());
    const std::size_t rank = !receives && !cut ? 0 : !receives && panel ? 1 : is_strict ? 2 : 3;
    const StepHow how = joints > 0 && !cut ? StepHow::fixed_on
                        : is_strict        ? StepHow::joined
                                           : StepHow::slides;
    return Taken{node, how, a_way, rank, joints};
  }

  void restrict(Ways& ways, Ways& strict, std::size_t number, bool enters, bool has_cut) const {
    const Joint& joint = wood_.joints[number];
    const std::size_t along =
        way(static_cast<std::size_t>(joint.heading.axis), joint.heading.upwards);
    for (std::size_t each = 0; each < 6; ++each) {
      const std::size_t its = enters ? each : opposite(each);
      ways[each] = ways[each] && ways_[number][its];
      if (has_cut && !joint.tails) strict[each] = strict[each] && its == along;
    }
  }

  /// Whether what enters is butted between two pieces that are both there, and no planted strip.
  bool stands_between(const Joint& joint) const {
    return joint.kind == JointKind::butt &&
           std::any_of(wood_.joints.begin(), wood_.joints.end(), [&](const Joint& other) {
             return other.kind == JointKind::butt && other.enters == joint.enters &&
                    other.heading.axis == joint.heading.axis &&
                    other.heading.upwards != joint.heading.upwards && is_left(other.receives);
           });
  }

  /// Nothing that it has no joint with may stand in its way.
  void keep_clear(Ways& ways, std::size_t node) const {
    for (const std::size_t piece : nodes_[node])
      for (std::size_t other = 0; other < wood_.pieces.size(); ++other) {
        if (!is_left(other) || node_of_[other] == node || are_joined(piece, other)) continue;
        for (std::size_t each = 0; each < 6; ++each)
          ways[each] = ways[each] && !is_in_the_way(placed_blank(wood_.pieces[other]),
                                                    placed_blank(wood_.pieces[piece]), each);
      }
  }

  bool are_joined(std::size_t a, std::size_t b) const {
    return std::any_of(wood_.joints.begin(), wood_.joints.end(), [&](const Joint& it) {
      return (it.receives == a && it.enters == b) || (it.receives == b && it.enters == a);
    });
  }

  /// What goes in last of what is left: what is only fixed on, panels that slide in, then what
  /// closes most joints; of two alike the later one.
  std::optional<Taken> next_out() const {
    std::optional<Taken> best;
    for (std::size_t node = 0; node < nodes_.size(); ++node) {
      if (!left_[node]) continue;
      const std::optional<Taken> its = taken(node);
      if (!its) continue;
      const bool better =
          !best || its->rank < best->rank ||
          (its->rank == best->rank && (its->rank == 0 || its->joints >= best->joints));
      if (better) best = its;
    }
    return best;
  }

  /// Panels that did not slide in: the last of what holds them closes them in.
  void find_closed_in(GroupOrder& order) const {
    const auto step_of = [&](std::size_t piece) {
      for (std::size_t step = 0; step < order.steps.size(); ++step)
        if (std::find(order.steps[step].pieces.begin(), order.steps[step].pieces.end(), piece) !=
            order.steps[step].pieces.end())
          return step;
      return order.steps.size();
    };
    for (std::size_t piece = 0; piece < wood_.pieces.size(); ++piece) {
      std::size_t closes = 0;
      std::size_t sides = 0;
      for (const Joint& joint : wood_.joints) {
        if (joint.enters != piece || !is_panel_joint(joint.kind) || !node_of_[piece]) continue;
        const std::size_t step = step_of(joint.receives);
        if (step < order.steps.size()) closes = std::max(closes, step);
        ++sides;
      }
      if (sides > 1 && closes > step_of(piece)) order.closed_in.push_back({piece, closes});
    }
  }

  const Assembly& wood_;
  const std::vector<Ways>& ways_;
  std::size_t group_;
  std::vector<std::vector<std::size_t>> nodes_;
  std::vector<std::optional<std::size_t>> node_of_;
  std::vector<bool> left_;
};

}  // namespace

bool is_fastener(Role role) {
  constexpr Role kAll[] = {Role::wedge, Role::pin, Role::dowel, Role::loose_tenon, Role::spline};
  return std::find(std::begin(kAll), std::end(kAll), role) != std::end(kAll);
}

Heading way_home(const Assembly& wood, std::size_t joint) {
  const Heading& heading = wood.joints[joint].heading;
  const Ways ways = ways_in(wood, joint);
  if (ways[way(static_cast<std::size_t>(heading.axis), heading.upwards)] || !any(ways))
    return heading;
  return heading_of(
      static_cast<std::size_t>(std::find(ways.begin(), ways.end(), true) - ways.begin()));
}

std::vector<GroupOrder> assembly_order(const Assembly& wood) {
  std::vector<Ways> ways;
  for (std::size_t joint = 0; joint < wood.joints.size(); ++joint)
    ways.push_back(ways_in(wood, joint));
  std::vector<GroupOrder> orders;
  for (std::size_t group = 0; group < wood.groups.size(); ++group)
    if (!pieces_of(wood, group).empty()) orders.push_back(TakingApart(wood, ways, group).order());
  return orders;
}

}  // namespace haunch
