#include "front_lines.h"

#include <algorithm>
#include <optional>

namespace haunch {
namespace {

constexpr Rule kLines{
    "front-lines", "between the edge of a front and that of its neighbour's",
    "a line that is out by a little looks like a mistake; one that is out by more "
    "than 25 mm (1 in) is taken to be meant (ours)"};

/// Farther apart than this two lines are not taken for one.
constexpr Length kMeant = Length::from_mm(25);
/// What the eye lets pass.
constexpr Length kSeen = Length::from_mm_thousandths(500);

struct FrontFace {
  std::size_t named = 0;  // a piece of it
  Box box;
};

/// The fronts of a cabinet that stand nearest to one of its sides.
std::vector<FrontFace> fronts_at(const Bench& bench, std::size_t cabinet, bool right) {
  std::vector<FrontFace> all;
  for (const Fit* fit : fits_that_stand(bench.assembly, StandsIn::front)) {
    if (!is_within(bench.assembly, fit->group, cabinet)) continue;
    const std::vector<std::size_t> pieces = pieces_of(bench.assembly, fit->group);
    if (pieces.empty()) continue;
    FrontFace face{pieces.front(), bench.solids[pieces.front()].blank};
    // Of a drawer its front is the foremost; what is behind that does not show.
    for (const std::size_t piece : pieces) {
      const Box& blank = bench.solids[piece].blank;
      if (blank.low[2] < face.box.low[2])
        face = {piece, blank};
      else if (blank.low[2] == face.box.low[2])
        face.box = around(face.box, blank);
    }
    all.push_back(face);
  }
  std::optional<Length> outermost;
  const auto reach = [&](const FrontFace& it) { return right ? it.box.high[0] : -it.box.low[0]; };
  for (const FrontFace& face : all)
    outermost = outermost ? std::max(*outermost, reach(face)) : reach(face);
  std::erase_if(all, [&](const FrontFace& it) { return reach(it) + kMeant < *outermost; });
  return all;
}

/// The two whose edges are most out of one line, of those that seem to be meant to be in one.
struct OutOfLine {
  std::size_t left = 0, right = 0;
  std::optional<Length> by;
};

OutOfLine most_out(const std::vector<FrontFace>& left, const std::vector<FrontFace>& right) {
  OutOfLine most;
  for (const FrontFace& a : left)
    for (const FrontFace& b : right)
      for (const Length off : {a.box.low[1] - b.box.low[1], a.box.high[1] - b.box.high[1]}) {
        const Length by = off < Length() ? -off : off;
        if (by <= kMeant && (!most.by || by > *most.by)) most = {a.named, b.named, by};
      }
  return most;
}

}  // namespace

void check_front_lines(Bench& bench) {
  if (bench.assembly.whole().kind != GroupKind::run) return;
  std::vector<std::size_t> cabinets;  // from the left, as they were put in
  for (std::size_t group = 1; group < bench.assembly.groups.size(); ++group)
    if (bench.assembly.groups[group].kind == GroupKind::cabinet) cabinets.push_back(group);
  for (std::size_t i = 1; i < cabinets.size(); ++i) {
    const OutOfLine out =
        most_out(fronts_at(bench, cabinets[i - 1], true), fronts_at(bench, cabinets[i], false));
    if (out.by)
      report(bench, kLines, {out.left, out.right}, {}, *out.by, Bounds{{}, {}, {}, kSeen});
  }
}

std::vector<const Rule*> rules_of_front_lines() {
  return {&kLines};
}

}  // namespace haunch
