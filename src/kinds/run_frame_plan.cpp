// Planning the face frames of a run, and what is told of them.
#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "cabinet.h"
#include "cabinet_plan.h"
#include "ledger.h"
#include "run_frame.h"
#include "run_plan.h"
#include "run_spec.h"

namespace haunch {
namespace {

// As a face frame lists its members.
constexpr std::size_t kLeftStile = 0, kRightStile = 1;

const CabinetSpec& case_at(const RunSpec& spec, std::size_t entry) {
  return *spec_of_cabinet(spec.order[entry].taken->job());
}

const RunMember& member_at(const WallRunPlan& plan, std::size_t entry) {
  return *std::find_if(plan.members.begin(), plan.members.end(),
                       [&](const RunMember& it) { return it.entry == entry; });
}

// ---- dividing

using Entries = std::vector<std::size_t>;

/// So many cases from the left as a length has room for, then the next ones.
std::vector<Entries> divided(const Entries& entries, const std::vector<Length>& widths,
                             Length longest) {
  std::vector<Entries> parts;
  Length used;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    if (parts.empty() || used + widths[i] > longest) {
      parts.emplace_back();
      used = Length();
    }
    parts.back().push_back(entries[i]);
    used += widths[i];
  }
  return parts;
}

/// Into as few parts as the longest allows, and of those ways the one whose longest part is the
/// shortest.
std::vector<Entries> evenly_divided(const Entries& entries, const std::vector<Length>& widths,
                                    Length longest) {
  const std::size_t fewest = divided(entries, widths, longest).size();
  Length least = longest;
  for (std::size_t from = 0; from < widths.size(); ++from) {
    Length part;
    for (std::size_t to = from; to < widths.size(); ++to) {
      part += widths[to];
      const bool holds_each =
          std::all_of(widths.begin(), widths.end(), [&](Length width) { return width <= part; });
      if (holds_each && part < least && divided(entries, widths, part).size() == fewest)
        least = part;
    }
  }
  return divided(entries, widths, least);
}

// ---- one part

/// Under another node, with all that is in it.
LayoutNode moved(LayoutNode node, const std::string& from, const std::string& to) {
  node.path.replace(0, from.size(), to);
  for (LayoutNode& each : node.nodes)
    each = moved(std::move(each), from, to);
  return node;
}

class PartPlanner {
 public:
  PartPlanner(const RunSpec& spec, const WallRunPlan& plan, Ledger& ledger, std::size_t number)
      : spec_(spec), plan_(plan), ledger_(ledger), number_(number) {}

  RunFramePart planned(std::string name, const Entries& entries) {
    RunFramePart part;
    part.path = name;
    std::erase(part.path, ',');
    std::replace(part.path.begin(), part.path.end(), ' ', '-');
    part.name = std::move(name);
    part.entries = entries;
    part.left = member_at(plan_, entries.front()).left;
    for (const std::size_t entry : entries)
      cases_.push_back(plan_cabinet(case_at(spec_, entry)).plan);
    part.foot = cases_.front().carcase.toe.height;
    part.layout = side_by_side(entries);
    make(part);
    return part;
  }

 private:
  std::shared_ptr<const LayoutNode> side_by_side(const Entries& entries) const;
  Spec frame_spec(const Entries& entries) const;
  void make(RunFramePart& part);

  const RunSpec& spec_;
  const WallRunPlan& plan_;
  Ledger& ledger_;
  const std::size_t number_;  // of the frame
  std::vector<CabinetPlan> cases_;
};

/// Each case's layout as one of the columns, as wide as it is in the case's share.
std::shared_ptr<const LayoutNode> PartPlanner::side_by_side(const Entries& entries) const {
  auto all = std::make_shared<LayoutNode>();
  all->division = Division::columns;
  all->said.set("layout_node.between", static_cast<int>(Between::partition));
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const LayoutNode& its = case_at(spec_, entries[i]).layout;
    LayoutNode node = moved(its, its.path, fmt::format("{}/columns/{}", all->path, i));
    const FaceFramePlan& share = *cases_[i].frame;
    const Length lining = share.planted ? share.planted->width : Length();
    node.said.set("layout_node.width", share.width - share.members[kLeftStile].width() -
                                           share.members[kRightStile].width() - lining * 2);
    all->nodes.push_back(std::move(node));
  }
  return all;
}

/// What the first case says, with the stile that the last one has at its right.
Spec PartPlanner::frame_spec(const Entries& entries) const {
  const CabinetSpec& first = case_at(spec_, entries.front());
  const CabinetSpec& last = case_at(spec_, entries.back());
  Spec own = first.own;
  const auto set_stile = [&](SizeKey width, SizeKey scribe, Length whole, Length to_scribe) {
    own.set(width, whole - to_scribe);
    own.set(scribe, to_scribe);
  };
  const auto to_scribe = [](const CabinetSpec& its, bool shared, SizeKey key) {
    return shared ? Length() : its.own.size(key).value_or(Length());
  };
  set_stile("face_frame.stile_width.left", "face_frame.scribe.left",
            cases_.front().frame->members[kLeftStile].width(),
            to_scribe(first, first.share->left.has_value(), "face_frame.scribe.left"));
  set_stile("face_frame.stile_width.right", "face_frame.scribe.right",
            cases_.back().frame->members[kRightStile].width(),
            to_scribe(last, last.share->right.has_value(), "face_frame.scribe.right"));
  return own;
}

void PartPlanner::make(RunFramePart& part) {
  FaceFrameUse use;
  use.in_cabinet = true;
  for (const CabinetPlan& its : cases_)
    use.width += its.size[0];
  use.height = cases_.front().frame->height;
  use.rules.meets = cases_.front().meets;
  use.rules.gap = cases_.front().gap;
  PlannedFaceFrame planned = plan_face_frame(frame_spec(part.entries), {}, *part.layout, use);
  if (!planned.problems.empty())
    ledger_.problem({{"run.frames", number_}}, part.name + ": " + planned.problems.front().message);
  part.frame = std::move(planned.plan);
}

// ---- what is told

class PartChains {
 public:
  PartChains(const RunFramePart& part, const WallRunPlan& plan, const RunSpec& spec)
      : part_(part), plan_(plan), spec_(spec) {}

  std::vector<Chain> all() {
    for (const LaidList& list : part_.frame.layout.lists)
      of_list(list);
    across_cases();
    return std::move(chains_);
  }

 private:
  static void link(Chain& chain, std::string what, Length length) {
    if (length != Length()) chain.links.push_back({std::move(what), length});
  }
  std::string words_of(const std::string& path) const;
  std::string node_words(const LaidList& list, std::size_t number) const;
  void of_list(const LaidList& list);
  void across_cases();

  const RunFramePart& part_;
  const WallRunPlan& plan_;
  const RunSpec& spec_;
  std::vector<Chain> chains_;
};

/// "b2, column 1": the part of the frame that a list's path divides.
std::string PartChains::words_of(const std::string& path) const {
  std::string words;
  std::size_t at = path.find('/', 1);
  for (bool outer = true; at != std::string::npos; outer = false) {
    const std::size_t number = path.find('/', at + 1);
    if (number == std::string::npos) break;
    const std::size_t end = std::min(path.find('/', number + 1), path.size());
    const std::size_t place = std::stoul(path.substr(number + 1, end - number - 1));
    const bool column = path.compare(at + 1, number - at - 1, "columns") == 0;
    words += outer ? " at " + member_at(plan_, part_.entries[place]).name
                   : fmt::format(", {} {}", column ? "column" : "row", place + 1);
    at = end == path.size() ? std::string::npos : end;
  }
  return words;
}

std::string PartChains::node_words(const LaidList& list, std::size_t number) const {
  if (list.path == part_.layout->path + "/columns")
    return "opening of " + member_at(plan_, part_.entries[number]).name;
  return fmt::format("{} {}", list.across ? "column" : "row", number + 1);
}

void PartChains::of_list(const LaidList& list) {
  const FaceFramePlan& frame = part_.frame;
  Chain chain{part_.name + words_of(list.path) +
                  (list.across ? ", across, from the left" : ", down, from the top"),
              {}};
  const Length lining = frame.planted ? frame.planted->width : Length();
  const auto outer = [&](std::string_view what, bool there) {
    for (const FaceMember& member : frame.members)
      if (there && member.name == what) {
        link(chain, std::string(what), member.width() + lining);
        return;
      }
  };
  outer("left stile", list.across && !list.by.left);
  outer("top rail", !list.across && !list.by.head);
  for (std::size_t i = 0; i < list.sizes.size(); ++i) {
    link(chain, node_words(list, i), list.sizes[i]);
    if (i < list.widths.size()) link(chain, list.across ? "mullion" : "rail", list.widths[i]);
  }
  outer("right stile", list.across && !list.by.right);
  outer("bottom rail", !list.across && !list.by.foot);
  if (!list.across && !list.by.foot) link(chain, "toe", part_.foot);
  chains_.push_back(std::move(chain));
}

void PartChains::across_cases() {
  Chain chain{"behind " + part_.name + ", from the left", {}};
  Length packed;
  for (std::size_t i = 0; i < part_.entries.size(); ++i) {
    const CabinetPlan its = plan_cabinet(case_at(spec_, part_.entries[i])).plan;
    link(chain, i == 0 ? "frame over it" : "packed", packed + its.frame->over.left);
    link(chain, "case of " + member_at(plan_, part_.entries[i]).name, its.carcase.width);
    packed = its.frame->over.right;
  }
  link(chain, "frame over it", packed);
  chains_.push_back(std::move(chain));
}

std::string names_of(const WallRunPlan& plan, const Entries& entries) {
  std::string names;
  for (const std::size_t entry : entries)
    names += (names.empty() ? "" : ", ") + member_at(plan, entry).name;
  return names;
}

}  // namespace

std::vector<RunFramePart> plan_frames(const RunSpec& spec, const WallRunPlan& plan,
                                      Ledger& ledger) {
  std::vector<RunFramePart> parts;
  for (std::size_t number = 0; number < spec.frames.size(); ++number) {
    const RunFrame& frame = spec.frames[number];
    std::vector<Length> widths;
    Length longest;
    for (const std::size_t entry : frame.entries) {
      widths.push_back(member_at(plan, entry).width);
      longest += widths.back();
    }
    longest = std::min(longest, ledger.spec.size("run.longest_frame").value_or(longest));
    const auto widest = std::max_element(widths.begin(), widths.end());
    if (*widest > longest) {
      const std::size_t entry = frame.entries[static_cast<std::size_t>(widest - widths.begin())];
      ledger.problem({"run.longest_frame"},
                     fmt::format("is less than the {} of {} alone, and a frame is divided between "
                                 "cases; make it longer, or that case narrower",
                                 ledger.say(*widest), member_at(plan, entry).name));
      continue;
    }
    const std::vector<Entries> divisions = evenly_divided(frame.entries, widths, longest);
    for (std::size_t i = 0; i < divisions.size(); ++i)
      parts.push_back(PartPlanner(spec, plan, ledger, number)
                          .planned(divisions.size() == 1
                                       ? frame.name
                                       : fmt::format("{}, part {}", frame.name, i + 1),
                                   divisions[i]));
  }
  return parts;
}

std::vector<Chain> frame_chains(const WallRunPlan& plan, const RunSpec& spec) {
  std::vector<Chain> chains;
  for (const RunFramePart& part : plan.frames)
    for (Chain& chain : PartChains(part, plan, spec).all())
      chains.push_back(std::move(chain));
  return chains;
}

std::string frame_words(const WallRunPlan& plan, const RunSpec& spec) {
  std::string words;
  for (std::size_t i = 0; i < plan.frames.size(); ++i) {
    const RunFramePart& part = plan.frames[i];
    words += (i == 0 ? "" : ", ") + part.name + " before " + names_of(plan, part.entries);
  }
  if (words.empty()) return words;
  words.insert(0, "when cases and their packing are screwed together, ");
  words += ", fixed to the sides of each case";
  const bool divided = plan.frames.size() > spec.frames.size();
  if (divided) words += "; parts of a frame are screwed together through their half mullions";
  return words;
}

}  // namespace haunch
