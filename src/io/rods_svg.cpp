#include "rods_svg.h"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <utility>

#include "spread.h"
#include "svg_text.h"

namespace haunch {
namespace {

constexpr Length mm(std::int64_t whole) {
  return Length::from_mm(whole);
}
constexpr Length tenths(std::int64_t of_mm) {
  return Length::from_mm_thousandths(of_mm * 100);
}

// Sheets, lettering of 2.5 mm at least and two widths of lines as ISO 3098 and ISO 128 have them;
// how wide letters come out is the renderer's: 0.64 of their size holds for wide founts too.
constexpr Length kFree = mm(10);  // round each sheet
constexpr Length kLetter = tenths(35);
constexpr Length kLetterWidth = Length::from_mm_thousandths(2240);
constexpr Length kLine = tenths(44);  // from one line of lettering to the next
constexpr std::string_view kThin = "0.18", kThick = "0.35", kHeavy = "0.7";

constexpr Length kHeadLine = mm(5);
constexpr Length kFoot = mm(10);     // the proof of the scale
constexpr Length kEnd = mm(4);       // beyond a rod's ends
constexpr Length kOverlap = mm(20);  // of one sheet and the next
constexpr Length kRegister = mm(9);  // columns for the crosses
constexpr Length kLeader = mm(12);
constexpr std::int64_t kWords = 48;  // letters beside a rod in one piece
/// 48 pixels of CSS: a browser that rounds a size to those would else scale all in it.
constexpr Length kHalfInch = Length::from_inch_parts(1, 2);
constexpr std::size_t kFewPieces = 4;  // that are named above their strip

struct Paper {
  Length width, height;
};

/// ISO 216 and ANSI/ASME Y14.1.
std::optional<Paper> paper_called(std::string_view name) {
  if (name == "a4") return Paper{mm(210), mm(297)};
  if (name == "letter") return Paper{tenths(2159), tenths(2794)};
  return {};
}

Length letters(std::size_t count) {
  return kLetterWidth * static_cast<std::int64_t>(count);
}

std::size_t letters_in(Length width) {
  return static_cast<std::size_t>(floor_divide(width, kLetterWidth.steps()).steps());
}

// ---- words

/// What is written beside a mark: its figure, and lines of words.
struct Label {
  Length at;
  std::string figure;
  std::vector<std::string> lines;

  Length height() const { return kLine * static_cast<std::int64_t>(lines.size()); }
};

/// "A B": the strips say what these are; "door stiles" of many that are all on one.
std::string short_pieces(const ItemRods& item, const Rod& rod, const RodName& name) {
  const bool all = name.pieces.size() == rod.strips[name.strip].pieces.size();
  if (all && name.pieces.size() > kFewPieces) return strip_name(rod, name.strip);
  return joined(marks_of(item.wood, name.pieces));
}

/// "A B: lower end; E: lower edge"; what is the same of several strips once.
std::string short_text(const ItemRods& item, const Rod& rod, const RodMark& mark) {
  std::vector<std::pair<std::string, std::string>> told;  // pieces, what
  for (const RodName& name : mark.names) {
    const std::string what = what_text(item, name);
    const auto same =
        std::find_if(told.begin(), told.end(), [&](const auto& it) { return it.second == what; });
    if (same == told.end())
      told.emplace_back(short_pieces(item, rod, name), what);
    else
      same->first.append(", ").append(short_pieces(item, rod, name));
  }
  std::string text;
  for (const auto& [pieces, what] : told)
    text += (text.empty() ? "" : "; ") + pieces + ": " + what;
  return text;
}

std::vector<std::string> lines_of(const std::string& text, std::size_t width) {
  const std::string all = wrapped(text, width, 0);
  std::vector<std::string> lines;
  for (std::size_t from = 0; from < all.size();) {
    const std::size_t end = std::min(all.find('\n', from), all.size());
    lines.push_back(all.substr(from, end - from));
    from = end + 1;
  }
  return lines;
}

std::string strip_heading(const ItemRods& item, const Rod& rod, std::size_t strip) {
  const std::vector<std::size_t>& pieces = rod.strips[strip].pieces;
  std::string name = strip_name(rod, strip);
  if (pieces.size() > kFewPieces) return name;
  return name + " " + joined(marks_of(item.wood, pieces));
}

/// Which of how many sheets.
struct SheetNumber {
  std::size_t number, of;
};

std::string title_of(const ItemRods& item, const Rod& rod, const SheetNumber& sheet) {
  std::string text = item.id + ": " + std::string(word_of(rod.direction)) + " rod";
  if (sheet.of > 1)
    text += ", sheet " + std::to_string(sheet.number) + " of " + std::to_string(sheet.of);
  return text;
}

/// What a sheet begins with, in lines; of the title those in front.
std::vector<std::string> head_of(const ItemRods& item, const Rod& rod, const LengthPrinter& lengths,
                                 std::size_t width, const SheetNumber& sheet) {
  std::vector<std::string> lines = lines_of(title_of(item, rod, sheet), width);
  const auto add = [&](const std::string& text) {
    for (std::string& line : lines_of(text, width))
      lines.push_back(std::move(line));
  };
  add("the " + std::string(zero_of(rod.direction)) + " is at the lower end; " +
      lengths.one(rod.length) + " " + std::string(word_of(lengths.unit())) + " long");
  if (sheet.of > 1) add("lay crosses of one number on each other");
  return lines;
}

// ---- sheets

/// What the sheets of one rod have in common: places from their upper left corners.
struct Form {
  Length width;
  std::optional<Length> height;  // of paper
  Length strips, strip;          // the left edge of the first strip, the width of each
  Length figures_end, words;
  std::size_t head_width;  // letters in a line beside the names of the strips
  Length top;              // of where the rod lies
  std::vector<Label> labels;

  Length strips_end(const Rod& rod) const {
    return strips + strip * static_cast<std::int64_t>(rod.strips.size());
  }
  Length head(const Rod& rod) const { return strips_end(rod) + kLeader; }
};

Form form_of(const ItemRods& item, const Rod& rod, const LengthPrinter& lengths,
             const std::optional<Paper>& paper) {
  Form form;
  const auto strips = static_cast<std::int64_t>(rod.strips.size());
  form.strips = kFree + (paper ? kRegister : Length());
  form.strip = std::clamp(floor_divide(mm(60), strips), kLine, mm(9));
  std::size_t figure = 0;
  for (const RodMark& mark : rod.marks) {
    form.labels.push_back({mark.at, lengths.one(mark.at), {}});
    figure = std::max(figure, form.labels.back().figure.size());
  }
  form.figures_end = form.strips_end(rod) + kLeader + letters(figure);
  form.words = form.figures_end + mm(3);
  const Length beyond = kFree + (paper ? kRegister : Length());
  form.width = paper ? paper->width : form.words + kLetterWidth * kWords + beyond;
  if (paper) form.height = paper->height;
  const std::size_t width = letters_in(form.width - beyond - form.words);
  for (std::size_t mark = 0; mark < rod.marks.size(); ++mark)
    form.labels[mark].lines = lines_of(short_text(item, rod, rod.marks[mark]), width);
  std::size_t heading = 0;
  for (std::size_t strip = 0; strip < rod.strips.size(); ++strip)
    heading = std::max(heading, display_width(strip_heading(item, rod, strip)));
  form.head_width = letters_in(form.width - kFree - form.head(rod));
  const std::size_t head = head_of(item, rod, lengths, form.head_width, {99, 99}).size();
  form.top =
      kFree + std::max(letters(heading) + mm(2), kHeadLine * static_cast<std::int64_t>(head));
  return form;
}

/// A stretch of a rod on a sheet.
struct Sheet {
  Length from, to;
  Length height;
};

Length lettering_between(const Form& form, Length from, Length to) {
  Length height;
  for (const Label& label : form.labels)
    if (label.at >= from && label.at <= to) height += label.height();
  return height;
}

/// From `from` as far as `room` holds the lettering, but so far that the next one gets on.
Length farthest(const Form& form, Length from, Length to, Length room) {
  const Length least = from + kOverlap + mm(5);
  for (auto label = form.labels.rbegin(); label != form.labels.rend(); ++label) {
    if (label->at > to) continue;
    if (label->at < least || lettering_between(form, from, to) <= room) break;
    to = label->at - tenths(5);
  }
  return to;
}

std::vector<Sheet> sheets_of(const Rod& rod, const Form& form) {
  const Length first = rod.marks.front().at;
  const Length last = rod.marks.back().at;
  if (!form.height) {
    const Length rod_itself = last - first + kEnd * 2;
    const Length area = std::max(rod_itself, lettering_between(form, first, last));
    return {{first, last, form.top + area + kFoot + kFree}};
  }
  const Length area = *form.height - form.top - kFoot - kFree;
  std::vector<Sheet> sheets;
  for (Length from = first;; from = sheets.back().to - kOverlap) {
    const Length to = farthest(form, from, std::min(last, from + area - kEnd * 2), area);
    sheets.push_back({from, to, *form.height});
    if (to >= last) return sheets;
  }
}

// ---- the drawing

/// Draws one sheet; lines and lettering are put down from the paper's upper left corner.
class SheetDrawing {
 public:
  SheetDrawing(SvgText& svg, const ItemRods& item, const Rod& rod, const Form& form,
               const LengthPrinter& lengths, const std::vector<Sheet>& sheets, std::size_t number,
               std::string id)
      : svg_(svg),
        item_(item),
        rod_(rod),
        form_(form),
        lengths_(lengths),
        sheets_(sheets),
        number_(number),
        sheet_(sheets[number]),
        id_(std::move(id)),
        bottom_(sheet_.height - kFoot - kFree) {
    const Length spare = bottom_ - form.top - (sheet_.to - sheet_.from);
    zero_ = bottom_ - (form.height ? kEnd : floor_half(spare)) + sheet_.from;
  }

  void draw(Length x, Length y) {
    svg_.open("svg").with("id", id_).with("class", "sheet").with("x", x).with("y", y);
    svg_.with("width", form_.width).with("height", sheet_.height);
    svg_.with("data-from-mm", sheet_.from).with("data-to-mm", sheet_.to).inside();
    svg_.open("title").holds(title_of(item_, rod_, {number_ + 1, sheets_.size()}));
    svg_.open("rect").with("width", form_.width).with("height", sheet_.height);
    svg_.with("fill", "#fff").empty();
    head();
    strips();
    stretches();
    marks();
    labels();
    if (form_.height) registers();
    proof();
    svg_.close();
  }

 private:
  Length y_of(Length at) const { return zero_ - at; }
  Length strip_at(std::size_t strip) const {
    return form_.strips + form_.strip * static_cast<std::int64_t>(strip);
  }
  Length strips_end() const { return form_.strips_end(rod_); }

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
    const SheetNumber sheet{number_ + 1, sheets_.size()};
    const std::size_t title = lines_of(title_of(item_, rod_, sheet), form_.head_width).size();
    Length y = kFree;
    for (const std::string& line : head_of(item_, rod_, lengths_, form_.head_width, sheet)) {
      const bool bold = y < kFree + kHeadLine * static_cast<std::int64_t>(title);
      y += kHeadLine;
      text(form_.head(rod_), y).with("font-weight", bold ? "bold" : "normal").holds(line);
    }
  }

  void strips() {
    for (std::size_t strip = 0; strip < rod_.strips.size(); ++strip) {
      const Length x = under(strip_at(strip) + floor_half(form_.strip));
      const std::string at = decimal(x, Unit::mm) + " " + decimal(form_.top - mm(1), Unit::mm);
      svg_.open("text")
          .with("class", "strip")
          .with("transform", "translate(" + at + ") rotate(-90)");
      svg_.holds(strip_heading(item_, rod_, strip));
    }
    lines("strips", kThin);
    for (const Length x : {form_.strips, strips_end()})
      line(x, y_of(sheet_.to) - kEnd, x, y_of(sheet_.from) + kEnd).empty();
    svg_.close();
  }

  /// Pieces as boxes, what is cut into them for others with a cross.
  void stretches() {
    const std::string clip = id_ + "-rod";
    svg_.open("clipPath").with("id", clip).inside();
    svg_.open("rect").with("x", form_.strips).with("y", y_of(sheet_.to));
    svg_.with("width", strips_end() - form_.strips).with("height", sheet_.to - sheet_.from);
    svg_.empty();
    svg_.close();
    svg_.open("g").with("clip-path", "url(#" + clip + ")").inside();
    for (const bool hollow : {false, true}) {
      lines(hollow ? "hollows" : "wood", hollow ? kThin : kThick);
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
    lines("marks", kThin);
    for (std::size_t mark = 0; mark < rod_.marks.size(); ++mark) {
      const RodMark& its = rod_.marks[mark];
      if (!is_here(its.at)) continue;
      line(form_.strips, y_of(its.at), strips_end(), y_of(its.at));
      svg_.with("class", "mark").with("id", id_ + "-mark-" + std::to_string(mark + 1));
      svg_.with("data-at-mm", its.at).with("data-mark", mark_text(item_, rod_, its)).empty();
    }
    svg_.close();
    lines("ticks", kHeavy);
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
    std::vector<const Label*> told;
    std::vector<Block> blocks;
    for (auto label = form_.labels.rbegin(); label != form_.labels.rend(); ++label) {
      if (!is_here(label->at)) continue;
      told.push_back(&*label);
      blocks.push_back({y_of(label->at) - floor_half(kLine), label->height()});
    }
    const std::vector<Length> upper = spread(blocks, form_.top, bottom_);
    lines("leaders", kThin);
    for (std::size_t i = 0; i < told.size(); ++i)
      leader(*told[i], upper[i] + floor_half(kLine));
    svg_.close();
    for (std::size_t i = 0; i < told.size(); ++i)
      words(*told[i], upper[i] + floor_half(kLine));
  }

  void leader(const Label& label, Length middle) {
    const auto point = [](Length x, Length y) {
      return decimal(x, Unit::mm) + "," + decimal(y, Unit::mm);
    };
    const Length before = form_.figures_end - letters(display_width(label.figure)) - mm(1);
    svg_.open("polyline")
        .with("points", point(strips_end(), y_of(label.at)) + " " +
                            point(strips_end() + mm(2), y_of(label.at)) + " " +
                            point(strips_end() + kLeader - mm(1), middle) + " " +
                            point(std::max(before, strips_end() + kLeader - mm(1)), middle));
    svg_.empty();
  }

  void words(const Label& label, Length middle) {
    text(form_.figures_end, under(middle)).with("class", "figure").with("text-anchor", "end");
    svg_.with("font-weight", "bold").holds(label.figure);
    for (const std::string& words : label.lines) {
      text(form_.words, under(middle)).with("class", "words").holds(words);
      middle += kLine;
    }
  }

  /// In the middle of what two sheets have in common.
  void registers() {
    lines("registers", kThin);
    if (number_ > 0) crosses(number_, sheet_.from + floor_half(kOverlap));
    if (number_ + 1 < sheets_.size()) crosses(number_ + 1, sheet_.to - floor_half(kOverlap));
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
    const Length y = sheet_.height - kFree - mm(2);
    lines("proof", kThick);
    line(kFree, y, kFree + mm(100), y).with("id", id_ + "-proof").with("data-length-mm", mm(100));
    svg_.empty();
    for (const Length x : {kFree, kFree + mm(100)})
      line(x, y - mm(2), x, y + mm(2)).empty();
    svg_.close();
    text(kFree + mm(2), y - mm(1))
        .holds(lengths_.unit() == Unit::mm ? "100 mm; print at 100 %"
                                           : "100 mm, 3 15/16 in; print at 100 %");
  }

  SvgText& svg_;
  const ItemRods& item_;
  const Rod& rod_;
  const Form& form_;
  const LengthPrinter& lengths_;
  const std::vector<Sheet>& sheets_;
  std::size_t number_;
  const Sheet& sheet_;
  std::string id_;
  Length bottom_;
  Length zero_;  // where the rod's zero is, or would be
};

/// The sheets of a rod, and where its first stands.
struct DrawnRod {
  const ItemRods& item;
  const Rod& rod;
  Form form;
  std::vector<Sheet> sheets;
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
        for (const Sheet& sheet : drawn.sheets)
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
    if (paper_)
      svg.open("style").holds("@page { size: " + decimal(paper_->width, Unit::mm) + "mm " +
                              decimal(paper_->height, Unit::mm) + "mm; margin: 0 }");
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
        SheetDrawing(svg, its.item, its.rod, its.form, lengths_, its.sheets, sheet,
                     "sheet-" + std::to_string(++drawn))
            .draw(x, y);
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
