#include "tolerance.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

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

/// Equal sizes that stand in one sum, `count` of them from one setting. Its error counts `net`
/// times, less than `count` where one such size is taken from another.
struct Term {
  Length plus_minus;
  double setting_part;
  std::int64_t count, net;
};

/// At worst all are off the same way by all of their plus/minus. Else errors are independent, and
/// their squares add up (RSS): what is the setting's is one error that counts `net` times, so that
/// its square does net * net times; what is each cut's own counts `count` times. `square` is in
/// steps squared.
Spread spread_of(Length nominal, const std::vector<Term>& terms) {
  Length worst;
  double square = 0;
  for (const Term& term : terms) {
    worst += term.plus_minus * term.count;
    const double one = steps(term.plus_minus) * steps(term.plus_minus);
    const auto count = static_cast<double>(term.count);
    const auto net = static_cast<double>(term.net);
    square += one * (term.setting_part * net * net + (1 - term.setting_part) * count);
  }
  const Length rss = nearest_step(std::sqrt(square));
  return {nominal, nominal - worst, nominal + worst, nominal - rss, nominal + rss};
}

/// One size less another that has nothing to do with it, `nominal` as drawn.
Spread together(Length nominal, const Spread& one, const Spread& other) {
  const Length worst = one.worst_max - one.nominal + (other.worst_max - other.nominal);
  const double rss =
      std::hypot(steps(one.rss_max - one.nominal), steps(other.rss_max - other.nominal));
  const Length likely = nearest_step(rss);
  return {nominal, nominal - worst, nominal + worst, nominal - likely, nominal + likely};
}

Term term_of(const Tolerances& tolerances, Dimension dimension) {
  return {tolerances.of(dimension).plus_minus, setting_part(tolerances, dimension), 1, 1};
}

// ---- fits

/// Of a joint that is forecast.
std::optional<FitSizes> sizes_of(const Joint& joint) {
  return joint.design.cheeks ? joint.measures.fit : std::nullopt;
}

/// Those that stand on their pieces are cut at one setting where they are of one thickness. Slips
/// are planed apart from them, each sort by itself.
bool is_tenon(const FitSizes& sizes) {
  return sizes.solid == Dimension::tenon_thickness && !sizes.slip;
}

/// Each of a divided or twin tenon has a mortise of its own.
int fits_of(const Joint& joint) {
  return joint.tenon ? std::max(1, static_cast<int>(joint.tenon->each.size())) : 1;
}

/// A panel must move in its groove and not rattle; its edges are not glued.
FitBand band_of(const FitSizes& fit, const Tolerances& tolerances, Unit unit) {
  return fit.glued ? tolerances.fit : FitBand{Length(), limits_in(unit).loosest_panel};
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

JointFit joint_fit(const Joint& joint, std::size_t number, const FitSizes& sizes,
                   const Tolerances& tolerances, Unit unit) {
  const Length play = *joint.design.cheeks;
  const FitBand band = band_of(sizes, tolerances, unit);
  double variance = 0;
  for (const Dimension dimension : {sizes.hollow, sizes.solid}) {
    const Variance its = variance_of(tolerances, dimension);
    variance += its.setting + its.scatter;
  }
  return {number, fits_of(joint),
          spread_of(play, {term_of(tolerances, sizes.hollow), term_of(tolerances, sizes.solid)}),
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

/// How often both ends of a slip are inside the band: two hollows that scatter, each by itself, and
/// one thickness. Half of what the two plays differ by and the middle between them are independent,
/// and both ends are inside where the middle is, in a band narrower by the half difference at
/// either side. The sum over the half difference is Gauss's with four places in each of its
/// deviations, out to 6; right to 2e-7.
double both_ends_share(double low, double high, double play, const Variance& hollow,
                       const Variance& solid) {
  constexpr std::array<double, 4> kPlaces{-0.861136311594053, -0.339981043584856, 0.339981043584856,
                                          0.861136311594053};
  constexpr std::array<double, 4> kWeights{0.347854845137454, 0.652145154862546, 0.652145154862546,
                                           0.347854845137454};
  constexpr double kFarthest = 6;
  const double apart = std::sqrt(hollow.scatter / 2);
  const double between = std::sqrt(hollow.scatter / 2 + solid.scatter);
  if (apart <= 0) return normal_share(low, high, play, between);
  const double farthest = std::min(kFarthest, (high - low) / 2 / apart);
  const int strips = static_cast<int>(std::ceil(farthest));
  const double half = farthest / std::max(strips, 1) / 2;
  double sum = 0;
  for (int strip = 0; strip < strips; ++strip)
    for (std::size_t i = 0; i < kPlaces.size(); ++i) {
      const double z = half * (2 * strip + 1 + kPlaces[i]);
      sum += kWeights[i] * half * std::exp(-z * z / 2) *
             normal_share(low + z * apart, high - z * apart, play, between);
    }
  return sum * std::sqrt(2 / std::numbers::pi);
}

/// Fits of one kind, of slips whole slips, that were designed with the same play.
struct Alike {
  Length play;
  int count = 0;
};

/// Every fit of one kind: whether all are inside the band, given the error that they share.
class Company {
 public:
  Company(const FitSizes& sizes, const Tolerances& tolerances, Unit unit)
      : sizes_(sizes),
        band_(band_of(sizes, tolerances, unit)),
        hollow_(variance_of(tolerances, sizes.hollow)),
        solid_(variance_of(tolerances, sizes.solid)),
        scatter_(std::sqrt(hollow_.scatter + solid_.scatter)) {}

  void add(Length play, int fits) {
    auto alike = std::find_if(alike_.begin(), alike_.end(),
                              [&](const Alike& it) { return it.play == play; });
    if (alike == alike_.end()) alike = alike_.insert(alike_.end(), {play, 0});
    alike->count += fits;
  }

  const FitSizes& sizes() const { return sizes_; }

  /// The same fits, all designed with one play.
  Company designed_with(Length play) const {
    Company other = *this;
    other.alike_.clear();
    for (const Alike& alike : alike_)
      other.add(play, alike.count);
    return other;
  }

  /// With the settings of what receives and what enters off by so much.
  double share(double hollow_error, double solid_error) const {
    double all = 1;
    for (const Alike& alike : alike_)
      all *= std::pow(share_of_one(steps(alike.play) + hollow_error - solid_error), alike.count);
    return all;
  }

  /// Over all errors of both settings, where no other fits have part in them.
  double share_alone() const {
    double sum = 0;
    for (const Node& node : nodes_of(hollow_.setting + solid_.setting))
      sum += node.weight * share(node.error, 0);
    return sum;
  }

  /// Over all errors of the setting of what enters, where no other fits have part in it.
  double share_given_hollow(double hollow_error) const {
    double sum = 0;
    for (const Node& solid : nodes_of(solid_.setting))
      sum += solid.weight * share(hollow_error, solid.error);
    return sum;
  }

  std::vector<Node> hollow_settings() const { return nodes_of(hollow_.setting); }
  std::vector<Node> solid_settings() const { return nodes_of(solid_.setting); }

 private:
  double share_of_one(double play) const {
    const double low = steps(band_.min);
    const double high = steps(band_.max);
    return sizes_.slip ? both_ends_share(low, high, play, hollow_, solid_)
                       : normal_share(low, high, play, scatter_);
  }

  FitSizes sizes_;
  FitBand band_;
  Variance hollow_, solid_;
  double scatter_;
  std::vector<Alike> alike_;
};

void weigh(std::vector<Node>& hollows, const Company& company) {
  for (Node& node : hollows)
    node.weight *= company.share_given_hollow(node.error);
}

/// Hollows that are cut at one setting, and all that stands in them.
class Hollows {
 public:
  explicit Hollows(Dimension dimension) : dimension_(dimension) {}

  Dimension dimension() const { return dimension_; }

  Company& company_of(const FitSizes& sizes, const Tolerances& tolerances, Unit unit) {
    for (Company& company : companies_)
      if (company.sizes() == sizes) return company;
    return companies_.emplace_back(sizes, tolerances, unit);
  }

  /// Once all are there. What is not glued is the same at any allowance.
  void weigh_unglued() {
    settings_ = companies_.front().hollow_settings();
    if (companies_.size() == 1) return;
    for (const Company& company : companies_)
      if (!company.sizes().glued) weigh(settings_, company);
  }

  bool is_glued() const {
    return std::any_of(companies_.begin(), companies_.end(),
                       [](const Company& its) { return its.sizes().glued; });
  }
  /// Those that stand on their pieces; null where there are none.
  const Company* tenons() const {
    const auto tenons = std::find_if(companies_.begin(), companies_.end(),
                                     [](const Company& its) { return is_tenon(its.sizes()); });
    return tenons == companies_.end() ? nullptr : &*tenons;
  }

  Hollows designed_with(Length allowance) const {
    Hollows other = *this;
    for (Company& company : other.companies_)
      if (company.sizes().glued) company = company.designed_with(allowance);
    return other;
  }

  double share() const {
    if (companies_.size() == 1) return companies_.front().share_alone();
    std::vector<Node> settings = beside_tenons();
    if (tenons() != nullptr) weigh(settings, *tenons());
    double sum = 0;
    for (const Node& node : settings)
      sum += node.weight;
    return sum;
  }

  /// Errors of the hollows' setting, weighed by how often they come with all but tenons inside
  /// their band.
  std::vector<Node> beside_tenons() const {
    std::vector<Node> settings = settings_;
    for (const Company& company : companies_)
      if (company.sizes().glued && !is_tenon(company.sizes())) weigh(settings, company);
    return settings;
  }

 private:
  Dimension dimension_;
  std::vector<Company> companies_;
  std::vector<Node> settings_;  // weighed with what is not glued
};

/// A leaf's fits, with the settings that they have in common: of hollows, whatever stands in them;
/// of tenons of one thickness, whether in mortises or in grooves.
class Leaf {
 public:
  Leaf(const Assembly& assembly, const Tolerances& tolerances, Unit unit) {
    std::optional<Length> thickness;
    std::vector<bool> slips(assembly.pieces.size());
    for (const Joint& joint : assembly.joints) {
      if (!is_of_leaf(assembly, joint)) continue;
      const auto sizes = sizes_of(joint);
      if (!sizes || (sizes->slip && slips[joint.enters])) continue;  // of a slip its other end
      slips[joint.enters] = sizes->slip;
      hollows_of(sizes->hollow)
          .company_of(*sizes, tolerances, unit)
          .add(*joint.design.cheeks, fits_of(joint));
      if (!is_tenon(*sizes)) continue;
      if (thickness && *thickness != joint.tenon->thickness) one_tenon_ = false;
      thickness = joint.tenon->thickness;
    }
    for (Hollows& hollows : hollows_)
      hollows.weigh_unglued();
  }

  bool is_glued() const {
    return std::any_of(hollows_.begin(), hollows_.end(),
                       [](const Hollows& its) { return its.is_glued(); });
  }

  double share(std::optional<Length> allowance) const {
    if (!allowance) return share();
    Leaf other = *this;
    for (Hollows& hollows : other.hollows_)
      hollows = hollows.designed_with(*allowance);
    return other.share();
  }

 private:
  Hollows& hollows_of(Dimension dimension) {
    for (Hollows& hollows : hollows_)
      if (hollows.dimension() == dimension) return hollows;
    return hollows_.emplace_back(dimension);
  }

  /// Hollows with tenons are bound to each other by the tenons' thickness.
  double share() const {
    double apart = 1;
    std::vector<const Hollows*> bound;
    for (const Hollows& hollows : hollows_) {
      if (one_tenon_ && hollows.tenons() != nullptr)
        bound.push_back(&hollows);
      else
        apart *= hollows.share();
    }
    if (bound.size() == 1) return apart * bound.front()->share();
    return bound.empty() ? apart : apart * share_with_one_tenon(bound);
  }

  static double share_with_one_tenon(const std::vector<const Hollows*>& bound) {
    std::vector<Node> tenons = bound.front()->tenons()->solid_settings();
    for (const Hollows* hollows : bound) {
      const std::vector<Node> settings = hollows->beside_tenons();
      for (Node& tenon : tenons) {
        double sum = 0;
        for (const Node& hollow : settings)
          sum += hollow.weight * hollows->tenons()->share(hollow.error, tenon.error);
        tenon.weight *= sum;
      }
    }
    double sum = 0;
    for (const Node& tenon : tenons)
      sum += tenon.weight;
    return sum;
  }

  std::vector<Hollows> hollows_;
  bool one_tenon_ = true;  // all tenons are of one thickness, so of one setting
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
std::vector<std::size_t> row_from(const Assembly& assembly, Axis axis, std::size_t first,
                                  Length high) {
  const auto along = static_cast<std::size_t>(axis);
  std::vector<std::size_t> row{first};
  while (placed_blank(assembly.pieces[row.back()]).high[along] < high) {
    const Joint* into = joint_on(assembly, axis, &Joint::receives, row.back(), false);
    if (into == nullptr || row.size() > assembly.pieces.size()) return {};
    const Joint* out = joint_on(assembly, axis, &Joint::enters, into->enters, true);
    if (out == nullptr) return {};
    row.push_back(into->enters);
    row.push_back(out->receives);
  }
  return row;
}

/// The row of pieces that makes a leaf's size along an axis. Where no row goes all the way, a
/// piece that does so alone; empty where there is none either.
std::vector<std::size_t> row_along(const Assembly& assembly, std::size_t leaf, Axis axis) {
  const auto along = static_cast<std::size_t>(axis);
  const Box whole_leaf = placed_blanks(assembly, leaf);
  std::vector<std::size_t> alone;
  for (const std::size_t i : pieces_of(assembly, leaf)) {
    const Piece& piece = assembly.pieces[i];
    if (placed_blank(piece).low[along] != whole_leaf.low[along]) continue;
    const bool whole = piece.place.axes[0] == axis && piece.blank[0] == whole_leaf.extent(along);
    if (whole && alone.empty()) alone = {i};
    if (whole || piece.place.axes[0] == axis) continue;
    std::vector<std::size_t> row = row_from(assembly, axis, i, whole_leaf.high[along]);
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

StackSize stack_size(const Assembly& assembly, std::size_t piece, Axis axis) {
  const bool lies_along = assembly.pieces[piece].place.axes[0] == axis;
  return lies_along ? StackSize{Dimension::shoulder_length, shoulder_length(assembly, piece)}
                    : StackSize{Dimension::piece_width, assembly.pieces[piece].blank[1]};
}

/// What pieces in one line come to. Those of one dimension and one size are of one setting.
Spread spread_along(const Assembly& assembly, const std::vector<std::size_t>& pieces, Axis axis,
                    const Tolerances& tolerances) {
  std::vector<StackSize> sizes;
  for (const std::size_t piece : pieces)
    sizes.push_back(stack_size(assembly, piece, axis));
  Length sum;
  std::vector<Term> terms;
  for (auto size = sizes.begin(); size != sizes.end(); ++size) {
    sum += size->size;
    if (std::find(sizes.begin(), size, *size) != size) continue;
    Term term = term_of(tolerances, size->dimension);
    term.count = term.net = std::count(sizes.begin(), sizes.end(), *size);
    terms.push_back(term);
  }
  return spread_of(sum, terms);
}

Stack stack_along(const Assembly& assembly, std::size_t leaf, Axis axis,
                  const Tolerances& tolerances) {
  std::vector<std::size_t> pieces = row_along(assembly, leaf, axis);
  const Spread size = spread_along(assembly, pieces, axis, tolerances);
  return {std::move(pieces), size};
}

// ---- leaves in their frame

/// The gaps that leaves were designed to have in their frame, all of one line together; each
/// between two leaves once.
Length designed_gaps(const Assembly& assembly, Axis axis) {
  Length gaps;
  for (const Fit* hung : fits_that_stand(assembly, StandsIn::group)) {
    if (axis == Axis::y) return hung->room.upright();
    gaps += hung->room.across();
  }
  for (const Fit* meeting : fits_that_stand(assembly, StandsIn::beside))
    gaps -= meeting->room.across();
  return gaps;
}

/// What of a frame makes the room along an axis by its length: the jambs upright; across what goes
/// between them over the leaves.
std::optional<std::size_t> piece_of_room(const Assembly& assembly, Axis axis) {
  std::optional<std::size_t> found;
  for (std::size_t i = 0; i < assembly.pieces.size(); ++i) {
    const Role role = assembly.pieces[i].role;
    if (axis == Axis::y ? role == Role::jamb && !found
                        : role == Role::transom || (role == Role::head && !found))
      found = i;
  }
  return found;
}

/// The frame's length is off by itself: it is cut at another setting than any leaf's.
std::optional<Gaps> gaps_along(const Assembly& assembly, Axis axis, const Tolerances& tolerances) {
  const auto frame = piece_of_room(assembly, axis);
  const std::vector<const Fit*> hung = fits_that_stand(assembly, StandsIn::group);
  if (!frame || hung.empty()) return {};
  Gaps gaps{*frame, {}, {}};
  for (const Fit* leaf : hung) {
    if (axis == Axis::y && leaf != hung.front()) break;
    for (const std::size_t piece : row_along(assembly, leaf->group, axis))
      gaps.leaves.push_back(piece);
  }
  if (gaps.leaves.empty()) return {};
  const Spread taken = spread_along(assembly, gaps.leaves, axis, tolerances);
  const Spread made = spread_of(Length(), {term_of(tolerances, Dimension::shoulder_length)});
  gaps.size = together(designed_gaps(assembly, axis), made, taken);
  return gaps;
}

// ---- flush

/// The tenon stands in the middle of its play and is true to its face side: half of what its
/// mortise and it are off in width moves the one face against the other.
Spread flush_of_tenon(const Tolerances& tolerances) {
  std::vector<Term> terms{term_of(tolerances, Dimension::mortise_place),
                          term_of(tolerances, Dimension::mortise_width),
                          term_of(tolerances, Dimension::tenon_thickness)};
  for (Term* half : {&terms[1], &terms[2]})
    half->plus_minus = floor_half(half->plus_minus);
  return spread_of(Length(), terms);
}

/// A loose tenon stands in the middle of both mortises: what these are off their places, and half
/// of what they are off in width, the one against the other. What they share, of one setting, moves
/// both faces alike.
Spread flush_of_loose_tenon(const Tolerances& tolerances) {
  std::vector<Term> terms{term_of(tolerances, Dimension::mortise_place),
                          term_of(tolerances, Dimension::mortise_width)};
  terms[1].plus_minus = floor_half(terms[1].plus_minus);
  for (Term& both : terms) {
    both.count = 2;
    both.net = 0;
  }
  return spread_of(Length(), terms);
}

/// Of rails on stiles, where their tenons are forecast; the wider of the two where there are both.
std::optional<Spread> flush_of(const Assembly& assembly, const Tolerances& tolerances) {
  std::optional<Spread> flush;
  for (const bool slip : {false, true}) {
    const bool any =
        std::any_of(assembly.joints.begin(), assembly.joints.end(), [&](const Joint& joint) {
          const auto sizes = sizes_of(joint);
          return sizes && sizes->hollow == Dimension::mortise_width && sizes->slip == slip &&
                 joint.heading.axis == Axis::x && is_of_leaf(assembly, joint);
        });
    const Spread spread = slip ? flush_of_loose_tenon(tolerances) : flush_of_tenon(tolerances);
    if (any && (!flush || spread.rss_max > flush->rss_max)) flush = spread;
  }
  return flush;
}

std::optional<std::size_t> first_leaf(const Assembly& assembly) {
  for (std::size_t group = 0; group < assembly.groups.size(); ++group)
    if (assembly.groups[group].kind == GroupKind::leaf) return group;
  return {};
}

}  // namespace

bool is_of_leaf(const Assembly& assembly, const Joint& joint) {
  return assembly.groups[assembly.pieces[joint.enters].group].kind == GroupKind::leaf;
}

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
  for (std::size_t i = 0; i < assembly.joints.size(); ++i) {
    const Joint& joint = assembly.joints[i];
    if (const auto sizes = sizes_of(joint))
      forecast.joints.push_back(joint_fit(joint, i, *sizes, tolerances, unit));
    else if (joint.measures.fit_left_out)
      forecast.left_out.push_back(i);
  }
  forecast.leaf = leaf_fit(assembly, tolerances, unit);
  if (const auto leaf = first_leaf(assembly)) {
    forecast.width = stack_along(assembly, *leaf, Axis::x, tolerances);
    forecast.height = stack_along(assembly, *leaf, Axis::y, tolerances);
  }
  forecast.across = gaps_along(assembly, Axis::x, tolerances);
  forecast.upright = gaps_along(assembly, Axis::y, tolerances);
  forecast.flush = flush_of(assembly, tolerances);
  return forecast;
}

}  // namespace haunch
