#include "drawing_sheets.h"

#include <algorithm>
#include <set>
#include <utility>

#include "item_drawing.h"
#include "output_folder.h"
#include "sheet_layout.h"
#include "text_width.h"

namespace haunch {
namespace {

constexpr double kFreeMm = 10, kHeadLine = 14, kFootHeight = 10, kInside = 3;
constexpr double kTitleSize = 5, kLine = 3.5, kSmall = 2.8;

double mm_of(Length length) {
  return static_cast<double>(length.steps()) / static_cast<double>(Length::kStepsPerMm);
}

/// As many lines as there may be; what is left is cut short with an ellipsis.
std::vector<std::string> at_most(std::size_t lines, const std::string& text, double size,
                                 double width, Letters letters) {
  std::vector<std::string> all = lettered_lines(text, size, width, letters);
  if (all.size() <= lines) return all;
  const double room = width - text_width("\u2026", letters) * size;
  all = lettered_lines(text, size, room, letters);
  all.resize(lines);
  all.back() += "\u2026";
  return all;
}

/// What those of its pieces that are of a part are made of; of several, which of each.
std::string materials_of(const ItemReport& item, const std::set<std::string>& of_part) {
  std::vector<std::pair<std::string, std::string>> marks;  // of each material, in order
  for (const CutRow& row : item.cutlist) {
    const auto is_shown = [&](const std::string& mark) { return of_part.count(mark) > 0; };
    if (row.material.empty() || std::none_of(row.marks.begin(), row.marks.end(), is_shown))
      continue;
    auto its = std::find_if(marks.begin(), marks.end(),
                            [&](const auto& other) { return other.first == row.material; });
    if (its == marks.end()) its = marks.insert(marks.end(), {row.material, ""});
    for (const std::string& mark : row.marks)
      if (is_shown(mark)) its->second += " " + mark;
  }
  if (marks.size() == 1) return marks.front().first;
  std::string words;
  for (const auto& [material, its] : marks) {
    if (!words.empty()) words += "; ";
    words += material;
    words += ":" + its;
  }
  return words;
}

/// How many of it there are, what of, and what the spec notes.
std::vector<std::string> order_lines(const ItemReport& item, const std::set<std::string>& of_part,
                                     double width) {
  constexpr std::size_t kMostLines = 3;
  std::string words = item.job->quantity > 1 ? std::to_string(item.job->quantity) + " off" : "";
  const std::string materials = materials_of(item, of_part);
  if (!words.empty() && !materials.empty()) words += "; ";
  words += materials;
  std::vector<std::string> lines;
  for (const std::string& text : {words, item.job->note})
    if (!text.empty())
      for (std::string& line : at_most(kMostLines, text, kSmall, width, Letters::plain))
        lines.push_back(std::move(line));
  return lines;
}

std::set<std::string> marks_in(const ItemReport& item, const DrawnPart& part) {
  std::set<std::string> marks;
  for (const std::size_t piece : part.pieces)
    marks.insert(item.wood.pieces[piece].mark);
  return marks;
}

/// The frame, the head and the foot of a sheet.
class SheetFrame {
 public:
  SheetFrame(const ItemReport& item, const DrawnPart& part, const LengthPrinter& lengths,
             const Paper& paper)
      : item_(item), lengths_(lengths), width_(mm_of(paper.width)), height_(mm_of(paper.height)) {
    const std::string& its = item.job->name;
    const std::string whole =
        its.empty() || its == item.job->id ? std::string(item.job->kind) : its;
    const std::string name = part.name.empty() ? whole : part.name;
    const double room = line() - kRightWords;
    const Lettering id{{}, item.job->id, kTitleSize, Anchor::start, false, true};
    if (width_of(id) + 3 <= kNameAt && kNameAt + width_of({{}, name, kLine}) <= room) {
      beside_id_ = name;
    } else {
      names_ = at_most(2, name, kLine, room, Letters::plain);
    }
    orders_ = order_lines(item, marks_in(item, part), line() - kRightWords);
  }

  /// Where views stand.
  Extent room() const {
    return {{kFreeMm + kInside, kFreeMm + kFootHeight + kInside},
            {width_ - kFreeMm - kInside, height_ - kFreeMm - head_height() - kInside}};
  }

  void draw(SheetPicture& sheet, std::size_t number, std::size_t of) const {
    const double left = kFreeMm, right = width_ - kFreeMm, low = kFreeMm, high = height_ - kFreeMm;
    Picture& picture = sheet.picture;
    picture.strokes.push_back(
        {Pen::frame, {{{left, low}, {right, low}, {right, high}, {left, high}, {left, low}}}});
    for (const double v : {high - head_height(), low + kFootHeight})
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
    const std::string id =
        at_most(1, item_.job->id, kTitleSize, right - left - taken - 6, Letters::bold).front();
    picture.letterings.push_back({{left, high - 6.2}, id, kTitleSize, Anchor::start, false, true});
    if (!beside_id_.empty())
      picture.letterings.push_back(
          {{left + kNameAt, high - 6.2}, beside_id_, kLine, Anchor::start});
    double down = 11;
    for (const std::string& line : names_) {
      picture.letterings.push_back({{left, high - down}, line, kLine, Anchor::start});
      down += kNameLine;
    }
    for (const std::string& line : orders_) {
      picture.letterings.push_back({{left, high - down}, line, kSmall, Anchor::start});
      down += kOrderLine;
    }
  }

  static constexpr double kNameLine = 4.6, kOrderLine = 3.9;
  static constexpr double kNameAt = 42;  // beside whatever id: so that sheets drawn alike are alike
  static constexpr double kRightWords = 62;  // that the unit and the sheet's number may take

  /// As long as a line within the frame may be.
  double line() const { return width_ - 2 * (kFreeMm + 3); }
  double head_height() const {
    const double names = static_cast<double>(names_.size()) * kNameLine,
                 orders = static_cast<double>(orders_.size()) * kOrderLine;
    return std::max(kHeadLine, 9.6 + names + orders);
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
  // Of the head: its name, beside the id where there is room, else on lines below; what is ordered.
  std::string beside_id_;
  std::vector<std::string> names_, orders_;
};

std::string sheet_id(const ItemReport& item, std::size_t number) {
  std::string id = safe_name(item.job->id);
  std::replace(id.begin(), id.end(), '%', '~');
  return id + "-sheet-" + std::to_string(number);
}

}  // namespace

std::vector<SheetPicture> drawing_sheets(const ItemReport& item, const LengthPrinter& lengths,
                                         const Paper& paper) {
  struct Framed {
    LaidSheet laid;
    std::size_t frame;
  };
  std::vector<Framed> all;
  std::vector<SheetFrame> frames;
  const ItemDrawing drawing(item, lengths);
  for (const DrawnPart& part : drawing.parts()) {
    const SheetFrame& frame = frames.emplace_back(item, part, lengths, paper);
    const Filling filling = part.along_wall ? Filling::in_order : Filling::first_with_room;
    for (LaidSheet& laid : lay_out(drawing.blocks(part, frame.room()), frame.room(), filling))
      all.push_back({std::move(laid), frames.size() - 1});
  }
  std::vector<SheetPicture> sheets;
  for (std::size_t i = 0; i < all.size(); ++i) {
    SheetPicture sheet{sheet_id(item, i + 1),
                       item.job->id + ", drawing, sheet " + std::to_string(i + 1) + " of " +
                           std::to_string(all.size()),
                       item.job->name, all[i].laid.scales, std::move(all[i].laid.picture)};
    frames[all[i].frame].draw(sheet, i + 1, all.size());
    sheets.push_back(std::move(sheet));
  }
  return sheets;
}

}  // namespace haunch
