#include "rod.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <optional>
#include <utility>

#include "bodies.h"
#include "lines.h"
#include "own_axes.h"
#include "polyhedron.h"

namespace haunch {
namespace {

/// A stretch along one of a piece's own axes or, told so, of the assembly's.
struct Span {
  Length low, high;
};

Axis axis_of(RodDirection direction) {
  constexpr Axis kAll[] = {Axis::y, Axis::x, Axis::z};
  return kAll[static_cast<std::size_t>(direction)];
}

/// The words for what lies towards the rod's zero, and away from it.
std::string_view end_word(RodDirection direction, bool low) {
  constexpr std::string_view kAll[][2] = {{"upper", "lower"}, {"right", "left"}, {"rear", "front"}};
  return kAll[static_cast<std::size_t>(direction)][low ? 1 : 0];
}

/// What is cut to length at the bench, or bought: it is never laid on a rod.
bool is_left_out(Role role) {
  constexpr Role kAll[] = {Role::bead,        Role::wedge,  Role::pin,    Role::dowel,
                           Role::loose_tenon, Role::spline, Role::button, Role::extra};
  return std::find(std::begin(kAll), std::end(kAll), role) != std::end(kAll);
}

/// What has edges all round, whichever way its grain runs.
bool is_sheet(Role role) {
  constexpr Role kAll[] = {Role::panel, Role::glass, Role::back, Role::drawer_bottom,
                           Role::dust_panel};
  return std::find(std::begin(kAll), std::end(kAll), role) != std::end(kAll);
}

bool is_of_framework(Role role) {
  return role == Role::stile || role == Role::rail || role == Role::muntin ||
         role == Role::mullion || role == Role::glazing_bar;
}

/// "door" of "door-2", "leaf" of "left-leaf": several that are made alike stand on one strip.
std::string kin_of(std::string path) {
  while (!path.empty() && (path.back() == '-' || (path.back() >= '0' && path.back() <= '9')))
    path.pop_back();
  for (const std::string_view side : {"left-", "right-"})
    if (path.starts_with(side)) path.erase(0, side.size());
  return path;
}

/// "strike plate", "lock faceplate", "top hinge"
std::string fitting_words(const Feature& feature) {
  const std::string& name = feature.fitting->name;
  switch (feature.kind) {
    case FeatureKind::faceplate:
      return name + " faceplate";
    case FeatureKind::strike_plate:
      return name + " plate";
    case FeatureKind::lock_mortise:
    case FeatureKind::strike_mortise:
      return name + " mortise";
    case FeatureKind::bore:
      return name + " bore";
    case FeatureKind::hinge_cup:
      return name + " cup";
    case FeatureKind::screw_hole:
      return name + " screw";
    case FeatureKind::shelf_pin_holes:
      return "shelf pin hole";
    default:
      return name;
  }
}

/// The word for what is worked along an edge or across a face.
std::string_view profile_word(FeatureKind kind) {
  switch (kind) {
    case FeatureKind::rebate:
    case FeatureKind::glass_rebate:
    case FeatureKind::lip_rebate:
    case FeatureKind::meeting_rebate:
      return "rebate";
    case FeatureKind::groove:
    case FeatureKind::housing:
    case FeatureKind::notch:
      return word_of(kind);
    default:
      return {};
  }
}

class RodMaker {
 public:
  RodMaker(const Assembly& wood, const Making& making, RodDirection direction)
      : wood_(wood),
        making_(making),
        axis_(axis_of(direction)),
        rod_{direction, wood.size[static_cast<std::size_t>(axis_)], {}, {}, {}},
        strip_of_(wood.pieces.size()) {}

  Rod rod() {
    for (std::size_t piece = 0; piece < wood_.pieces.size(); ++piece)
      if (!is_left_out(wood_.pieces[piece].role)) add_piece(piece);
    for (const Operation& operation : making_.operations)
      for (const Run& run : operation.runs)
        if (strip_of_[run.piece]) add_run(operation, run);
    for (auto& [at, names] : marks_) {
      std::stable_sort(names.begin(), names.end(),
                       [](const RodName& a, const RodName& b) { return a.strip < b.strip; });
      rod_.marks.push_back({at, std::move(names)});
    }
    return std::move(rod_);
  }

 private:
  // ---- putting down

  std::size_t strip_for(const Piece& piece) {
    const std::string of = kin_of(wood_.groups[piece.group].path);
    for (std::size_t strip = 0; strip < rod_.strips.size(); ++strip)
      if (rod_.strips[strip].of == of && rod_.strips[strip].role == piece.role) return strip;
    rod_.strips.push_back({of, piece.role, {}});
    return rod_.strips.size() - 1;
  }

  static void add_once(std::vector<std::size_t>& numbers, std::size_t number) {
    const auto place = std::lower_bound(numbers.begin(), numbers.end(), number);
    if (place == numbers.end() || *place != number) numbers.insert(place, number);
  }

  void mark(std::size_t piece, Length at, const std::string& what,
            std::optional<std::size_t> takes = {}) {
    std::vector<RodName>& names = marks_[at];
    const std::size_t strip = *strip_of_[piece];
    auto name = std::find_if(names.begin(), names.end(), [&](const RodName& other) {
      return other.strip == strip && other.what == what;
    });
    if (name == names.end()) name = names.insert(name, {strip, what, {}, {}});
    add_once(name->pieces, piece);
    if (takes) add_once(name->takes, *takes);
  }

  void stretch(std::size_t piece, const Span& there, bool hollow) {
    const RodStretch its{*strip_of_[piece], there.low, there.high, hollow};
    if (std::find(rod_.stretches.begin(), rod_.stretches.end(), its) == rod_.stretches.end())
      rod_.stretches.push_back(its);
  }

  // ---- pieces: their ends, shoulders and edges

  std::size_t own_axis_of(std::size_t piece) const {
    return own_axis(wood_.pieces[piece].place, axis_);
  }

  /// A stretch of the piece's own axis along the rod, in the assembly.
  Span placed_span(std::size_t piece, const Span& own) const {
    const Place& place = wood_.pieces[piece].place;
    const std::size_t along = own_axis_of(piece);
    const Length zero = place.origin[static_cast<std::size_t>(axis_)];
    if (place.backwards[along]) return {zero - own.high, zero - own.low};
    return {zero + own.low, zero + own.high};
  }

  void add_piece(std::size_t number) {
    const Piece& piece = wood_.pieces[number];
    const std::size_t strip = strip_for(piece);
    strip_of_[number] = strip;
    rod_.strips[strip].pieces.push_back(number);
    const std::size_t along = own_axis_of(number);
    const Span there = placed_span(number, {{}, piece.blank[along]});
    stretch(number, there, false);
    for (const bool low : {true, false}) {
      const Length at = low ? there.low : there.high;
      if (along == 0 && !is_sheet(piece.role))
        add_end(number, low, at);
      else
        mark(number, at, edge_words(number, low, at));
    }
    add_arch(number);
  }

  std::string edge_words(std::size_t number, bool low, Length at) const {
    const Piece& piece = wood_.pieces[number];
    if (is_of_framework(piece.role) && is_seen_up_to(number, at)) return "sight edge";
    const bool face = own_axis_of(number) == 2;
    return std::string(end_word(rod_.direction, low)) + (face ? " face" : " edge");
  }

  /// Whether what comes in to it is seen up to there; of a curve that is not the blank's edge.
  bool is_seen_up_to(std::size_t piece, Length at) const {
    return std::any_of(wood_.joints.begin(), wood_.joints.end(), [&](const Joint& joint) {
      return joint.receives == piece && joint.heading.axis == axis_ && !joint.arched &&
             !is_left_out(wood_.pieces[joint.enters].role) && sight_edge(wood_, joint) == at;
    });
  }

  void add_end(std::size_t number, bool low, Length at) {
    const bool own_low = low != wood_.pieces[number].place.backwards[0];
    const Shoulders& shoulders = making_.shoulders[number];
    const auto& end = own_low ? shoulders.low : shoulders.high;
    const std::string_view word = end_word(rod_.direction, low);
    if (!end || end->line <= Length()) {
      mark(number, at, std::string(word) + " end");
      return;
    }
    mark(number, at, joined_end_words(number, own_low));
    const auto put = [&](Length from_end, ShoulderLine line) {
      mark(number, low ? at + from_end : at - from_end, std::string(word_of(line)));
    };
    if (end->face == end->back) return put(end->face, ShoulderLine::shoulder);
    put(end->face, ShoulderLine::face_shoulder);
    put(end->back, ShoulderLine::back_shoulder);
  }

  /// Of an end with shoulders: what stands beyond them.
  std::string joined_end_words(std::size_t number, bool own_low) const {
    for (const Joint& joint : wood_.joints)
      if (joint.enters == number && joint.tenon &&
          own_upwards(wood_.pieces[number].place, joint.heading) != own_low)
        return joint.kind == JointKind::half_lap ? "lap end" : "tenon end";
    return {};
  }

  /// Of a curve: its crown, where it springs from, and if that is on the rod what it is struck
  /// from.
  void add_arch(std::size_t number) {
    const Piece& piece = wood_.pieces[number];
    if (axis_ != Axis::y) return;
    for (const Feature& feature : piece.features) {
      const auto own = [&](Length length) { return placed_span(number, {length, length}).low; };
      const auto rise = size_of(feature, SizeName::rise);
      if (feature.kind == FeatureKind::arch && rise) {
        const Length crown = piece.blank[1] - *size_of(feature, SizeName::at_crown);
        mark(number, own(crown), "crown of the curve");
        mark(number, own(crown - *rise), "springing");
      }
      if (const auto side = size_of(feature, SizeName::side))
        mark(number, own(*side),
             feature.kind == FeatureKind::arch ? "higher end of the curve" : "top of its side");
      if (const auto centre = size_of(feature, SizeName::centre_from_foot))
        if (*centre >= Length())
          mark(number, told_in(wood_, piece).low[1] + *centre, "centre of the curve");
    }
  }

  // ---- what is worked on them

  void add_run(const Operation& operation, const Run& run) {
    const Feature& feature = wood_.pieces[run.piece].features[run.feature];
    if (feature.fitting) return add_fitting(run, feature);
    switch (operation.makes) {
      case FeatureKind::mortise:
      case FeatureKind::lap:
        return add_hollow(operation, run);
      case FeatureKind::dowel_hole:
      case FeatureKind::pin_hole:
        if (is_told_along_rod(run))
          mark(run.piece, placed_span(run.piece, {run.near, run.near}).low,
               operation.makes == FeatureKind::pin_hole ? "pin hole" : "dowel hole", takes(run));
        return;
      case FeatureKind::tenon:
        if (operation.cut != Cut::haunch && is_told_along_rod(run))
          put_ends(run.piece, {run.near, *run.far}, {"tenon edge", "tenon edge"}, {});
        return;
      case FeatureKind::moulding:
        return add_edge_work(run, feature, "moulding edge");
      case FeatureKind::raise:
        return add_edge_work(run, feature, "field edge");
      case FeatureKind::mitre:
        if (own_axis_of(run.piece) == 0) add_edge_work(run, feature, "short point");
        return;
      case FeatureKind::tongue:
        if (own_axis_of(run.piece) == 0) add_edge_work(run, feature, "shoulder");
        return;
      default:
        return add_profile(run, feature);
    }
  }

  std::optional<std::size_t> takes(const Run& run) const {
    if (!run.joint || wood_.joints[*run.joint].receives != run.piece) return {};
    const std::size_t enters = wood_.joints[*run.joint].enters;
    const Role role = wood_.pieces[enters].role;
    if (role == Role::dowel || role == Role::pin) return {};
    return enters;
  }

  /// Whether the axis of its piece that a run is told along lies along the rod.
  bool is_told_along_rod(const Run& run) const {
    const bool across = run.from == Line::lower_edge || run.from == Line::left_edge;
    const bool through = run.from == Line::inner_face || run.from == Line::lower_face;
    return own_axis_of(run.piece) == (across ? 1U : through ? 2U : 0U) && !through;
  }

  struct EndWords {
    std::string low, high;
  };
  static EndWords begins(const std::string& what) { return {what + " begins", what + " ends"}; }

  /// The two ends of a stretch of a piece's own axis, but where it ends with the piece.
  void put_ends(std::size_t piece, const Span& own, const EndWords& words,
                std::optional<std::size_t> taken) {
    const Span there = placed_span(piece, own);
    const Span whole = placed_span(piece, {{}, wood_.pieces[piece].blank[own_axis_of(piece)]});
    if (there.low > whole.low) mark(piece, there.low, words.low, taken);
    if (there.high < whole.high) mark(piece, there.high, words.high, taken);
  }

  /// A mortise or the recess of a half-lap, in the piece that receives: what enters has a shoulder
  /// there.
  void add_hollow(const Operation& operation, const Run& run) {
    if (operation.cut == Cut::flare || !is_told_along_rod(run)) return;
    if (wood_.joints[*run.joint].receives != run.piece) return;
    const Span own{run.near, *run.far};
    const bool lap = operation.makes == FeatureKind::lap;
    put_ends(run.piece, own, begins(lap ? "half-lap" : "mortise"), takes(run));
    stretch(run.piece, placed_span(run.piece, own), true);
  }

  /// What is let in, where its run says; across its piece by its middle or its two sides.
  void add_fitting(const Run& run, const Feature& feature) {
    const Piece& piece = wood_.pieces[run.piece];
    const std::string what = fitting_words(feature);
    const std::size_t own = own_axis_of(run.piece);
    const AxesAcross across = across_axes(run.side.into);
    if (own == run.side.into || own == 2) return;
    if (own == across.u) {
      const Length zero = ends_of(wood_, piece, making_.shoulders[run.piece], axis_).low;
      if (!run.far) return mark(run.piece, zero + run.near, what);
      const Span there{zero + run.near, zero + *run.far};
      mark(run.piece, there.low, begins(what).low);
      mark(run.piece, there.high, begins(what).high);
      return stretch(run.piece, there, true);
    }
    for (const Prism& hole : feature.prisms) {
      const Length middle = middle_along(hole, own);
      mark(run.piece, placed_span(run.piece, {middle, middle}).low, what);
    }
    for (const Box& cut : feature.cuts)
      put_ends(run.piece, {cut.low[own], cut.high[own]}, begins(what), {});
  }

  static Length middle_along(const Prism& hole, std::size_t own) {
    const Box box = bounds_of(hole);
    return box.low[own] + floor_half(box.extent(own));
  }

  /// A groove, a rebate, a housing: where it stops in the wood.
  void add_profile(const Run& run, const Feature& feature) {
    const std::string word(profile_word(feature.kind));
    const std::size_t own = own_axis_of(run.piece);
    if (word.empty() || own == 2) return;
    const Piece& piece = wood_.pieces[run.piece];
    const Length end = piece.blank[own];
    for (const Box& body : feature.cuts) {
      const Span its{body.low[own], body.high[own]};
      const bool one_end = its.low <= Length() || its.high >= end;
      const bool edges = is_sheet(piece.role) || (own != 0 && one_end);
      const bool groove = feature.kind == FeatureKind::groove && own == run.side.into;
      const std::string edge = word + (groove ? " bottom" : " edge");
      put_ends(run.piece, its, edges ? EndWords{edge, edge} : begins(word), takes(run));
      if (feature.kind == FeatureKind::housing && own == 0)
        stretch(run.piece, placed_span(run.piece, its), true);
    }
  }

  /// A moulding along edges, the slope round a raised field, a mitre or a tongue at an end: how
  /// far in each goes.
  void add_edge_work(const Run& run, const Feature& feature, const std::string& what) {
    const std::size_t own = own_axis_of(run.piece);
    if (own == 2) return;
    const Length end = wood_.pieces[run.piece].blank[own];
    Span left{{}, end};
    for (const Box& body : bodies_of(feature)) {
      const bool at_low = body.low[own] <= Length();
      const bool at_high = body.high[own] >= end;
      if (at_low && !at_high) left.low = std::max(left.low, body.high[own]);
      if (at_high && !at_low) left.high = std::min(left.high, body.low[own]);
    }
    put_ends(run.piece, left, {what, what}, {});
  }

  const Assembly& wood_;
  const Making& making_;
  Axis axis_;
  Rod rod_;
  std::vector<std::optional<std::size_t>> strip_of_;  // of each piece
  std::map<Length, std::vector<RodName>> marks_;      // by their place
};

}  // namespace

std::string_view zero_of(RodDirection direction) {
  constexpr std::string_view kAll[] = {"foot", "left", "front"};
  return kAll[static_cast<std::size_t>(direction)];
}

Rod rod_of(const Assembly& wood, const Making& making, RodDirection direction) {
  return RodMaker(wood, making, direction).rod();
}

}  // namespace haunch
