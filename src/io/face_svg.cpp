#include "face_svg.h"

#include <utility>

#include "shown_text.h"
#include "svg_text.h"

namespace haunch {
namespace {

constexpr Length kFree = Length::from_mm(10);  // round the wood, where corner and stop stand
constexpr Length kApart = Length::from_mm(2);  // of the corner's mark from the wood
constexpr Length kArm = Length::from_mm(6);    // of the corner's mark
constexpr Length kStop = Length::from_mm(4);   // of the stop from the wood

class FaceDrawing {
 public:
  FaceDrawing(SvgText& svg, const ItemReport& item, const Piece& piece, const FaceView& view)
      : svg_(svg), item_(item), piece_(piece), view_(view) {}

  void draw() {
    const Length width = view_.width + kFree + kFree;
    const Length height = view_.height + kFree + kFree;
    const std::string side(word_of(side_of(piece_, view_.side)));
    svg_.open("svg").with("xmlns", "http://www.w3.org/2000/svg");
    svg_.with("width", decimal(width, Unit::mm) + "mm");
    svg_.with("height", decimal(height, Unit::mm) + "mm");
    svg_.with("viewBox", "0 0 " + decimal(width, Unit::mm) + " " + decimal(height, Unit::mm));
    svg_.with("fill", "none").with("stroke", "#000").with("stroke-width", "0.18");
    svg_.with("data-item", item_.job->id).with("data-part", piece_.mark);
    svg_.with("data-side", side).inside();
    svg_.open("title").holds(item_.job->id + " " + piece_.mark + ", " + piece_.name + ": " + side +
                             ", seen from outside, at full size");
    outline();
    for (const FaceCut& cut : view_.cuts)
      feature(cut);
    corner();
    stop();
    svg_.close();
  }

 private:
  /// "10,20": a place of the view on the paper, which runs down.
  std::string at(Length u, Length v) const {
    return decimal(kFree + u, Unit::mm) + "," + decimal(kFree + view_.height - v, Unit::mm);
  }

  void outline() {
    svg_.open("g").with("class", "wood").inside();
    svg_.open("rect").with("x", kFree).with("y", kFree);
    svg_.with("width", view_.width).with("height", view_.height).empty();
    svg_.close();
  }

  void feature(const FaceCut& cut) {
    const Feature& its = piece_.features[cut.feature];
    std::string joints;
    for (const std::size_t joint : its.joints)
      joints += (joints.empty() ? "" : " ") + joint_id(joint);
    const std::string kind(word_of(its.kind));
    svg_.open("g").with("class", "cut").with("data-cut", kind);
    svg_.with("data-feature", std::to_string(cut.feature)).with("data-depth-mm", cut.depth());
    if (!joints.empty()) svg_.with("data-joint", joints);
    if (its.fitting) svg_.with("data-fitting", its.fitting->name);
    svg_.inside();
    svg_.open("title").holds(kind + (joints.empty() ? "" : " " + joints) + ", " +
                             decimal(cut.depth(), Unit::mm) + " mm deep");
    for (const CutShape& shape : cut.shapes)
      draw_shape(shape, cut.depth());
    svg_.close();
  }

  void draw_shape(const CutShape& shape, Length deepest) {
    std::string points;
    for (const Corner& corner : shape.outline)
      points += (points.empty() ? "" : " ") + at(corner.u, corner.v);
    svg_.open("polygon").with("points", points);
    if (shape.depth != deepest) svg_.with("data-depth-mm", shape.depth);
    svg_.empty();
  }

  void line(std::string_view name, const std::string& points, std::string_view words) {
    svg_.open("g").with("class", name).inside();
    svg_.open("title").holds(words);
    svg_.open("polyline").with("points", points).empty();
    svg_.close();
  }

  /// An angle round the corner, outside of the wood.
  void corner() {
    const Length v = view_.datum_above ? view_.height + kApart : -kApart;
    const Length in = view_.datum_above ? v - kArm : v + kArm;
    line("datum", at(-kApart, in) + " " + at(-kApart, v) + " " + at(kArm - kApart, v),
         "the corner that places are told from");
  }

  void stop() {
    line("stop", at(-kStop, Length()) + " " + at(-kStop, view_.height),
         "the stop: places are told from here");
  }

  SvgText& svg_;
  const ItemReport& item_;
  const Piece& piece_;
  const FaceView& view_;
};

}  // namespace

std::string face_svg(const ItemReport& item, const Piece& piece, const FaceView& view) {
  std::string text;
  SvgText svg(text);
  FaceDrawing(svg, item, piece, view).draw();
  return shown_text(text, Newlines::kept);
}

}  // namespace haunch
