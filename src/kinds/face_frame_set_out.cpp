#include "face_frame_set_out.h"

#include <utility>

#include "marks.h"
#include "mitre.h"

namespace haunch {
namespace {

constexpr std::array<Axis, 3> kUpright{Axis::y, Axis::x, Axis::z};
constexpr std::array<Axis, 3> kLevel{Axis::x, Axis::y, Axis::z};

/// Sets a face frame out: members, then beads worked on them, then joints, then what is planted.
class FaceFrameSetter {
 public:
  explicit FaceFrameSetter(const FaceFramePlan& plan) : plan_(plan) {
    for (const FaceEnd& end : plan.ends)
      joints_.push_back(joints_of(end.design));
  }

  Assembly set_out() {
    wood_.groups = {{GroupKind::face_frame, "face-frame", {}, {}}};
    wood_.size = {plan_.width, plan_.height, plan_.thickness};
    for (const LaidOpening& opening : plan_.layout.openings)
      wood_.open.push_back({{opening.sight.left, opening.sight.low, Length()},
                            {opening.sight.right, opening.sight.high, plan_.thickness}});
    for (std::size_t member = 0; member < plan_.members.size(); ++member)
      add_member(member);
    if (plan_.edge.moulded()) work_beads();
    join_ends();
    if (plan_.planted) plant_beads();
    return std::move(wood_);
  }

 private:
  void add_member(std::size_t member);
  void work_beads();
  void join_ends();
  void plant_beads();
  void plant(const std::string& name, const std::string& key, const Area& at, bool upright,
             bool long_side_low);
  /// How far a member's two ends go past its shoulders.
  Strip reach_of(std::size_t member) const;

  const FaceFramePlan& plan_;
  std::vector<EndJoints> joints_;  // of each end
  Assembly wood_;
};

Strip FaceFrameSetter::reach_of(std::size_t member) const {
  Strip reach{};
  for (std::size_t end = 0; end < plan_.ends.size(); ++end)
    if (plan_.ends[end].enters == member)
      (plan_.ends[end].high ? reach.high : reach.low) = joints_[end].front()->reach();
  return reach;
}

void FaceFrameSetter::add_member(std::size_t number) {
  const FaceMember& member = plan_.members[number];
  const Strip reach = reach_of(number);
  const Area& at = member.at;
  const Length length = (member.upright() ? at.height() : at.width()) + reach.low + reach.high;
  const Triple origin = member.upright() ? Triple{at.left, at.low - reach.low, Length()}
                                         : Triple{at.left - reach.low, at.low, Length()};
  const std::size_t piece =
      add_piece(wood_, member.name, member.role, {length, member.width(), plan_.thickness},
                {origin, member.upright() ? kUpright : kLevel});
  wood_.pieces[piece].key = member.key;
}

/// Along every edge that looks at an opening.
void FaceFrameSetter::work_beads() {
  for (std::size_t number = 0; number < plan_.members.size(); ++number) {
    const FaceMember& member = plan_.members[number];
    const bool outer_low =
        member.upright() ? member.at.left == Length() : member.at.low == Length();
    const bool outer_high =
        member.upright() ? member.at.right == plan_.width : member.at.high == plan_.height;
    if (!outer_low) stick(wood_, number, Edge::low, plan_.edge);
    if (!outer_high) stick(wood_, number, Edge::high, plan_.edge);
  }
}

void FaceFrameSetter::join_ends() {
  std::vector<End> ends;
  for (std::size_t number = 0; number < plan_.ends.size(); ++number) {
    const FaceEnd& its = plan_.ends[number];
    const bool upright = plan_.members[its.enters].upright();
    // What is cut in a rail or mullion is told from its own shoulder.
    const Length reach = reach_of(its.receives).low;
    const auto shoulder = plan_.members[its.receives].role == Role::stile
                              ? std::nullopt
                              : std::optional(reach - plan_.edge.set_back());
    End end{Junction(wood_, its.receives, its.enters, {upright ? Axis::y : Axis::x, its.high}), 0,
            shoulder};
    join(wood_, end, joints_[number]);
    ends.push_back(end);
  }
  for (const Own own : kOwnPieces)
    for (std::size_t number = 0; number < ends.size(); ++number)
      for (const auto& joint : joints_[number])
        if (joint->own_pieces() == own) joint->add_own_pieces(wood_, ends[number]);
}

/// A strip of bead as it lies in its opening; mitred, its long side is at the member.
void FaceFrameSetter::plant(const std::string& name, const std::string& key, const Area& at,
                            bool upright, bool long_side_low) {
  const Length length = upright ? at.height() : at.width();
  const Length wide = plan_.planted->width;
  const std::size_t piece = add_piece(wood_, name, Role::bead, {length, wide, plan_.thickness},
                                      {{at.left, at.low, Length()}, upright ? kUpright : kLevel});
  wood_.pieces[piece].key = key;
  if (plan_.planted->mitred)
    wood_.pieces[piece].features.push_back(mitred_ends(wood_.pieces[piece].blank, long_side_low));
}

void FaceFrameSetter::plant_beads() {
  const Length wide = plan_.planted->width;
  const bool mitred = plan_.planted->mitred;
  std::size_t number = 0;
  for (const LaidOpening& opening : plan_.layout.openings) {
    ++number;
    // Without a bottom rail there is no bead at the foot.
    const bool foot = opening.sight.low > Length();
    const Area out{opening.sight.left - wide, opening.sight.right + wide,
                   opening.sight.low - (foot ? wide : Length()), opening.sight.high + wide};
    const Length low = mitred || !foot ? out.low : opening.sight.low;
    const Length high = mitred ? out.high : opening.sight.high;
    const std::string key = "opening-" + std::to_string(number) + "/";
    const std::string of = ", opening " + std::to_string(number);
    plant("left bead" + of, key + "left-bead", {out.left, opening.sight.left, low, high}, true,
          true);
    plant("right bead" + of, key + "right-bead", {opening.sight.right, out.right, low, high}, true,
          false);
    plant("head bead" + of, key + "head-bead", {out.left, out.right, opening.sight.high, out.high},
          false, false);
    if (foot)
      plant("foot bead" + of, key + "foot-bead", {out.left, out.right, out.low, opening.sight.low},
            false, true);
  }
}

}  // namespace

Assembly set_out_face_frame(const FaceFramePlan& plan) {
  return FaceFrameSetter(plan).set_out();
}

}  // namespace haunch
