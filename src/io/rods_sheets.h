// What a rod's drawing is laid out on: how wide its columns are, what is written beside its marks,
// and how much of it each sheet of paper takes. All in millimetres, exact.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "paper.h"
#include "rods_report.h"
#include "text_table.h"

namespace haunch {

// How wide lettering comes out is the renderer's; 0.64 of its size for each letter holds for wide
// founts too.
inline constexpr Length kLetterWidth = Length::from_mm_thousandths(2240);
inline constexpr Length kLine = tenths_of_mm(44);  // from one line of lettering to the next
inline constexpr Length kHeadLine = whole_mm(5);

inline constexpr Length kBeyond = whole_mm(4);    // a rod's ends
inline constexpr Length kOverlap = whole_mm(20);  // of one sheet and the next
inline constexpr Length kLeader = whole_mm(12);   // from the strips to the figures at least

/// How wide so many letters are.
Length letters(std::size_t count);

/// What is written beside a mark: its figure, and lines of words.
struct RodLabel {
  Length at;
  std::string figure;
  std::vector<std::string> lines;

  Length height() const { return kLine * static_cast<std::int64_t>(lines.size()); }
};

/// What the sheets of one rod have in common, measured from their upper left corners.
struct RodForm {
  std::optional<Paper> paper;  // none: as large as the rod
  Length width;
  Length strips, strip, strips_end;   // the first one's left edge, the width of each, all their end
  Length figures_end, words;          // beside a mark
  Length top;                         // of where the rod lies
  std::vector<std::string> headings;  // of the strips
  std::vector<RodLabel> labels;       // of the marks

  Length strip_at(std::size_t number) const {
    return strips + strip * static_cast<std::int64_t>(number);
  }
  Length head() const { return strips_end + kLeader; }
};

RodForm form_of(const ItemRods& item, const Rod& rod, const LengthPrinter& lengths,
                const std::optional<Paper>& paper);

/// From where to where a rod lies on a sheet, and how high that is.
struct RodSheet {
  Length from, to;
  Length height;
};

/// In order along the rod; those of paper overlap.
std::vector<RodSheet> sheets_of(const Rod& rod, const RodForm& form);

/// Which of how many sheets, from 1.
struct SheetNumber {
  std::size_t number, of;
};

std::string title_of(const ItemRods& item, const Rod& rod, const SheetNumber& sheet);

/// What a sheet begins with beside the headings of its strips; of `title` lines its title.
struct RodHead {
  std::vector<std::string> lines;
  std::size_t title;
};
RodHead head_of(const ItemRods& item, const Rod& rod, const RodForm& form,
                const LengthPrinter& lengths, const SheetNumber& sheet);

}  // namespace haunch
