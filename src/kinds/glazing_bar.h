// Glazing bars: they divide a light into panes, and are rebated along both edges for these. Each
// enters the members about the light by a tenon as wide as what its rebates leave of it, in line
// with their groove; its face shoulder stands on the sight edge, the one behind goes on to the
// bottom of the rebate. Where two cross they are halved: one keeps its face, the other its back.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "arch.h"
#include "groove.h"
#include "haunch/wood.h"
#include "tenon.h"

namespace haunch {

struct BarDesign {
  std::size_t across = 1, up = 1;  // how many panes, side by side and one over the other
  Length width;                    // at the face
  Length rebate;                   // depth of each of its two, from its edge
  Length front;                    // thickness of its face, before the rebates
  bool upright_through = true;     // the upright ones keep their face where they cross
  Length lap_from_face;            // to where the two halves of a crossing meet
  Length lap_play;                 // at each edge of a half
  TenonDesign tenon;
  MortiseDesign mortise;

  /// What the rebates leave of it, over the back.
  Length tongue() const { return width - rebate * 2; }
};

/// The rebate on one side of a light: where it was worked, how deep it is from the sight edge, and
/// where the shoulder of the piece that it is in stands, if that has one.
struct LightSide {
  GrooveRef rebate;
  Length depth;
  std::optional<Length> shoulder = {};
};

/// A light by its sight sizes, up to the lower edge of the rail at its head.
struct Light {
  LightSide left, right, head, foot;
  Strip wide, high;
  const Arch* arch = nullptr;  // into that rail, if it has one; then no bars divide the light
};

/// Sets the bars of a light, and gives its panes: row by row from the foot, each from the left.
/// `which` goes after the bars' names, `key` before their keys.
std::vector<Light> divide_light(Assembly& assembly, const Light& light, const BarDesign& bars,
                                const std::string& which, const std::string& key);

}  // namespace haunch
