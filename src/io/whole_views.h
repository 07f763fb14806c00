// What shows the whole of an item: its elevation, and where it goes back from its front sections
// level and upright through it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cut_marks.h"
#include "member_chains.h"

namespace haunch {

struct WholeView {
  std::string letter;  // of a section
  std::string title;
  Picture picture;
  std::vector<std::string> words = {};  // under the title
};

/// The elevation, and the sections among those cuts that go through the whole. What it is made of
/// outlives it.
class WholeViews {
 public:
  WholeViews(const ShownWhole& shown, const std::vector<DrawnWood>& woods,
             const std::vector<LetteredCut>& cuts, const LengthPrinter& lengths);

  /// All of them at one scale, the elevation first, with the places of the cuts.
  std::vector<WholeView> at_scale(PaperScale scale) const;

 private:
  WholeView elevation(PaperScale scale) const;
  WholeView section(const LetteredCut& cut, const LineView& lines, PaperScale scale) const;
  void chains(NotedView& view, ChainsOf of) const;
  Box room() const;

  ShownWhole shown_;
  const std::vector<LetteredCut>& cuts_;
  const LengthPrinter& lengths_;
  std::vector<LineView> lines_;  // of the elevation, then of the sections
};

/// Level through the meeting stiles of a pair, where these lap each other; nothing else beside
/// them.
std::optional<LetteredCut> meeting_cut(const Assembly& wood);
WholeView meeting_view(const Assembly& wood, const std::vector<DrawnWood>& woods,
                       const LetteredCut& cut, const LengthPrinter& lengths, PaperScale scale);

/// Level and upright through the middle of what goes back from its front; of a leaf none.
std::vector<LetteredCut> whole_cuts(const Assembly& wood);

}  // namespace haunch
