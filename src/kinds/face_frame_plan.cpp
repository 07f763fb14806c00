#include "face_frame_plan.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "face_frame_plan_steps.h"
#include "marks.h"

namespace haunch {
namespace {

constexpr std::string_view kUsual = "usual for a face frame";

// ---- sections

void settle_stiles(FaceLedger& ledger, FaceWidths& widths) {
  const Length usual = ledger.pick(40'000, 3, 2);
  ledger.settle_group("face_frame.stile_width",
                      {{"face_frame.stile_width.left", &widths.left, usual},
                       {"face_frame.stile_width.right", &widths.right, usual}},
                      kUsual);
  if (widths.left == widths.right) {
    ledger.add_lever("face_frame.stile_width", widths.left, false);
  } else {
    ledger.add_lever("face_frame.stile_width.left", widths.left);
    ledger.add_lever("face_frame.stile_width.right", widths.right);
  }
  widths.scribe_left = ledger.spec.size("face_frame.scribe.left").value_or(Length());
  widths.scribe_right = ledger.spec.size("face_frame.scribe.right").value_or(Length());
}

void settle_rails(FaceLedger& ledger, FaceWidths& widths) {
  const Length usual = ledger.pick(40'000, 3, 2);
  std::vector<Ledger::Member> rails{{"face_frame.rail_width.top", &widths.top, usual},
                                    {"face_frame.rail_width.between", &widths.between, usual},
                                    {"face_frame.rail_width.bottom", &widths.bottom, usual}};
  ledger.settle_group("face_frame.rail_width", rails, kUsual);
  if (widths.top == widths.between && widths.top == widths.bottom) {
    ledger.add_lever("face_frame.rail_width", widths.top, false);
  } else {
    ledger.add_lever("face_frame.rail_width.top", widths.top);
    ledger.add_lever("face_frame.rail_width.between", widths.between);
  }
}

void settle_over(FaceLedger& ledger, const FaceWidths& widths, Sides& over) {
  const Length usual = ledger.pick(3'000, 1, 8);
  const auto why = [](Length scribe) {
    return scribe > Length()
               ? "what is left to scribe, and as is usual beyond it"
               : "usual: it hides the joint, and is planed flush where that is wanted";
  };
  const Length left = usual + widths.scribe_left;
  const Length right = usual + widths.scribe_right;
  ledger.settle_group(
      "face_frame.over",
      {{"face_frame.over.left", &over.left, left}, {"face_frame.over.right", &over.right, right}},
      why(std::max(widths.scribe_left, widths.scribe_right)));
}

// ---- beads

void settle_worked_bead(FaceLedger& ledger, FaceFramePlan& plan, Length width) {
  EdgeDesign& edge = plan.edge;
  edge.kind = EdgeKind::mitred;
  edge.profile = Moulding::bead;
  edge.width = width;
  edge.fillet = ledger.quirk(width);
  edge.fillet = width - floor_half(width - edge.fillet) * 2;  // the odd step is the quirk's
  edge.depth = floor_half(width - edge.fillet);
  if (edge.depth <= Length() || edge.depth >= plan.thickness)
    ledger.problem({"face_frame.bead.width"},
                   fmt::format("a bead of {} is not worked on a frame {} thick; make it less",
                               ledger.say(width), ledger.say(plan.thickness)));
}

void settle_bead(FaceLedger& ledger, FaceFramePlan& plan) {
  if (!ledger.spec.size("face_frame.bead.width")) {
    if (ledger.spec.speaks_of("face_frame.bead.by") ||
        ledger.spec.speaks_of("face_frame.bead.corners"))
      ledger.problem({"face_frame.bead.by", "face_frame.bead.corners"},
                     "says how a bead is made; give its width too, or take it out");
    return;
  }
  const Length width = ledger.take("face_frame.bead.width", {}, {});
  const BeadBy by = ledger.choose<BeadBy>("face_frame.bead.by", BeadBy::worked,
                                          "a bead from the solid does not come loose");
  const BeadCorners corners = ledger.choose<BeadCorners>(
      "face_frame.bead.corners", BeadCorners::mitred, "a bead runs round its opening");
  if (by == BeadBy::planted) {
    plan.planted = PlantedBead{width, corners == BeadCorners::mitred};
    return;
  }
  if (corners == BeadCorners::butted)
    ledger.problem({"face_frame.bead.corners"},
                   "a bead that is worked on the edges is mitred; plant it, or say \"mitred\"");
  settle_worked_bead(ledger, plan, width);
}

// ---- members

/// Takes what lines an opening off its sides.
Area lined(Area area, Length bead, bool head, bool foot) {
  area.left += bead;
  area.right -= bead;
  if (head) area.high -= bead;
  if (foot) area.low += bead;
  return area;
}

/// Builds the list of members: those round the outside, then what divides the opening.
class Members {
 public:
  Members(FaceLedger& ledger, FaceFramePlan& plan, const FaceWidths& widths)
      : ledger_(ledger),
        plan_(plan),
        widths_(widths),
        bead_(plan.planted ? plan.planted->width : Length()) {}

  void add_outer() {
    auto& members = plan_.members;
    const Length left = widths_.left_stile();
    const Length right = plan_.width - widths_.right_stile();
    members.push_back(
        {Role::stile, "left stile", "left-stile", {Length(), left, Length(), plan_.height}});
    members.push_back(
        {Role::stile, "right stile", "right-stile", {right, plan_.width, Length(), plan_.height}});
    top_ = add_rail("top rail", {left, right, plan_.height - widths_.top, plan_.height});
    if (widths_.bottom > Length())
      bottom_ = add_rail("bottom rail", {left, right, Length(), widths_.bottom});
  }

  /// What the outer members leave, inside of what lines it.
  Area inside() const {
    const bool foot = bottom_.has_value();
    return lined({widths_.left_stile(), plan_.width - widths_.right_stile(), widths_.bottom,
                  plan_.height - widths_.top},
                 bead_, true, foot);
  }

  void add_dividers() {
    for (const Divider& divider : plan_.layout.dividers)
      add_divider(divider);
  }

 private:
  std::size_t add_rail(std::string name, const Area& at) {
    const std::size_t number = plan_.members.size();
    std::string key = in_key(name);
    plan_.members.push_back({Role::rail, std::move(name), std::move(key), at});
    add_ends(number, kLeftStile, kRightStile);
    return number;
  }

  void add_ends(std::size_t number, std::size_t low, std::size_t high) {
    plan_.ends.push_back({number, low, false, {}});
    plan_.ends.push_back({number, high, true, {}});
  }

  /// The member that bounds a divider, or none.
  std::optional<std::size_t> member_at(const Bound& by, std::optional<std::size_t> outer) const {
    return by ? of_dividers_[*by] : outer;
  }

  void add_divider(const Divider& divider);
  std::string name_of(bool upright) const;
  std::string key_of(const Divider& divider);

  FaceLedger& ledger_;
  FaceFramePlan& plan_;
  const FaceWidths& widths_;
  Length bead_;
  std::size_t top_ = 0;
  std::optional<std::size_t> bottom_;
  std::vector<std::optional<std::size_t>> of_dividers_;  // none: no wood
};

/// "mullion 2"; where there is but one of them "mullion".
std::string Members::name_of(bool upright) const {
  const auto alike = [&](const Divider& it) {
    return it.upright == upright && it.kind != Between::none;
  };
  const auto& dividers = plan_.layout.dividers;
  std::string word(word_of(upright ? Role::mullion : Role::rail));
  if (std::count_if(dividers.begin(), dividers.end(), alike) == 1) return word;
  const auto before =
      std::count_if(plan_.members.begin(), plan_.members.end(), [&](const auto& it) {
        return it.role == (upright ? Role::mullion : Role::rail) && it.name.starts_with(word);
      });
  return word + " " + std::to_string(before + 1);
}

/// "column-1/row-2/mullion-1", by where it stands in the layout.
std::string key_of(const Divider& divider, std::size_t number) {
  std::string key;
  std::string path = divider.path.substr(divider.path.find("layout") + 6);
  for (const auto& [list, word] : {std::pair{"/columns/", "column-"}, std::pair{"/rows/", "row-"}})
    for (std::size_t at = path.find(list); at != std::string::npos; at = path.find(list)) {
      const std::size_t digits = at + std::string_view(list).size();
      const std::size_t end = std::min(path.find('/', digits), path.size());
      const std::string part =
          word + std::to_string(std::stoul(path.substr(digits, end - digits)) + 1);
      path.replace(at, end - at, "/" + part);
    }
  if (!path.empty()) key = path.substr(1) + "/";
  return key + std::string(word_of(divider.upright ? Role::mullion : Role::rail)) + "-" +
         std::to_string(number);
}

std::string Members::key_of(const Divider& divider) {
  std::size_t number = 1;
  for (const Divider& other : plan_.layout.dividers) {
    if (&other == &divider) break;
    if (other.path == divider.path) ++number;
  }
  return haunch::key_of(divider, number);
}

void Members::add_divider(const Divider& divider) {
  if (divider.kind == Between::none) {
    of_dividers_.emplace_back();
    return;
  }
  const auto low = divider.upright ? member_at(divider.by.foot, bottom_)
                                   : member_at(divider.by.left, kLeftStile);
  const auto high =
      divider.upright ? member_at(divider.by.head, top_) : member_at(divider.by.right, kRightStile);
  if (!low || !high) {
    ledger_.problems.push_back(
        {divider.path,
         fmt::format(
             "a {} here would end where nothing stands; put a {} there, or say \"between\": "
             "\"none\"",
             word_of(divider.upright ? Role::mullion : Role::rail),
             divider.upright ? "rail" : "mullion"),
         {}});
    of_dividers_.emplace_back();
    return;
  }
  Area at = divider.at;
  (divider.upright ? at.low : at.left) -= bead_;
  (divider.upright ? at.high : at.right) += bead_;
  (divider.upright ? at.left : at.low) += bead_;
  (divider.upright ? at.right : at.high) -= bead_;
  const std::size_t number = plan_.members.size();
  of_dividers_.emplace_back(number);
  plan_.members.push_back({divider.upright ? Role::mullion : Role::rail, name_of(divider.upright),
                           key_of(divider), at});
  add_ends(number, *low, *high);
}

// ---- the whole

void settle_layout(FaceLedger& ledger, FaceFramePlan& plan, const FaceWidths& widths,
                   const LayoutNode& layout, LayoutRules rules) {
  Members members(ledger, plan, widths);
  members.add_outer();
  const Length lining = plan.planted ? plan.planted->width * 2 : Length();
  rules.unit = ledger.unit;
  rules.framed = true;
  rules.upright = widths.mullion + lining;
  rules.level = widths.between + lining;
  rules.reach =
      reach_over({widths.left, widths.right, widths.top, widths.bottom}, rules.meets, rules.gap);
  const Area inside = members.inside();
  if (inside.width() <= Length() || inside.height() <= Length()) {
    ledger.problem({"size"},
                   fmt::format("stiles and rails leave an opening of {} by {}; make them narrower",
                               ledger.say(std::max(inside.width(), Length())),
                               ledger.say(std::max(inside.height(), Length()))));
    return;
  }
  plan.layout = resolve(layout, inside, rules);
  for (const Problem& problem : plan.layout.problems)
    ledger.problems.push_back(problem);
  if (ledger.clean()) members.add_dividers();
}

/// What is said of both sides is said of the outer ones.
void take_share(const FrameShare& share, FaceWidths& widths, Sides& over) {
  if (share.left) {
    widths.left = share.left->width;
    widths.scribe_left = Length();
    over.left = share.left->over;
  }
  if (share.right) {
    widths.right = share.right->width;
    widths.scribe_right = Length();
    over.right = share.right->over;
  }
  widths.mullion = share.mullion;
}

void settle(FaceLedger& ledger, FaceFramePlan& plan, const LayoutNode& layout,
            const FaceFrameUse& use) {
  if (!use.in_cabinet) ledger.note_names();
  plan.width = use.width;
  plan.height = use.height;
  plan.thickness = ledger.take("face_frame.thickness", ledger.pick(20'000, 3, 4), kUsual);
  FaceWidths& widths = ledger.widths;
  settle_stiles(ledger, widths);
  settle_rails(ledger, widths);
  if (use.in_cabinet) settle_over(ledger, widths, plan.over);
  settle_bead(ledger, plan);
  if (!ledger.clean()) return;
  const Length wider = std::max(widths.left, widths.right);
  widths.mullion = ledger.spec.size("face_frame.mullion_width").value_or(wider);
  if (use.share) take_share(*use.share, widths, plan.over);
  settle_layout(ledger, plan, widths, layout, use.rules);
  if (use.share) return;
  const auto is_mullion = [](const FaceMember& it) { return it.role == Role::mullion; };
  if (std::any_of(plan.members.begin(), plan.members.end(), is_mullion))
    ledger.take("face_frame.mullion_width", wider, "as the wider of the stiles");
  if (ledger.clean()) settle_face_joints(ledger, plan);
}

}  // namespace

Length FaceFramePlan::foot() const {
  for (const LaidOpening& opening : layout.openings)
    if (!opening.by.foot) return opening.sight.low;
  return {};
}

PlannedFaceFrame plan_face_frame(const Spec& spec, std::string_view root, const LayoutNode& layout,
                                 const FaceFrameUse& use) {
  FaceLedger ledger(spec, root);
  PlannedFaceFrame planned;
  settle(ledger, planned.plan, layout, use);
  planned.take(ledger);
  return planned;
}

}  // namespace haunch
