// What the trade and codes say of a whole leaf for what it serves: how thick, how large, with which
// rails and stiles. A rule is told only of leaves that it is about.
#include <algorithm>

#include "family.h"
#include "kind.h"

namespace haunch {
namespace {

constexpr Rule kMiddleRail{
    "cabinet-middle-rail", "of cabinet door with no rail between top and bottom",
    "a stile-and-rail cabinet door higher than 60 in (1524 mm) has a rail between top and bottom "
    "(Architectural Woodwork Standards, 1st ed. 2009, section 10)"};
constexpr Rule kOutside{"outside-thickness", "of thickness of a leaf in an outside wall",
                        "outside doors are 1 3/4 in thick (size guides), or at least 42.5 mm "
                        "finished (NHBC Standards 6.7, UK)"};
constexpr Rule kLarge{"leaf-thickness", "of thickness of a leaf so wide or high",
                      "1 3/8 in (35 mm) is for inside doors under 3 ft wide and not over 7 ft "
                      "high; wider or higher ones are thicker (Building Construction and "
                      "Superintendence, section 163)"};
constexpr Rule kSmooth{"smooth-bottom",
                       "of smooth face from the floor up, on a leaf that is pushed",
                       "ADA Standards 404.2.10 ask for 10 in (254 mm) over the whole width, on the "
                       "push side"};
constexpr Rule kCups{"stile-for-cups", "of stile on which an overlay leaf hangs",
                     "a hinge cup of 35 mm and 3 mm of wood before it take 38 mm (1 1/2 in); "
                     "narrower ones want other hinges (trade practice)"};
constexpr Rule kWidth{"hung-width", "of leaf from its hinges to its lock edge",
                      "hinge tables end at 48 in (1219 mm) of width; beyond 20 ft (6.1 m) no "
                      "lumber is sold for it"};
constexpr Rule kHeight{"hung-height", "of leaf from foot to top",
                       "hinge tables end at 120 in (3048 mm) of height; beyond 20 ft (6.1 m) no "
                       "lumber is sold for it"};

constexpr Length kLongestLumber = Length::from_inch_parts(240);

/// Bounds of a least that is advised.
Bounds advised(Length least) {
  return {{}, {}, least, {}};
}

/// The leaf as it is told of in findings.
struct Leaf {
  const Service& service;
  std::size_t group;
  std::size_t first;  // of its pieces
  Box room;           // around its blanks
};

std::vector<std::size_t> level_rails(const Bench& bench, std::size_t group) {
  std::vector<std::size_t> rails;
  for (const std::size_t piece : pieces_of(bench.assembly, group))
    if (bench.assembly.pieces[piece].role == Role::rail) rails.push_back(piece);
  std::sort(rails.begin(), rails.end(), [&](std::size_t a, std::size_t b) {
    return bench.solids[a].blank.low[1] < bench.solids[b].blank.low[1];
  });
  return rails;
}

void check_middle_rail(Bench& bench, const Leaf& leaf) {
  const Length most = Length::from_inch_parts(60);
  if (!leaf.service.cabinet || leaf.room.extent(1) <= most) return;
  const std::vector<std::size_t> rails = level_rails(bench, leaf.group);
  if (rails.size() == 2)
    report(bench, kMiddleRail, rails, {}, leaf.room.extent(1), Bounds{{}, {}, {}, most});
}

void check_thickness(Bench& bench, const Leaf& leaf, Unit unit) {
  const Length thickness = bench.solids[leaf.first].blank.extent(2);
  const bool mm = unit == Unit::mm;
  if (leaf.service.cabinet) return;
  if (leaf.service.outside)
    report(bench, kOutside, {leaf.first}, {}, thickness,
           advised(mm ? Length::from_mm_thousandths(42'500) : Length::from_inch_parts(7, 4)));
  else if (leaf.room.extent(0) >= Length::from_inch_parts(36) ||
           leaf.room.extent(1) > Length::from_inch_parts(84))
    report(bench, kLarge, {leaf.first}, {}, thickness,
           advised(mm ? Length::from_mm(36) : Length::from_inch_parts(3, 2)));
}

void check_smooth_bottom(Bench& bench, const Leaf& leaf, Length room_below) {
  const std::vector<std::size_t> rails = level_rails(bench, leaf.group);
  if (!leaf.service.accessible || rails.empty()) return;
  const Length top = bench.solids[rails.front()].blank.high[1] - leaf.room.low[1] + room_below;
  report(bench, kSmooth, {rails.front()}, {}, top, advised(Length::from_inch_parts(10)));
}

void check_cups(Bench& bench, const Leaf& leaf) {
  const Fit* opening = fit_in_opening(bench.assembly);
  if (!leaf.service.cabinet || opening == nullptr || opening->meets != Meets::overlay) return;
  for (const std::size_t piece : pieces_of(bench.assembly, leaf.group)) {
    const Piece& its = bench.assembly.pieces[piece];
    const Length width = its.blank[1];
    const Length least = Length::from_mm(38);
    if (its.role == Role::stile && width < least)
      report(bench, kCups, {piece}, {}, width, advised(least));
  }
}

void check_size(Bench& bench, const Leaf& leaf) {
  const Length wide = Length::from_inch_parts(48);
  const Length high = Length::from_inch_parts(120);
  if (leaf.room.extent(0) > wide)
    report(bench, kWidth, {leaf.first}, {}, leaf.room.extent(0),
           Bounds{{}, kLongestLumber, {}, wide});
  if (leaf.room.extent(1) > high)
    report(bench, kHeight, {leaf.first}, {}, leaf.room.extent(1),
           Bounds{{}, kLongestLumber, {}, high});
}

/// Whether it closes something: a framed end of a case stands there for good.
bool is_fitted(const Assembly& assembly, std::size_t group) {
  return group == 0 || std::any_of(assembly.fits.begin(), assembly.fits.end(),
                                   [&](const Fit& fit) { return fit.group == group; });
}

}  // namespace

void check_leaves(Bench& bench, Unit unit, const Service& service) {
  for (std::size_t group = 0; group < bench.assembly.groups.size(); ++group) {
    if (bench.assembly.groups[group].kind != GroupKind::leaf ||
        pieces_of(bench.assembly, group).empty() || !is_fitted(bench.assembly, group))
      continue;
    const Leaf leaf{service, group, first_of(bench.assembly, group),
                    placed_blanks(bench.assembly, group)};
    const Fit* hung = hanging_of(bench.assembly, leaf.first);
    const Fit* opening = hung != nullptr ? hung : fit_in_opening(bench.assembly);
    check_middle_rail(bench, leaf);
    check_thickness(bench, leaf, unit);
    check_smooth_bottom(bench, leaf, opening == nullptr ? Length() : opening->room.foot);
    check_cups(bench, leaf);
    check_size(bench, leaf);
  }
}

std::vector<const Rule*> rules_of_leaves() {
  return {&kMiddleRail, &kOutside, &kLarge, &kSmooth, &kCups, &kWidth, &kHeight};
}

}  // namespace haunch
