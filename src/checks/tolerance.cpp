#include "tolerance.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "rounding.h"
#include "trade_limits.h"

namespace haunch {
namespace {

double steps(Length length) {
  return static_cast<double>(length.steps());
}

/// Of what is cut at one setting, the part of the variance that is the setting's.
double setting_part(const Tolerances& tolerances, Dimension dimension) {
  return tolerances.of(dimension).one_setting ? tolerances.setting_share / 100.0 : 0.0;
}

// ---- spreads

/// Equal sizes that stand in one sum, `count` of them from one setting.
struct Term {
  Length plus_minus;
  double setting_part;
  std::int64_t count;
};

Spread spread_of(Length nominal, const std::vector<Term>& terms) {
  Length worst;
  double square = 0;
  for (const Term& term : terms) {
    worst += term.plus_minus * term.count;
    const double one = steps(term.plus_minus) * steps(term.plus_minus);
    const auto count = static_cast<double>(term.count);
    square += one * (term.setting_part * count * count + (1 - term.setting_part) * count);
  }
  const Length rss = nearest_step(std::sqrt(square));
  return {nominal, nominal - worst, nominal + worst, nominal - rss, nominal + rss};
}

Term term_of(const Tolerances& tolerances, Dimension dimension) {
  return {tolerances.of(dimension).plus_minus, setting_part(tolerances, dimension), 1};
}

// ---- joints

enum class FitKind { mortised, stub, panel };

FitKind kind_of(const Joint& joint) {
  if (joint.design.bite) return FitKind::panel;
  return joint.mortise ? FitKind::mortised : FitKind::stub;
}

/// What is cut in the piece that receives, and on the piece that enters.
struct Pair {
  Dimension hollow, solid;
};

Pair pair_of(FitKind kind) {
  switch (kind) {
    case FitKind::mortised:
      return {Dimension::mortise_width, Dimension::tenon_thickness};
    case FitKind::stub:
      return {Dimension::groove_width, Dimension::tenon_thickness};
    case FitKind::panel:
      break;
  }
  return {Dimension::groove_width, Dimension::panel_tongue};
}

/// A panel must move in its groove and not rattle; its edges are not glued.
FitBand band_of(FitKind kind, const Tolerances& tolerances, Unit unit) {
  return kind == FitKind::panel ? FitBand{Length(), limits_in(unit).loosest_panel} : tolerances.fit;
}

/// The two parts of a dimension's variance, in steps squared.
struct Variance {
  double setting = 0, scatter = 0;
};

Variance variance_of(const Tolerances& tolerances, Dimension dimension) {
  const double deviation = steps(tolerances.of(dimension).plus_minus) / tolerances.deviations;
  const double setting = setting_part(tolerances, dimension) * deviation * deviation;
  return {setting, deviation * deviation - setting};
}

JointFit joint_fit(const Assembly& assembly, std::size_t number, const Tolerances& tolerances,
                   Unit unit) {
  const Joint& joint = assembly.joints[number];
  const FitKind kind = kind_of(joint);
  const Pair pair = pair_of(kind);
  const Length play = *joint.design.cheeks;
  const FitBand band = band_of(kind, tolerances, unit);
  double variance = 0;
  for (const Dimension dimension : {pair.hollow, pair.solid}) {
    const Variance its = variance_of(tolerances, dimension);
    variance += its.setting + its.scatter;
  }
  return {number,
          spread_of(play, {term_of(tolerances, pair.hollow), term_of(tolerances, pair.solid)}),
          band, normal_share(steps(band.min), steps(band.max), steps(play), std::sqrt(variance))};
}

// ---- leaves

/// An error of a setting, and how likely it is.
struct Node {
  double error, weight;
};

/// A normal distribution in steps of 0.15 standard deviations, out to 7. As no more than 0.9 of a
/// variance is the setting's, what is summed over them changes over a third of a deviation at the
/// least. Shares so summed are right to 1e-11 for single joints, to 1e-7 for a hundred, and to 1e-5
/// for ten thousand.
std::vector<Node> nodes_of(double variance) {
  if (variance <= 0) return {{0, 1}};
  constexpr int kEachSide = 47;
  constexpr double kStride = 0.15;
  std::vector<Node> nodes;
  double sum = 0;
  for (int i = -kEachSide; i <= kEachSide; ++i) {
    const double z = i * kStride;
    nodes.push_back({z * std::sqrt(variance), std::exp(-z * z / 2)});
    sum += nodes.back().weight;
  }
  for (Node& node : nodes)
    node.weight /= sum;
  return nodes;
}

/// Joints of one kind that were designed with the same play.
struct Alike {
  Length play;
  int count = 0;
};

/// Every joint of one kind: whether all are inside the band, given the error that they share.
class Company {
 public:
  Company(FitKind kind, const Tolerances& tolerances, Unit unit)
      : band_(band_of(kind, tolerances, unit)) {
    const Pair pair = pair_of(kind);
    hollow_ = variance_of(tolerances, pair.hollow);
    solid_ = variance_of(tolerances, pair.solid);
    scatter_ = std::sqrt(hollow_.scatter + solid_.scatter);
  }

  void add(Length play) {
    const auto alike = std::find_if(alike_.begin(), alike_.end(),
                                    [&](const Alike& it) { return it.play == play; });
    ++(alike == alike_.end() ? *alike_.insert(alike_.end(), {play, 0}) : *alike).count;
  }

  bool empty() const { return alike_.empty(); }

  /// The same joints, all designed with one play.
  Company designed_with(Length play) const {
    Company other = *this;
    other.alike_.clear();
    int count = 0;
    for (const Alike& alike : alike_)
      count += alike.count;
    if (count > 0) other.alike_.push_back({play, count});
    return other;
  }

  /// With the settings of what receives and what enters off by so much.
  double share(double hollow_error, double solid_error) const {
    double all = 1;
    for (const Alike& alike : alike_)
      all *= std::pow(normal_share(steps(band_.min), steps(band_.max),
                                   steps(alike.play) + hollow_error - solid_error, scatter_),
                      alike.count);
    return all;
  }

  /// Over all errors of both settings, where no other joints have part in them.
  double share_alone() const {
    if (empty()) return 1;
    double sum = 0;
    for (const Node& node : nodes_of(hollow_.setting + solid_.setting))
      sum += node.weight * share(node.error, 0);
    return sum;
  }

  std::vector<Node> hollow_settings() const { return nodes_of(hollow_.setting); }
  std::vector<Node> solid_settings() const { return nodes_of(solid_.setting); }

 private:
  FitBand band_;
  Variance hollow_, solid_;
  double scatter_;
  std::vector<Alike> alike_;
};

/// A leaf's joints, with the settings that they have in common: tenons of one thickness, whether in
/// mortises or in grooves, and grooves, whether for stubs or for panels.
class Leaf {
 public:
  Leaf(const Assembly& assembly, const Tolerances& tolerances, Unit unit)
      : mortised_(FitKind::mortised, tolerances, unit),
        stubs_(FitKind::stub, tolerances, unit),
        panels_(FitKind::panel, tolerances, unit) {
    std::optional<Length> thickness;
    for (const Joint& joint : assembly.joints) {
      if (!joint.design.cheeks) continue;
      company_of(kind_of(joint)).add(*joint.design.cheeks);
      if (!joint.tenon) continue;
      if (thickness && *thickness != joint.tenon->thickness) one_tenon_ = false;
      thickness = joint.tenon->thickness;
    }
    if (!stubs_.empty()) weigh_grooves();
  }

  bool is_glued() const { return !mortised_.empty() || !stubs_.empty(); }

  double share(std::optional<Length> allowance) const {
    if (!allowance) return share(mortised_, stubs_);
    return share(mortised_.designed_with(*allowance), stubs_.designed_with(*allowance));
  }

 private:
  Company& company_of(FitKind kind) {
    return kind == FitKind::panel ? panels_ : kind == FitKind::stub ? stubs_ : mortised_;
  }

  double share(const Company& mortised, const Company& stubs) const {
    if (stubs.empty()) return mortised.share_alone() * panels_.share_alone();
    if (mortised.empty() || !one_tenon_)
      return mortised.share_alone() * share_with_stubs(nullptr, stubs);
    return share_with_stubs(&mortised, stubs);
  }

  /// Stubs and panels, bound by their grooves; and tenons in mortises, bound to the stubs by
  /// theirs.
  double share_with_stubs(const Company* mortised, const Company& stubs) const {
    double sum = 0;
    for (const Node& tenon : stubs.solid_settings()) {
      double in_grooves = 0;
      for (const Node& groove : grooves_)
        in_grooves += groove.weight * stubs.share(groove.error, tenon.error);
      const double in_mortises = mortised == nullptr ? 1 : over_hollows(*mortised, tenon.error);
      sum += tenon.weight * in_grooves * in_mortises;
    }
    return sum;
  }

  /// Errors of the grooves' setting, each as likely as it comes with all panels inside their band.
  void weigh_grooves() {
    grooves_ = stubs_.hollow_settings();
    if (panels_.empty()) return;
    for (Node& groove : grooves_)
      groove.weight *= over_solids(panels_, groove.error);
  }

  static double over_solids(const Company& company, double hollow_error) {
    double sum = 0;
    for (const Node& solid : company.solid_settings())
      sum += solid.weight * company.share(hollow_error, solid.error);
    return sum;
  }

  static double over_hollows(const Company& company, double solid_error) {
    double sum = 0;
    for (const Node& hollow : company.hollow_settings())
      sum += hollow.weight * company.share(hollow.error, solid_error);
    return sum;
  }

  Company mortised_, stubs_, panels_;
  std::vector<Node> grooves_;  // where there are stubs
  bool one_tenon_ = true;      // all tenons are of one thickness, so of one setting
};

/// The search for fit allowances. The share is log-concave in the allowance (it is a normal measure
/// of a convex set that the allowance shifts), so a place that no neighbour betters is the best,
/// and below it the share only rises.
class AllowanceSearch {
 public:
  AllowanceSearch(const Leaf& leaf, const Tolerances& tolerances, Unit unit)
      : leaf_(leaf),
        wanted_(tolerances.wanted_share / 100.0),
        middle_(floor_half(tolerances.fit.min + tolerances.fit.max)),
        step_(unit == Unit::mm ? Length::from_mm_thousandths(1)
                               : Length::from_inch_parts(1, 10'000)) {}

  void search(LeafFit& fit) const {
    const std::int64_t best = best_place();
    fit.best_share = leaf_.share(at(best));
    if (fit.best_share > 0) fit.best_allowance = at(best);
    if (fit.best_share < wanted_) return;
    fit.least_allowance = at(least_place(best));
  }

 private:
  /// Places are counted in steps from the middle of the band.
  Length at(std::int64_t place) const { return middle_ + step_ * place; }
  std::int64_t lowest_place() const { return -(middle_.steps() / step_.steps()); }

  std::int64_t best_place() const {
    constexpr int kMostMoves = 200;
    constexpr double kNoise = 1e-12;  // of the sums, relative
    std::int64_t best = 0;
    double share = leaf_.share(at(best));
    std::int64_t stride = 1;
    for (int move = 0; move < kMostMoves && stride > 0; ++move) {
      bool moved = false;
      for (const std::int64_t place : {best - stride, best + stride}) {
        if (moved || place < lowest_place()) continue;
        const double other = leaf_.share(at(place));
        moved = other > share * (1 + kNoise);
        if (moved) best = place, share = other;
      }
      stride = moved ? stride * 2 : stride / 2;
    }
    return best;
  }

  std::int64_t least_place(std::int64_t best) const {
    std::int64_t reaches = best;
    std::int64_t fails = lowest_place() - 1;
    while (reaches - fails > 1) {
      const std::int64_t place = fails + (reaches - fails) / 2;
      (leaf_.share(at(place)) >= wanted_ ? reaches : fails) = place;
    }
    return reaches;
  }

  const Leaf& leaf_;
  double wanted_;
  Length middle_, step_;
};

LeafFit leaf_fit(const Assembly& assembly, const Tolerances& tolerances, Unit unit) {
  const Leaf leaf(assembly, tolerances, unit);
  LeafFit fit;
  fit.share = leaf.share({});
  if (leaf.is_glued()) AllowanceSearch(leaf, tolerances, unit).search(fit);
  return fit;
}

// ---- stacks

/// A joint by which `piece`, as one that receives or enters, goes on towards the high side; null
/// where there is none.
const Joint* joint_on(const Assembly& assembly, Axis axis, std::size_t Joint::*as,
                      std::size_t piece, bool upwards) {
  const auto found =
      std::find_if(assembly.joints.begin(), assembly.joints.end(), [&](const Joint& joint) {
        return joint.has_shoulder && !joint.design.bite && joint.*as == piece &&
               joint.heading.axis == axis && joint.heading.upwards == upwards;
      });
  return found == assembly.joints.end() ? nullptr : &*found;
}

/// From one piece to the next, shoulder to shoulder, to the other side of the leaf; empty where the
/// row ends before.
std::vector<std::size_t> row_from(const Assembly& assembly, Axis axis, std::size_t first) {
  const auto along = static_cast<std::size_t>(axis);
  std::vector<std::size_t> row{first};
  while (placed_blank(assembly.pieces[row.back()]).high[along] < assembly.size[along]) {
    const Joint* into = joint_on(assembly, axis, &Joint::receives, row.back(), false);
    if (into == nullptr || row.size() > assembly.pieces.size()) return {};
    const Joint* out = joint_on(assembly, axis, &Joint::enters, into->enters, true);
    if (out == nullptr) return {};
    row.push_back(into->enters);
    row.push_back(out->receives);
  }
  return row;
}

/// The row of pieces that makes the leaf's size along an axis. Where no row goes all the way, a
/// piece that does so alone; empty where there is none either.
std::vector<std::size_t> row_along(const Assembly& assembly, Axis axis) {
  const auto along = static_cast<std::size_t>(axis);
  std::vector<std::size_t> alone;
  for (std::size_t i = 0; i < assembly.pieces.size(); ++i) {
    const Piece& piece = assembly.pieces[i];
    if (placed_blank(piece).low[along] != Length()) continue;
    const bool whole = piece.place.axes[0] == axis && piece.blank[0] == assembly.size[along];
    if (whole && alone.empty()) alone = {i};
    if (whole || piece.place.axes[0] == axis) continue;
    std::vector<std::size_t> row = row_from(assembly, axis, i);
    if (row.size() > 1) return row;
  }
  return alone;
}

Length shoulder_length(const Assembly& assembly, std::size_t piece) {
  Length length = assembly.pieces[piece].blank[0];
  for (const Joint& joint : assembly.joints)
    if (joint.tenon && joint.has_shoulder && joint.enters == piece) length -= joint.tenon->depth;
  return length;
}

/// A size in a stack. Those of one dimension and size are cut at one setting.
struct StackSize {
  Dimension dimension;
  Length size;

  friend bool operator==(const StackSize&, const StackSize&) = default;
};

Stack stack_along(const Assembly& assembly, Axis axis, const Tolerances& tolerances) {
  Stack stack{row_along(assembly, axis), {}};
  std::vector<StackSize> sizes;
  for (const std::size_t piece : stack.pieces) {
    const bool lies_along = assembly.pieces[piece].place.axes[0] == axis;
    sizes.push_back(lies_along
                        ? StackSize{Dimension::shoulder_length, shoulder_length(assembly, piece)}
                        : StackSize{Dimension::piece_width, assembly.pieces[piece].blank[1]});
  }
  Length sum;
  std::vector<Term> terms;
  for (auto size = sizes.begin(); size != sizes.end(); ++size) {
    sum += size->size;
    if (std::find(sizes.begin(), size, *size) != size) continue;
    Term term = term_of(tolerances, size->dimension);
    term.count = std::count(sizes.begin(), sizes.end(), *size);
    terms.push_back(term);
  }
  stack.size = spread_of(sum, terms);
  return stack;
}

/// The tenon stands in the middle of its play and is true to its face side: half of what its
/// mortise and it are off in width moves the one face against the other.
Spread flush_of(const Tolerances& tolerances) {
  std::vector<Term> terms{term_of(tolerances, Dimension::mortise_place),
                          term_of(tolerances, Dimension::mortise_width),
                          term_of(tolerances, Dimension::tenon_thickness)};
  for (Term* half : {&terms[1], &terms[2]})
    half->plus_minus = floor_half(half->plus_minus);
  return spread_of(Length(), terms);
}

}  // namespace

double normal_share(double low, double high, double mean, double deviation) {
  if (deviation <= 0) return low <= mean && mean <= high ? 1 : 0;
  const double scale = deviation * std::sqrt(2.0);
  const double from = (low - mean) / scale;
  const double to = (high - mean) / scale;
  // Of two tails the smaller ones are subtracted, so that nothing is lost far out.
  const double share =
      from > 0 ? std::erfc(from) - std::erfc(to) : std::erfc(-to) - std::erfc(-from);
  return std::max(share / 2, 0.0);
}

double leaf_share(const Assembly& assembly, const Tolerances& tolerances, Unit unit,
                  std::optional<Length> allowance) {
  return Leaf(assembly, tolerances, unit).share(allowance);
}

FitForecast forecast_fits(const Assembly& assembly, const Tolerances& tolerances, Unit unit) {
  FitForecast forecast;
  forecast.tolerances = tolerances;
  bool mortises = false;
  for (std::size_t i = 0; i < assembly.joints.size(); ++i) {
    if (!assembly.joints[i].design.cheeks) continue;
    forecast.joints.push_back(joint_fit(assembly, i, tolerances, unit));
    mortises = mortises || assembly.joints[i].mortise.has_value();
  }
  forecast.leaf = leaf_fit(assembly, tolerances, unit);
  forecast.width = stack_along(assembly, Axis::x, tolerances);
  forecast.height = stack_along(assembly, Axis::y, tolerances);
  if (mortises) forecast.flush = flush_of(tolerances);
  return forecast;
}

}  // namespace haunch
