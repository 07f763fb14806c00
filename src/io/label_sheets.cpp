#include "label_sheets.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "shown_text.h"
#include "svg_text.h"

namespace haunch {
namespace {

// Beside the fonts' own names, so that all who print see letters that the reckoned widths hold for.
constexpr std::string_view kHead = R"(<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{title}</title>
<style>
@page {{ size: {width}mm {height}mm; margin: 0 }}
* {{ box-sizing: border-box; margin: 0; padding: 0 }}
body {{ font-family: Arial, "Liberation Sans", "DejaVu Sans", sans-serif; font-kerning: none;
  font-variant-ligatures: none; color: #000; background: #fff }}
.told {{ max-width: {width}mm; padding: 5mm; font-size: 4mm; line-height: 1.4 }}
.sheet {{ position: relative; width: {width}mm; height: {height}mm; break-inside: avoid }}
.sheet + .sheet {{ break-before: page }}
.sticker {{ position: absolute; width: {wide}mm; height: {high}mm; padding: {pad_y}mm {pad_x}mm }}
.sticker p {{ white-space: pre }}
.sticker b {{ display: block; white-space: pre }}
.sticker svg {{ position: absolute; top: {pad_y}mm; right: {pad_x}mm }}
.sticker svg * {{ fill: none; stroke: #000; stroke-width: 0.25; stroke-linecap: round;
  stroke-linejoin: round }}
.sticker svg .grain {{ stroke-width: 0.1 }}
@media screen {{
  .sheet, .sticker {{ outline: 0.2mm dashed #767676 }}
  .sheet {{ margin: 5mm auto }}
}}
@media print {{ .told {{ display: none }} }}
</style>
</head>
<body>
)";

/// How many go into a length, with a gap between two. A sheet that is filled to its edge is not to
/// lose its last row to a rounding.
std::size_t how_many(double length, double each, double gap) {
  constexpr double kRounding = 1e-6;
  const double number = std::floor((length + gap + kRounding) / (each + gap));
  return number < 1 ? 0 : static_cast<std::size_t>(number);
}

double taken(std::size_t number, double each, double gap) {
  return static_cast<double>(number) * (each + gap) - gap;
}

/// Printers leave this much of the paper's edge free.
constexpr double kNotPrinted = 5;
constexpr double kPadding = 2;

double padding_at(double from_edge) {
  return std::max(kPadding, kNotPrinted - from_edge);
}

PrintSize room_on(PrintSize sticker, PrintSize padding) {
  return {sticker.width - 2 * padding.width, sticker.height - 2 * padding.height};
}

// ---- words

std::string size_words(const Label& label, const LengthPrinter& lengths) {
  return lengths.one(label.length) + " x " + lengths.one(label.width) + " x " +
         lengths.one(label.thickness) + " " + std::string(word_of(lengths.unit()));
}

std::string sides_words(const Label& label) {
  if (!label.is_marked()) return {};
  return "face side " + std::string(side_words(label.face)) + ", face edge " +
         std::string(side_words(label.edge));
}

/// What all in a bag are joined to.
std::vector<LabelMate> mates_of(const LabelBag& bag) {
  std::vector<LabelMate> mates;
  for (const Label* label : bag)
    for (const LabelMate& mate : label->mates)
      if (std::none_of(mates.begin(), mates.end(), [&](const LabelMate& it) {
            return it.mark == mate.mark && it.kind == mate.kind;
          }))
        mates.push_back(mate);
  return mates;
}

/// All but the mark, which tells of one of several alike.
StickerWords words_of(const LabelBag& bag, const std::string& item, const std::string& order,
                      const LengthPrinter& lengths) {
  const Label& label = *bag.front();
  StickerWords words;
  words.name =
      bag.size() == 1 ? label.name : std::to_string(bag.size()) + " " + several_of(label.role);
  words.size = size_words(label, lengths);
  words.sides = sides_words(label);
  words.wood = wood_words(label);
  words.mates = mates_words(mates_of(bag));
  words.whence = item + (order.empty() ? "" : "; order " + order);
  words.drawn = label.is_marked();
  for (std::string* text : {&words.name, &words.wood, &words.whence})
    *text = shown_text(*text, Newlines::shown);
  return words;
}

/// "K1/C", of a bag "K1/K L M".
std::string mark_of(const LabelBag& bag, const std::string& one) {
  std::string text = order_mark(one, bag.front()->piece);
  for (std::size_t i = 1; i < bag.size(); ++i)
    text += " " + bag[i]->piece;
  return shown_text(text, Newlines::shown);
}

// ---- the drawing

/// A piece as it stands, seen from its face side, as large as goes in `room`, with what is
/// pencilled on it: a loop on the face whose tail runs out at the face edge, and a cross on that.
class FaceDrawing {
 public:
  FaceDrawing(const LabelView& view, PrintSize room) : view_(view), room_(room) {
    // Slender pieces are drawn stouter: it is told which way up they stand, not how long they are.
    constexpr double kStoutest = 2.6;
    const double ratio = std::clamp(
        static_cast<double>(view.across.steps()) / static_cast<double>(view.upright.steps()),
        1 / kStoutest, kStoutest);
    const double width = room.width - 2 * kFree, height = room.height - 2 * kFree;
    half_width_ = std::min(width, height * ratio) / 2;
    half_height_ = half_width_ / ratio;
  }

  std::string svg() const {
    return "<svg width=\"" + print_figure(room_.width) + "mm\" height=\"" +
           print_figure(room_.height) + "mm\" viewBox=\"0 0 " + print_figure(room_.width) + " " +
           print_figure(room_.height) +
           "\" role=\"img\"><title>from its face side, as it stands: face edge " +
           std::string(word_of(view_.edge)) + "</title>" + outline() + grain() + loop() + cross() +
           "</svg>";
  }

 private:
  static constexpr double kFree = 1.6;  // round the piece, for the cross

  /// A point so far out of the middle towards the face edge, and so far along that.
  std::string at(double out, double along) const {
    double x = 0, y = 0;
    switch (view_.edge) {
      case Surface::right:
        x = out, y = along;
        break;
      case Surface::upper:
        x = along, y = -out;
        break;
      case Surface::lower:
        x = along, y = out;
        break;
      default:
        x = -out, y = along;
    }
    return print_figure(room_.width / 2 + x) + " " + print_figure(room_.height / 2 + y);
  }
  bool is_at_side() const { return view_.edge == Surface::left || view_.edge == Surface::right; }
  double to_edge() const { return is_at_side() ? half_width_ : half_height_; }

  std::string outline() const {
    return "<rect x=\"" + print_figure(room_.width / 2 - half_width_) + "\" y=\"" +
           print_figure(room_.height / 2 - half_height_) + "\" width=\"" +
           print_figure(2 * half_width_) + "\" height=\"" + print_figure(2 * half_height_) + "\"/>";
  }

  std::string grain() const {
    std::string path;
    constexpr double kAside = 0.7, kEnd = 0.85;
    for (const double side : {-kAside, kAside}) {
      const double x = (view_.grain_upright ? side : kEnd) * half_width_;
      const double y = (view_.grain_upright ? kEnd : side) * half_height_;
      const double x0 = view_.grain_upright ? x : -x, y0 = view_.grain_upright ? -y : y;
      path += "M" + print_figure(room_.width / 2 + x0) + " " + print_figure(room_.height / 2 + y0) +
              "L" + print_figure(room_.width / 2 + x) + " " + print_figure(room_.height / 2 + y);
    }
    return "<path class=\"grain\" d=\"" + path + "\"/>";
  }

  std::string loop() const {
    const double edge = to_edge(), bow = std::min(edge, kFree * 1.6);
    return "<path d=\"M" + at(edge, 0) + "C" + at(edge - bow, -bow * 0.2) + " " +
           at(edge - bow * 1.9, -bow) + " " + at(edge - bow * 1.2, -bow * 1.1) + "S" +
           at(edge - bow * 0.7, bow * 0.6) + " " + at(edge - bow * 1.5, bow * 0.8) + "\"/>";
  }

  std::string cross() const {
    const double edge = to_edge(), arm = kFree / 2;
    return "<path d=\"M" + at(edge - arm, -arm) + "L" + at(edge + arm, arm) + "M" +
           at(edge - arm, arm) + "L" + at(edge + arm, -arm) + "\"/>";
  }

  const LabelView& view_;
  PrintSize room_;
  double half_width_ = 0, half_height_ = 0;
};

// ---- the page

std::string line_html(const StickerLine& line) {
  const std::string tag = line.letters == Letters::bold ? "b" : "p";
  return "<" + tag + " style=\"font-size:" + print_figure(line.type) +
         "mm;line-height:" + print_figure(line.type * kLeading) + "mm\">" + xml_text(line.text) +
         "</" + tag + ">";
}

std::string head_html(const StickerSheet& sheet, const StickerGrid& grid,
                      const std::string& order) {
  return fmt::format(fmt::runtime(kHead),
                     fmt::arg("title", xml_text(order.empty() ? "Labels" : "Labels: " + order)),
                     fmt::arg("width", print_figure(sheet.paper.width)),
                     fmt::arg("height", print_figure(sheet.paper.height)),
                     fmt::arg("wide", print_figure(sheet.sticker.width)),
                     fmt::arg("high", print_figure(sheet.sticker.height)),
                     fmt::arg("pad_x", print_figure(grid.padding.width)),
                     fmt::arg("pad_y", print_figure(grid.padding.height)));
}

std::string count(std::size_t number, std::string_view what) {
  return std::to_string(number) + " " + std::string(what) + (number == 1 ? "" : "s");
}

/// Shown on a screen, not printed.
std::string told_html(const LabelSheets& made, std::size_t labels) {
  std::string text = count(labels, "label") + " on " + count(made.stickers, "sticker") + ", " +
                     count(made.sheets, "sheet") + ". ";
  if (made.stickers < labels) text += "Small pieces that are alike share one, for their bag. ";
  text +=
      "Print at 100 %, not fitted to the page; try it on plain paper, and hold that against a "
      "sheet of stickers. ";
  if (made.shortened > 0)
    text += count(made.shortened, "sticker") + " of them " +
            (made.shortened == 1 ? "ends" : "end") +
            " with …: what was left out is in the table of labels. ";
  text +=
      "The drawing shows a piece from its face side as it stands in the work: a loop on the face "
      "side, its tail at the face edge, a cross there.";
  return "<p class=\"told\">" + xml_text(text) + "</p>\n";
}

/// One file: its stickers row by row, sheet by sheet.
class SheetWriter {
 public:
  SheetWriter(const StickerSheet& sheet, const StickerGrid& grid) : sheet_(sheet), grid_(grid) {}

  void add(const Sticker& sticker, const LabelBag& bag) {
    const std::size_t place = stickers_ % (grid_.columns * grid_.rows);
    if (place == 0) open_sheet();
    const std::size_t above = place / grid_.columns;
    const auto row = static_cast<double>(above);
    const auto column = static_cast<double>(place % grid_.columns);
    html_ += "<div class=\"sticker\" data-pieces=\"" + std::to_string(bag.size()) +
             "\" style=\"left:" +
             print_figure(grid_.first.width + column * (sheet_.sticker.width + sheet_.gap.width)) +
             "mm;top:" +
             print_figure(grid_.first.height + row * (sheet_.sticker.height + sheet_.gap.height)) +
             "mm\">";
    if (sticker.drawing.width > 0) html_ += FaceDrawing(bag.front()->view, sticker.drawing).svg();
    for (const StickerLine& line : sticker.lines)
      html_ += line_html(line);
    html_ += "</div>\n";
    ++stickers_;
  }

  std::size_t stickers() const { return stickers_; }
  std::size_t sheets() const { return sheets_; }
  std::string take() { return std::move(html_) + (sheets_ > 0 ? "</section>\n" : ""); }

 private:
  void open_sheet() {
    if (sheets_ > 0) html_ += "</section>\n";
    html_ += "<section class=\"sheet\">\n";
    ++sheets_;
  }

  const StickerSheet& sheet_;
  const StickerGrid& grid_;
  std::string html_;
  std::size_t stickers_ = 0, sheets_ = 0;
};

/// The sticker as it is, larger and larger, until these words fit.
PrintSize size_for(const StickerWords& words, PrintSize sticker, PrintSize padding) {
  constexpr double kMore = 1.05;
  while (!fit_sticker(words, room_on(sticker, padding)))
    sticker = {sticker.width * kMore, sticker.height * kMore};
  return {std::ceil(sticker.width), std::ceil(sticker.height)};
}

}  // namespace

std::optional<StickerGrid> grid_of(const StickerSheet& sheet) {
  const PrintSize free{sheet.paper.width - 2 * sheet.margin.width,
                       sheet.paper.height - 2 * sheet.margin.height};
  StickerGrid grid;
  grid.columns = how_many(free.width, sheet.sticker.width, sheet.gap.width);
  grid.rows = how_many(free.height, sheet.sticker.height, sheet.gap.height);
  if (grid.columns == 0 || grid.rows == 0) return {};
  grid.first = {
      (sheet.paper.width - taken(grid.columns, sheet.sticker.width, sheet.gap.width)) / 2,
      (sheet.paper.height - taken(grid.rows, sheet.sticker.height, sheet.gap.height)) / 2};
  grid.padding = {padding_at(grid.first.width), padding_at(grid.first.height)};
  return grid;
}

LabelSheets label_sheets(const std::vector<ItemLabels>& items, const StickerSheet& sheet,
                         const StickerGrid& grid, const std::string& order,
                         const LengthPrinter& lengths) {
  LabelSheets made;
  SheetWriter writer(sheet, grid);
  made.would_do = sheet.sticker;
  const auto add = [&](const LabelBag& bag, const StickerWords& words) {
    if (const auto sticker = fit_sticker(words, room_on(sheet.sticker, grid.padding))) {
      if (sticker->shortened) ++made.shortened;
      return writer.add(*sticker, bag);
    }
    if (made.too_long.empty()) made.too_long = words.mark;
    made.would_do = size_for(words, made.would_do, grid.padding);
  };
  for (const ItemLabels& item : items) {
    const std::vector<LabelBag> bags = bagged(item.labels);
    for (int copy = 1; copy <= item.quantity; ++copy)
      for (const LabelBag& bag : bags) {
        StickerWords words = words_of(bag, item.name, order, lengths);
        words.mark = mark_of(bag, item.one(copy));
        add(bag, words);
      }
  }
  made.stickers = writer.stickers();
  made.sheets = writer.sheets();
  made.html = head_html(sheet, grid, shown_text(order, Newlines::shown)) +
              told_html(made, count_of(items)) + writer.take() + "</body>\n</html>\n";
  return made;
}

}  // namespace haunch
