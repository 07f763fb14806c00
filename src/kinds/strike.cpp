#include "strike.h"

#include <algorithm>
#include <string>
#include <utility>

#include "own_axes.h"

namespace haunch {
namespace {

constexpr std::string_view kLock = "lock";

Length told(const Feature& feature, SizeName name) {
  return size_of(feature, name).value_or(Length());
}

/// Whether it is let in to an edge that looks to the left or the right.
bool is_in_edge(const Piece& piece, const Feature& feature) {
  return feature.fitting && piece.place.axes[feature.fitting->into] == Axis::x;
}

void take_recess(FoundLock& lock, const Piece& stile, const Feature& recess) {
  lock.bored = recess.kind == FeatureKind::bore;
  lock.height = told(recess, lock.bored ? SizeName::diameter : SizeName::length);
  lock.thickness = lock.bored ? lock.height : told(recess, SizeName::width);
  const Length foot = stile.place.origin[1] + told(recess, SizeName::from_foot);
  const Length face = told(recess, SizeName::from_face);
  lock.middle = lock.bored ? foot : foot + floor_half(lock.height);
  lock.from_face = lock.bored ? face : face + floor_half(lock.thickness);
}

/// A recess in a set's piece: a box of the set, told in the piece's own axes.
void cut_across(Piece& piece, const Across& across, std::string name, FeatureKind kind, Box box,
                Length depth) {
  box.low[0] = across.from_high ? across.at - depth : across.at;
  box.high[0] = box.low[0] + depth;
  const Box cut = in_own_axes(box, piece.place);
  const std::size_t into = own_axis(piece.place, Axis::x);
  Feature feature;
  feature.kind = kind;
  feature.cuts = {cut};
  feature.sizes = {{SizeName::length, cut.extent(0)},
                   {SizeName::width, box.extent(2)},
                   {SizeName::depth, depth},
                   {SizeName::from_foot, cut.low[0]},
                   {SizeName::from_face, box.low[2] - piece.place.origin[2]}};
  feature.fitting = Fitting{std::move(name), into, across.from_high};
  piece.features.push_back(std::move(feature));
}

bool is_on(const Piece& piece, const Box& cut) {
  for (std::size_t own = 0; own < 3; ++own)
    if (cut.low[own] < Length() || cut.high[own] > piece.blank[own]) return false;
  return true;
}

}  // namespace

std::optional<FoundLock> lock_of(const Assembly& leaf) {
  std::optional<FoundLock> lock;
  for (const Piece& piece : leaf.pieces) {
    for (const Feature& feature : piece.features) {
      if (!is_in_edge(piece, feature) || feature.fitting->name != kLock) continue;
      if (!lock) lock.emplace();
      if (feature.kind == FeatureKind::faceplate)
        lock->plate = {told(feature, SizeName::length), told(feature, SizeName::width),
                       told(feature, SizeName::depth)};
      else if (feature.kind == FeatureKind::bore || feature.kind == FeatureKind::lock_mortise)
        take_recess(*lock, piece, feature);
    }
  }
  return lock && lock->height > Length() ? lock : std::nullopt;
}

StrikePlan settle_strike(Ledger& ledger, const FoundLock& lock, Length thick) {
  StrikePlan strike;
  strike.from_face = lock.from_face;
  strike.middle = ledger.take("strike.height", lock.middle, "as high as the lock");
  ledger.levers.back().moves = Moves::up;
  if (lock.plate) {
    const PlatePlan& plate = *lock.plate;
    const std::string_view why = "as the lock's faceplate";
    strike.plate = {ledger.take("strike.plate.length", plate.length, why),
                    ledger.take("strike.plate.width", plate.width, why),
                    lock.bored ? ledger.take("strike.plate.thickness", ledger.pick(5'000, 3, 16),
                                             "usual for a bored lock (makers' templates)")
                               : ledger.take("strike.plate.thickness", plate.thickness, why)};
  } else {
    for (const Key key : std::initializer_list<Key>{"strike.plate.length", "strike.plate.width",
                                                    "strike.plate.thickness"})
      if (ledger.stated(key).stated)
        ledger.problem({key},
                       "is of a plate, and the lock has none; give it one: \"leaf\": "
                       "{\"lock\": {\"faceplate\": …}}");
  }
  const std::string_view as_lock =
      lock.bored ? "as the bore of the latch" : "as the case of the lock";
  strike.length = ledger.take("strike.mortise.length", lock.height, as_lock);
  strike.width = ledger.take("strike.mortise.width", lock.thickness, as_lock);
  const Length left = ledger.pick(6'000, 1, 4);
  const Length usual = ledger.pick(20'000, 3, 4);
  strike.depth =
      ledger.take("strike.mortise.depth",
                  thick - usual >= left ? usual : std::max(thick - left, floor_half(thick)),
                  "the usual 20 mm (3/4 in), or what leaves 6 mm (1/4 in) behind it");
  if (strike.depth >= thick)
    ledger.problem({"strike.mortise.depth"}, ledger.say(strike.depth) +
                                                 " goes through wood that is " + ledger.say(thick) +
                                                 " thick there; make it shallower");
  return strike;
}

bool let_in_strike(Assembly& set, const Across& across, std::size_t leaf,
                   const StrikePlan& strike) {
  const Triple& foot = set.groups[leaf].at.origin;
  const auto box = [&](Length length, Length width) {
    Box recess;
    recess.low[1] = foot[1] + strike.middle - floor_half(length);
    recess.high[1] = recess.low[1] + length;
    recess.low[2] = foot[2] + strike.from_face - floor_half(width);
    recess.high[2] = recess.low[2] + width;
    return recess;
  };
  Piece& piece = set.pieces[across.piece];
  cut_across(piece, across, "strike", FeatureKind::strike_mortise, box(strike.length, strike.width),
             strike.depth);
  if (strike.plate)
    cut_across(piece, across, "strike", FeatureKind::strike_plate,
               box(strike.plate->length, strike.plate->width), strike.plate->thickness);
  return std::all_of(piece.features.begin(), piece.features.end(), [&](const Feature& it) {
    return !it.fitting || it.fitting->name != "strike" || is_on(piece, it.cuts.front());
  });
}

void let_in_hinges(Assembly& set, const Across& across, std::size_t leaf) {
  for (const std::size_t number : pieces_of(set, leaf)) {
    const Piece& piece = set.pieces[number];
    for (const Feature& feature : piece.features)
      if (feature.kind == FeatureKind::gain && !feature.cuts.empty())
        cut_across(set.pieces[across.piece], across, feature.fitting->name, FeatureKind::gain,
                   placed(feature.cuts.front(), piece.place), told(feature, SizeName::depth));
  }
}

}  // namespace haunch
