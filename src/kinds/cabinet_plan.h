// A cabinet with every size settled: case, the frame before it, and what closes its openings.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "carcase_plan.h"
#include "cup_hinge.h"
#include "face_frame_plan.h"
#include "layout.h"
#include "planned.h"
#include "spec.h"

namespace haunch {

/// The group of the case in a cabinet, after the whole.
inline constexpr std::size_t kCaseOfCabinet = 1;

/// What a cabinet's spec says.
struct CabinetSpec {
  Spec own;
  Spec door;  // of all its doors; those of all its drawers are among its own
  Spec end;   // of its framed ends
  Spec back;  // of its framed back
  LayoutNode layout;
  std::optional<FrameShare> share = {};  // where one face frame is before it and others
};

/// One front: what closes an opening, or one of the two leaves of a pair.
struct FrontPlan {
  const LayoutNode* node = nullptr;
  FrontKind kind = FrontKind::door;
  Area at;
  Area sight;               // of the opening that it closes, or of its half
  Side hangs = Side::left;  // of a leaf
  std::string path;         // of its group: "door-1"
  Sides room;               // to what stands beside it
  SidesBeside beside;
  std::optional<std::size_t> left, right;  // what bounds its opening, by index; none: the sides
  Sides lap;                               // of one that lies over the front: beyond its opening
};

struct CabinetPlan {
  Triple size;
  std::optional<FaceFramePlan> frame;  // its foot stands on the toe's top
  Meets meets = Meets::overlay;
  Length gap;
  Length pin_out;  // of the hinges' pin, before the face of a leaf
  CarcasePlan carcase;
  ResolvedLayout layout;
  std::vector<FrontPlan> fronts;  // down the rows, then to the right
  Stuff front_stuff;              // of plain ones
  Stuff front_strip;              // glued to all four edges of those; of no thickness: none is
  std::optional<CupHinges> hinges;
};

using PlannedCabinet = Planned<CabinetPlan>;

/// Settles every size. The spec must outlive the plan.
PlannedCabinet plan_cabinet(const CabinetSpec& spec);

}  // namespace haunch
