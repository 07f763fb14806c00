#include "comparison.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include "cut_from.h"

namespace haunch {
namespace {

/// Two of whatever sort with one key, by number, or one that only one of both has.
struct Match {
  std::optional<std::size_t> was, is;
};

/// Known again by their keys; several of one key in their order. In the new ones' order, those that
/// go behind.
std::vector<Match> matches_of(const std::vector<std::string>& was,
                              const std::vector<std::string>& is) {
  std::multimap<std::string, std::size_t> left;
  for (std::size_t number = 0; number < was.size(); ++number)
    left.emplace(was[number], number);
  std::vector<Match> matches;
  for (std::size_t number = 0; number < is.size(); ++number) {
    matches.push_back({std::nullopt, number});
    const auto same = left.lower_bound(is[number]);
    if (same == left.end() || same->first != is[number]) continue;
    matches.back().was = same->second;
    left.erase(same);
  }
  std::vector<std::size_t> gone;
  for (const auto& [key, number] : left)
    gone.push_back(number);
  std::sort(gone.begin(), gone.end());
  for (const std::size_t number : gone)
    matches.push_back({number, std::nullopt});
  return matches;
}

// ---- pieces

std::vector<std::string> piece_keys(const Assembly& wood) {
  std::vector<std::string> keys;
  for (const Piece& piece : wood.pieces)
    keys.push_back(key_of(wood, piece));
  return keys;
}

std::string strip_words(const CutRow& row) {
  std::string words;
  for (const CutStrip& strip : row.strips)
    words += (words.empty() ? "" : ", ") + strip.edge + " " + in_words(strip.thickness, Unit::mm) +
             " " + strip.material;
  return words;
}

std::optional<Length> between(const ItemReport& report, std::size_t piece,
                              Length EndShoulders::*which) {
  const Shoulders& shoulders = report.making.value().shoulders[piece];
  if (!shoulders.any()) return {};
  return shoulders.between(which, report.wood.pieces[piece].blank[0]);
}

class PieceComparing {
 public:
  PieceComparing(const ItemReport& was, const ItemReport& is, ItemComparison& into)
      : was_(was), is_(is), into_(into) {
    for (const PlaceChange& work : into.making.changed_places)
      worked_otherwise_.insert(work.any().piece);
  }

  void compare() {
    const std::vector<std::string> was = piece_keys(was_.wood);
    const std::vector<std::string> is = piece_keys(is_.wood);
    into_.pieces = {was.size(), is.size(), 0};
    for (const Match& match : matches_of(was, is)) {
      PieceChange change;
      change.key = match.is ? is[*match.is] : was[*match.was];
      if (match.was) change.was = cut_row_of(was_.wood.pieces[*match.was], *was_.job);
      if (match.is) change.is = cut_row_of(is_.wood.pieces[*match.is], *is_.job);
      if (match.was && match.is) between_both(change, *match.was, *match.is);
      if (match.was && match.is && change.cut.empty() && !change.worked_otherwise)
        ++into_.pieces.same;
      else
        into_.changed_pieces.push_back(std::move(change));
    }
  }

 private:
  void between_both(PieceChange& change, std::size_t before, std::size_t after) {
    const CutRow &was = *change.was, &is = *change.is;
    Changes& cut = change.cut;
    cut.add("part", word_of(was.part), word_of(is.part));
    cut.add("material", was.material, is.material);
    cut.add("grain", was.grain, is.grain);
    cut.add("length", was.length, is.length);
    cut.add("saw_length", was.saw_length, is.saw_length);
    cut.add("width", was.width, is.width);
    cut.add("saw_width", was.saw_width, is.saw_width);
    cut.add("thickness", was.thickness, is.thickness);
    cut.add("strips", strip_words(was), strip_words(is));
    const auto shoulders = [&](std::string_view what, Length EndShoulders::*which) {
      cut.add(what, between(was_, before, which), between(is_, after, which));
    };
    shoulders("shoulder_to_shoulder_face", &EndShoulders::face);
    shoulders("shoulder_to_shoulder_back", &EndShoulders::back);
    change.worked_otherwise = worked_otherwise_.contains(change.key);
    if (was.marks != is.marks)
      into_.marks.push_back({change.key, is.called, was.marks.front(), is.marks.front()});
    if (cut.empty()) ++into_.cut_alike;
    if (cut.empty() && !change.worked_otherwise) return;
    change.from_old = was.material == is.material && was.grain == is.grain &&
                      can_be_cut_from(is_.wood.pieces[after], was_.wood.pieces[before]);
  }

  const ItemReport& was_;
  const ItemReport& is_;
  ItemComparison& into_;
  std::set<std::string> worked_otherwise_;
};

// ---- joints

/// By the pieces that it joins.
std::string joint_key(const Assembly& wood, std::size_t number) {
  const Joint& joint = wood.joints[number];
  return key_of(wood, wood.pieces[joint.receives]) + " < " +
         key_of(wood, wood.pieces[joint.enters]);
}

std::vector<std::string> joint_keys(const Assembly& wood) {
  std::vector<std::string> keys;
  for (std::size_t number = 0; number < wood.joints.size(); ++number)
    keys.push_back(joint_key(wood, number));
  return keys;
}

JointTold joint_told(const Assembly& wood, std::size_t number) {
  const Joint& joint = wood.joints[number];
  return {joint_id(number), joint.kind, wood.pieces[joint.receives].mark,
          wood.pieces[joint.enters].mark};
}

Changes changes_of(const Joint& was, const Joint& is) {
  Changes changes;
  changes.add("kind", word_of(was.kind), word_of(is.kind));
  const auto play = [&](std::string_view what, std::optional<Length> Clearances::*which) {
    changes.add(what, was.design.*which, is.design.*which);
  };
  play("cheeks", &Clearances::cheeks);
  play("edges", &Clearances::edges);
  play("bottom", &Clearances::bottom);
  play("bite", &Clearances::bite);
  play("bearing", &Clearances::bearing);
  play("edge", &Clearances::edge);
  play("draw", &Clearances::draw);
  return changes;
}

void compare_joints(const Assembly& was, const Assembly& is, ItemComparison& into) {
  into.joints = {was.joints.size(), is.joints.size(), 0};
  for (const Match& match : matches_of(joint_keys(was), joint_keys(is))) {
    JointChange change;
    if (match.was) change.was = joint_told(was, *match.was);
    if (match.is) change.is = joint_told(is, *match.is);
    if (match.was && match.is)
      change.changes = changes_of(was.joints[*match.was], is.joints[*match.is]);
    if (match.was && match.is && change.changes.empty())
      ++into.joints.same;
    else
      into.changed_joints.push_back(std::move(change));
  }
}

// ---- checks

/// By what is checked, and where.
std::string check_key(const ItemReport& report, const Finding& finding) {
  std::vector<std::string> parts;
  for (const std::size_t part : finding.parts)
    parts.push_back(key_of(report.wood, report.wood.pieces[part]));
  std::string key = std::string(finding.rule->check) + " | " + joined(parts) + " | ";
  if (finding.joint) key += joint_key(report.wood, *finding.joint);
  key += " | " + finding.fitting + " | ";
  return key + (finding.moisture ? std::to_string(*finding.moisture) : "");
}

std::vector<std::string> check_keys(const ItemReport& report) {
  std::vector<std::string> keys;
  for (const Finding& finding : report.findings)
    keys.push_back(check_key(report, finding));
  return keys;
}

CheckTold check_told(const ItemReport& report, std::size_t number) {
  const Finding& finding = report.findings[number];
  return {finding, joined(marks_of(report.wood, finding.parts)),
          finding.joint ? joint_id(*finding.joint) : ""};
}

bool is_told(const CheckChange& change) {
  if (!change.was || !change.is) return change.any().finding.status != Status::ok;
  return change.was->finding.status != change.is->finding.status ||
         change.is->finding.status == Status::fail;
}

void compare_checks(const ItemReport& was, const ItemReport& is, ItemComparison& into) {
  into.checks = {was.findings.size(), is.findings.size(), 0};
  for (const Match& match : matches_of(check_keys(was), check_keys(is))) {
    CheckChange change;
    if (match.was) change.was = check_told(was, *match.was);
    if (match.is) change.is = check_told(is, *match.is);
    if (match.was && match.is && change.was->finding.status == change.is->finding.status)
      ++into.checks.same;
    if (is_told(change)) into.changed_checks.push_back(std::move(change));
  }
}

// ---- what is bought, and weights

std::vector<std::string> hardware_keys(const std::vector<Hardware>& hardware) {
  std::vector<std::string> keys;
  for (const Hardware& its : hardware)
    keys.push_back(its.what + (its.size ? " " + in_words(*its.size, Unit::mm) : ""));
  return keys;
}

void compare_hardware(const Assembly& was_wood, const Assembly& is_wood, ItemComparison& into) {
  const std::vector<Hardware> was = hardware_of(was_wood), is = hardware_of(is_wood);
  into.hardware = {was.size(), is.size(), 0};
  for (const Match& match : matches_of(hardware_keys(was), hardware_keys(is))) {
    const Hardware& any = match.is ? is[*match.is] : was[*match.was];
    const NumberChange change{any.what, any.size, match.was ? was[*match.was].number : 0,
                              match.is ? is[*match.is].number : 0};
    if (change.was == change.is)
      ++into.hardware.same;
    else
      into.changed_hardware.push_back(change);
  }
}

/// To what a sheet tells.
std::optional<double> kilograms(const Weight& weight) {
  if (!weight.is_known()) return {};
  return std::round(weight.kilograms * 10) / 10;
}

std::vector<std::string> leaf_paths(const ItemReport& report) {
  std::vector<std::string> paths;
  for (const LeafWeight& leaf : report.weights.value().leaves)
    paths.push_back(report.wood.groups[leaf.group].path);
  return paths;
}

void compare_weights(const ItemReport& was, const ItemReport& is, ItemComparison& into) {
  into.weight_known = is.weights.value().whole.is_known();
  const auto add = [&](WeightChange change) {
    if (change.was != change.is) into.changed_weights.push_back(std::move(change));
  };
  add({is.wood.whole().path, true, kilograms(was.weights.value().whole),
       kilograms(is.weights.value().whole)});
  const std::vector<std::string> was_paths = leaf_paths(was), is_paths = leaf_paths(is);
  for (const Match& match : matches_of(was_paths, is_paths)) {
    const bool both = match.was && match.is;
    if (!both || is_paths[*match.is] == is.wood.whole().path) continue;  // that is told already
    add({is_paths[*match.is], false, kilograms(was.weights->leaves[*match.was].weight),
         kilograms(is.weights->leaves[*match.is].weight)});
  }
}

void compare_whole(const ItemReport& was, const ItemReport& is, ItemComparison& into) {
  into.was_id = was.job->id;
  into.is_id = is.job->id;
  into.unit = is.job->unit;
  into.was_quantity = was.job->quantity;
  into.is_quantity = is.job->quantity;
  into.is_kind = word_of(is.wood.whole().kind);
  into.size = is.wood.size;
  into.whole.add("kind", word_of(was.wood.whole().kind), word_of(is.wood.whole().kind));
  into.whole.add("width", was.wood.size[0], is.wood.size[0]);
  into.whole.add("height", was.wood.size[1], is.wood.size[1]);
  into.third_size = goes_back(was.wood) || goes_back(is.wood) ? "depth" : "thickness";
  into.whole.add(into.third_size, was.wood.size[2], is.wood.size[2]);
}

// ---- orders

std::vector<std::string> ids_of(const std::vector<ItemReport>& reports) {
  std::vector<std::string> ids;
  for (const ItemReport& report : reports)
    ids.push_back(report.job->id);
  return ids;
}

LoneItem lone(const ItemReport& report) {
  return {report.job->id, report.job->quantity, report.wood.pieces.size()};
}

}  // namespace

std::string kilograms_text(const std::optional<double>& weight) {
  if (!weight) return {};
  const auto tenths = static_cast<std::int64_t>(std::llround(*weight * 10));
  return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10);
}

Turn CheckChange::turn() const {
  if (was && is && was->finding.status == is->finding.status) return Turn::stays;
  return turn_of(was, is);
}

bool ItemComparison::is_same() const {
  const bool checks_turn =
      std::any_of(changed_checks.begin(), changed_checks.end(),
                  [](const CheckChange& check) { return check.turn() != Turn::stays; });
  return was_quantity == is_quantity && whole.empty() && changed_pieces.empty() && marks.empty() &&
         making.changed_places.empty() && making.changed_settings.empty() &&
         changed_joints.empty() && !checks_turn && changed_hardware.empty() &&
         changed_weights.empty();
}

bool Comparison::is_same() const {
  return come.empty() && gone.empty() && setups.changed.empty() &&
         std::all_of(items.begin(), items.end(),
                     [](const ItemComparison& item) { return item.is_same(); });
}

ItemComparison compare(const ItemReport& was, const ItemReport& is) {
  ItemComparison item;
  compare_whole(was, is, item);
  item.making = making_change(was.wood, was.making.value(), is.wood, is.making.value());
  PieceComparing(was, is, item).compare();
  compare_joints(was.wood, is.wood, item);
  compare_checks(was, is, item);
  compare_hardware(was.wood, is.wood, item);
  compare_weights(was, is, item);
  return item;
}

Comparison compare(const SetupsReport& was, const SetupsReport& is) {
  Comparison all;
  all.setups = setups_change(was, is);
  if (was.items.size() == 1 && is.items.size() == 1) {
    all.items.push_back(compare(was.items.front(), is.items.front()));
    return all;
  }
  for (const Match& match : matches_of(ids_of(was.items), ids_of(is.items)))
    if (match.was && match.is)
      all.items.push_back(compare(was.items[*match.was], is.items[*match.is]));
    else if (match.is)
      all.come.push_back(lone(is.items[*match.is]));
    else
      all.gone.push_back(lone(was.items[*match.was]));
  return all;
}

}  // namespace haunch
