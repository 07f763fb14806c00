#include "fittings.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

#include "cabinet_work.h"
#include "own_axes.h"
#include "rounding.h"
#include "twin_words.h"
#include "value_reader.h"

namespace haunch {
namespace {

/// A side of a piece, in its own axes: what is let in to it goes along `into`, its place and length
/// are told along `along`, what is left across `across`.
struct Side {
  std::size_t into;
  bool from_high;
  std::size_t along, across;
};

Surface opposite(Surface surface) {
  if (surface == Surface::left) return Surface::right;
  return surface == Surface::right ? Surface::left : surface;
}

Side side_of(const Piece& piece, Surface surface) {
  const std::array<std::pair<Axis, bool>, 6> outward{{{Axis::z, false},
                                                      {Axis::z, true},
                                                      {Axis::x, false},
                                                      {Axis::x, true},
                                                      {Axis::y, true},
                                                      {Axis::y, false}}};
  const auto [axis, from_high] = outward[static_cast<std::size_t>(surface)];
  const std::size_t into = own_axis(piece.place, axis);
  const auto [along, across] = across_axes(into);
  return {into, from_high, along, across};
}

/// What is let in to a side, as it is marked out there: places along it in the piece's own axis.
struct Recess {
  FeatureKind kind;
  Length along, length;  // near end; of a hole, its middle
  Length across, width;  // near wall from the reference; of a hole, its middle
  Length depth;
  Length diameter = {};  // of a hole; zero: a box

  bool is_hole() const { return diameter > Length(); }
};

/// The outline of a hole on the two axes that it does not run along.
std::vector<Corner> circle_about(Length u, Length v, Length diameter) {
  constexpr double kPart = std::numbers::pi / kHoleSides;
  const double radius = static_cast<double>(diameter.steps()) / 2 / std::cos(kPart);
  std::vector<Corner> outline;
  for (int i = 0; i < kHoleSides; ++i) {
    const double turn = kPart * (2 * i + 1);
    outline.push_back(
        {u + nearest_step(radius * std::cos(turn)), v + nearest_step(radius * std::sin(turn))});
  }
  return outline;
}

/// Lets recesses in to one side of a piece.
class Letter {
 public:
  Letter(Assembly& assembly, std::size_t piece, Surface surface, std::string name)
      : piece_(assembly.pieces[piece]),
        side_(side_of(piece_, surface)),
        name_(std::move(name)),
        outer_(outer_edges(assembly, piece_)),
        outer_is_high_(outer_.high && !outer_.low) {}

  void let_in(const Recess& recess) {
    Feature feature;
    feature.kind = recess.kind;
    feature.fitting = Fitting{name_, side_.into, side_.from_high};
    if (recess.is_hole())
      feature.prisms = {hole(recess)};
    else
      feature.cuts = {box(recess)};
    feature.sizes = sizes(recess);
    piece_.features.push_back(std::move(feature));
  }

  const Side& side() const { return side_; }
  /// Whether places across its width are told from its outer edge.
  bool has_outer_edge() const { return outer_.low != outer_.high; }
  Length extent(std::size_t axis) const { return piece_.blank[axis]; }

 private:
  /// From the bottom of what is `depth` deep, or from the surface, whichever is lower.
  std::pair<Length, Length> depths(Length depth) const {
    const Length surface = side_.from_high ? piece_.blank[side_.into] : Length();
    return side_.from_high ? std::pair(surface - depth, surface) : std::pair(surface, depth);
  }

  /// A place across the side, told from its reference, in the piece's own axis.
  Length across(Length place) const {
    return side_.across == 1 && outer_is_high_ ? piece_.blank[1] - place : place;
  }

  Box box(const Recess& recess) const {
    const Length one = across(recess.across);
    const Length other = across(recess.across + recess.width);
    Box box;
    box.low[side_.along] = recess.along;
    box.high[side_.along] = recess.along + recess.length;
    box.low[side_.across] = std::min(one, other);
    box.high[side_.across] = std::max(one, other);
    std::tie(box.low[side_.into], box.high[side_.into]) = depths(recess.depth);
    return box;
  }

  Prism hole(const Recess& recess) const {
    const auto [from, to] = depths(recess.depth);
    Length u = recess.along;
    Length v = across(recess.across);
    if (side_.along > side_.across) std::swap(u, v);
    return {side_.into, from, to, circle_about(u, v, recess.diameter)};
  }

  SizeName across_name() const {
    if (side_.across == 2) return SizeName::from_face;
    return piece_.place.axes[1] == Axis::z ? SizeName::from_front : SizeName::from_edge;
  }

  std::vector<NamedSize> sizes(const Recess& recess) const {
    std::vector<NamedSize> sizes;
    if (recess.is_hole())
      sizes = {{SizeName::diameter, recess.diameter}, {SizeName::depth, recess.depth}};
    else
      sizes = {{SizeName::length, recess.length},
               {SizeName::width, recess.width},
               {SizeName::depth, recess.depth}};
    if (side_.along == 0)
      sizes.push_back({SizeName::from_foot, recess.along});
    else
      sizes.push_back({SizeName::from_edge, outer_is_high_
                                                ? piece_.blank[1] - recess.along - recess.length
                                                : recess.along});
    sizes.push_back({across_name(), recess.across});
    return sizes;
  }

  Piece& piece_;
  Side side_;
  std::string name_;
  OuterEdges outer_;
  bool outer_is_high_;
};

// ---- hinges and locks

Surface outer_edge(bool is_left) {
  return is_left ? Surface::left : Surface::right;
}

void let_in_hinges(Assembly& assembly, std::size_t stile, bool is_left, const HingePlan& hinges) {
  for (std::size_t i = 0; i < hinges.feet.size(); ++i)
    Letter(assembly, stile, outer_edge(is_left), hinge_name(i, hinges.feet.size()))
        .let_in({FeatureKind::gain, hinges.feet[i], hinges.length, Length(), hinges.width,
                 hinges.thickness});
}

/// What goes in from the edge stands in the middle of the thickness.
void let_in_lock(Assembly& assembly, std::size_t stile, bool is_left, const LockPlan& lock) {
  Letter edge(assembly, stile, outer_edge(is_left), "lock");
  Letter face(assembly, stile, Surface::face, "lock");
  const auto box = [&](FeatureKind kind, Length length, Length width, Length depth) {
    edge.let_in({kind, lock.height - floor_half(length), length, floor_half(edge.extent(2) - width),
                 width, depth});
  };
  const auto hole = [&](Length height, Length diameter) {
    face.let_in(
        {FeatureKind::bore, height, Length(), lock.backset, Length(), face.extent(2), diameter});
  };
  if (lock.body)
    box(FeatureKind::lock_mortise, lock.body->height, lock.body->thickness, lock.body->depth);
  if (lock.bore) {
    hole(lock.height, lock.bore->diameter);
    edge.let_in({FeatureKind::bore, lock.height, Length(), floor_half(edge.extent(2)), Length(),
                 lock.backset, lock.bore->latch});
  }
  if (lock.plate)
    box(FeatureKind::faceplate, lock.plate->length, lock.plate->width, lock.plate->thickness);
  if (lock.spindle) hole(lock.spindle->height, lock.spindle->diameter);
  if (lock.key) hole(lock.key->height, lock.key->diameter);
}

// ---- fittings described by their cuts

std::optional<std::size_t> piece_called(const Assembly& assembly, const std::string& name) {
  for (std::size_t i = 0; i < assembly.pieces.size(); ++i)
    if (assembly.pieces[i].name == name || assembly.pieces[i].mark == name) return i;
  return {};
}

/// Where the places in a piece are told from: the low corner of its leaf, of which a pair has two;
/// of what is no leaf's its own.
Triple told_from(const Assembly& assembly, const Piece& piece) {
  const Group& group = assembly.groups[piece.group];
  return group.kind == GroupKind::leaf ? group.at.origin : placed_blank(piece).low;
}

std::string unknown_piece(const Assembly& assembly, const std::string& name) {
  if (piece_called(assembly, "left leaf, " + name))
    return "both leaves of the pair have a \"" + name + "\"; write \"left leaf, " + name +
           "\" or \"right leaf, " + name + "\"";
  constexpr std::size_t kFew = 12;
  std::vector<std::string_view> names;
  for (const Piece& piece : assembly.pieces)
    names.push_back(piece.name);
  const bool cabinet = is_cabinet_work(assembly);
  std::string message =
      "\"" + name + "\" is no piece of this " + (cabinet ? "cabinet; " : "leaf; ");
  if (const std::string_view near = nearest_word(name, names); !near.empty())
    return message + "did you mean \"" + std::string(near) + "\"?";
  if (names.size() <= kFew) return message + "its pieces are " + quoted_list(names, "and");
  return message + "write a name as the sheet has it, or a mark from " +
         assembly.pieces.front().mark + " to " + assembly.pieces.back().mark;
}

/// Lets one described fitting in, or says why it can't be.
class Describer {
 public:
  /// `turned`: every place across the assembly is told from the right in place of from the left.
  Describer(Assembly& assembly, const FittingSpec& spec, std::size_t piece, std::string path,
            Unit unit, bool turned = false)
      : spec_(spec),
        piece_(assembly.pieces[piece]),
        corner_(told_from(assembly, piece_)),
        letter_(assembly, piece, turned ? opposite(spec.into) : spec.into, spec.name),
        path_(std::move(path)),
        unit_(unit),
        turned_(turned) {}

  std::vector<Problem> let_in() {
    for (std::size_t i = 0; i < spec_.recesses.size() && problems_.empty(); ++i)
      let_in(spec_.recesses[i], path_ + "/cuts/" + std::to_string(i));
    return std::move(problems_);
  }

  /// Whether it would be let in where it is already.
  bool is_its_own_twin() const {
    if (opposite(spec_.into) != spec_.into) return false;
    return std::all_of(spec_.recesses.begin(), spec_.recesses.end(), [&](const RecessSpec& it) {
      const Recess recess = recess_of(it);
      const Recess other = turned(recess);
      return recess.along == other.along && recess.across == other.across;
    });
  }

 private:
  Recess recess_of(const RecessSpec& spec) const {
    const Side& side = letter_.side();
    const auto leaf_axis = static_cast<std::size_t>(piece_.place.axes[side.along]);
    Recess recess;
    recess.kind = spec.is_hole() ? FeatureKind::bore : FeatureKind::recess;
    recess.along = spec_.at + spec.start - begins(leaf_axis);
    recess.length = spec.length;
    recess.width = spec.width;
    recess.diameter = spec.diameter;
    recess.depth = spec.depth.value_or(letter_.extent(side.into));
    recess.across = spec.from.value_or(floor_half(letter_.extent(side.across) - spec.width));
    return recess;
  }

  void let_in(const RecessSpec& spec, const std::string& path) {
    const Recess recess = recess_of(spec);
    if (!is_on_piece(recess, path)) return;
    letter_.let_in(turned_ ? turned(recess) : recess);
  }

  /// What is told from the outer edge of a piece at one side is told so of its twin's too.
  Recess turned(Recess recess) const {
    const Side& side = letter_.side();
    if (piece_.place.axes[side.along] == Axis::x)
      recess.along = letter_.extent(side.along) - recess.along - recess.length;
    if (piece_.place.axes[side.across] == Axis::x && !letter_.has_outer_edge())
      recess.across = letter_.extent(side.across) - recess.across - recess.width;
    return recess;
  }

  /// Where the piece begins in its leaf.
  Length begins(std::size_t axis) const { return piece_.place.origin[axis] - corner_[axis]; }

  bool is_on_piece(const Recess& recess, const std::string& path) {
    const Side& side = letter_.side();
    const Length radius = floor_half(recess.diameter);
    const auto leaf_axis = static_cast<std::size_t>(piece_.place.axes[side.along]);
    check_run(path_ + "/at", recess.along - radius, recess.along + recess.length + radius,
              letter_.extent(side.along), begins(leaf_axis));
    check_run(path + "/from", recess.across - radius, recess.across + recess.width + radius,
              letter_.extent(side.across), {});
    const Length thick = letter_.extent(side.into);
    if (recess.depth > thick)
      problems_.push_back(
          {path + "/depth",
           fmt::format("{} is deeper than the {} goes that way, {}; make it shallower, or write "
                       "\"through\": true",
                       in_words(recess.depth, unit_), piece_.name, in_words(thick, unit_)),
           {}});
    return problems_.empty();
  }

  /// A recess from one place to another of a piece that begins at `begins` and is `extent` long.
  void check_run(const std::string& path, Length from, Length to, Length extent, Length begins) {
    if (from >= Length() && to <= extent) return;
    problems_.push_back(
        {path,
         fmt::format("the {} reaches from {} to {}, but the {} from {} to {}; move it, or make it "
                     "smaller",
                     spec_.name, in_words(from + begins, unit_), in_words(to + begins, unit_),
                     piece_.name, in_words(begins, unit_), in_words(begins + extent, unit_)),
         {}});
  }

  const FittingSpec& spec_;
  const Piece& piece_;
  Triple corner_;  // of its leaf
  Letter letter_;
  std::string path_;
  Unit unit_;
  bool turned_;
  std::vector<Problem> problems_;
};

/// Lets the fitting in to the piece that stands to the other side as well, or turned about to the
/// same piece where that has no side.
std::vector<Problem> let_in_twin(Assembly& assembly, const FittingSpec& spec, std::size_t piece,
                                 const std::string& path, Unit unit) {
  const std::string name = twin_words(assembly.pieces[piece].name);
  const auto twin = piece_called(assembly, name);
  if (!twin)
    return {{path + "/mirrored", "there is no \"" + name + "\" to be its twin; take it out", {}}};
  Describer describer(assembly, spec, *twin, path, unit, true);
  if (*twin == piece && describer.is_its_own_twin())
    return {
        {path + "/mirrored", "it is the same from the left and from the right; take it out", {}}};
  return describer.let_in();
}

/// And to its twin, where the spec asks for that.
std::vector<Problem> let_in_described(Assembly& assembly, const FittingSpec& spec,
                                      std::size_t piece, const std::string& path, Unit unit) {
  std::vector<Problem> problems = Describer(assembly, spec, piece, path, unit).let_in();
  if (problems.empty() && spec.mirrored) problems = let_in_twin(assembly, spec, piece, path, unit);
  return problems;
}

/// What a piece is a part of, whose outer edges places are told from: a leaf, of a pair the pair.
Box outside_of(const Assembly& assembly, std::size_t group) {
  const auto pair = assembly.groups[group].in;
  if (!pair || assembly.groups[*pair].kind != GroupKind::pair)
    return placed_blanks(assembly, group);
  Box whole = placed_blanks(assembly, group);
  for (std::size_t leaf = 0; leaf < assembly.groups.size(); ++leaf)
    if (assembly.groups[leaf].in == pair) whole = around(whole, placed_blanks(assembly, leaf));
  return whole;
}

}  // namespace

OuterEdges outer_edges(const Assembly& assembly, const Piece& piece) {
  const Axis axis = piece.place.axes[1];
  if (axis == Axis::z) return {};
  const auto across = static_cast<std::size_t>(axis);
  const Box whole = outside_of(assembly, piece.group);
  const Box blank = placed_blank(piece);
  return {blank.low[across] == whole.low[across], blank.high[across] == whole.high[across]};
}

std::string hinge_name(std::size_t number, std::size_t of) {
  if (of == 1) return "hinge";
  if (number == 0) return "bottom hinge";
  if (number + 1 == of) return "top hinge";
  return of == 3 ? "middle hinge" : "hinge " + std::to_string(number + 1) + " from the foot";
}

void let_in(Assembly& assembly, std::size_t left_stile, std::size_t right_stile,
            const FittingsPlan& fittings) {
  const bool left = fittings.hangs_left;
  if (fittings.hinges)
    let_in_hinges(assembly, left ? left_stile : right_stile, left, *fittings.hinges);
  if (fittings.lock) let_in_lock(assembly, left ? right_stile : left_stile, !left, *fittings.lock);
}

void add_fitting_levers(Ledger& ledger) {
  const auto& fittings = ledger.spec.fittings;
  for (std::size_t i = 0; i < fittings.size(); ++i) {
    const FittingSpec& fitting = fittings[i];
    ledger.add_lever({"fittings", i, ".at"}, fitting.at, true, fitting.name);
    ledger.levers.back().moves = Moves::along;
    if (ledger.stated("fittings").by_shop)
      ledger.note_shop({"fittings", i}, fitting.name + " on " + fitting.on);
  }
}

bool set_fitting_place(Spec& spec, std::string_view key, Length place) {
  for (std::size_t i = 0; i < spec.fittings.size(); ++i)
    if (key == Where("fittings", i, ".at").path()) {
      spec.fittings[i].at = place;
      return true;
    }
  return false;
}

std::vector<Problem> let_in_described(Assembly& assembly, const Spec& all, Unit unit) {
  std::vector<Problem> problems;
  for (std::size_t i = 0; i < all.fittings.size(); ++i) {
    const FittingSpec& spec = all.fittings[i];
    const std::string path = "/fittings/" + std::to_string(i);
    std::vector<Problem> its;
    if (const auto piece = piece_called(assembly, spec.on))
      its = let_in_described(assembly, spec, *piece, path, unit);
    else
      its.push_back({path + "/on", unknown_piece(assembly, spec.on), {}});
    problems.insert(problems.end(), its.begin(), its.end());
  }
  for (Problem& problem : problems)
    if (all["fittings"].by_shop) problem.message += " (fittings is from the shop file)";
  return problems;
}

}  // namespace haunch
