#include "joint_words.h"

#include <algorithm>
#include <iterator>
#include <optional>
#include <utility>

#include "assembly_order.h"
#include "report.h"

namespace haunch {
namespace {

/// Words with commas between them.
class Listed {
 public:
  explicit Listed(std::string what) : text_(std::move(what)) {}

  Listed& add(const std::string& words) {
    text_ += (is_first_ ? " " : ", ") + words;
    is_first_ = false;
    return *this;
  }
  bool any() const { return !is_first_; }
  std::string text() const { return text_; }

 private:
  std::string text_;
  bool is_first_ = true;
};

bool is_round(const TenonSizes& tenon) {
  return tenon.edge_radius * 2 == tenon.thickness && tenon.thickness == tenon.width;
}

/// `what` it is called: "tenon", "dowel".
std::string tenon_words(const std::string& what, const TenonSizes& tenon,
                        const LengthPrinter& fine) {
  const std::size_t count = tenon.each.size();
  Listed words(count > 1 ? std::to_string(count) + " " + what + "s, each" : what);
  if (is_round(tenon))
    words.add(fine.one(tenon.thickness) + " round");
  else
    words.add(fine.one(tenon.thickness) + " thick").add(fine.one(tenon.width) + " wide");
  words.add(fine.one(tenon.depth) + " deep");
  if (tenon.from_face != Length()) words.add(fine.one(tenon.from_face) + " from the face side");
  return words.text();
}

std::string haunch_words(const TenonSizes& tenon, const LengthPrinter& fine) {
  Listed words(tenon.haunches.size() > 1 ? "haunches" : "haunch");
  words.add(fine.one(tenon.haunch_thickness) + " thick");
  words.add(fine.one(tenon.haunch_depth) + " deep");
  return words.text();
}

std::string mortise_words(const MortiseSizes& mortise, const LengthPrinter& fine) {
  const std::size_t count = mortise.each.size();
  const Length length = mortise.each.front().length;
  const bool is_hole = mortise.end_radius * 2 == length && mortise.width == length;
  const std::string what = is_hole ? "hole" : "mortise";
  Listed words(count > 1 ? std::to_string(count) + " " + what + "s, each" : what);
  if (is_hole)
    words.add(fine.one(mortise.width) + " round");
  else
    words.add(fine.one(mortise.width) + " wide").add(fine.one(length) + " long");
  if (mortise.through)
    words.add("right through");
  else
    words.add(fine.one(mortise.depth) + " deep");
  words.add(fine.one(mortise.from_face) + " from the face side");
  return words.text();
}

std::string tail_words(const Joint& joint, const LengthPrinter& fine) {
  const TailSizes& tails = *joint.tails;
  const std::string what = joint.kind == JointKind::finger ? "fingers" : "tails";
  Listed words(std::to_string(tails.each.size()) + " " + what + ", the first");
  words.add(fine.one(tails.each.front().from_edge) + " from the edge");
  words.add(fine.one(tails.each.front().width) + " wide").add(fine.one(tails.length) + " long");
  if (tails.spread != Length())
    words.add(fine.one(tails.spread) + " narrower at each side of its root");
  return words.text();
}

std::string free_words(const Clearances& design, const LengthPrinter& fine) {
  Listed words("room:");
  const std::pair<std::optional<Length>, std::string_view> told[] = {
      {design.cheeks, "at the cheeks"},   {design.edges, "at the edges"},
      {design.edge, "at the edge"},       {design.bottom, "at the bottom"},
      {design.bearing, "to its bearing"}, {design.draw, "of draw"}};
  for (const auto& [length, where] : told)
    if (length) words.add(fine.one(*length) + " " + std::string(where));
  if (design.bite) words.add("stands " + fine.one(*design.bite) + " in");
  return words.any() ? words.text() : "";
}

std::string alike_words(const std::vector<std::size_t>& alike) {
  constexpr std::size_t kNamed = 8;
  std::string words = alike.size() > 1 ? "joints" : "joint";
  for (std::size_t i = 0; i < std::min(alike.size(), kNamed); ++i)
    words += " " + joint_id(alike[i]);
  if (alike.size() > kNamed) words += " and " + std::to_string(alike.size() - kNamed) + " more";
  return words;
}

std::string kind_words(JointKind kind) {
  std::string words(word_of(kind));
  std::replace(words.begin(), words.end(), '-', ' ');
  return words;
}

std::string named(const Piece& piece) {
  return piece.name + " " + piece.mark;
}

void add_sizes(std::vector<std::string>& words, const std::string& tenon, const Joint& joint,
               const LengthPrinter& fine) {
  if (joint.tenon) words.push_back(tenon_words(tenon, *joint.tenon, fine));
  if (joint.tenon && !joint.tenon->haunches.empty())
    words.back() += "; " + haunch_words(*joint.tenon, fine);
  if (joint.mortise) words.push_back(mortise_words(*joint.mortise, fine));
  if (joint.tails && !joint.tails->each.empty()) words.push_back(tail_words(joint, fine));
  const std::string free = free_words(joint.design, fine);
  if (!free.empty()) words.push_back(free);
}

/// Pieces that hold a joint together.
std::vector<std::size_t> fasteners_of(const Assembly& wood, const JointView& view) {
  std::vector<std::size_t> pieces;
  std::copy_if(view.pieces.begin(), view.pieces.end(), std::back_inserter(pieces),
               [&](std::size_t piece) { return is_fastener(wood.pieces[piece].role); });
  return pieces;
}

/// The joint by which the first of them stands in what receives; null where it does not.
const Joint* fastening_of(const Assembly& wood, const JointView& view,
                          const std::vector<std::size_t>& fasteners) {
  const auto found = std::find_if(wood.joints.begin(), wood.joints.end(), [&](const Joint& joint) {
    return !fasteners.empty() && joint.enters == fasteners.front() &&
           joint.receives == view.pieces.front();
  });
  return found == wood.joints.end() ? nullptr : &*found;
}

}  // namespace

std::string joint_title(const Assembly& wood, const JointView& view) {
  const Joint& joint = wood.joints[view.joints.front()];
  std::string title = named(wood.pieces[joint.enters]) + " to " +
                      named(wood.pieces[joint.receives]) + ": " + kind_words(joint.kind);
  const std::vector<std::size_t> fasteners = fasteners_of(wood, view);
  if (const Joint* held = fastening_of(wood, view, fasteners))
    title += ", " + kind_words(held->kind) + (fasteners.size() > 1 ? "s " : " ") +
             joined(marks_of(wood, fasteners));
  return title;
}

std::vector<std::string> joint_words(const Assembly& wood, const JointView& view,
                                     const LengthPrinter& lengths) {
  // The figures are those of the sections.
  const LengthPrinter fine = lengths.unit() == Unit::mm ? lengths.exact() : lengths.fine();
  std::vector<std::string> words;
  add_sizes(words, "tenon", wood.joints[view.joints.front()], fine);
  if (const Joint* held = fastening_of(wood, view, fasteners_of(wood, view)))
    add_sizes(words, kind_words(held->kind), *held, fine);
  const std::string alike = alike_words(view.joints);
  if (words.empty()) return {alike};
  words.back() += "; " + alike;
  return words;
}

}  // namespace haunch
