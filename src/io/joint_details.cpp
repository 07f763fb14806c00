#include "joint_details.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "joint_chains.h"
#include "joint_words.h"
#include "piece_marks.h"
#include "season.h"

namespace haunch {
namespace {

constexpr double kApart = 5;  // of two pictures in a block
constexpr int kScales[] = {1, 2, 5, 10, 20, 50};

/// Whether it tells more when it is drawn taken apart.
bool is_taken_apart(const JointView& view, JointKind kind) {
  switch (kind) {
    case JointKind::butt:
      return view.pieces.size() > 2;
    case JointKind::pin:
    case JointKind::wedge:
    case JointKind::panel_in_groove:
    case JointKind::panel_in_rebate:
    case JointKind::glass_in_rebate:
    case JointKind::sealed_unit_in_rebate:
    case JointKind::bead_in_rebate:
    case JointKind::screws:
    case JointKind::planted:
      return false;
    default:
      return true;
  }
}

/// The largest scale at which all are no larger than that on the paper.
PaperScale scale_within(const std::vector<LineView>& views, double width, double height) {
  for (const int one_to : kScales) {
    const bool fits = std::all_of(views.begin(), views.end(), [&](const LineView& view) {
      const auto extent = extent_of(view);
      return !extent || (extent->width() <= width * one_to && extent->height() <= height * one_to);
    });
    if (fits) return {one_to};
  }
  return {50};
}

/// Pictures side by side, their upper edges level, each in the first row that has room for it.
Picture in_rows(const std::vector<const Picture*>& pictures, double width) {
  struct Row {
    double width = 0, height = 0;
    std::vector<const Picture*> pictures;
  };
  std::vector<Row> rows;
  for (const Picture* picture : pictures) {
    const Extent extent = extent_of(*picture).value_or(Extent());
    auto row = std::find_if(rows.begin(), rows.end(), [&](const Row& its) {
      return its.width + kApart + extent.width() <= width;
    });
    if (row == rows.end()) row = rows.emplace(rows.end());
    row->width += (row->pictures.empty() ? 0 : kApart) + extent.width();
    row->height = std::max(row->height, extent.height());
    row->pictures.push_back(picture);
  }
  Picture all;
  double v = 0;
  for (const Row& row : rows) {
    double u = 0;
    for (const Picture* picture : row.pictures) {
      const Extent extent = extent_of(*picture).value_or(Extent());
      all.add(*picture, {u - extent.low.u, v - extent.high.v});
      u += extent.width() + kApart;
    }
    v -= row.height + kApart;
  }
  return all;
}

double height_of(const Picture& picture) {
  return extent_of(picture).value_or(Extent()).height();
}

/// In their order, or where that takes less room the tall ones first.
Picture side_by_side(const std::vector<Picture>& pictures, double width) {
  std::vector<const Picture*> order;
  for (const Picture& picture : pictures)
    order.push_back(&picture);
  Picture in_order = in_rows(order, width);
  std::stable_sort(order.begin(), order.end(), [](const Picture* a, const Picture* b) {
    return height_of(*a) > height_of(*b);
  });
  Picture tall_first = in_rows(order, width);
  return height_of(tall_first) < height_of(in_order) - kApart ? tall_first : in_order;
}

class JointDetail {
 public:
  JointDetail(const ItemReport& item, const std::vector<DrawnWood>& woods, const LetteredJoint& its,
              const LengthPrinter& lengths, const Extent& room)
      : item_(item),
        woods_(woods),
        its_(its),
        lengths_(lengths),
        fine_(lengths.fine()),
        room_(room) {}

  /// At the largest scale at which it has room.
  SheetBlock block() const {
    std::vector<LineView> views;
    for (const LetteredCut& cut : its_.cuts)
      views.push_back(section_of(met_by(cut.cut), cut.cut));
    const PaperScale largest = scale_within(views, 100, 200);
    const LineView parts = is_taken_apart(its_.view, joint().kind) ? apart() : LineView();
    SheetBlock block;
    for (const int one_to : kScales)
      for (const double apart : {70, 42}) {
        if (one_to < largest.one_to) continue;
        block = at_scale(views, parts, {one_to}, apart);
        const auto extent = extent_of(block.picture).value_or(Extent());
        if (extent.width() <= room_.width() && extent.height() <= room_.height()) return block;
      }
    return block;
  }

 private:
  /// What is drawn in its region.
  std::vector<DrawnWood> met_by(const CutAway& cut) const {
    std::vector<DrawnWood> woods;
    for (const std::size_t piece : its_.view.in_sections)
      if (!cut.region || interiors_meet(*cut.region, placed_blank(item_.wood.pieces[piece])))
        woods.push_back(woods_[piece]);
    return woods;
  }

  SheetBlock at_scale(const std::vector<LineView>& views, const LineView& parts, PaperScale scale,
                      double apart_size) const {
    std::vector<Picture> pictures;
    for (std::size_t i = 0; i < views.size(); ++i)
      pictures.push_back(section(its_.cuts[i], views[i], scale));
    add_seasons(pictures, scale);
    if (!parts.lines.empty()) {
      const PaperScale small = scale_within({parts}, apart_size, apart_size);
      pictures.push_back(titled(picture_of(parts, item_.wood, small),
                                {"", "taken apart, " + scale_text(small), {}}, room_.width()));
    }
    return {titled(side_by_side(pictures, room_.width()),
                   {"", joint_title(item_.wood, its_.view),
                    joint_words(item_.wood, its_.view, lengths_), true},
                   room_.width()),
            scale};
  }

  const Joint& joint() const { return item_.wood.joints[its_.view.joints.front()]; }

  /// Which side of a section is the face, or of what is no leaf the front.
  void tell_face(NotedView& view) const {
    if (!view.shows(Axis::z)) return;
    const Assembly& wood = item_.wood;
    const bool is_face = wood.pieces[joint().receives].place.axes[2] == Axis::z ||
                         wood.pieces[joint().enters].place.axes[2] == Axis::z;
    const ViewSpot near = view.paper(Triple{}),
                   far = view.paper(Triple{Length(), Length(), Length::from_mm(1)});
    const PaperSide side = view.runs_level(Axis::z)
                               ? (near.u > far.u ? PaperSide::right : PaperSide::left)
                               : (near.v > far.v ? PaperSide::above : PaperSide::below);
    view.letter_beside(side, is_face ? "face" : "front");
  }

  Picture section(const LetteredCut& cut, const LineView& lines, PaperScale scale) const {
    NotedView view(lines, item_.wood, sight_of(cut.cut.plane), scale, fine_);
    mark_pieces(view, cut.cut, lines);
    if (&cut == &its_.cuts.front()) mark_others(view);
    view.keep_clear();
    for (const PlacedChain& chain : joint_chains(view, its_.view, cut.cut))
      view.chain(chain.side, chain.axis, chain.places);
    tell_face(view);
    return titled(view.picture(), {cut.letter, scale_text(scale), {}}, room_.width());
  }

  /// Where the other sections are cut.
  void mark_others(NotedView& view) const {
    const std::vector<std::size_t>& pieces = its_.view.in_sections;
    Box room = placed_blank(item_.wood.pieces[pieces.front()]);
    for (const std::size_t piece : pieces)
      room = around(room, placed_blank(item_.wood.pieces[piece]));
    for (std::size_t i = 1; i < its_.cuts.size(); ++i)
      if (view.shows(its_.cuts[i].cut.plane.across)) mark_cut(view, its_.cuts[i], room);
  }

  /// How a panel stands in its groove when its wood is at its driest and at its wettest.
  void add_seasons(std::vector<Picture>& pictures, PaperScale scale) const {
    const std::optional<Season>& season = item_.job->season;
    if (!season || joint().kind != JointKind::panel_in_groove || its_.cuts.empty() ||
        !is_at_long_edge(item_.wood, joint()))
      return;
    const Moisture& moisture = season->moisture;
    for (const double percent : other_moistures(moisture)) {
      const Assembly moved_wood = at_moisture(item_.wood, *season, percent);
      std::vector<DrawnWood> woods;
      for (const std::size_t piece : its_.view.pieces)
        woods.push_back(drawn_of(moved_wood, piece));
      const CutAway& cut = its_.cuts.front().cut;
      NotedView view(section_of(woods, cut), moved_wood, sight_of(cut.plane), scale, fine_);
      for (const PlacedChain& chain : joint_chains(view, its_.view, cut))
        if (chain.axis == joint().heading.axis) view.chain(chain.side, chain.axis, chain.places);
      tell_face(view);
      const std::string_view how = percent < moisture.build ? "driest, " : "wettest, ";
      pictures.push_back(titled(
          view.picture(), {its_.cuts.front().letter, std::string(how) + percent_words(percent), {}},
          room_.width()));
    }
  }

  LineView apart() const {
    const TakenApart& apart = its_.view.apart;
    std::vector<DrawnWood> woods;
    for (const MovedPiece& piece : apart.pieces)
      if (auto part = within(woods_[piece.piece], apart.region)) {
        move_by(*part, piece.by);
        woods.push_back(std::move(*part));
      }
    return view_of(woods, slanted_sight(apart.nearest), HiddenLines::left_out);
  }

  const ItemReport& item_;
  const std::vector<DrawnWood>& woods_;
  const LetteredJoint& its_;
  const LengthPrinter& lengths_;
  LengthPrinter fine_;  // of what fits go by
  Extent room_;
};

}  // namespace

std::vector<SheetBlock> joint_details(const ItemReport& item, const std::vector<DrawnWood>& woods,
                                      const std::vector<LetteredJoint>& joints,
                                      const LengthPrinter& lengths, const Extent& room) {
  std::vector<SheetBlock> blocks;
  for (const LetteredJoint& its : joints)
    blocks.push_back(JointDetail(item, woods, its, lengths, room).block());
  return blocks;
}

}  // namespace haunch
