#include "cabinet_chains.h"

#include <fmt/core.h>

#include <algorithm>
#include <string>
#include <utility>

namespace haunch {
namespace {

void link(Chain& chain, std::string what, Length length) {
  if (length != Length()) chain.links.push_back({std::move(what), length});
}

/// "column 2, row 1": the part of a layout that a list divides, by the list's path.
std::string part_words(const std::string& path) {
  std::string words;
  std::size_t at = path.find('/', 1);
  while (at != std::string::npos) {
    const std::size_t number = path.find('/', at + 1);
    if (number == std::string::npos) break;
    const std::size_t end = std::min(path.find('/', number + 1), path.size());
    const bool column = path.compare(at + 1, number - at - 1, "columns") == 0;
    words += fmt::format("{}{} {}", words.empty() ? "" : ", ", column ? "column" : "row",
                         std::stoi(path.substr(number + 1, end - number - 1)) + 1);
    at = end == path.size() ? std::string::npos : end;
  }
  return words;
}

class Chains {
 public:
  explicit Chains(const CabinetPlan& plan) : plan_(plan), carcase_(plan.carcase) {}

  std::vector<Chain> all() {
    for (const LaidList& list : plan_.layout.lists)
      of_list(list);
    if (!whole_width_told_) across();
    if (!whole_height_told_) height();
    if (plan_.frame) across_case();
    depth();
    return std::move(chains_);
  }

 private:
  void at_side(Chain& chain, bool right) const;
  void of_list(const LaidList& list);
  void across();
  void height();
  void depth();
  void above(Chain& chain) const;
  void below(Chain& chain) const;
  Length outer(Bound Bounding::*side, Length Area::*edge) const;
  void across_case();
  std::string node_words(const LayoutNode* node, bool across, std::size_t number) const;
  std::string_view between_words(Between between, bool across) const;

  const CabinetPlan& plan_;
  const CarcasePlan& carcase_;
  std::vector<Chain> chains_;
  bool whole_width_told_ = false, whole_height_told_ = false;
};

/// An opening by its number, or the part that is divided again by its place.
std::string Chains::node_words(const LayoutNode* node, bool across, std::size_t number) const {
  const auto& openings = plan_.layout.openings;
  for (std::size_t i = 0; i < openings.size(); ++i)
    if (openings[i].node == node) return fmt::format("opening {}", i + 1);
  return fmt::format("{} {}", across ? "column" : "row", number + 1);
}

std::string_view Chains::between_words(Between between, bool across) const {
  if (plan_.frame) return across ? "mullion" : "rail";
  return across ? "partition" : word_of(between);
}

/// An edge of the openings at one side of the whole.
Length Chains::outer(Bound Bounding::*side, Length Area::*edge) const {
  for (const LaidOpening& opening : plan_.layout.openings)
    if (!(opening.by.*side)) return opening.sight.*edge;
  return {};
}

void Chains::above(Chain& chain) const {
  if (plan_.frame)
    link(chain, "top rail", carcase_.height - outer(&Bounding::head, &Area::high));
  else
    link(chain, carcase_.top == CaseEnd::rails ? "top rails" : "top",
         carcase_.height - carcase_.ceiling());
}

void Chains::below(Chain& chain) const {
  const Length toe = carcase_.toe.height;
  if (plan_.frame)
    link(chain, "bottom rail", outer(&Bounding::foot, &Area::low) - toe);
  else
    link(chain, carcase_.bottom == CaseEnd::rails ? "bottom rails" : "bottom",
         carcase_.floor - toe);
  link(chain, "toe", toe);
}

/// Behind a frame that stands over its sides.
void Chains::across_case() {
  const Length sides = carcase_.stuff.thickness;
  Chain chain{"the case across, from the left", {}};
  link(chain, "frame over it", carcase_.over);
  link(chain, "left side", sides);
  link(chain, "clear", carcase_.inside_right() - carcase_.inside_left());
  link(chain, "right side", sides);
  link(chain, "frame over it", plan_.size[0] - carcase_.over - carcase_.width);
  chains_.push_back(std::move(chain));
}

/// Between the outside and the openings, from the left.
void Chains::at_side(Chain& chain, bool right) const {
  const Length width = right ? plan_.size[0] - outer(&Bounding::right, &Area::right)
                             : outer(&Bounding::left, &Area::left);
  const std::string side = right ? "right " : "left ";
  if (plan_.frame) return link(chain, side + "stile", width);
  const auto& blind = carcase_.blind;
  if (!blind || blind->right != right) return link(chain, side + "side", width);
  const Length board = carcase_.side_thickness();
  if (right) link(chain, "filler", blind->filler);
  if (!right) link(chain, side + "side", board);
  link(chain, "blind panel", blind->width - board);
  if (right) link(chain, side + "side", board);
  if (!right) link(chain, "filler", blind->filler);
}

void Chains::of_list(const LaidList& list) {
  const std::string part = part_words(list.path);
  Chain chain;
  chain.what = part.empty() ? list.across ? "across, from the left" : "down, from the top"
                            : part + (list.across ? ", across" : ", down");
  const bool left = list.across && !list.by.left;
  const bool right = list.across && !list.by.right;
  if (left) at_side(chain, false);
  if (!list.across && !list.by.head) above(chain);
  for (std::size_t i = 0; i < list.sizes.size(); ++i) {
    link(chain, node_words(list.nodes[i], list.across, i), list.sizes[i]);
    if (i < list.widths.size())
      link(chain, std::string(between_words(list.between[i], list.across)), list.widths[i]);
  }
  if (right) at_side(chain, true);
  if (!list.across && !list.by.foot) below(chain);
  whole_width_told_ = whole_width_told_ || (left && right);
  whole_height_told_ = whole_height_told_ || (!list.across && !list.by.head && !list.by.foot);
  chains_.push_back(std::move(chain));
}

void Chains::across() {
  Chain chain{"across, from the left", {}};
  at_side(chain, false);
  const Length left = outer(&Bounding::left, &Area::left);
  link(chain, plan_.layout.openings.size() == 1 ? "opening 1" : "clear",
       outer(&Bounding::right, &Area::right) - left);
  at_side(chain, true);
  chains_.push_back(std::move(chain));
}

void Chains::height() {
  Chain chain{"down, from the top", {}};
  above(chain);
  const Length high = plan_.frame ? outer(&Bounding::head, &Area::high) : carcase_.ceiling();
  const Length low = plan_.frame ? outer(&Bounding::foot, &Area::low) : carcase_.floor;
  link(chain, plan_.layout.openings.size() == 1 ? "opening 1" : "clear", high - low);
  below(chain);
  chains_.push_back(std::move(chain));
}

/// From the front of all to its back.
void Chains::depth() {
  const BackPlan& back = carcase_.back;
  Chain chain{"from front to back", {}};
  link(chain, "face frame", carcase_.front);
  link(chain, "clear", carcase_.back_front() - carcase_.front);
  if (back.fit == BackFit::grooved) {
    link(chain, "groove of the back", back.groove);
    link(chain, "behind it", back.from_back);
  } else if (back.fit != BackFit::none) {
    link(chain, "back", back.stuff.thickness);
  }
  chains_.push_back(std::move(chain));
}

}  // namespace

std::vector<Chain> chains_of(const CabinetPlan& plan) {
  return Chains(plan).all();
}

}  // namespace haunch
