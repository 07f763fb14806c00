// The sides of pieces that are worked, as seen.
#include "face_view.h"

#include <algorithm>

#include "../setups/examples.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

const FaceView& only(const std::vector<FaceView>& views) {
  REQUIRE(views.size() == 1);
  return views.front();
}

std::vector<FaceView> faces(const Assembly& all, const std::string& name) {
  const Making making = making_of(all);
  for (std::size_t piece = 0; piece < all.pieces.size(); ++piece)
    if (all.pieces[piece].name == name) return worked_faces(all, making, piece);
  return {};
}

/// Where on a view the deepest cut of a kind is widest: left, right, low, high.
std::vector<Length> first_cut(const FaceView& view, const Piece& piece, FeatureKind kind) {
  for (const FaceCut& cut : view.cuts) {
    if (piece.features[cut.feature].kind != kind) continue;
    const auto& outline = cut.shapes.front().outline;
    std::vector<Length> us, vs;
    for (const Corner& corner : outline) {
      us.push_back(corner.u);
      vs.push_back(corner.v);
    }
    return {*std::min_element(us.begin(), us.end()), *std::max_element(us.begin(), us.end()),
            *std::min_element(vs.begin(), vs.end()), *std::max_element(vs.begin(), vs.end())};
  }
  return {};
}

}  // namespace

TEST_CASE("The edges of two stiles are a pair: foot at the left, face side above and below") {
  const Assembly all = example("side-door.json");
  const Piece& stile = all.pieces[0];
  const MortiseSizes& mortise = *all.joints[0].mortise;
  const MortiseSpan& span = mortise.each.front();
  const std::vector<FaceView> left = faces(all, "left stile");
  const std::vector<FaceView> right = faces(all, "right stile");
  CHECK(only(left).width == stile.blank[0]);
  CHECK(only(left).height == stile.blank[2]);
  CHECK(only(left).datum_above);
  CHECK_FALSE(only(right).datum_above);
  const std::vector<Length> on_left = first_cut(only(left), stile, FeatureKind::mortise);
  CHECK(on_left[0] == span.from_foot);
  CHECK(on_left[1] == span.from_foot + span.length);
  CHECK(on_left[3] == stile.blank[2] - mortise.from_face);
  CHECK(on_left[2] == stile.blank[2] - mortise.from_face - mortise.width);
  const std::vector<Length> on_right = first_cut(only(right), stile, FeatureKind::mortise);
  CHECK(on_right[0] == span.from_foot);
  CHECK(on_right[2] == mortise.from_face);
}

TEST_CASE("A mortise is as deep as its joint says, from the edge that it comes in through") {
  const Assembly all = example("side-door.json");
  const std::vector<FaceView> left = faces(all, "left stile");
  for (const FaceCut& cut : only(left).cuts)
    if (all.pieces[0].features[cut.feature].kind == FeatureKind::mortise)
      CHECK(cut.depth() == *size_of(all.pieces[0].features[cut.feature], SizeName::depth));
}

TEST_CASE("Whatever an operation makes is seen on the side that it comes in through, once") {
  for (const Assembly& all : all_examples()) {
    const Making making = making_of(all);
    std::vector<std::vector<FaceView>> views;
    for (std::size_t piece = 0; piece < all.pieces.size(); ++piece)
      views.push_back(worked_faces(all, making, piece));
    for (const Operation& operation : making.operations)
      for (const Run& run : operation.runs) {
        const auto& of_piece = views[run.piece];
        const auto view = std::find_if(of_piece.begin(), of_piece.end(),
                                       [&](const FaceView& it) { return it.side == run.side; });
        INFO(all.pieces[run.piece].name << " " << word_of(operation.makes));
        REQUIRE(view != of_piece.end());
        CHECK(std::count_if(view->cuts.begin(), view->cuts.end(),
                            [&](const FaceCut& it) { return it.feature == run.feature; }) == 1);
      }
  }
}

TEST_CASE("No cut is seen beyond its side, but where the wood is cut to its very edge") {
  for (const Assembly& all : all_examples()) {
    const Making making = making_of(all);
    for (std::size_t piece = 0; piece < all.pieces.size(); ++piece)
      for (const FaceView& view : worked_faces(all, making, piece))
        for (const FaceCut& cut : view.cuts)
          for (const CutShape& shape : cut.shapes) {
            INFO(all.pieces[piece].name);
            CHECK(shape.outline.size() > 2);
            CHECK(shape.depth > Length());
            CHECK(shape.depth <= all.pieces[piece].blank[view.side.into]);
            for (const Corner& corner : shape.outline) {
              CHECK((corner.u >= Length() && corner.u <= view.width));
              CHECK((corner.v >= Length() && corner.v <= view.height));
            }
          }
  }
}

}  // namespace haunch::test
