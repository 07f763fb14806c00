#include "trial.h"

#include <algorithm>

#include "tolerance.h"
#include "trade_limits.h"

namespace haunch {
namespace {

constexpr double kMmInInch = 25.4;
constexpr double kNearlySo = 1.25;  // how far a wrong unit may be from 25.4 and still be told
constexpr double kSpreadsEachWay = 3;
constexpr std::size_t kFewest = 3;  // readings that say that a band cannot be kept

double in_steps(Length length) {
  return static_cast<double>(length.steps());
}

std::optional<Length> mean_of(const std::optional<Readings>& readings) {
  return readings ? std::optional(readings->mean) : std::nullopt;
}

/// A size that was not read, from three that were.
Taken added_up(const std::optional<Readings>& read, std::optional<Length> from_others,
               Length designed) {
  if (read) return {read->mean, Source::measured};
  if (from_others) return {*from_others, Source::added_up};
  return {designed, Source::designed};
}

std::optional<Length> rest(const std::optional<Readings>& stock, const std::optional<Readings>& a,
                           const std::optional<Readings>& b) {
  if (!stock || !a || !b) return {};
  return stock->mean - a->mean - b->mean;
}

AsCut as_cut(const CheekDesign& design, const CheekReadings& read) {
  AsCut cut;
  std::optional<Length> whole;
  if (read.from_face && read.across && read.from_back)
    whole = read.from_face->mean + read.across->mean + read.from_back->mean;
  cut.stock = added_up(read.stock, whole, design.stock);
  cut.from_face =
      added_up(read.from_face, rest(read.stock, read.across, read.from_back), design.from_face);
  cut.across =
      added_up(read.across, rest(read.stock, read.from_face, read.from_back), design.across);
  cut.depth = added_up(read.depth, {}, design.depth);
  return cut;
}

std::optional<Contradiction> contradiction(const CheekReadings& read, bool of_tenon,
                                           Length allowed) {
  if (!read.stock) return {};
  const Contradiction found{of_tenon, read.stock->mean, mean_of(read.from_face),
                            mean_of(read.across), mean_of(read.from_back)};
  const bool all = found.from_face && found.across && found.from_back;
  const Length over = found.sum() - found.stock;
  if (over > allowed || (all && -over > allowed)) return found;
  return {};
}

std::optional<Length> within_of(const std::optional<Readings>& a) {
  return a ? mean_within(*a) : std::nullopt;
}

std::optional<Length> within_of(const std::optional<Readings>& a,
                                const std::optional<Readings>& b) {
  const auto within_a = within_of(a);
  const auto within_b = within_of(b);
  if (!within_a || !within_b) return {};
  return joint_spread(*within_a, *within_b);
}

/// The wanted places across the thickness, as the mortise is.
struct Aim {
  Length wall;        // near wall of the mortise
  Length near_cheek;  // of the tenon
  Length far_cheek;
};

Aim aim(const JointDesign& design, Length mortise_width, Length fit) {
  Aim places;
  places.wall = design.mortise.from_face + floor_half(design.mortise.across - mortise_width);
  places.near_cheek = places.wall + floor_half(fit);
  places.far_cheek = places.near_cheek + mortise_width - fit;
  return places;
}

/// How flush the pieces come when both are cut to their aim.
Flush flush_at(const Aim& to, const JointTrial& trial) {
  AsCut tenon = trial.tenon;
  AsCut mortise = trial.mortise;
  tenon.from_face.size = to.near_cheek;
  tenon.across.size = to.far_cheek - to.near_cheek;
  mortise.from_face.size = to.wall;
  return flush(tenon, mortise);
}

/// Collects corrections of what is known.
class Corrector {
 public:
  explicit Corrector(Length caliper_error) : caliper_error_(caliper_error) {}

  void correct(Setting setting, Length from, Length to, std::optional<Length> within) {
    Correction each{setting, from, to, within, false};
    const Length moves = std::max(each.move(), -each.move());
    each.in_doubt =
        moves > Length() && moves <= std::max(caliper_error_, within.value_or(Length()));
    corrections_.push_back(each);
  }
  std::vector<Correction> take() { return std::move(corrections_); }

 private:
  Length caliper_error_;
  std::vector<Correction> corrections_;
};

std::vector<Correction> corrections(const JointDesign& design, const JointReadings& read,
                                    const JointTrial& trial, const Aim& to) {
  Corrector corrector(read.caliper_error);
  const AsCut& tenon = trial.tenon;
  const AsCut& mortise = trial.mortise;
  if (tenon.from_face.known())
    corrector.correct(Setting::face_cheek, tenon.from_face.size, to.near_cheek,
                      within_of(read.tenon.from_face));
  if (tenon.from_face.known() && tenon.across.known())
    corrector.correct(Setting::back_cheek, tenon.from_face.size + tenon.across.size, to.far_cheek,
                      within_of(read.tenon.from_face, read.tenon.across));
  if (tenon.depth.known())
    corrector.correct(Setting::tenon_depth, tenon.depth.size, design.tenon.depth,
                      within_of(read.tenon.depth));
  if (mortise.from_face.known())
    corrector.correct(Setting::mortise_place, mortise.from_face.size, to.wall,
                      within_of(read.mortise.from_face));
  if (mortise.depth.known())
    corrector.correct(Setting::mortise_depth, mortise.depth.size, design.mortise.depth,
                      within_of(read.mortise.depth));
  return corrector.take();
}

double share_inside(const Outlook& outlook) {
  return normal_share(in_steps(outlook.band.min), in_steps(outlook.band.max),
                      in_steps(outlook.wanted), in_steps(*outlook.spread));
}

/// The same, had so many readings spread alike.
Hold hold_of(const Outlook& outlook, std::size_t count) {
  const double reach = in_steps(*outlook.spread) * kSpreadsEachWay;
  const double band = in_steps(outlook.band.max - outlook.band.min);
  const Length room =
      std::min(outlook.wanted - outlook.band.min, outlook.band.max - outlook.wanted);
  // Two readings that lie apart show that there is a spread, but hardly its size.
  const bool few = count < kFewest;
  if (!few && reach * 2 * least_spread_factor(count) > band) return Hold::cannot;
  if (reach * 2 > band) return Hold::unsure;
  if (reach > in_steps(room)) return Hold::off_centre;
  return reach * spread_factor(count) > in_steps(room) ? Hold::unsure : Hold::keeps;
}

/// How many readings would tell, if they spread as those that there are.
std::optional<std::size_t> count_that_tells(const Outlook& outlook) {
  constexpr std::size_t kMost = 100;
  for (std::size_t count = outlook.count + 1; count <= kMost; ++count)
    if (hold_of(outlook, count) != Hold::unsure) return count;
  return {};
}

/// The fewer readings of the two sizes say how far the spread of the fit can be trusted.
Outlook outlook(const JointDesign& design, const JointReadings& read) {
  Outlook found;
  found.band = read.band;
  found.wanted = design.fit();
  if (found.wanted < read.band.min || found.wanted > read.band.max)
    found.wanted = read.band.min + floor_half(read.band.max - read.band.min);
  const auto& tenon = read.tenon.across;
  const auto& mortise = read.mortise.across;
  if (!tenon || !mortise || !tenon->spread || !mortise->spread) return found;
  const Readings fit{
      std::min(tenon->count, mortise->count), {}, joint_spread(*tenon->spread, *mortise->spread)};
  found.spread = fit.spread;
  found.spread_at_most = spread_at_most(fit);
  found.share = share_inside(found);
  found.count = fit.count;
  found.hold = hold_of(found, found.count);
  if (found.hold == Hold::unsure) found.would_tell = count_that_tells(found);
  return found;
}

/// The groove that a stub stands in.
std::optional<CheekDesign> groove_of(const Assembly& wood, std::size_t number) {
  const Piece& receives = wood.pieces[wood.joints[number].receives];
  const Box* groove = cut_for(wood, number);
  if (groove == nullptr) return {};
  return CheekDesign{receives.blank[2], groove->low[2], groove->extent(2), groove->extent(1)};
}

}  // namespace

FitBand usual_band(Unit unit) {
  return {Length(), limits_in(unit).loosest_fit};
}

Length usual_caliper_error(Unit unit) {
  return unit == Unit::mm ? Length::from_mm_thousandths(50) : Length::from_inch_parts(2, 1000);
}

std::optional<JointDesign> joint_design(const Assembly& wood, std::size_t number) {
  const Joint& joint = wood.joints[number];
  if (!joint.tenon || !joint.has_shoulder || !joint.design.cheeks) return {};
  const Piece& receives = wood.pieces[joint.receives];
  const Piece& enters = wood.pieces[joint.enters];
  const TenonSizes& tenon = *joint.tenon;
  JointDesign design{!joint.mortise,
                     word_of(enters.role),
                     word_of(receives.role),
                     {enters.blank[2], tenon.from_face, tenon.thickness, tenon.depth},
                     {}};
  if (joint.mortise) {
    const MortiseSizes& mortise = *joint.mortise;
    design.mortise = {receives.blank[2], mortise.from_face, mortise.width, mortise.depth};
    return design;
  }
  const auto groove = groove_of(wood, number);
  if (!groove) return {};
  design.mortise = *groove;
  return design;
}

Length Contradiction::sum() const {
  return from_face.value_or(Length()) + across.value_or(Length()) + from_back.value_or(Length());
}

std::vector<Contradiction> contradictions(const JointReadings& readings) {
  std::vector<Contradiction> found;
  if (const auto tenon = contradiction(readings.tenon, true, readings.caliper_error))
    found.push_back(*tenon);
  if (const auto mortise = contradiction(readings.mortise, false, readings.caliper_error))
    found.push_back(*mortise);
  return found;
}

WrongUnit wrong_unit(Length reading, Length designed) {
  if (reading <= Length() || designed <= Length()) return WrongUnit::no;
  const double ratio = in_steps(reading) / in_steps(designed);
  const auto near = [](double value) { return value > 1 / kNearlySo && value < kNearlySo; };
  if (near(ratio / kMmInInch)) return WrongUnit::read_in_mm;
  return near(ratio * kMmInInch) ? WrongUnit::read_in_inches : WrongUnit::no;
}

Flush flush(const AsCut& tenon, const AsCut& mortise) {
  Flush found;
  // Pushed to the face side, the near cheek is at the near wall; to the back, the far at the far.
  found.face_most = tenon.from_face.size - mortise.from_face.size;
  found.face_least = found.face_most + tenon.across.size - mortise.across.size;
  found.face = floor_half(found.face_most + found.face_least);
  found.back = tenon.stock.size - mortise.stock.size - found.face;
  return found;
}

JointTrial try_joint(const JointDesign& design, const JointReadings& readings) {
  JointTrial trial;
  trial.tenon = as_cut(design.tenon, readings.tenon);
  trial.mortise = as_cut(design.mortise, readings.mortise);
  trial.outlook = outlook(design, readings);
  trial.tenon_wanted = trial.mortise.across.size - trial.outlook.wanted;
  if (trial.tenon.across.known() || trial.mortise.across.known())
    trial.fit = trial.mortise.across.size - trial.tenon.across.size;
  if (trial.tenon.depth.known() || trial.mortise.depth.known())
    trial.bottom = trial.mortise.depth.size - trial.tenon.depth.size;
  if (trial.tenon.from_face.known() && trial.mortise.from_face.known() && trial.fit)
    trial.flush = flush(trial.tenon, trial.mortise);
  const Aim to = aim(design, trial.mortise.across.size, trial.outlook.wanted);
  trial.after = flush_at(to, trial);
  trial.corrections = corrections(design, readings, trial, to);
  return trial;
}

}  // namespace haunch
