#include "layout.h"

#include <fmt/core.h>

#include <algorithm>
#include <numeric>
#include <utility>

namespace haunch {

FrontKind LayoutNode::front() const {
  return said.word<FrontKind>("layout_node.front").value_or(FrontKind::none);
}

namespace {

constexpr Length kNone;

/// What a divider of that width leaves of fronts that lie over it: half of it each, less half of
/// the gap. The odd step goes to what is right of it, or above.
Length over_divider(Length width, Length gap, bool from_right_or_above) {
  const Length lower = floor_half(width - gap);
  return from_right_or_above ? width - gap - lower : lower;
}

/// Divides a tree, node by node.
class Dividing {
 public:
  Dividing(const LayoutRules& rules, ResolvedLayout& layout) : rules_(rules), layout_(layout) {}

  void divide(const LayoutNode& node, const Area& area, const Sides& reach, const Bounding& by) {
    if (node.division == Division::none)
      layout_.openings.push_back({&node, area, reach, by});
    else
      divide_list(node, area, reach, by);
  }

 private:
  using List = LaidList;

  void divide_list(const LayoutNode& node, const Area& area, const Sides& reach,
                   const Bounding& by);
  std::vector<Between> between_nodes(const LayoutNode& node) const;
  Between usual_between(const LayoutNode& before, const LayoutNode& after) const;
  Length width_of(Between between, bool upright) const;
  std::optional<Length> stated_size(const LayoutNode& node, bool across, const Sides& reach) const;
  Sides reach_of(const List& list, std::size_t number, const Sides& whole) const;
  Length reach_over(Length width, bool from_right_or_above) const {
    if (rules_.meets == Meets::inset && width > kNone) return -rules_.gap;
    return over_divider(width, rules_.gap, from_right_or_above);
  }
  bool settle_sizes(const LayoutNode& node, Length total, const Sides& reach, List& list);
  static void share_rest(const LayoutNode& node, Length rest, const std::vector<bool>& given,
                         List& list);
  void misfit(const LayoutNode& node, Length taken, Length total, std::string_view remedy);
  std::string say(Length length) const { return in_words(length, rules_.unit); }

  const LayoutRules& rules_;
  ResolvedLayout& layout_;
};

/// Whether partitions stand somewhere in a part: they need wood to end on above and below it.
bool holds_columns(const LayoutNode& node) {
  return node.division == Division::columns ||
         std::any_of(node.nodes.begin(), node.nodes.end(), holds_columns);
}

/// Where nothing is said: a partition between columns; between rows a rail of the frame, with a
/// shelf behind it where partitions end on it. In a case without a frame fronts one above the other
/// close it by themselves, drawers on wooden runners have a rail between them, and what is open a
/// shelf.
Between Dividing::usual_between(const LayoutNode& before, const LayoutNode& after) const {
  if (holds_columns(before) || holds_columns(after)) return Between::shelf;
  if (rules_.framed) return Between::rail;
  const auto open = [](const LayoutNode& node) {
    return node.division == Division::none && node.front() == FrontKind::none;
  };
  const auto drawer = [](const LayoutNode& node) {
    return node.division == Division::none && node.front() == FrontKind::drawer;
  };
  if (open(before) || open(after)) return Between::shelf;
  if (rules_.wooden_runners && drawer(before)) return Between::rail;
  return drawer(before) || drawer(after) ? Between::none : Between::shelf;
}

std::vector<Between> Dividing::between_nodes(const LayoutNode& node) const {
  std::vector<Between> all;
  const auto stated = node.said.word<Between>("layout_node.between");
  for (std::size_t i = 0; i + 1 < node.nodes.size(); ++i)
    all.push_back(stated ? *stated
                  : node.division == Division::columns
                      ? Between::partition
                      : usual_between(node.nodes[i], node.nodes[i + 1]));
  return all;
}

Length Dividing::width_of(Between between, bool upright) const {
  if (between == Between::none) return kNone;
  return upright ? rules_.upright : rules_.level;
}

/// Along a list, which goes to the right or down.
Sides Dividing::reach_of(const List& list, std::size_t number, const Sides& whole) const {
  Sides reach = whole;
  const bool last = number == list.widths.size();
  if (list.across) {
    if (number > 0) reach.left = reach_over(list.widths[number - 1], true);
    if (!last) reach.right = reach_over(list.widths[number], false);
  } else {
    if (number > 0) reach.head = reach_over(list.widths[number - 1], false);
    if (!last) reach.foot = reach_over(list.widths[number], true);
  }
  return reach;
}

/// What a node says of its size along its list: its opening, or the front that is to close it.
std::optional<Length> Dividing::stated_size(const LayoutNode& node, bool across,
                                            const Sides& reach) const {
  if (const auto sight =
          node.said.size(across ? SizeKey("layout_node.width") : SizeKey("layout_node.height")))
    return sight;
  const auto front = node.said.size(across ? SizeKey("layout_node.front_width")
                                           : SizeKey("layout_node.front_height"));
  if (!front) return {};
  return *front - (across ? reach.across() : reach.upright());
}

void Dividing::misfit(const LayoutNode& node, Length taken, Length total, std::string_view remedy) {
  const bool columns = node.division == Division::columns;
  const Length off = taken > total ? taken - total : total - taken;
  layout_.problems.push_back(
      {node.path + (columns ? "/columns" : "/rows"),
       fmt::format("the {} and what stands between them take {} of {}: {} too {}; {}",
                   columns ? "columns" : "rows", say(taken), say(total), say(off),
                   taken > total ? "much" : "little", remedy),
       {}});
}

std::int64_t share_of(const LayoutNode& node) {
  return node.said.count("layout_node.share").value_or(1);
}

/// What is left goes to those that say no size, by their shares; the odd steps to the last of them.
void Dividing::share_rest(const LayoutNode& node, Length rest, const std::vector<bool>& given,
                          List& list) {
  std::int64_t shares = 0;
  std::size_t last = 0;
  for (std::size_t i = 0; i < given.size(); ++i) {
    if (given[i]) continue;
    shares += share_of(node.nodes[i]);
    last = i;
  }
  Length left = rest;
  for (std::size_t i = 0; i < last; ++i) {
    if (given[i]) continue;
    const Length its = floor_divide(rest * share_of(node.nodes[i]), shares);
    list.sizes[i] += its;
    left -= its;
  }
  list.sizes[last] += left;
}

bool Dividing::settle_sizes(const LayoutNode& node, Length total, const Sides& reach, List& list) {
  std::vector<bool> given(node.nodes.size());
  Length taken = std::accumulate(list.widths.begin(), list.widths.end(), kNone);
  for (std::size_t i = 0; i < node.nodes.size(); ++i) {
    const auto size = stated_size(node.nodes[i], list.across, reach_of(list, i, reach));
    given[i] = size.has_value();
    list.sizes.push_back(size.value_or(node.nodes[i].more));
    taken += list.sizes.back();
  }
  const bool all_given = std::find(given.begin(), given.end(), false) == given.end();
  if (all_given && taken != total) {
    misfit(node, taken, total, "leave one of them without a size, or change one by that much");
    return false;
  }
  if (!all_given && taken >= total) {
    misfit(node, taken, total, "nothing is left for those without a size; make the others less");
    return false;
  }
  if (!all_given) share_rest(node, total - taken, given, list);
  return true;
}

void Dividing::divide_list(const LayoutNode& node, const Area& area, const Sides& reach,
                           const Bounding& by) {
  List list;
  list.across = node.division == Division::columns;
  list.between = between_nodes(node);
  for (const Between between : list.between)
    list.widths.push_back(width_of(between, list.across));
  if (!settle_sizes(node, list.across ? area.width() : area.height(), reach, list)) return;
  list.path = node.path + (list.across ? "/columns" : "/rows");
  list.by = by;
  for (const LayoutNode& each : node.nodes)
    list.nodes.push_back(&each);
  layout_.lists.push_back(list);
  // All dividers of a list stand before what is within its nodes.
  const std::size_t first = layout_.dividers.size();
  std::vector<Area> areas;
  Length at = list.across ? area.left : area.high;
  for (std::size_t i = 0; i < list.sizes.size(); ++i) {
    Area its = area;
    (list.across ? its.left : its.high) = at;
    at = list.across ? at + list.sizes[i] : at - list.sizes[i];
    (list.across ? its.right : its.low) = at;
    areas.push_back(its);
    if (i == list.widths.size()) break;
    Area between = area;
    (list.across ? between.left : between.high) = at;
    at = list.across ? at + list.widths[i] : at - list.widths[i];
    (list.across ? between.right : between.low) = at;
    layout_.dividers.push_back({list.between[i], list.across, between, by, node.path});
  }
  for (std::size_t i = 0; i < areas.size(); ++i) {
    Bounding its = by;
    if (i > 0) (list.across ? its.left : its.head) = first + i - 1;
    if (i < list.widths.size()) (list.across ? its.right : its.foot) = first + i;
    divide(node.nodes[i], areas[i], reach_of(list, i, reach), its);
  }
}

}  // namespace

Sides reach_over(const Sides& widths, Meets meets, Length gap) {
  if (meets == Meets::inset) return {-gap, -gap, -gap, -gap};
  const Length half = floor_half(gap);
  return {widths.left - half, widths.right - half, widths.head - gap, widths.foot - half};
}

ResolvedLayout raised(ResolvedLayout layout, Length by) {
  const auto raise = [&](Area& area) {
    area.low += by;
    area.high += by;
  };
  for (LaidOpening& opening : layout.openings)
    raise(opening.sight);
  for (Divider& divider : layout.dividers)
    raise(divider.at);
  return layout;
}

ResolvedLayout resolve(const LayoutNode& tree, const Area& whole, const LayoutRules& rules) {
  ResolvedLayout layout;
  Dividing(rules, layout).divide(tree, whole, rules.reach, {});
  return layout;
}

}  // namespace haunch
