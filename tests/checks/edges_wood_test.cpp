// Worked edges, measured in the wood: each rule at its limit and a step beyond it.
#include <functional>
#include <stdexcept>
#include <string>

#include "corner.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A cabinet door 20 thick with rebates 9 deep and 15 wide, which leave 5; the mortise begins
/// there.
Assembly rebated() {
  return wood(cabinet_mm(R"("thickness": 20, "mortise": {"width": 8, "from_face": 5},
                            "edge": {"kind": "rebated", "depth": 9, "width": 15})"));
}

/// Bevels 6 wide and 4 deep at the face side; the groove begins `lip` behind them.
Assembly coped(double lip = 2) {
  return wood(
      cabinet_mm(R"("thickness": 22, "mortise": {"width": 8}, "groove": {"from_face": )" +
                 std::to_string(4 + lip) +
                 R"(}, "edge": {"kind": "coped", "profile": "bevel", "width": 6, "depth": 4})"));
}

Assembly but(Assembly leaf, const std::function<void(Assembly&)>& change) {
  change(leaf);
  return leaf;
}

/// The first outline of a piece's prisms.
std::vector<Corner>& outline_of(Assembly& a, std::string_view piece, std::string_view kind) {
  for (Feature& feature : a.pieces[piece_number(a, piece)].features)
    if (word_of(feature.kind) == kind && !feature.prisms.empty())
      return feature.prisms.front().outline;
  throw std::invalid_argument("no such prism");
}

Breakage breaks(std::string says, const Assembly& leaf,
                const std::function<void(Assembly&)>& change, std::string verdict) {
  return {std::move(says), leaf, "", but(leaf, change), std::move(verdict)};
}

}  // namespace

std::vector<Breakage> breakages_of_edges() {
  return {
      breaks(
          "the long shoulder is closed too", rebated(),
          [](Assembly& a) {
            // Behind the tenon, a saw cut more at the left end.
            cuts_of(a, piece_number(a, "top rail"), "tenon")[1].high[0] += kStep;
          },
          "long-shoulder-seat fail"),
      breaks(
          "and the short one", rebated(),
          [](Assembly& a) { cuts_of(a, piece_number(a, "top rail"), "tenon")[0].high[0] += kStep; },
          "face-closed fail, shoulder-seat fail"),
      breaks(
          "a panel lies on its rebate", rebated(),
          [](Assembly& a) { a.pieces[piece_number(a, "panel")].place.origin[2] += kStep; },
          "panel-bed fail"),
      breaks(
          "5 mm are left in front of a rebate", rebated(),
          [](Assembly& a) {
            cuts_of(a, piece_number(a, "left stile"), "rebate").front().low[2] -= kStep;
          },
          "panel-bed fail, rebate-wall caution"),
      breaks(
          "a cope is closed", coped(),
          [](Assembly& a) {
            cuts_of(a, piece_number(a, "top rail"), "tenon").front().high[0] += kStep;
            for (std::size_t i = 0; i < 2; ++i)
              outline_of(a, "top rail", "tenon")[i].u += kStep;
          },
          "long-shoulder-seat fail"),
      breaks(
          "and does not stand in its moulding", coped(),
          [](Assembly& a) {
            for (std::size_t i = 0; i < 2; ++i)
              outline_of(a, "top rail", "tenon")[i].u -= kStep;
          },
          "fouling fail"),
      breaks(
          "1.5 mm are left between moulding and groove", coped(1.5),
          [](Assembly& a) {
            for (Corner& corner : outline_of(a, "left stile", "moulding"))
              if (corner.v > Length()) corner.v += kStep;
          },
          "moulding-wall caution"),
  };
}

TEST_CASE("Edges are right to the step") {
  check_breakages(breakages_of_edges());
}

}  // namespace haunch::test
