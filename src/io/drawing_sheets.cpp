#include "drawing_sheets.h"

#include <algorithm>
#include <functional>
#include <iterator>
#include <utility>

#include "joint_details.h"
#include "output_folder.h"
#include "sheet_layout.h"
#include "text_width.h"
#include "whole_views.h"

namespace haunch {
namespace {

constexpr double kFreeMm = 10, kHeadHeight = 14, kFootHeight = 10, kInside = 3;
constexpr double kTitleSize = 5, kLine = 3.5, kSmall = 2.8;

double mm_of(Length length) {
  return static_cast<double>(length.steps()) / static_cast<double>(Length::kStepsPerMm);
}

/// Cut short with an ellipsis where it is too long.
std::string shortened(const std::string& text, double size, double width, Letters letters) {
  const double bolder = letters == Letters::bold ? 1.25 : 1;
  if (text_width(text, letters) * size <= width) return text;
  const double room = width - text_width("\u2026", letters) * size;
  return lettered_lines(text, size * bolder, room).front() + "\u2026";
}

/// The frame, the head and the foot of a sheet.
class SheetFrame {
 public:
  SheetFrame(const ItemReport& item, const LengthPrinter& lengths, const Paper& paper)
      : item_(item), lengths_(lengths), width_(mm_of(paper.width)), height_(mm_of(paper.height)) {}

  /// Where views stand.
  Extent room() const {
    return {{kFreeMm + kInside, kFreeMm + kFootHeight + kInside},
            {width_ - kFreeMm - kInside, height_ - kFreeMm - kHeadHeight - kInside}};
  }

  void draw(SheetPicture& sheet, std::size_t number, std::size_t of) const {
    const double left = kFreeMm, right = width_ - kFreeMm, low = kFreeMm, high = height_ - kFreeMm;
    Picture& picture = sheet.picture;
    picture.strokes.push_back(
        {Pen::frame, {{{left, low}, {right, low}, {right, high}, {left, high}, {left, low}}}});
    for (const double v : {high - kHeadHeight, low + kFootHeight})
      picture.line(Pen::thin, {left, v}, {right, v});
    head(sheet, number, of);
    legend(picture);
  }

 private:
  void head(SheetPicture& sheet, std::size_t number, std::size_t of) const {
    const double left = kFreeMm + 3, right = width_ - kFreeMm - 3, high = height_ - kFreeMm;
    const std::string scale = "scale " + sheet.scale;
    const std::string count = "sheet " + std::to_string(number) + " of " + std::to_string(of);
    const std::string unit =
        lengths_.unit() == Unit::mm ? "sizes in millimetres" : "sizes in inches";
    Picture& picture = sheet.picture;
    picture.letterings.push_back({{right, high - 6}, scale, kLine + 0.5, Anchor::end, false, true});
    const double taken = width_of(picture.letterings.back());
    picture.letterings.push_back({{right, high - 11}, unit + ", " + count, kSmall, Anchor::end});
    const double below = width_of(picture.letterings.back());
    const std::string& id = item_.job->id;
    picture.letterings.push_back(
        {{left, high - 6.2},
         shortened(id, kTitleSize, right - left - taken - 6, Letters::bold),
         kTitleSize,
         Anchor::start,
         false,
         true});
    const std::string name = item_.job->name == id ? "" : item_.job->name;
    picture.letterings.push_back({{left, high - 11},
                                  shortened(name.empty() ? std::string(item_.job->kind) : name,
                                            kLine, right - left - below - 6, Letters::plain),
                                  kLine,
                                  Anchor::start});
  }

  /// What hatching means, beside the proof of the sheet's size.
  void legend(Picture& picture) const {
    struct Kind {
      Shown shown;
      std::string_view words;
    };
    constexpr Kind kKinds[] = {{Shown::end_grain, "end grain"},
                               {Shown::long_grain, "long grain"},
                               {Shown::board, "board"}};
    double u = width_ - kFreeMm - 3;
    for (const Kind& kind : kKinds) {
      Lettering words{{u, kFreeMm + 4}, std::string(kind.words), kSmall, Anchor::end};
      u -= width_of(words) + 1.2;
      picture.letterings.push_back(std::move(words));
      const Extent box{{u - 7, kFreeMm + 2.9}, {u, kFreeMm + 7.1}};
      const SpotRun loop{box.low, {box.high.u, box.low.v}, box.high, {box.low.u, box.high.v}};
      picture.add(hatching_of({loop}, kind.shown, {1, 0}, false));
      SpotRun closed = loop;
      closed.push_back(loop.front());
      picture.strokes.push_back({Pen::cut, {closed}});
      u -= 7 + 3.5;
    }
  }

  const ItemReport& item_;
  const LengthPrinter& lengths_;
  double width_, height_;
};

/// "a", "b" …, "z", "aa": without those that look like figures.
std::string letters_of(std::size_t number) {
  constexpr std::string_view kLetters = "abcdefghjkmnpqrstuvwxyz";
  std::string letters(1, kLetters[number % kLetters.size()]);
  return number < kLetters.size() ? letters : letters_of(number / kLetters.size() - 1) + letters;
}

/// The drawing of one item.
class Drawing {
 public:
  Drawing(const ItemReport& item, const LengthPrinter& lengths, const Extent& room)
      : item_(item), lengths_(lengths), room_(room), woods_(drawn_of(item.wood)) {
    for (LetteredCut& cut : whole_cuts(item))
      cuts_.push_back(lettered(std::move(cut)));
    for (JointView& view : joint_views(item.wood)) {
      joints_.push_back({std::move(view), {}});
      for (const CutAway& cut : joints_.back().view.sections)
        joints_.back().cuts.push_back(lettered({"", cut}));
      if (!joints_.back().cuts.empty()) cuts_.push_back(joints_.back().cuts.front());
    }
  }

  std::vector<LaidSheet> sheets() const {
    std::vector<SheetBlock> blocks = whole();
    for (SheetBlock& block : joint_details(item_, woods_, joints_, lengths_, room_))
      blocks.push_back(std::move(block));
    return lay_out(blocks, room_);
  }

 private:
  LetteredCut lettered(LetteredCut cut) {
    cut.letter = letters_of(lettered_++);
    return cut;
  }

  Picture titled_view(const WholeView& view, PaperScale scale) const {
    return titled(view.picture, {view.letter, view.title + ", " + scale_text(scale), {}},
                  room_.width());
  }

  /// At the largest scale at which each of them has room.
  std::vector<SheetBlock> whole() const {
    constexpr int kScales[] = {1, 2, 5, 10, 20, 50};
    const WholeViews views(item_, woods_, cuts_, lengths_);
    std::vector<SheetBlock> blocks;
    for (const int one_to : kScales) {
      const PaperScale scale{one_to};
      blocks.clear();
      for (const WholeView& view : views.at_scale(scale))
        blocks.push_back({titled_view(view, scale), scale});
      if (std::all_of(blocks.begin(), blocks.end(),
                      [&](const SheetBlock& block) { return has_room(block.picture); }))
        break;
    }
    return blocks;
  }

  bool has_room(const Picture& picture) const {
    const Extent extent = extent_of(picture).value_or(Extent());
    return extent.width() <= room_.width() && extent.height() <= room_.height();
  }

  const ItemReport& item_;
  const LengthPrinter& lengths_;
  Extent room_;
  std::vector<DrawnWood> woods_;
  std::vector<LetteredCut> cuts_;  // that the elevation tells of
  std::vector<LetteredJoint> joints_;
  std::size_t lettered_ = 0;
};

std::string sheet_id(const ItemReport& item, std::size_t number) {
  std::string id = safe_name(item.job->id);
  std::replace(id.begin(), id.end(), '%', '~');
  return id + "-sheet-" + std::to_string(number);
}

}  // namespace

std::vector<SheetPicture> drawing_sheets(const ItemReport& item, const LengthPrinter& lengths,
                                         const Paper& paper) {
  const SheetFrame frame(item, lengths, paper);
  const std::vector<LaidSheet> laid = Drawing(item, lengths, frame.room()).sheets();
  std::vector<SheetPicture> sheets;
  for (std::size_t i = 0; i < laid.size(); ++i) {
    SheetPicture sheet{sheet_id(item, i + 1),
                       item.job->id + ", drawing, sheet " + std::to_string(i + 1) + " of " +
                           std::to_string(laid.size()),
                       item.job->name, laid[i].scales, laid[i].picture};
    frame.draw(sheet, i + 1, laid.size());
    sheets.push_back(std::move(sheet));
  }
  return sheets;
}

}  // namespace haunch
