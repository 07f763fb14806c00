#include "hardware.h"

#include <algorithm>
#include <utility>

#include "cabinet_work.h"
#include "polyhedron.h"
#include "rounding.h"

namespace haunch {
namespace {

constexpr std::int64_t kPinsAShelf = 4;

class Counting {
 public:
  explicit Counting(const Assembly& wood) : wood_(wood) {}

  std::vector<Hardware> all() {
    hinges();
    runners();
    shelf_pins();
    dowels();
    screws();
    return std::move(all_);
  }

 private:
  void add(std::string_view what, std::optional<Length> size, std::int64_t number) {
    if (number == 0) return;
    const auto same = std::find_if(all_.begin(), all_.end(), [&](const Hardware& it) {
      return it.what == what && it.size == size;
    });
    if (same == all_.end())
      all_.push_back({std::string(what), size, number});
    else
      same->number += number;
  }

  /// By what is let in to the leaves: a cup, or a gain for a flap.
  void hinges() {
    for (const Piece& piece : wood_.pieces)
      for (const Feature& feature : piece.features)
        if (feature.kind == FeatureKind::hinge_cup)
          add("hinges with a cup of", size_of(feature, SizeName::diameter), 1);
        else if (feature.kind == FeatureKind::gain && is_of_leaf(piece) && feature.fitting)
          add("hinges with flaps", size_of(feature, SizeName::length), 1);
  }

  bool is_of_leaf(const Piece& piece) const {
    return wood_.groups[piece.group].kind == GroupKind::leaf;
  }

  /// A drawer that slides with no wood to run on hangs on metal ones.
  void runners() {
    if (!is_cabinet_work(wood_)) return;
    for (const Fit& fit : wood_.fits) {
      const auto* slide = std::get_if<Slide>(&fit.moves);
      const bool drawer = wood_.groups[fit.group].kind == GroupKind::drawer;
      if (slide == nullptr || !drawer || runs_on_wood(fit.group)) continue;
      add("pairs of runners, travel", slide->by < Length() ? -slide->by : slide->by, 1);
    }
  }

  /// Whether its sides lie on a runner, or on the bottom of the case.
  bool runs_on_wood(std::size_t drawer) const {
    for (const Piece& side : wood_.pieces) {
      if (side.group != drawer || side.role != Role::drawer_side) continue;
      const Box box = placed_blank(side);
      for (const Piece& piece : wood_.pieces) {
        const Box below = placed_blank(piece);
        const bool beside = below.low[0] < box.high[0] && box.low[0] < below.high[0];
        if (piece.group != drawer && beside && below.high[1] == box.low[1]) return true;
      }
    }
    return false;
  }

  void shelf_pins() {
    for (const Piece& piece : wood_.pieces)
      if (piece.role == Role::shelf && piece.loose) add("shelf pins", pin_diameter(), kPinsAShelf);
  }

  std::optional<Length> pin_diameter() const {
    for (const Piece& piece : wood_.pieces)
      for (const Feature& feature : piece.features)
        if (feature.kind == FeatureKind::shelf_pin_holes)
          return size_of(feature, SizeName::diameter);
    return {};
  }

  void dowels() {
    for (const Piece& piece : wood_.pieces)
      if (piece.role == Role::dowel) add("dowels of", piece.blank[1], 1);
  }

  /// One for each place that is bored or slotted for a joint, however many holes one behind the
  /// other it takes.
  void screws() {
    for (std::size_t joint = 0; joint < wood_.joints.size(); ++joint) {
      std::int64_t most = 0;
      std::optional<Length> hole;
      for (const std::size_t piece : {wood_.joints[joint].receives, wood_.joints[joint].enters})
        most = std::max(most, screws_in(wood_.pieces[piece], joint, hole));
      add("screws in holes of", hole, most);
    }
  }

  /// `hole` becomes the narrowest.
  static std::int64_t screws_in(const Piece& piece, std::size_t joint,
                                std::optional<Length>& hole) {
    std::vector<std::pair<Length, Length>> middles;
    for (const Feature& feature : piece.features) {
      const bool for_screw =
          feature.kind == FeatureKind::screw_hole || feature.kind == FeatureKind::slot;
      const bool serves =
          std::find(feature.joints.begin(), feature.joints.end(), joint) != feature.joints.end();
      if (!for_screw || !serves) continue;
      const bool round = !feature.prisms.empty();
      const Box box = round ? bounds_of(feature.prisms.front()) : feature.cuts.front();
      const AxesAcross across = across_axes(round ? feature.prisms.front().along : 2);
      const std::pair<Length, Length> middle{box.low[across.u] + box.high[across.u],
                                             box.low[across.v] + box.high[across.v]};
      if (std::find(middles.begin(), middles.end(), middle) == middles.end())
        middles.push_back(middle);
      const auto wide = size_of(feature, round ? SizeName::diameter : SizeName::width);
      if (wide && (!hole || *wide < *hole)) hole = wide;
    }
    return static_cast<std::int64_t>(middles.size());
  }

  const Assembly& wood_;
  std::vector<Hardware> all_;
};

}  // namespace

std::vector<Hardware> hardware_of(const Assembly& wood) {
  return Counting(wood).all();
}

}  // namespace haunch
