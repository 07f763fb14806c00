#include "joint_words.h"

#include <algorithm>
#include <optional>
#include <utility>

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

std::string tenon_words(const TenonSizes& tenon, const LengthPrinter& fine) {
  const std::size_t count = tenon.each.size();
  Listed words(count > 1 ? std::to_string(count) + " tenons, each" : "tenon");
  words.add(fine.one(tenon.thickness) + " thick").add(fine.one(tenon.width) + " wide");
  words.add(fine.one(tenon.depth) + " deep");
  words.add(fine.one(tenon.from_face) + " from the face side");
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
  Listed words(count > 1 ? std::to_string(count) + " mortises, each" : "mortise");
  words.add(fine.one(mortise.width) + " wide").add(fine.one(mortise.each.front().length) + " long");
  if (mortise.through)
    words.add("right through");
  else
    words.add(fine.one(mortise.depth) + " deep");
  words.add(fine.one(mortise.from_face) + " from the face side");
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

}  // namespace

std::string joint_title(const Assembly& wood, const Joint& joint) {
  const Piece &enters = wood.pieces[joint.enters], &receives = wood.pieces[joint.receives];
  std::string kind(word_of(joint.kind));
  std::replace(kind.begin(), kind.end(), '-', ' ');
  return enters.name + " " + enters.mark + " to " + receives.name + " " + receives.mark + ": " +
         kind;
}

std::vector<std::string> joint_words(const Assembly& wood, const std::vector<std::size_t>& alike,
                                     const LengthPrinter& lengths) {
  const Joint& joint = wood.joints[alike.front()];
  const LengthPrinter fine = lengths.fine();
  std::vector<std::string> words{alike_words(alike)};
  if (joint.tenon) words.push_back(tenon_words(*joint.tenon, fine));
  if (joint.tenon && !joint.tenon->haunches.empty())
    words.push_back(haunch_words(*joint.tenon, fine));
  if (joint.mortise) words.push_back(mortise_words(*joint.mortise, fine));
  const std::string free = free_words(joint.design, fine);
  if (!free.empty()) words.push_back(free);
  return words;
}

}  // namespace haunch
