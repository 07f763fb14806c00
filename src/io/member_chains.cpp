#include "member_chains.h"

#include <algorithm>
#include <optional>
#include <string_view>
#include <utility>

namespace haunch {
namespace {

using Places = std::vector<Length>;

std::size_t number_of(Axis axis) {
  return static_cast<std::size_t>(axis);
}

/// What a width or a height is divided by.
bool divides(Role role) {
  switch (role) {
    case Role::stile:
    case Role::rail:
    case Role::muntin:
    case Role::mullion:
    case Role::glazing_bar:
    case Role::jamb:
    case Role::head:
    case Role::transom:
    case Role::sill:
    case Role::threshold:
      return true;
    default:
      return false;
  }
}

bool bounds_a_drawer(Role role) {
  return role == Role::drawer_front || role == Role::drawer_box_front ||
         role == Role::drawer_side || role == Role::drawer_back;
}

/// Edges along an axis, in order, each once.
void settle(Places& places) {
  std::sort(places.begin(), places.end());
  places.erase(std::unique(places.begin(), places.end()), places.end());
}

/// Of its features the first of a kind that has this size; none where it has no such.
std::optional<Length> size_of(const Piece& piece, FeatureKind kind, SizeName size) {
  for (const Feature& feature : piece.features)
    if (feature.kind == kind)
      if (const auto its = size_of(feature, size)) return its;
  return {};
}

/// As much of a piece as is seen in its face halfway along it: at the crown of its arch, and less
/// what another leaf laps there.
Box met_in_middle(const Piece& piece) {
  Box box = placed_blank(piece);
  for (const Feature& feature : piece.features) {
    if (feature.kind != FeatureKind::meeting_rebate) continue;
    const Box cut = placed(feature.cuts.front(), piece.place);
    if (cut.low[2] > box.low[2]) continue;
    if (cut.high[0] == box.high[0])
      box.high[0] = cut.low[0];
    else
      box.low[0] = cut.high[0];
  }
  if (const auto left = size_of(piece, FeatureKind::arch, SizeName::at_crown))
    box.low[1] = box.high[1] - *left;
  return box;
}

/// Round all pieces, as they stand before anything is cut out of them.
Box room_of(const Assembly& wood) {
  Box room = placed_blank(wood.pieces.front());
  for (const Piece& piece : wood.pieces)
    if (piece.role != Role::extra) room = around(room, placed_blank(piece));
  return room;
}

/// Chains along an axis through what stands across it, from end to end of the whole: one through
/// each stretch of the other axis in which the same pieces are met.
class MemberChains {
 public:
  MemberChains(const Assembly& wood, Axis axis, Axis other) : wood_(wood), axis_(axis) {
    for (const Piece& piece : wood.pieces) {
      if (!divides(piece.role)) continue;
      const Box box = met_in_middle(piece);
      const bool along = own_axis_runs(piece, axis);
      (along ? level_ : standing_).push_back(box);
    }
    for (const Box& box : level_)
      stretches_.insert(stretches_.end(), {box.low[number_of(other)], box.high[number_of(other)]});
    stretches_.insert(stretches_.end(), {Length(), wood.size[number_of(other)]});
    settle(stretches_);
    other_ = number_of(other);
  }

  /// From the first stretch on; one whose places another has too is left out.
  std::vector<Places> all() const {
    std::vector<Places> chains;
    for (std::size_t i = 0; i + 1 < stretches_.size(); ++i) {
      const Length at = floor_half(stretches_[i] + stretches_[i + 1]);
      if (is_in_a_level_one(at)) continue;
      Places places = through(at);
      if (places.size() > 2) chains.push_back(std::move(places));
    }
    return without_parts(chains);
  }

 private:
  static bool own_axis_runs(const Piece& piece, Axis axis) { return piece.place.axes[0] == axis; }

  bool is_in_a_level_one(Length at) const {
    return std::any_of(level_.begin(), level_.end(), [&](const Box& box) {
      return box.low[other_] < at && at < box.high[other_];
    });
  }

  Places through(Length at) const {
    Places places;
    const std::size_t along = number_of(axis_);
    for (const Box& box : standing_)
      if (box.low[other_] < at && at < box.high[other_])
        places.insert(places.end(), {box.low[along], box.high[along]});
    if (!places.empty()) places.insert(places.end(), {Length(), wood_.size[along]});
    settle(places);
    return places;
  }

  static std::vector<Places> without_parts(const std::vector<Places>& chains) {
    std::vector<Places> kept;
    for (const Places& chain : chains) {
      const bool is_part = std::any_of(chains.begin(), chains.end(), [&](const Places& other) {
        return other.size() > chain.size() &&
               std::includes(other.begin(), other.end(), chain.begin(), chain.end());
      });
      if (!is_part && std::find(kept.begin(), kept.end(), chain) == kept.end())
        kept.push_back(chain);
    }
    return kept;
  }

  const Assembly& wood_;
  Axis axis_;
  std::size_t other_ = 1;
  std::vector<Box> level_, standing_;  // along the axis, and across it
  Places stretches_;
};

/// Edges of the recesses that hinges of a piece lie in.
Places hinge_places(const Piece& piece) {
  Places places;
  for (const Feature& feature : piece.features) {
    if (feature.kind != FeatureKind::gain || !feature.fitting ||
        feature.fitting->name.find("hinge") == std::string::npos)
      continue;
    for (const Box& cut : feature.cuts) {
      const Box box = placed(cut, piece.place);
      places.insert(places.end(), {box.low[1], box.high[1]});
    }
  }
  settle(places);
  return places;
}

/// A chain that the report tells, from one end of the whole to the other; nothing of another.
std::optional<Places> places_of(const Chain& chain, Length whole, bool from_high) {
  if (chain.total() != whole) return {};
  Places places{from_high ? whole : Length()};
  for (const Chain::Link& link : chain.links)
    places.push_back(from_high ? places.back() - link.length : places.back() + link.length);
  return places;
}

Axis axis_of(const Chain& chain) {
  const auto tells = [&](std::string_view words) {
    return chain.what.find(words) != std::string::npos;
  };
  return tells("from front to back") || tells("front's face") ? Axis::z
         : tells("across")                                    ? Axis::x
                                                              : Axis::y;
}

bool is_down(const Chain& chain) {
  return chain.what.find("down") != std::string::npos;
}

class ToldChains {
 public:
  explicit ToldChains(const ShownWhole& shown) : shown_(shown), wood_(shown.wood) {}

  std::vector<PlacedChain> all(ChainsOf of) {
    switch (of) {
      case ChainsOf::elevation:
        along(Axis::x, PaperSide::below, PaperSide::above, Axis::y);
        along(Axis::y, PaperSide::left, PaperSide::right, Axis::x);
        break;
      case ChainsOf::plan:
        along(Axis::z, PaperSide::left, PaperSide::right, {});
        drawer(Axis::x, PaperSide::above);
        whole(Axis::x, PaperSide::above);
        break;
      case ChainsOf::upright:
        along(Axis::z, PaperSide::below, PaperSide::above, {});
        drawer(Axis::y, PaperSide::right);
        whole(Axis::y, PaperSide::right);
        break;
    }
    return std::move(chains_);
  }

 private:
  void along(Axis axis, PaperSide first, PaperSide second, std::optional<Axis> other) {
    std::vector<Places> all;
    for (const Chain& chain : shown_.chains)
      if (axis_of(chain) == axis)
        if (auto places = places_of(chain, wood_.size[number_of(axis)], is_down(chain)))
          all.push_back(std::move(*places));
    if (all.empty() && other) all = MemberChains(wood_, axis, *other).all();
    for (std::size_t i = 0; i < all.size(); ++i)
      chains_.push_back({i % 2 == 0 ? first : second, axis, all[i]});
    if (axis == Axis::y && other) {
      arches();
      hinges();
    }
    drawer(axis, first);
    whole(axis, first);
  }

  /// How high curves begin, and their crowns.
  void arches() {
    const auto add = [&](Places places) {
      places.insert(places.end(), {Length(), wood_.size[1]});
      chains_.push_back({PaperSide::right, Axis::y, std::move(places)});
    };
    for (const Piece& piece : wood_.pieces) {
      const Length crown = met_in_middle(piece).low[1];
      if (const auto rise = size_of(piece, FeatureKind::arch, SizeName::rise))
        add({crown - *rise, crown});
      if (const auto side = size_of(piece, FeatureKind::arched_head, SizeName::side))
        add({placed_blank(piece).low[1] + *side});
    }
  }

  /// Where hinges are let in, from the foot of their leaf to its top.
  void hinges() {
    for (const HungLeaf& leaf : hung_leaves(wood_)) {
      if (leaf.hinges.empty()) continue;
      const Box box = placed_blanks(wood_, leaf.group);
      Places places = leaf.hinges;
      places.insert(places.end(), {box.low[1], box.high[1]});
      const PaperSide side = leaf.at_right ? PaperSide::right : PaperSide::left;
      chains_.push_back({side, Axis::y, places});
      if (box.extent(1) != wood_.size[1])
        chains_.push_back({side, Axis::y, {box.low[1], box.high[1]}});
    }
  }

  /// Of a drawer that is all there is: of what it is made.
  void drawer(Axis axis, PaperSide side) {
    if (wood_.whole().kind != GroupKind::drawer) return;
    const Box room = room_of(wood_);
    Places places{room.low[number_of(axis)], room.high[number_of(axis)]};
    for (const Piece& piece : wood_.pieces) {
      if (!bounds_a_drawer(piece.role) || piece.blank[2] != thickness_along(piece, axis)) continue;
      const Box box = placed_blank(piece);
      places.insert(places.end(), {box.low[number_of(axis)], box.high[number_of(axis)]});
    }
    settle(places);
    if (places.size() > 2) chains_.push_back({side, axis, places});
  }

  /// A piece's thickness where that lies along the axis.
  static Length thickness_along(const Piece& piece, Axis axis) {
    return piece.place.axes[2] == axis ? piece.blank[2] : Length();
  }

  void whole(Axis axis, PaperSide side) {
    const Box room = room_of(wood_);
    const std::size_t number = number_of(axis);
    chains_.push_back({side, axis, {Length(), wood_.size[number]}});
    chains_.push_back({side, axis, {room.low[number], room.high[number]}});
  }

  const ShownWhole& shown_;
  const Assembly& wood_;
  std::vector<PlacedChain> chains_;
};

}  // namespace

std::vector<HungLeaf> hung_leaves(const Assembly& wood) {
  std::vector<HungLeaf> leaves;
  const auto leaf_of = [&](std::size_t group) {
    return std::find_if(leaves.begin(), leaves.end(),
                        [&](const HungLeaf& leaf) { return leaf.group == group; });
  };
  for (const Fit& fit : wood.fits)
    if (fit.swing() != nullptr && fit.swing()->axis == Axis::y)
      leaves.push_back({fit.group, fit.swing()->at_high, {}});
  for (const Piece& piece : wood.pieces) {
    if (piece.role != Role::stile) continue;
    Places places = hinge_places(piece);
    if (places.empty()) continue;
    auto leaf = leaf_of(piece.group);
    if (leaf == leaves.end()) {
      const Box box = placed_blank(piece), all = placed_blanks(wood, piece.group);
      const bool at_right = box.low[0] - all.low[0] > all.high[0] - box.high[0];
      leaf = leaves.insert(leaves.end(), {piece.group, at_right, {}});
    }
    leaf->hinges = std::move(places);
  }
  return leaves;
}

std::vector<PlacedChain> chains_told(const ShownWhole& shown, ChainsOf of) {
  return ToldChains(shown).all(of);
}

}  // namespace haunch
