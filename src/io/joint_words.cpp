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
  std::string from_face;  // of a pair side by side: of each
  for (const TenonSpan& span : tenon.each)
    if (span.from_face && *span.from_face != tenon.from_face)
      from_face = " and " + fine.one(*span.from_face);
  if (tenon.from_face != Length() || !from_face.empty())
    words.add(fine.one(tenon.from_face) + from_face + " from the face side");
  if (tenon.longer_at_face != Length())
    words.add("its shoulder " + fine.one(tenon.longer_at_face) + " farther on at the face");
  if (tenon.longer_at_back != Length())
    words.add("its shoulder " + fine.one(tenon.longer_at_back) + " farther on at the back");
  if (tenon.set_back != Length())
    words.add("from " + fine.one(tenon.set_back) +
              " past the sight edge, where the moulding is cut away");
  return words.text();
}

std::string haunch_words(const TenonSizes& tenon, const LengthPrinter& fine) {
  Listed words(tenon.haunches.size() > 1 ? "haunches" : "haunch");
  words.add(fine.one(tenon.haunch_thickness) + " thick");
  words.add(fine.one(tenon.haunch_depth) + " deep");
  if (tenon.haunch_from_face != tenon.from_face)
    words.add(fine.one(tenon.haunch_from_face) + " from the face side");
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
  if (is_hole)
    words.add("middle " + fine.one(mortise.from_face + floor_half(mortise.width)) +
              " from the face side");
  else
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

/// `places`: where what is cut for it lies in what receives.
void add_sizes(std::vector<std::string>& words, const std::string& tenon, const Joint& joint,
               const std::string& places, const LengthPrinter& fine) {
  if (joint.tenon) words.push_back(tenon_words(tenon, *joint.tenon, fine));
  if (joint.tenon && !joint.tenon->haunches.empty())
    words.back() += "; " + haunch_words(*joint.tenon, fine);
  if (joint.mortise) words.push_back(mortise_words(*joint.mortise, fine));
  if (!places.empty() && joint.mortise) words.back() += "; " + places;
  if (!places.empty() && !joint.mortise) words.push_back("stopped groove " + places);
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

/// All by which they stand in it.
std::vector<std::size_t> fastenings_of(const Assembly& wood, const JointView& view) {
  const std::vector<std::size_t> fasteners = fasteners_of(wood, view);
  std::vector<std::size_t> joints;
  for (std::size_t number = 0; number < wood.joints.size(); ++number) {
    const Joint& joint = wood.joints[number];
    if (joint.receives == view.pieces.front() &&
        std::find(fasteners.begin(), fasteners.end(), joint.enters) != fasteners.end())
      joints.push_back(number);
  }
  return joints;
}

std::string_view from_low_end(const Piece& piece) {
  switch (piece.place.axes[0]) {
    case Axis::x:
      return "from the left end ";
    case Axis::y:
      return "from the foot ";
    case Axis::z:
      break;
  }
  return "from the front end ";
}

/// Puts it to the others where none of them says the same.
void add_new(std::vector<std::string>& all, const std::string& it) {
  if (std::find(all.begin(), all.end(), it) == all.end()) all.push_back(it);
}

bool is_round(const MortiseSizes& mortise, const MortiseSpan& span) {
  return mortise.end_radius * 2 == span.length && mortise.width == span.length;
}

/// Where along the piece that receives them mortises lie, or the middles of holes; each once.
std::vector<std::string> mortise_places(const Assembly& wood,
                                        const std::vector<std::size_t>& joints,
                                        const LengthPrinter& fine) {
  std::vector<std::string> places;
  for (const std::size_t number : joints) {
    const std::optional<MortiseSizes>& mortise = wood.joints[number].mortise;
    if (!mortise) continue;
    for (const MortiseSpan& span : mortise->each) {
      if (span.from_edge) continue;
      add_new(places,
              is_round(*mortise, span)
                  ? "middle " + fine.one(span.from_foot + floor_half(span.length))
                  : fine.one(span.from_foot) + " to " + fine.one(span.from_foot + span.length));
    }
  }
  return places;
}

/// Where a groove begins and ends that stops short of an end of its piece.
std::vector<std::string> groove_places(const Piece& piece, std::size_t joint,
                                       const LengthPrinter& fine) {
  std::vector<std::string> places;
  for (const Feature& feature : piece.features) {
    const bool is_for_it =
        std::find(feature.joints.begin(), feature.joints.end(), joint) != feature.joints.end();
    if (!is_for_it || feature.kind != FeatureKind::groove) continue;
    for (const Box& cut : feature.cuts) {
      const bool runs_along = cut.extent(0) > cut.extent(1) && cut.extent(0) > cut.extent(2);
      if (!runs_along || (cut.low[0] <= Length() && cut.high[0] >= piece.blank[0])) continue;
      add_new(places, fine.one(cut.low[0]) + " to " + fine.one(cut.high[0]));
    }
  }
  return places;
}

std::string along(const Piece& piece, const std::vector<std::string>& places) {
  std::string words(from_low_end(piece));
  for (std::size_t i = 0; i < places.size(); ++i)
    words += (i > 0 ? ", " : "") + places[i];
  return words;
}

/// Where in the pieces that receive them mortises and stopped grooves lie, of the joints that are
/// alike: "in A B from the foot 782.6 to 846.9". Nothing where there are none.
std::string place_words(const Assembly& wood, const std::vector<std::size_t>& joints,
                        const LengthPrinter& fine) {
  constexpr std::size_t kTold = 4;
  struct Told {
    std::string places;
    std::vector<std::string> marks;
  };
  std::vector<Told> all;
  for (const std::size_t number : joints) {
    const Piece& piece = wood.pieces[wood.joints[number].receives];
    std::vector<std::string> its = mortise_places(wood, {number}, fine);
    if (its.empty()) its = groove_places(piece, number, fine);
    if (its.empty()) continue;
    const std::string places = along(piece, its);
    auto told = std::find_if(all.begin(), all.end(),
                             [&](const Told& other) { return other.places == places; });
    if (told == all.end()) told = all.insert(all.end(), {places, {}});
    add_new(told->marks, piece.mark);
  }
  std::string words;
  for (std::size_t i = 0; i < std::min(all.size(), kTold); ++i)
    words += (i > 0 ? "; in " : "in ") + joined(all[i].marks) + " " + all[i].places;
  if (all.size() > kTold) words += "; places of the others: see the sheet";
  return words;
}

/// The same of what holds a joint together, in the piece that receives.
std::string fastening_places(const Assembly& wood, const JointView& view,
                             const LengthPrinter& fine) {
  const Piece& piece = wood.pieces[view.pieces.front()];
  const std::vector<std::string> places = mortise_places(wood, fastenings_of(wood, view), fine);
  return places.empty() ? "" : "in " + piece.mark + " " + along(piece, places);
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
  add_sizes(words, "tenon", wood.joints[view.joints.front()], place_words(wood, view.joints, fine),
            fine);
  if (const Joint* held = fastening_of(wood, view, fasteners_of(wood, view)))
    add_sizes(words, kind_words(held->kind), *held, fastening_places(wood, view, fine), fine);
  const std::string alike = alike_words(view.joints);
  if (words.empty()) return {alike};
  words.back() += "; " + alike;
  return words;
}

}  // namespace haunch
