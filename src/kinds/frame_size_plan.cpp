// From the wall's opening to the frame to the leaf, and back: whichever is given gives the others.
#include <fmt/core.h>

#include <algorithm>
#include <array>

#include "bare_gap.h"
#include "frame_plan_steps.h"
#include "frame_rules.h"

namespace haunch {
namespace {

/// What one step adds on the way from the leaf to the wall.
struct Step {
  std::string_view what;
  std::vector<Length> sizes;
  bool less = false;  // it is taken off
};

Length sum_of(const std::vector<Step>& steps) {
  Length sum;
  for (const Step& step : steps)
    for (const Length size : step.sizes)
      sum += step.less ? -size : size;
  return sum;
}

bool counts(const Step& step) {
  return std::any_of(step.sizes.begin(), step.sizes.end(),
                     [](Length size) { return size != Length(); });
}

/// " + 3 mm + 3 mm (clearance)"
std::string in_words(const std::vector<Step>& steps, const Ledger& ledger) {
  std::string text;
  for (const Step& step : steps) {
    if (!counts(step)) continue;
    for (const Length size : step.sizes)
      text += (step.less ? " - " : " + ") + ledger.say(size);
    text += " (" + std::string(step.what) + ")";
  }
  return text;
}

/// One direction: the keys that may give it, and the way from one to the next.
struct Course {
  SizeKey wall_key, frame_key, leaf_key;
  std::vector<Step> leaf_to_frame, frame_to_wall;
};

struct Candidate {
  SizeKey key;
  Length leaf;              // what it makes of the leaf
  std::vector<Step> steps;  // from the leaf to it
};

std::vector<Candidate> candidates_of(const Ledger& ledger, const Course& direction) {
  std::vector<Candidate> candidates;
  std::vector<Step> steps;
  const auto add = [&](SizeKey key, const std::vector<Step>& more) {
    steps.insert(steps.end(), more.begin(), more.end());
    if (const auto size = ledger.stated(key).size)
      candidates.push_back({key, *size - sum_of(steps), steps});
  };
  add(direction.leaf_key, {});
  add(direction.frame_key, direction.leaf_to_frame);
  add(direction.wall_key, direction.frame_to_wall);
  return candidates;
}

/// "leaf.width 826 mm + 3 mm + 3 mm (clearance) …"
std::string sum_text(const Ledger& ledger, const Candidate& from, const Candidate& to) {
  const std::vector<Step> between(to.steps.begin() + static_cast<std::ptrdiff_t>(from.steps.size()),
                                  to.steps.end());
  const Length start = from.leaf + sum_of(from.steps);
  return fmt::format("{} {}{} = {}", from.key.name(), ledger.say(start), in_words(between, ledger),
                     ledger.say(start + sum_of(between)));
}

/// The leaf's size in one direction; zero with a problem where nothing gives it.
Length leaf_size(Ledger& ledger, const Course& direction) {
  const std::vector<Candidate> candidates = candidates_of(ledger, direction);
  if (candidates.empty()) return {};
  const Candidate& first = candidates.front();
  for (const Candidate& other : candidates)
    if (other.leaf != first.leaf)
      ledger.problem({other.key}, fmt::format("{} does not agree with {}; make them agree, or keep "
                                              "one of the two",
                                              ledger.say(other.leaf + sum_of(other.steps)),
                                              sum_text(ledger, first, other)));
  if (first.leaf <= Length())
    ledger.problem({first.key}, fmt::format("{} leaves no leaf: there go{} off it; make it more",
                                            ledger.say(first.leaf + sum_of(first.steps)),
                                            in_words(first.steps, ledger)));
  return first.leaf;
}

/// Says which direction nothing gives.
void demand_sizes(Ledger& ledger) {
  const Spec& spec = ledger.spec;
  const bool width = spec.size("frame.wall_opening.width") || spec.size("frame.frame.width") ||
                     spec.size("frame.leaf.width");
  const bool height = spec.size("frame.wall_opening.height") || spec.size("frame.frame.height") ||
                      spec.size("frame.leaf.height");
  if (width && height) return;
  const std::string what = width ? "height" : height ? "width" : "size";
  ledger.problem({"frame"}, fmt::format("no {0} is given; write the {0} of \"wall_opening\", "
                                        "\"frame\" or \"leaf\": one gives the others",
                                        what));
}

// ---- rules

const FrameRule* rule_of(Ledger& ledger) {
  const auto name = ledger.spec.word<FrameRuleName>("frame.rule");
  if (!name) return nullptr;
  ledger.note_shops_word("frame.rule");
  return &frame_rules()[static_cast<std::size_t>(*name)];
}

void settle_clearances(Ledger& ledger, Sides& clearance, const FrameRule* rule) {
  const Length usual = ledger.pick(3'000, 1, 8);
  const Length beside = rule != nullptr ? rule->clearance.value_or(usual) : usual;
  const bool over_wood =
      ledger.spec.size("frame.threshold.height") || ledger.spec.size("frame.sill.height");
  const Length below = over_wood ? usual : ledger.pick(10'000, 3, 8);
  const std::string_view why = rule != nullptr ? rule->name : "usual beside a leaf";
  clearance = {
      ledger.take("frame.clearance.left", beside, why),
      ledger.take("frame.clearance.right", beside, why),
      ledger.take("frame.clearance.head", beside, why),
      ledger.spec.size("frame.clearance.foot")
          ? ledger.take("frame.clearance.foot", below, {})
          : ledger.take("frame.clearance.foot", below,
                        over_wood ? "usual over a threshold" : "usual over a finished floor")};
  for (Length* side : {&clearance.left, &clearance.right, &clearance.head, &clearance.foot})
    *side = bare_gap(ledger.spec, *side);
}

void settle_lips(Ledger& ledger, Sides& lip, const FrameRule* rule) {
  if (!ledger.spec.speaks_of("frame.lip") && (rule == nullptr || rule->lip == Length())) return;
  const Length usual = rule != nullptr ? rule->lip : Length();
  ledger.settle_group(
      "frame.lip",
      {{"frame.lip.left", &lip.left, usual},
       {"frame.lip.right", &lip.right, usual},
       {"frame.lip.head", &lip.head, usual}},
      rule != nullptr && rule->lip != Length() ? rule->name : "a leaf with square edges");
}

// ---- the two directions

Course across(const CasePlan& plan) {
  const Length rebate = plan.stop.rebate();
  return {"frame.wall_opening.width",
          "frame.frame.width",
          "frame.leaf.width",
          {{"lips of the leaf", {plan.lip.left, plan.lip.right}, true},
           {"clearance", {plan.clearance.left, plan.clearance.right}},
           {"jambs", {plan.jamb_thickness, plan.jamb_thickness}},
           {"rebates in them", {rebate, rebate}, true}},
          {{"fitting", {plan.fitting.left, plan.fitting.right}}}};
}

Course upright(const CasePlan& plan) {
  std::vector<Step> steps{{"lip of the leaf", {plan.lip.head}, true},
                          {"clearance", {plan.clearance.foot, plan.clearance.head}},
                          {plan.sill ? "sill" : "threshold", {plan.base()}}};
  const Length rebate = plan.stop.rebate();
  if (plan.transom) {
    steps.push_back({"transom", {plan.transom->thickness}});
    steps.push_back({"light above it", {plan.transom->light}});
    steps.push_back({"head", {plan.head_thickness}});
    steps.push_back({"rebate in the transom", {rebate}, true});
  } else {
    steps.push_back({"head", {plan.head_thickness}});
    steps.push_back({"rebate in it", {rebate}, true});
  }
  steps.push_back({"horns of the jambs", {plan.above_head()}});
  return {"frame.wall_opening.height",
          "frame.frame.height",
          "frame.leaf.height",
          std::move(steps),
          {{"fitting", {plan.fitting.head, plan.fitting.foot}}}};
}

/// What a rule leaves between frame and wall in one direction, shared or at one place.
struct Left {
  SizeKey near_key, far_key;  // of the allowances
  bool shared;                // by both
  Length over;                // the rule's: wall less leaf
  Length taken;               // by the frame: frame less leaf
  std::string_view boards;    // what of the frame can give way
  Length thickness;           // of one of them
  std::vector<Where> keys;    // which have a share in what is taken
};

/// Strikes out what the shop says of `key`, which gives way to a rule of the spec.
void give_way(Ledger& ledger, Key key) {
  if (ledger.stated(key).by_shop) ledger.spec.forget(key);
}

/// The least that a frame is packed by, where nothing else is asked for.
Length least_packing(const Ledger& ledger) {
  return ledger.pick(2'000, 1, 16);
}

/// No lining is thinner: it holds a housing and the screws of its hinges.
Length least_board(const Ledger& ledger) {
  return ledger.pick(12'000, 1, 2);
}

/// How thick the boards have to be for the allowances that are asked for.
std::string cure_of(const Ledger& ledger, const Left& left) {
  const auto near = ledger.stated(left.near_key).size;
  const auto far = ledger.stated(left.far_key).size;
  const Length packing = least_packing(ledger);
  const Length asked = near.value_or(packing) + far.value_or(left.shared ? packing : Length());
  const int boards = left.shared ? 2 : 1;
  const Length room = floor_divide(left.over - left.taken - asked, boards) + left.thickness;
  const bool settled = near && (far || !left.shared);
  const Length board = settled ? room : board_within(ledger, room + packing);
  if (board < least_board(ledger))
    return fmt::format(
        "{} of {} or more {} not go in; change what else there is, or leave the rule out",
        left.shared ? "jambs" : "a head", ledger.say(least_board(ledger)),
        left.shared ? "do" : "does");
  return fmt::format("make the {} {}{} thick, or leave the rule out", left.boards,
                     settled ? "" : "at most ", ledger.say(board));
}

void refuse_whole(Ledger& ledger, const FrameRule& rule, const Left& left) {
  const auto near = ledger.stated(left.near_key).size;
  const auto far = ledger.stated(left.far_key).size;
  std::vector<Where> keys = left.keys;
  if (near || far) keys.insert(keys.begin(), Key(near ? left.near_key : left.far_key));
  keys.push_back("frame.rule");
  const std::string asked =
      near || far ? fmt::format(", and {} more are to be left to the wall",
                                ledger.say(near.value_or(Length()) + far.value_or(Length())))
                  : "";
  ledger.problem(keys, fmt::format("the rule {} makes the wall's opening {} more than the leaf, "
                                   "of which frame and clearances take {}{}; {}",
                                   rule.name, ledger.say(left.over), ledger.say(left.taken), asked,
                                   cure_of(ledger, left)));
}

/// The fitting allowances of one direction under a rule that fixes their sum.
std::array<Length, 2> fitting_left(Ledger& ledger, const FrameRule& rule, const Left& left) {
  for (const Key key : {left.near_key, left.far_key})
    give_way(ledger, key);
  const auto near = ledger.stated(left.near_key).size;
  const auto far = ledger.stated(left.far_key).size;
  const Length whole = left.over - left.taken;
  // The foot stands on the floor, unless the spec says otherwise.
  const Length first = near ? *near : far ? whole - *far : left.shared ? floor_half(whole) : whole;
  const Length second = far ? *far : left.shared ? whole - first : Length();
  if (first < Length() || second < Length() || first + second != whole)
    refuse_whole(ledger, rule, left);
  const std::string why = fmt::format("what {} leaves", rule.name);
  return {ledger.take(left.near_key, first, why), ledger.take(left.far_key, second, why)};
}

void settle_ruled_fitting(Ledger& ledger, CasePlan& plan, const FrameRule& rule) {
  const auto beside =
      fitting_left(ledger, rule,
                   {"frame.fitting_allowance.left",
                    "frame.fitting_allowance.right",
                    true,
                    *rule.wider,
                    sum_of(across(plan).leaf_to_frame),
                    "jambs",
                    plan.jamb_thickness,
                    {"frame.jamb_thickness", "frame.stop.depth", "frame.clearance", "frame.lip"}});
  const auto above =
      fitting_left(ledger, rule,
                   {"frame.fitting_allowance.head",
                    "frame.fitting_allowance.foot",
                    false,
                    *rule.higher,
                    sum_of(upright(plan).leaf_to_frame),
                    "head",
                    plan.head_thickness,
                    {"frame.head_thickness", "frame.horn", "frame.threshold", "frame.sill",
                     "frame.transom", "frame.stop.depth", "frame.clearance", "frame.lip"}});
  plan.fitting = {beside[0], beside[1], above[0], above[1]};
}

void settle_fitting(Ledger& ledger, CasePlan& plan, const FrameRule* rule) {
  if (rule != nullptr && rule->wider) {
    settle_ruled_fitting(ledger, plan, *rule);
    return;
  }
  const Length usual = ledger.pick(7'000, 1, 4);
  const Length beside = rule != nullptr ? rule->fitting.value_or(usual) : usual;
  const std::string_view why =
      rule != nullptr ? rule->name : "usual between wall and frame, for packing and fixing";
  plan.fitting = {ledger.take("frame.fitting_allowance.left", beside, why),
                  ledger.take("frame.fitting_allowance.right", beside, why),
                  ledger.take("frame.fitting_allowance.head", beside, why),
                  ledger.take("frame.fitting_allowance.foot", plan.sill ? beside : Length(),
                              plan.sill ? why : "jambs stand on the floor")};
}

}  // namespace

std::optional<RuledRoom> ruled_room(Ledger& ledger, CasePlan& plan) {
  const FrameRule* rule = rule_of(ledger);
  if (rule == nullptr || !rule->wider) return {};
  settle_clearances(ledger, plan.clearance, rule);
  settle_lips(ledger, plan.lip, rule);
  return RuledRoom{
      rule, floor_half(*rule->wider - sum_of(across(plan).leaf_to_frame)) + plan.jamb_thickness,
      *rule->higher - sum_of(upright(plan).leaf_to_frame) + plan.head_thickness};
}

Length board_within(const Ledger& ledger, Length room) {
  const Length board = floor_multiple(room - least_packing(ledger), ledger.pick(1'000, 1, 16));
  return board < least_board(ledger) ? Length() : board;
}

void settle_sizes(Ledger& ledger, CasePlan& plan) {
  demand_sizes(ledger);
  if (!ledger.clean()) return;
  const FrameRule* rule = rule_of(ledger);
  settle_clearances(ledger, plan.clearance, rule);
  settle_lips(ledger, plan.lip, rule);
  settle_fitting(ledger, plan, rule);
  if (!ledger.clean()) return;
  const Course wide = across(plan);
  const Course high = upright(plan);
  plan.leaf_width = leaf_size(ledger, wide);
  plan.leaf_height = leaf_size(ledger, high);
  plan.width = plan.leaf_width + sum_of(wide.leaf_to_frame);
  plan.height = plan.leaf_height + sum_of(high.leaf_to_frame);
  plan.wall_width = plan.width + sum_of(wide.frame_to_wall);
  plan.wall_height = plan.height + sum_of(high.frame_to_wall);
  plan.found = ledger.spec.found;
}

}  // namespace haunch
