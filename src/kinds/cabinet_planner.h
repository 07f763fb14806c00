// Settling a cabinet: sizes, divisions and fronts in cabinet_plan.cpp, what stands in the case in
// cabinet_inner_plan.cpp.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "cabinet_plan.h"
#include "framework.h"
#include "ledger.h"

namespace haunch {

/// Settles a cabinet step by step; each rests on what the ones before it put into the plan.
class CabinetPlanner {
 public:
  explicit CabinetPlanner(const CabinetSpec& spec) : spec_(spec), ledger_(spec.own) {}

  PlannedCabinet planned();

 private:
  void settle_size();
  void settle_frame();
  void place_case();
  void demand_room_for_tails();
  void make_framed_ends();
  void make_framed_back();
  std::optional<Assembly> framework(Spec its, const FrameworkPart& part, Length width,
                                    Length height);
  void settle_fronts();
  void settle_front_strip();
  LayoutRules rules() const;
  void divide();
  void settle_blind(const Sides& reach);
  void doubt_blind();
  void place_inner();
  std::optional<std::size_t> stands_on(Bound bound, const Divider& divider, std::string_view end);
  Area inner_area(const Divider& divider, const InnerPlan& inner) const;
  void mark_opposed();
  void place_shelves();
  void place_shelves(const LaidOpening& opening);
  void fix_shelves(const LaidOpening& opening, int count, ShelfJoint joint);
  void refuse_shelves(const LayoutNode& node, int count, Length thickness, Length height);
  Stuff shelf_stuff(const LayoutNode& node) const;
  Length front_within(const LayoutNode& node) const;
  Length front_thickness(const LayoutNode& node) const;
  std::optional<std::size_t> inner_at(Bound bound) const;
  Area clear_behind(const LaidOpening& opening) const;
  ShelfLoad load_of(const LayoutNode& node);
  void place_runs();
  void place_runs(const LaidOpening& opening, bool right);
  void hold_in_front(RunPlan& run);
  void list_fronts();
  void add_front(const LaidOpening& opening, FrontKind kind, const Area& at, Side hangs);
  void look_beside();
  void doubt_grain();
  std::string next_path(FrontKind kind);

  const CabinetSpec& spec_;
  Ledger ledger_;
  PlannedCabinet planned_;
  CabinetPlan& plan_ = planned_.plan;
  std::map<std::size_t, std::size_t> inner_of_;  // of dividers that have a piece
  std::map<FrontKind, int> counts_;
  Length shelf_play_;
  PinHoles pin_holes_;
};

/// Whether some part of a layout has shelves that lie on pins.
bool has_loose_shelves(const LayoutNode& node);

/// Whether some shelf carries what was not said: a fixed one, or loose ones without a load.
bool assumes_books(const CabinetPlan& plan, const LayoutNode& layout);

}  // namespace haunch
