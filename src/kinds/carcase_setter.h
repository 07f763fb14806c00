// Setting a case out: sides, ends and what stands between them in carcase_set_out.cpp, its back in
// carcase_back.cpp, what lifts it, hangs it and closes it in a corner in carcase_foot.cpp.
#pragma once

#include <array>
#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "carcase_set_out.h"
#include "end_joint.h"

namespace haunch {

// Length, width and thickness: of what is in the case the width lies from front to back, of what
// closes it in front or behind its thickness.
inline constexpr std::array<Axis, 3> kUpright{Axis::y, Axis::z, Axis::x};
inline constexpr std::array<Axis, 3> kLevel{Axis::x, Axis::z, Axis::y};
inline constexpr std::array<Axis, 3> kUprightSheet{Axis::y, Axis::x, Axis::z};
inline constexpr std::array<Axis, 3> kLevelBoard{Axis::x, Axis::y, Axis::z};

/// Where on what receives it a piece ends: between its ends, or at one of them, where nothing is
/// left for a housing to stand in.
enum class Meeting : unsigned char { between, at_low_end, at_high_end };

/// Sets a case out: sides, what closes it, what stands in it, its back.
class CarcaseSetter {
 public:
  explicit CarcaseSetter(const CarcasePlan& plan) : plan_(plan) {}

  SetOutCarcase set_out() {
    wood_.groups = {{GroupKind::carcase, "case", {}, {}}};
    wood_.size = {plan_.over + plan_.width, plan_.height, plan_.rear()};
    add_sides();
    add_end(plan_.bottom, "bottom", Role::bottom, plan_.floor - plan_.stuff.thickness,
            plan_.bottom_at_end() ? Meeting::at_low_end : Meeting::between);
    add_end(plan_.top, "top", Role::top, plan_.ceiling(), Meeting::at_high_end);
    for (const InnerPlan& inner : plan_.inner)
      add_inner(inner);
    add_back();
    add_toe();
    add_blind();
    for (const RunPlan& run : plan_.runs)
      add_run(run);
    for (const LooseShelves& shelves : plan_.loose)
      add_loose(shelves);
    add_hanging();
    for (const Joined& its : with_own_)
      its.joint->add_own_pieces(wood_, its.end);
    add_strips();
    return {std::move(wood_), sides_, std::move(inner_)};
  }

 private:
  /// What the ends of a piece stand on: of an upright one two rails maybe, or nothing.
  struct Ends {
    std::vector<std::size_t> low, high;
    Meeting meeting = Meeting::between;
    bool low_opposed = false, high_opposed = false;
    std::optional<Strip> groove = {};     // in it, for the back
    std::optional<CaseJoint> own = {};    // its joint, if that is not the case's
    std::optional<Stuff> its_stuff = {};  // the same of what it is made of
  };
  /// What of the back stands at the left and at the right: of a framed one its stiles.
  using BackMembers = std::array<std::size_t, 2>;
  /// An end whose joint has pieces of its own.
  struct Joined {
    std::unique_ptr<const EndJoint> joint;
    End end;
  };

  void add_sides();
  void add_framed_ends();
  void add_end(CaseEnd end, const std::string& name, Role role, Length low, Meeting meeting);
  void add_inner(const InnerPlan& inner);
  void add_back();
  void groove_back(std::size_t back);
  void hold_back(const BackMembers& back);
  void rebate_back(const BackMembers& back);
  void plant_back(const BackMembers& back);
  void add_toe();
  void add_base();
  void add_feet();
  void add_blind();
  void add_hanging();
  void add_strips();
  void add_run(const RunPlan& run);
  void screw_on_run(const RunPlan& run, const Junction& junction, std::size_t joint);
  void hang_on(std::size_t piece, std::size_t on);
  void add_loose(const LooseShelves& shelves);
  std::size_t add(const std::string& name, Role role, const Triple& blank, const Place& place,
                  const Stuff& stuff);
  std::size_t add_level(const std::string& name, Role role, const Area& at, Length front,
                        Length rear, const Ends& ends);
  std::size_t add_upright(const std::string& name, Role role, const Area& at, const Ends& ends);
  void join_ends(std::size_t piece, Axis along, const Ends& ends);
  std::unique_ptr<const EndJoint> joint(const Ends& ends, bool high_end, const Strip& across) const;
  Length reach(const Ends& ends, bool high_end) const;
  std::string numbered(Role role) const;

  const CarcasePlan& plan_;
  Assembly wood_;
  std::array<SideMembers, 2> sides_;
  std::vector<std::size_t> inner_;  // the pieces of plan_.inner
  std::vector<std::size_t> bottoms_, tops_;
  std::vector<Joined> with_own_;
};

}  // namespace haunch
