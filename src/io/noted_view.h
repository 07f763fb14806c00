// A view with what is written on it: dimensions beside it, marks in its pieces, a title over it.
#pragma once

#include <set>
#include <string>
#include <utility>
#include <vector>

#include "covers.h"
#include "dimensions.h"
#include "sight.h"
#include "view_picture.h"

namespace haunch {

enum class PaperSide : unsigned char { below, left, above, right };

class NotedView {
 public:
  /// `wood` and `lengths` outlive it.
  NotedView(const LineView& view, const Assembly& wood, const Sight& sight, PaperScale scale,
            const LengthPrinter& lengths);

  /// Where a place of the assembly stands on the paper.
  ViewSpot paper(const Triple& place) const;
  /// The same of a box, as seen.
  Extent paper(const Box& box) const;
  bool runs_level(Axis axis) const;
  /// Whether it runs along the paper, level or upright.
  bool shows(Axis axis) const;

  /// Whether a place along an axis lies within what is drawn.
  bool reaches(Axis axis, Length at) const;

  /// Whether a line that is drawn, not a break, ends there.
  bool has_end_at(Axis axis, Length at) const;

  /// A chain of dimensions between places along an axis of the assembly, outside of what stands on
  /// that side already. One that is there already, or has no length, is left out.
  void chain(PaperSide side, Axis axis, std::vector<Length> places);

  /// Chains that are put to it from here on keep clear of all that is drawn by now.
  void keep_clear();

  /// Lettering at the first of these places where no other is in its way; false where there is
  /// none.
  bool letter(Lettering lettering, const std::vector<ViewSpot>& places);
  /// A word along a side of the view, where it can be in the way of no dimension.
  void letter_beside(PaperSide side, const std::string& word);
  bool is_free(const Extent& extent) const;
  /// Keeps lettering out of it.
  void reserve(const Extent& extent) { reserved_.push_back(extent); }

  Picture& picture() { return picture_; }
  /// Of the view alone.
  const Extent& extent() const { return view_; }
  PaperScale scale() const { return scale_; }
  const Assembly& wood() const { return wood_; }

 private:
  double along(Axis axis, Length at) const;
  void stack(PaperSide side, const DimensionChain& chain);
  double line_of(PaperSide side, const DrawnChain& drawn, double apart) const;
  Extent extent_on(PaperSide side, const DrawnChain& drawn, double line) const;
  bool has_room_for(const Picture& chain, const ViewSpot& at) const;
  std::vector<LinePart> beside_figures(bool level, double place, LinePart line) const;
  void reach_out(PaperSide side, const DimensionChain& chain, double line);

  const Assembly& wood_;
  Sight sight_;
  PaperScale scale_;
  const LengthPrinter& lengths_;
  Picture picture_;
  std::vector<ViewSpot> ends_;  // of the lines of the view, on the paper
  Extent view_;                 // of the view alone
  Extent taken_;                // with the chains beside it
  std::vector<Extent> reserved_;
  std::set<PaperSide> chained_;
  std::set<std::pair<Axis, std::vector<Length>>> told_;
};

/// Puts a title over a picture, and words under the title; none is wider than `width`.
struct TitleWords {
  std::string letter;  // "a", told as "a–a"; empty: none
  std::string title;
  std::vector<std::string> words;
  bool bold = false;  // the title
};
Picture titled(const Picture& picture, const TitleWords& words, double width);

}  // namespace haunch
