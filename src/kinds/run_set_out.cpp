#include "run_set_out.h"

#include <algorithm>
#include <utility>

#include "carcase_plan.h"
#include "face_frame_set_out.h"
#include "leaves.h"
#include "marks.h"
#include "solid.h"

namespace haunch {
namespace {

using What = RunEntry::What;

/// So far a boundary goes on where nothing bounds it.
constexpr Length kFar = Length::from_mm(10'000);

constexpr std::array<Axis, 3> kStrip{Axis::y, Axis::x, Axis::z};  // upright, its face to the front
constexpr std::array<Axis, 3> kPanel{Axis::y, Axis::z, Axis::x};  // upright, its edge to the front

/// From the floor up.
struct Upright {
  Length low, high;
};

class RunSetter {
 public:
  RunSetter(const WallRunPlan& plan, const RunSpec& spec) : plan_(plan), spec_(spec) {}

  Assembly set_out() {
    zero_ = zero();
    wood_.groups = {{GroupKind::run, "run", {}, {}}};
    for (std::size_t i = 0; i < plan_.members.size(); ++i)
      add_member(i);
    for (const RunFramePart& frame : plan_.frames)
      add_frame(frame);
    if (plan_.worktop) add_worktop(wood_, *plan_.worktop, zero_);
    if (plan_.toe) add_toe_board(wood_, *plan_.toe, zero_);
    settle_size();
    leave_open();
    return std::move(wood_);
  }

  Triple zero() const {
    return {leftmost(), plan_.toe ? -plan_.toe->below : Length(),
            plan_.worktop ? -plan_.worktop->before : Length()};
  }

  WallPlanes planes() {
    zero_ = zero();
    return {x_of(Length()), x_of(plan_.wall.least), back(), level()};
  }

  std::vector<Boundary> boundaries() {
    zero_ = zero();
    for (const RunMember& member : plan_.members)
      if (member.what == What::gap) add_gap(member);
    if (is_wall(plan_.wall.left)) add_wall(false);
    // A run that is too long goes beyond its end where no wall says so.
    const bool beyond = plan_.wall.right == RunEnd::free && plan_.spare_right < Length();
    if (is_wall(plan_.wall.right) || beyond) add_wall(true);
    return std::move(boundaries_);
  }

 private:
  const Worked& worked(const RunMember& member) const {
    return spec_.order[*member.entry].taken->worked();
  }
  static bool is_wall(RunEnd end) { return end == RunEnd::wall || end == RunEnd::blind; }
  /// The wall's plane.
  Length back() const { return plan_.size[2] + plan_.behind - zero_[2]; }
  /// The front of the deepest case.
  Length front() const { return -zero_[2]; }
  /// The level that the cases stand on.
  Length level() const { return -zero_[1]; }
  /// The front of a case, all of which stand as far from the wall.
  Length front_of(const RunMember& cabinet) const {
    return front() + plan_.size[2] - worked(cabinet).assembly.size[2];
  }
  Length x_of(Length along) const { return along - zero_[0]; }

  Length leftmost() const;
  Length leftmost_upright() const;
  const RunMember& case_beside(std::size_t member) const;
  Upright upright_of_filler(std::size_t member) const;
  Length most_back(const RunMember& member, const Upright& upright) const;
  bool is_out(const RunMember& filler) const;
  std::vector<Length> bends_in(const Upright& upright) const;
  void add_member(std::size_t number);
  void add_cabinet(const RunMember& member);
  void add_frame(const RunFramePart& frame);
  void keep_woods(Assembly& part, const Job& cabinet) const;
  void add_filler(std::size_t number);
  void plane_to_wall(Piece& filler, const RunMember& member, const Upright& upright, Length most);
  void add_end_panel(std::size_t number);
  void add_gap(const RunMember& member);
  void add_wall(bool right);
  /// What is one before several cases, or over them.
  bool goes_along(const Piece& piece) const {
    return piece.role == Role::worktop || (plan_.toe && piece.role == Role::toe_board);
  }
  Box in_whole_depth(Box box) const {
    box.low[2] = Length();
    box.high[2] = wood_.size[2];
    return box;
  }
  void settle_size();
  void leave_open();
  std::size_t add(const std::string& name, Role role, const Triple& blank, const Place& place,
                  const std::string& material);

  const WallRunPlan& plan_;
  const RunSpec& spec_;
  Assembly wood_;
  std::vector<Boundary> boundaries_;
  Triple zero_;  // along the wall, above the level of the cases, behind the deepest one's front
};

/// The nearest cabinet, of two as near the one to the right.
const RunMember& RunSetter::case_beside(std::size_t member) const {
  const auto& all = plan_.members;
  for (std::size_t off = 1; off < all.size(); ++off) {
    if (member + off < all.size() && all[member + off].what == What::cabinet)
      return all[member + off];
    if (member >= off && all[member - off].what == What::cabinet) return all[member - off];
  }
  return *std::find_if(all.begin(), all.end(),
                       [](const RunMember& it) { return it.what == What::cabinet; });
}

/// Above the toe board beside it, where there is one.
Upright RunSetter::upright_of_filler(std::size_t member) const {
  const Assembly& beside = worked(case_beside(member)).assembly;
  Upright upright{beside.size[1], beside.size[1]};
  for (const Piece& piece : beside.pieces) {
    const Box blank = placed_blank(piece);
    upright.low = std::min(upright.low, piece.role == Role::toe_board ? upright.low : blank.low[1]);
  }
  for (std::size_t piece = 0; piece < beside.pieces.size(); ++piece)
    if (beside.pieces[piece].role == Role::toe_board)
      upright.low = std::max(upright.low, seen_height(beside, piece));
  return upright;
}

bool RunSetter::is_out(const RunMember& filler) const {
  return plan_.wall.out_at_right ? filler.at_right_wall : filler.at_left_wall;
}

/// The heights between which the wall is straight.
std::vector<Length> RunSetter::bends_in(const Upright& upright) const {
  std::vector<Length> all{upright.low};
  for (const WallReading& reading : plan_.wall.readings)
    if (reading.at > upright.low && reading.at < upright.high) all.push_back(reading.at);
  all.push_back(upright.high);
  return all;
}

/// How far the wall stands back where it does most, along a filler.
Length RunSetter::most_back(const RunMember& member, const Upright& upright) const {
  if (!is_out(member)) return {};
  Length most;
  for (const Length at : bends_in(upright))
    most = std::max(most, plan_.wall.back_at(at));
  return most;
}

Length RunSetter::leftmost() const {
  Length left = leftmost_upright();
  if (plan_.worktop) left = std::min(left, plan_.worktop->left);
  if (plan_.toe) left = std::min(left, plan_.toe->left);
  return left;
}

Length RunSetter::leftmost_upright() const {
  for (std::size_t i = 0; i < plan_.members.size(); ++i) {
    const RunMember& member = plan_.members[i];
    if (member.what == What::gap) continue;
    const bool scribed = member.what == What::filler && member.at_left_wall;
    return member.left - (scribed ? most_back(member, upright_of_filler(i)) : Length());
  }
  return {};
}

std::size_t RunSetter::add(const std::string& name, Role role, const Triple& blank,
                           const Place& place, const std::string& material) {
  const std::size_t piece = add_piece(wood_, name, role, blank, place);
  wood_.pieces[piece].material = material;
  if (!material.empty()) wood_.pieces[piece].matter = matter_of(material);
  return piece;
}

void RunSetter::add_member(std::size_t number) {
  const RunMember& member = plan_.members[number];
  switch (member.what) {
    case What::cabinet:
      return add_cabinet(member);
    case What::filler:
      return add_filler(number);
    case What::gap:
      return;
    case What::end_panel:
      return add_end_panel(number);
  }
}

/// What is of another wood than the run's says so.
void RunSetter::keep_woods(Assembly& part, const Job& cabinet) const {
  const OfRoles<std::string> species = species_of(spec_.own);
  for (Piece& piece : part.pieces) {
    const std::string& own = cabinet.species.of(piece.role);
    if (piece.material.empty() && own != spelt(species.of(piece.role))) piece.material = own;
  }
}

void RunSetter::add_cabinet(const RunMember& member) {
  Assembly part = worked(member).assembly;
  const Job& job = spec_.order[*member.entry].taken->job();
  for (std::size_t group = 1; group < part.groups.size(); ++group)
    part.groups[group].path.insert(0, member.path + "/");
  keep_woods(part, job);
  if (plan_.toe)
    if (const auto board = own_toe_board(part)) leave_out(part, *board);
  Place at;
  at.origin = {x_of(member.left), level(), front_of(member)};
  for (Box box : part.open) {
    box = placed(box, at);
    wood_.open.push_back(box);
  }
  add_group(wood_, std::move(part), at, member.path);
}

void RunSetter::add_frame(const RunFramePart& frame) {
  const TakenCabinet& first = *spec_.order[frame.entries.front()].taken;
  Assembly part = set_out_face_frame(frame.frame);
  keep_woods(part, first.job());
  Place at;
  at.origin = {x_of(frame.left), level() + frame.foot,
               front() + plan_.size[2] - first.worked().assembly.size[2]};
  add_group(wood_, std::move(part), at, frame.path);
}

/// It is ripped as wide as it is where the wall stands back most, and planed to the wall.
void RunSetter::add_filler(std::size_t number) {
  const RunMember& member = plan_.members[number];
  const Upright upright = upright_of_filler(number);
  const Length most = most_back(member, upright);
  const Length left = member.left - (member.at_left_wall ? most : Length());
  Place place;
  place.origin = {x_of(left), level() + upright.low, front_of(case_beside(number))};
  place.axes = kStrip;
  const std::size_t piece =
      add(member.name, Role::filler,
          {upright.high - upright.low, member.width + most, plan_.filler_thickness}, place,
          plan_.filler_material);
  if (most > Length()) plane_to_wall(wood_.pieces[piece], member, upright, most);
}

/// A wedge from each bend of the wall to the next, at the edge beside it.
void RunSetter::plane_to_wall(Piece& filler, const RunMember& member, const Upright& upright,
                              Length most) {
  Feature feature{FeatureKind::planed_taper, {}, {}, {}};
  const std::vector<Length> bends = bends_in(upright);
  const Length edge = member.at_left_wall ? Length() : filler.blank[1];
  const auto corner = [&](Length at, Length off) {
    return Corner{at - upright.low, member.at_left_wall ? edge + off : edge - off};
  };
  Length deepest;
  for (std::size_t i = 1; i < bends.size(); ++i) {
    const Length low = most - plan_.wall.back_at(bends[i - 1]);
    const Length high = most - plan_.wall.back_at(bends[i]);
    deepest = std::max({deepest, low, high});
    if (low == Length() && high == Length()) continue;
    std::vector<Corner> outline{corner(bends[i - 1], Length()), corner(bends[i], Length())};
    if (high > Length()) outline.push_back(corner(bends[i], high));
    if (low > Length()) outline.push_back(corner(bends[i - 1], low));
    feature.prisms.push_back({2, Length(), filler.blank[2], std::move(outline)});
  }
  feature.sizes = {{SizeName::depth, deepest}};
  if (!feature.prisms.empty()) filler.features.push_back(std::move(feature));
}

/// From the front of the case beside it to the wall, down to the floor.
void RunSetter::add_end_panel(std::size_t number) {
  const RunMember& member = plan_.members[number];
  const RunMember& beside = case_beside(number);
  Place place;
  place.origin = {x_of(member.left), level(), front_of(beside)};
  place.axes = kPanel;
  add(member.name, Role::end_panel,
      {worked(beside).assembly.size[1], back() - front_of(beside), member.width}, place,
      plan_.end_panel_material);
}

/// What is put there has its place, and nothing else may stand or come into it.
void RunSetter::add_gap(const RunMember& member) {
  const RunEntry& entry = spec_.order[*member.entry];
  if (entry.purpose.empty()) return;
  const Length left = x_of(member.left), right = x_of(member.right());
  boundaries_.push_back({entry.purpose,
                         {1,
                          level() + (plan_.toe ? plan_.toe->top : Length()),
                          level() + entry.front_height.value_or(plan_.size[1]),
                          {{left, front()}, {right, front()}, {right, back()}, {left, back()}}}});
}

/// As it was measured, from far before the run to its back.
void RunSetter::add_wall(bool right) {
  const RunWall& wall = plan_.wall;
  const auto corner = [&](Length at) {
    const Length back = wall.out_at_right == right ? wall.back_at(at) : Length();
    return Corner{x_of(right ? wall.least + back : -back), level() + at};
  };
  std::vector<Corner> outline{corner(-kFar)};
  for (const WallReading& reading : wall.readings)
    outline.push_back(corner(reading.at));
  outline.push_back(corner(kFar));
  const Length outside = x_of(right ? wall.least + kFar : -kFar);
  outline.push_back({outside, kFar});
  outline.push_back({outside, -kFar});
  boundaries_.push_back({right ? "right end" : "left end",
                         {2, -kFar, back(), std::move(outline)},
                         (right ? wall.right : wall.left) == RunEnd::blind});
}

void RunSetter::settle_size() {
  Length right;
  for (const Piece& piece : wood_.pieces)
    right = std::max(right, placed_blank(piece).high[0]);
  const bool to_wall = std::any_of(plan_.members.begin(), plan_.members.end(),
                                   [](const auto& it) { return it.what == What::end_panel; });
  wood_.size = {right, plan_.size[1], front() + plan_.size[2]};
  if (to_wall || plan_.worktop) wood_.size[2] = back();
  wood_.size[1] += level();
  if (plan_.worktop) wood_.size[1] += plan_.worktop->thickness;
}

/// Where nothing stands, and where a cabinet is open itself.
void RunSetter::leave_open() {
  std::vector<Box> open{{{}, wood_.size}};
  for (std::size_t i = 0; i < plan_.members.size(); ++i) {
    const RunMember& member = plan_.members[i];
    if (member.what == What::gap) continue;
    const Assembly& beside =
        worked(member.what == What::cabinet ? member : case_beside(i)).assembly;
    Box box{{x_of(member.left), level(), Length()},
            {x_of(member.right()), level() + beside.size[1], wood_.size[2]}};
    // Beside its planed edge there is nothing but the wall, and below it nothing at all.
    if (member.what == What::filler) box.low[1] = level() + upright_of_filler(i).low;
    const Length most =
        member.what == What::filler ? most_back(member, upright_of_filler(i)) : Length();
    if (member.at_left_wall) box.low[0] -= most;
    if (member.at_right_wall) box.high[0] += most;
    take_out(open, box);
  }
  for (const Box& box : wood_.open)
    open.push_back(in_whole_depth(box));
  for (const Piece& piece : wood_.pieces)
    if (goes_along(piece)) take_out(open, in_whole_depth(placed_blank(piece)));
  wood_.open = std::move(open);
  for (const Piece& piece : wood_.pieces)
    for (const Feature& feature : piece.features)
      if ((piece.role == Role::filler || goes_along(piece)) &&
          feature.kind == FeatureKind::planed_taper)
        for (const Prism& prism : feature.prisms)
          wood_.beyond.push_back(placed(prism, piece.place));
}

}  // namespace

Assembly set_out_run(const WallRunPlan& plan, const RunSpec& spec) {
  return RunSetter(plan, spec).set_out();
}

Triple zero_of(const WallRunPlan& plan, const RunSpec& spec) {
  return RunSetter(plan, spec).zero();
}

std::vector<Boundary> boundaries_of(const WallRunPlan& plan, const RunSpec& spec) {
  return RunSetter(plan, spec).boundaries();
}

WallPlanes planes_of(const WallRunPlan& plan, const RunSpec& spec) {
  return RunSetter(plan, spec).planes();
}

}  // namespace haunch
