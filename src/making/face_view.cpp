#include "face_view.h"

#include <algorithm>
#include <utility>

#include "bench.h"
#include "polyhedron.h"

namespace haunch {
namespace {

/// An axis of the bench, and whether it is looked along towards its higher figures.
struct Look {
  std::size_t axis = 0;
  bool upwards = true;
};

/// One side of a piece that lies on the bench.
class Looker {
 public:
  Looker(const Piece& piece, const WorkedSide& side) : piece_(piece) {
    piece_.place = on_bench(piece);
    const Datum datum = datum_of(piece);
    const bool edge_high = datum.edge_high != piece_.place.backwards[1];
    // Out of the wood, away from the stop, and square to both: the third follows from the others,
    // as the axes of the bench are right-handed.
    out_ = {side.into, side.from_high != piece_.place.backwards[side.into]};
    right_ = side.into == 0 ? Look{1, !edge_high} : Look{0, true};
    up_.axis = 3 - out_.axis - right_.axis;
    const bool cyclic = (out_.axis + 1) % 3 == right_.axis;
    up_.upwards = (out_.upwards == right_.upwards) == cyclic;
    // The face side lies up on the bench.
    const bool datum_high = up_.axis == 2 || edge_high;
    view_ = {side, piece.blank[right_.axis], piece.blank[up_.axis], datum_high == up_.upwards, {}};
  }

  FaceView take() { return std::move(view_); }

  void add(std::size_t number) {
    const Feature& feature = piece_.features[number];
    FaceCut cut{number, {}};
    for (const bool only_open : {true, false}) {
      if (!cut.shapes.empty()) break;
      for (const Box& box : feature.cuts)
        add_shape(cut, placed(box, piece_.place), nullptr, only_open);
      for (const Prism& prism : feature.prisms) {
        const Prism there = placed(prism, piece_.place);
        add_shape(cut, bounds_of(there), &there, only_open);
      }
    }
    if (!cut.shapes.empty()) view_.cuts.push_back(std::move(cut));
  }

 private:
  /// How far in from this side something goes.
  Length depth_of(const Box& box) const {
    const std::size_t axis = out_.axis;
    return out_.upwards ? piece_.blank[axis] - box.low[axis] : box.high[axis];
  }
  bool is_open(const Box& box) const {
    const std::size_t axis = out_.axis;
    return out_.upwards ? box.high[axis] >= piece_.blank[axis] : box.low[axis] <= Length();
  }

  Corner seen(const Triple& spot) const {
    const auto along = [&](const Look& look) {
      return look.upwards ? spot[look.axis] : piece_.blank[look.axis] - spot[look.axis];
    };
    return {along(right_), along(up_)};
  }

  void add_shape(FaceCut& cut, const Box& box, const Prism* prism, bool only_open) const {
    if (only_open && !is_open(box)) return;
    CutShape shape{{}, depth_of(box)};
    if (prism != nullptr && prism->along == out_.axis) {
      const auto [u, v] = across_axes(prism->along);
      for (const Corner& corner : prism->outline) {
        Triple spot{};
        spot[u] = corner.u;
        spot[v] = corner.v;
        shape.outline.push_back(seen(spot));
      }
    } else {
      const Corner low = seen(box.low);
      const Corner high = seen(box.high);
      shape.outline = {low, {high.u, low.v}, high, {low.u, high.v}};
    }
    cut.shapes.push_back(std::move(shape));
  }

  Piece piece_;
  Look out_, right_, up_;
  FaceView view_;
};

}  // namespace

Length FaceCut::depth() const {
  Length deepest;
  for (const CutShape& shape : shapes)
    deepest = std::max(deepest, shape.depth);
  return deepest;
}

std::vector<FaceView> worked_faces(const Assembly& wood, const Making& making, std::size_t piece) {
  std::vector<FaceView> views;
  for (const std::size_t into : {2U, 1U, 0U})
    for (const bool from_high : {false, true}) {
      const WorkedSide side{into, from_high};
      std::vector<std::size_t> features;
      for (const Operation& operation : making.operations)
        for (const Run& run : operation.runs) {
          const bool other = operation.both_faces && into == 2 && run.side.into == 2;
          if (run.piece == piece && (run.side == side || other)) features.push_back(run.feature);
        }
      std::sort(features.begin(), features.end());
      features.erase(std::unique(features.begin(), features.end()), features.end());
      if (features.empty()) continue;
      Looker looker(wood.pieces[piece], side);
      for (const std::size_t feature : features)
        looker.add(feature);
      views.push_back(looker.take());
    }
  return views;
}

}  // namespace haunch
