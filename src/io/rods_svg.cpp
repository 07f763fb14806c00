#include "rods_svg.h"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <utility>

#include "rods_sheets.h"
#include "spread.h"
#include "svg_text.h"

namespace haunch {
namespace {

// Told apart from the others on paper at arm's length.
constexpr std::string_view kHeavyLine = "0.7";
/// 48 pixels of CSS: a browser that rounds a size to those would else scale all in it.
constexpr Length kHalfInch = Length::from_inch_parts(1, 2);

constexpr Length mm(std::int64_t whole) {
  return whole_mm(whole);
}
constexpr Length tenths(std::int64_t of_mm) {
  return tenths_of_mm(of_mm);
}

struct DrawnRod {
  const ItemRods& item;
  const Rod& rod;
  RodForm form;
  std::vector<RodSheet> sheets;
};

/// Draws one sheet; lines and lettering are put down from the paper's upper left corner.
class SheetDrawing {
 public:
  SheetDrawing(SvgText& svg, const DrawnRod& its, const LengthPrinter& lengths, std::size_t number,
               std::string id)
      : svg_(svg),
        item_(its.item),
        rod_(its.rod),
        form_(its.form),
        lengths_(lengths),
        sheet_(its.sheets[number]),
        number_{number + 1, its.sheets.size()},
        id_(std::move(id)),
        bottom_(sheet_.height - kFoot - kFree) {
    const Length spare = bottom_ - form_.top - (sheet_.to - sheet_.from);
    zero_ = bottom_ - (form_.paper ? kBeyond : floor_half(spare)) + sheet_.from;
  }

  void draw(Length x, Length y) {
    svg_.open("svg").with("id", id_).with("class", "sheet").with("x", x).with("y", y);
    svg_.with("width", form_.width).with("height", sheet_.height);
    svg_.with("data-from-mm", sheet_.from).with("data-to-mm", sheet_.to).inside();
    svg_.open("title").holds(title_of(item_, rod_, number_));
    svg_.open("rect").with("width", form_.width).with("height", sheet_.height);
    svg_.with("fill", "#fff").empty();
    head();
    strips();
    stretches();
    marks();
    labels();
    if (form_.paper) registers();
    proof();
    svg_.close();
  }

 private:
  Length y_of(Length at) const { return zero_ - at; }
  Length strip_at(std::size_t strip) const { return form_.strip_at(strip); }

  void lines(std::string_view name, std::string_view width) {
    svg_.open("g").with("class", name).with("fill", "none").with("stroke", "#000");
    svg_.with("stroke-width", width).inside();
  }
  SvgText& line(Length x1, Length y1, Length x2, Length y2) {
    return svg_.open("line").with("x1", x1).with("y1", y1).with("x2", x2).with("y2", y2);
  }
  /// Lettering by the left end of the line that it stands on.
  SvgText& text(Length x, Length y) { return svg_.open("text").with("x", x).with("y", y); }
  /// That line, of lettering whose middle is there.
  static Length under(Length middle) { return middle + tenths(13); }

  void head() {
    const RodHead head = head_of(item_, rod_, form_, lengths_, number_);
    Length y = kFree;
    for (std::size_t i = 0; i < head.lines.size(); ++i) {
      y += kHeadLine;
      text(form_.head(), y).with("font-weight", i < head.title ? "bold" : "normal");
      svg_.holds(head.lines[i]);
    }
  }

  void strips() {
    for (std::size_t strip = 0; strip < form_.headings.size(); ++strip) {
      const Length x = under(strip_at(strip) + floor_half(form_.strip));
      const std::string at = decimal(x, Unit::mm) + " " + decimal(form_.top - mm(1), Unit::mm);
      svg_.open("text")
          .with("class", "strip")
          .with("transform", "translate(" + at + ") rotate(-90)");
      svg_.holds(form_.headings[strip]);
    }
    lines("strips", kThinLine);
    for (const Length x : {form_.strips, form_.strips_end})
      line(x, y_of(sheet_.to) - kBeyond, x, y_of(sheet_.from) + kBeyond).empty();
    svg_.close();
  }

  /// Pieces as boxes, what is cut into them for others with a cross.
  void stretches() {
    const std::string clip = id_ + "-rod";
    svg_.open("clipPath").with("id", clip).inside();
    svg_.open("rect").with("x", form_.strips).with("y", y_of(sheet_.to));
    svg_.with("width", form_.strips_end - form_.strips).with("height", sheet_.to - sheet_.from);
    svg_.empty();
    svg_.close();
    svg_.open("g").with("clip-path", "url(#" + clip + ")").inside();
    for (const bool hollow : {false, true}) {
      lines(hollow ? "hollows" : "wood", hollow ? kThinLine : kThickLine);
      for (const RodStretch& its : rod_.stretches)
        if (its.hollow == hollow && its.to >= sheet_.from && its.from <= sheet_.to) stretch(its);
      svg_.close();
    }
    svg_.close();
  }

  void stretch(const RodStretch& its) {
    const Length in = floor_divide(form_.strip, its.hollow ? 4 : 8);
    const Length left = strip_at(its.strip) + in;
    const Length right = strip_at(its.strip) + form_.strip - in;
    svg_.open("rect").with("x", left).with("y", y_of(its.to)).with("width", right - left);
    svg_.with("height", its.to - its.from).empty();
    if (!its.hollow) return;
    line(left, y_of(its.from), right, y_of(its.to)).empty();
    line(left, y_of(its.to), right, y_of(its.from)).empty();
  }

  bool is_here(Length at) const { return at >= sheet_.from && at <= sheet_.to; }

  void marks() {
    lines("marks", kThinLine);
    for (std::size_t mark = 0; mark < rod_.marks.size(); ++mark) {
      const RodMark& its = rod_.marks[mark];
      if (!is_here(its.at)) continue;
      line(form_.strips, y_of(its.at), form_.strips_end, y_of(its.at));
      svg_.with("class", "mark").with("id", id_ + "-mark-" + std::to_string(mark + 1));
      svg_.with("data-at-mm", its.at).with("data-mark", mark_text(item_, rod_, its)).empty();
    }
    svg_.close();
    lines("ticks", kHeavyLine);
    for (const RodMark& its : rod_.marks)
      if (is_here(its.at)) ticks(its);
    svg_.close();
  }

  /// In the strips whose pieces a mark is carried to.
  void ticks(const RodMark& mark) {
    for (std::size_t i = 0; i < mark.names.size(); ++i) {
      const std::size_t strip = mark.names[i].strip;
      if (i > 0 && mark.names[i - 1].strip == strip) continue;
      line(strip_at(strip), y_of(mark.at), strip_at(strip) + form_.strip, y_of(mark.at)).empty();
    }
  }

  void labels() {
    std::vector<const RodLabel*> told;
    std::vector<Block> blocks;
    for (auto label = form_.labels.rbegin(); label != form_.labels.rend(); ++label) {
      if (!is_here(label->at)) continue;
      told.push_back(&*label);
      blocks.push_back({y_of(label->at) - floor_half(kLine), label->height()});
    }
    const std::vector<Length> upper = spread(blocks, form_.top, bottom_);
    lines("leaders", kThinLine);
    for (std::size_t i = 0; i < told.size(); ++i)
      leader(*told[i], upper[i] + floor_half(kLine));
    svg_.close();
    for (std::size_t i = 0; i < told.size(); ++i)
      words(*told[i], upper[i] + floor_half(kLine));
  }

  void leader(const RodLabel& label, Length middle) {
    const auto point = [](Length x, Length y) {
      return decimal(x, Unit::mm) + "," + decimal(y, Unit::mm);
    };
    const Length before = form_.figures_end - letters(display_width(label.figure)) - mm(1);
    svg_.open("polyline")
        .with("points", point(form_.strips_end, y_of(label.at)) + " " +
                            point(form_.strips_end + mm(2), y_of(label.at)) + " " +
                            point(form_.strips_end + kLeader - mm(1), middle) + " " +
                            point(std::max(before, form_.strips_end + kLeader - mm(1)), middle));
    svg_.empty();
  }

  void words(const RodLabel& label, Length middle) {
    text(form_.figures_end, under(middle)).with("class", "figure").with("text-anchor", "end");
    svg_.with("font-weight", "bold").holds(label.figure);
    for (const std::string& words : label.lines) {
      text(form_.words, under(middle)).with("class", "words").holds(words);
      middle += kLine;
    }
  }

  /// In the middle of what two sheets have in common.
  void registers() {
    lines("registers", kThinLine);
    if (number_.number > 1) crosses(number_.number - 1, sheet_.from + floor_half(kOverlap));
    if (number_.number < number_.of) crosses(number_.number, sheet_.to - floor_half(kOverlap));
    svg_.close();
  }

  void crosses(std::size_t number, Length at) {
    const Length y = y_of(at);
    for (const bool left : {true, false}) {
      const Length x = left ? kFree + mm(4) : form_.width - kFree - mm(4);
      svg_.open("circle").with("cx", x).with("cy", y).with("r", mm(2)).empty();
      line(x - mm(4), y, x + mm(4), y).with("class", "register").with("data-at-mm", at).empty();
      line(x, y - mm(4), x, y + mm(4)).empty();
      text(left ? x + tenths(5) : x - tenths(5), y - tenths(25));
      svg_.with("text-anchor", left ? "start" : "end").with("fill", "#000").with("stroke", "none");
      svg_.holds(std::to_string(number));
    }
  }

  void proof() {
    draw_proof(svg_, kFree, sheet_.height - kFree - mm(2), id_ + "-proof", lengths_.unit());
  }

  SvgText& svg_;
  const ItemRods& item_;
  const Rod& rod_;
  const RodForm& form_;
  const LengthPrinter& lengths_;
  const RodSheet& sheet_;
  SheetNumber number_;
  std::string id_;
  Length bottom_;
  Length zero_;  // where the rod's zero is, or would be
};

/// Sheets of paper stand below each other, rods in one piece side by side.
class Drawing {
 public:
  Drawing(const std::vector<ItemRods>& items, const LengthPrinter& lengths,
          std::optional<Paper> paper)
      : lengths_(lengths), paper_(paper) {
    for (const ItemRods& item : items)
      for (const Rod& rod : item.rods) {
        rods_.push_back({item, rod, form_of(item, rod, lengths, paper), {}});
        DrawnRod& drawn = rods_.back();
        drawn.sheets = sheets_of(rod, drawn.form);
        for (const RodSheet& sheet : drawn.sheets)
          reach(drawn.form.width, sheet.height);
      }
    if (paper) return;
    width_ = ceiling_multiple(width_, kHalfInch);
    height_ = ceiling_multiple(height_, kHalfInch);
  }

  std::string text() {
    std::string out = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
    SvgText svg(out);
    svg.open("svg").with("xmlns", "http://www.w3.org/2000/svg");
    svg.with("width", decimal(width_, Unit::mm) + "mm");
    svg.with("height", decimal(height_, Unit::mm) + "mm");
    svg.with("viewBox", "0 0 " + decimal(width_, Unit::mm) + " " + decimal(height_, Unit::mm));
    svg.with("font-family", "sans-serif").with("font-size", kLetter).with("fill", "#000").inside();
    svg.open("title").holds("Rods at full size");
    svg.open("desc").holds(
        "One user unit is a millimetre. Every line of class mark has its place from the rod's zero "
        "in data-at-mm, and in data-mark what it stands for.");
    if (paper_) svg.open("style").holds(page_style(*paper_));
    draw_all(svg);
    svg.close();
    return out;
  }

 private:
  void reach(Length width, Length height) {
    width_ = paper_ ? width : width_ + width;
    height_ = paper_ ? height_ + height : std::max(height_, height);
  }

  void draw_all(SvgText& svg) const {
    Length x, y;
    std::size_t drawn = 0;
    for (const DrawnRod& its : rods_)
      for (std::size_t sheet = 0; sheet < its.sheets.size(); ++sheet) {
        SheetDrawing(svg, its, lengths_, sheet, "sheet-" + std::to_string(++drawn)).draw(x, y);
        (paper_ ? y : x) += paper_ ? its.sheets[sheet].height : its.form.width;
      }
  }

  const LengthPrinter& lengths_;
  std::optional<Paper> paper_;
  std::vector<DrawnRod> rods_;
  Length width_, height_;
};

}  // namespace

std::string rods_svg(const std::vector<ItemRods>& items, const LengthPrinter& lengths,
                     std::string_view paper) {
  return Drawing(items, lengths, paper_called(paper)).text();
}

}  // namespace haunch
