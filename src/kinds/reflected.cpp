#include "reflected.h"

#include <algorithm>
#include <map>
#include <string>
#include <utility>

#include "fittings.h"
#include "own_axes.h"
#include "twin_words.h"

namespace haunch {
namespace {

constexpr std::size_t kAcross = static_cast<std::size_t>(Axis::x);

void turn(Length& low, Length& high, Length of) {
  low = std::exchange(high, of - low);
  low = of - low;
}

/// A box, or a prism, of axes of which `axis` is turned about; `of`: how far that reaches.
void turn(Box& box, std::size_t axis, Length of) {
  turn(box.low[axis], box.high[axis], of);
}
void turn(Prism& prism, std::size_t axis, Length of) {
  if (prism.along == axis) return turn(prism.from, prism.to, of);
  const bool is_u = across_axes(prism.along).u == axis;
  for (Corner& corner : prism.outline) {
    Length& place = is_u ? corner.u : corner.v;
    place = of - place;
  }
}

/// The least and the greatest place of what is cut for a feature, along one of its piece's axes.
std::pair<Length, Length> reach(const Feature& feature, std::size_t axis) {
  std::vector<Length> all;
  for (const Box& cut : feature.cuts)
    all.insert(all.end(), {cut.low[axis], cut.high[axis]});
  for (const Prism& prism : feature.prisms) {
    if (prism.along == axis) all.insert(all.end(), {prism.from, prism.to});
    for (const Corner& corner : prism.outline)
      if (prism.along != axis)
        all.push_back(across_axes(prism.along).u == axis ? corner.u : corner.v);
  }
  if (all.empty()) return {};
  const auto [least, most] = std::minmax_element(all.begin(), all.end());
  return {*least, *most};
}

/// Where each of some has its twin, by name; what has none is its own.
template <typename Things, typename Name>
std::vector<std::size_t> twins(const Things& things, const Name& name) {
  std::map<std::string, std::size_t> named;
  for (std::size_t i = 0; i < things.size(); ++i)
    named.emplace(name(things[i]), i);
  std::vector<std::size_t> to(things.size());
  for (std::size_t i = 0; i < things.size(); ++i) {
    const auto twin = named.find(twin_words(name(things[i])));
    to[i] = twin == named.end() || named.at(name(things[i])) != i ? i : twin->second;
  }
  return to;
}

/// Whether two pieces stand in a row from the left to the right. `groups`: their twins.
bool in_one_row(const Piece& a, const Piece& b, const std::vector<std::size_t>& groups) {
  const Box one = placed_blank(a);
  const Box other = placed_blank(b);
  return (a.group == b.group || groups[a.group] == b.group) && a.role == b.role &&
         a.place.axes == b.place.axes && one.low[1] == other.low[1] &&
         one.high[1] == other.high[1] && one.low[2] == other.low[2] && one.high[2] == other.high[2];
}

/// Where each piece has its twin: of those in a row the first from the left the first from the
/// right; what is in none by its name.
std::vector<std::size_t> twins_of_pieces(const std::vector<Piece>& pieces,
                                         const std::vector<std::size_t>& groups) {
  std::vector<std::size_t> to = twins(pieces, [](const Piece& it) { return it.name; });
  std::vector<bool> done(pieces.size());
  for (std::size_t first = 0; first < pieces.size(); ++first) {
    if (done[first]) continue;
    std::vector<std::size_t> row;
    for (std::size_t i = first; i < pieces.size(); ++i)
      if (!done[i] && in_one_row(pieces[first], pieces[i], groups)) row.push_back(i);
    if (row.size() == 1) continue;
    std::stable_sort(row.begin(), row.end(), [&](std::size_t a, std::size_t b) {
      return placed_blank(pieces[a]).low[0] < placed_blank(pieces[b]).low[0];
    });
    for (std::size_t i = 0; i < row.size(); ++i) {
      to[row[i]] = row[row.size() - 1 - i];
      done[row[i]] = true;
    }
  }
  for (std::size_t i = 0; i < to.size(); ++i)
    if (to[to[i]] != i) to[i] = i;
  return to;
}

/// Turns the pieces of an assembly about, and what is told of them.
class Mirror {
 public:
  explicit Mirror(Assembly& wood) : wood_(wood), plain_(wood) {}

  void turn_all() {
    for (Box& box : wood_.open)
      turn(box, kAcross, width());
    for (Prism& prism : wood_.beyond)
      turn(prism, kAcross, width());
    for (std::size_t group = 0; group < wood_.groups.size(); ++group)
      turn_group(group);
    for (Fit& fit : wood_.fits)
      turn_fit(fit);
    for (Joint& joint : wood_.joints)
      turn_joint(joint);
    for (std::size_t piece = 0; piece < wood_.pieces.size(); ++piece)
      turn_piece(plain_.pieces[piece], wood_.pieces[piece]);
    change_places();
    number_joints();
  }

 private:
  void change_places();
  void number_joints();
  void turn_group(std::size_t number);
  void turn_fit(Fit& fit) const;
  void turn_joint(Joint& joint) const;
  void turn_tenon(TenonSizes& tenon, const Joint& joint) const;
  void turn_mortise(MortiseSizes& mortise, const Joint& joint) const;
  void turn_spans(std::vector<TenonSpan>& spans, const Joint& joint) const;
  void turn_piece(const Piece& plain, Piece& piece) const;
  void turn_feature(const Piece& plain, Feature& feature) const;
  void turn_told(const Piece& plain, const Feature& feature, NamedSize& told) const;
  Length shoulders(const Joint& joint) const;

  Length width() const { return plain_.size[0]; }
  /// How far a piece reaches along an axis of the assembly.
  static Length extent(const Piece& piece, Axis axis) {
    return piece.blank[own_axis(piece.place, axis)];
  }

  Assembly& wood_;
  const Assembly plain_;
};

/// Its zero stays at its lower left corner.
void Mirror::turn_group(std::size_t number) {
  Group& group = wood_.groups[number];
  const bool has_pieces = std::any_of(plain_.pieces.begin(), plain_.pieces.end(),
                                      [&](const Piece& piece) { return piece.group == number; });
  if (!group.in || !has_pieces) return;
  const Box blanks = placed_blanks(plain_, number);
  const Length before = blanks.low[0] - group.at.origin[0];
  group.at.origin[0] = width() - blanks.high[0] - before;
}

/// The wood goes to the places in the assembly's order, with marks and names, that its twins had.
void Mirror::change_places() {
  const auto groups = twins(plain_.groups, [](const Group& it) { return it.path; });
  const auto pieces = twins_of_pieces(plain_.pieces, groups);
  const Assembly turned = wood_;
  for (std::size_t i = 0; i < groups.size(); ++i)
    wood_.groups[groups[i]].at = turned.groups[i].at;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    Piece& piece = wood_.pieces[pieces[i]] = turned.pieces[i];
    const Piece& plain = plain_.pieces[pieces[i]];
    piece.mark = plain.mark;
    piece.name = plain.name;
    piece.key = plain.key;
    piece.group = plain.group;
  }
  for (Joint& joint : wood_.joints) {
    joint.receives = pieces[joint.receives];
    joint.enters = pieces[joint.enters];
  }
  for (Fit& fit : wood_.fits) {
    fit.group = groups[fit.group];
    fit.other = groups[fit.other];
  }
}

/// A joint between the same places as one of the twin's has the number of that, if all can.
void Mirror::number_joints() {
  const std::vector<Joint> turned = wood_.joints;
  std::vector<std::size_t> to(turned.size(), turned.size());
  for (std::size_t number = 0; number < turned.size(); ++number) {
    const Joint& wanted = plain_.joints[number];
    std::size_t from = 0;
    while (from < turned.size() &&
           (to[from] < turned.size() || turned[from].receives != wanted.receives ||
            turned[from].enters != wanted.enters || turned[from].kind != wanted.kind))
      ++from;
    if (from == turned.size()) return;
    to[from] = number;
  }
  for (std::size_t from = 0; from < turned.size(); ++from)
    wood_.joints[to[from]] = turned[from];
  for (Piece& piece : wood_.pieces)
    for (Feature& feature : piece.features)
      for (std::size_t& joint : feature.joints)
        joint = to[joint];
}

void Mirror::turn_fit(Fit& fit) const {
  std::swap(fit.room.left, fit.room.right);
  std::swap(fit.lap.left, fit.lap.right);
  std::swap(fit.beside.left, fit.beside.right);
  std::reverse(fit.arch.begin(), fit.arch.end());
  for (Corner& corner : fit.arch)
    corner.u = width() - corner.u;
  if (fit.found) {
    std::swap(fit.found->left, fit.found->right);
    std::reverse(fit.found->head.begin(), fit.found->head.end());
    std::reverse(fit.found->foot.begin(), fit.found->foot.end());
  }
  if (auto* swing = std::get_if<Swing>(&fit.moves)) {
    swing->pin[0] = width() - swing->pin[0];
    if (swing->axis == Axis::y) swing->at_high = !swing->at_high;
  }
  if (auto* slide = std::get_if<Slide>(&fit.moves); slide != nullptr && slide->along == Axis::x)
    slide->by = -slide->by;
}

// ---- joints

void Mirror::turn_joint(Joint& joint) const {
  if (joint.heading.axis == Axis::x) joint.heading.upwards = !joint.heading.upwards;
  if (joint.tenon) turn_tenon(*joint.tenon, joint);
  if (joint.mortise) turn_mortise(*joint.mortise, joint);
  if (joint.tails) turn_spans(joint.tails->each, joint);
}

/// Places across the end that enters, told from its low edge.
void Mirror::turn_spans(std::vector<TenonSpan>& spans, const Joint& joint) const {
  const Piece& enters = plain_.pieces[joint.enters];
  const bool across = joint.heading.axis != Axis::x && joint.through != Axis::x;
  const Length reaches = extent(enters, Axis::x);
  for (TenonSpan& span : spans) {
    if (across) span.from_edge = reaches - span.from_edge - span.width;
    if (span.from_face && joint.through == Axis::x)
      span.from_face = reaches - *span.from_face - joint.tenon->thickness;
  }
  if (across) std::reverse(spans.begin(), spans.end());
}

void Mirror::turn_tenon(TenonSizes& tenon, const Joint& joint) const {
  turn_spans(tenon.each, joint);
  turn_spans(tenon.haunches, joint);
  if (joint.through != Axis::x) return;
  const Length reaches = extent(plain_.pieces[joint.enters], Axis::x);
  tenon.from_face = reaches - tenon.from_face - tenon.thickness;
  if (!tenon.haunches.empty())
    tenon.haunch_from_face = reaches - tenon.haunch_from_face - tenon.haunch_thickness;
  std::swap(tenon.longer_at_face, tenon.longer_at_back);
}

/// The lengths of the tenons at both ends of the piece that a joint's mortises are in, together.
Length Mirror::shoulders(const Joint& joint) const {
  Length both;
  for (const Joint& other : plain_.joints)
    if (other.enters == joint.receives && other.heading.axis == Axis::x && other.tenon)
      both += other.tenon->depth;
  return both;
}

void Mirror::turn_mortise(MortiseSizes& mortise, const Joint& joint) const {
  const Piece& receives = plain_.pieces[joint.receives];
  const Length reaches = extent(receives, Axis::x);
  const bool along = receives.place.axes[0] == Axis::x;
  if (along && mortise.from_shoulder)
    mortise.from_shoulder = reaches - shoulders(joint) -
                            *mortise.from_shoulder_of(mortise.each.back()) -
                            mortise.each.back().length;
  for (MortiseSpan& span : mortise.each) {
    if (along) span.from_foot = reaches - span.from_foot - span.length;
    if (span.from_edge && receives.place.axes[1] == Axis::x)
      span.from_edge = reaches - *span.from_edge - mortise.width;
    if (span.from_face && joint.through == Axis::x)
      span.from_face = reaches - *span.from_face - mortise.width;
  }
  if (along) std::reverse(mortise.each.begin(), mortise.each.end());
  if (joint.through == Axis::x) mortise.from_face = reaches - mortise.from_face - mortise.width;
}

// ---- pieces

void Mirror::turn_piece(const Piece& plain, Piece& piece) const {
  const std::size_t own = own_axis(plain.place, Axis::x);
  const Box blank = placed_blank(plain);
  const bool backwards = plain.place.backwards[own];
  piece.place.origin[0] = width() - (backwards ? blank.low[0] : blank.high[0]);
  if (own == 1 && (piece.held == Held::low_edge || piece.held == Held::high_edge))
    piece.held = piece.held == Held::low_edge ? Held::high_edge : Held::low_edge;
  for (EdgeStrip& strip : piece.strips)
    if (strip.along != own && own < 2) strip.high = !strip.high;
  for (Feature& feature : piece.features)
    turn_feature(plain, feature);
}

void Mirror::turn_feature(const Piece& plain, Feature& feature) const {
  const std::size_t own = own_axis(plain.place, Axis::x);
  for (NamedSize& told : feature.sizes)
    turn_told(plain, feature, told);
  for (Box& cut : feature.cuts)
    turn(cut, own, plain.blank[own]);
  for (Prism& prism : feature.prisms)
    turn(prism, own, plain.blank[own]);
  if (!feature.fitting) return;
  feature.fitting->name = twin_words(feature.fitting->name);
  if (feature.fitting->into == own) feature.fitting->from_high = !feature.fitting->from_high;
}

/// Where a size is told from the low end of what runs across, it is told from its new one. What is
/// told from a shoulder, or from the outer edge of a stile, stays as it is.
void Mirror::turn_told(const Piece& plain, const Feature& feature, NamedSize& told) const {
  const std::size_t own = own_axis(plain.place, Axis::x);
  const auto [low, high] = reach(feature, own);
  const OuterEdges outer = outer_edges(plain_, plain);
  const bool from_outer = feature.fitting && outer.low != outer.high;
  const bool of_side = feature.fitting && feature.fitting->into != 2 && own == 2;
  const bool through = !feature.fitting && !feature.joints.empty() &&
                       plain_.joints[feature.joints.front()].through == Axis::x;
  if ((told.name == SizeName::from_foot && own == 0) ||
      (told.name == SizeName::from_edge && own == 1 && !from_outer) ||
      (told.name == SizeName::from_face && of_side))
    told.size = plain.blank[own] - high + (told.size - low);
  if (told.name == SizeName::from_face && through)
    told.size = plain.blank[own] - told.size -
                size_of(feature, SizeName::thickness)
                    .value_or(size_of(feature, SizeName::width).value_or(Length()));
}

}  // namespace

Assembly reflected(Assembly wood) {
  Mirror(wood).turn_all();
  return wood;
}

}  // namespace haunch
