// Loose tenons: a piece of its own, let in to a mortise in each of the two that it joins.
#pragma once

#include <utility>

#include "tenon.h"

namespace haunch {

/// Each goes as deep into the one member as into the other, its grain along the way in: a piece
/// each, and a joint each with both.
class LooseTenons : public EndJoint {
 public:
  LooseTenons(TenonDesign tenon, const MortiseDesign& mortise, const FlatEnd& flat = {})
      : tenon_(std::move(tenon)), mortise_(mortise), flat_(flat) {}
  Length reach() const override { return flat_.reach; }
  Length set_back() const override { return flat_.set_back; }
  bool fills_groove() const override { return flat_.fills_rebate; }
  void cut(Assembly& assembly, const End& end) const override { stand(assembly, end, flat_); }
  Own own_pieces() const override { return Own::loose_tenons; }
  void add_own_pieces(Assembly& assembly, const End& end) const override;

 private:
  TenonDesign tenon_;
  MortiseDesign mortise_;
  FlatEnd flat_;
};

}  // namespace haunch
