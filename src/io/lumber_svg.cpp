#include "lumber_svg.h"

#include <algorithm>
#include <array>
#include <utility>

#include "board_layout.h"
#include "lumber_text.h"
#include "paper.h"
#include "picture.h"
#include "svg_text.h"

namespace haunch {
namespace {

using lumber::PieceKind;
using lumber::StepReason;

constexpr Length kLine = tenths_of_mm(44);      // from one line of lettering to the next
constexpr Length kFootLine = whole_mm(7);       // for a sheet's number
constexpr Length kBetween = whole_mm(7);        // drawings on a sheet
constexpr Length kIndent = whole_mm(8);         // of lines under a number
constexpr Length kForContinued = whole_mm(40);  // the words of a board that goes on
constexpr Length kColumnGap = whole_mm(6);
constexpr Length kBoardLeft = whole_mm(6);  // of the board and all words; rings stand there

double mm_of(Length length) {
  return static_cast<double>(length.steps()) / static_cast<double>(Length::kStepsPerMm);
}

struct DrawnText {
  Length x;
  std::string words;
  bool bold = false;
};

/// What is drawn below the row before: words, or the board itself.
struct DrawnRow {
  Length height;
  std::vector<DrawnText> texts;  // on one line
  bool is_board = false;
  bool is_legend = false;
};

/// As much of what is told of boards that are cut alike as one sheet holds.
struct BoardBlock {
  std::string title;
  std::string id;
  const BoardLayout* layout = nullptr;
  std::vector<DrawnRow> rows;

  Length height() const {
    Length sum;
    for (const DrawnRow& row : rows)
      sum += row.height;
    return sum;
  }
};

// ---- hatches

struct Hatch {
  std::string_view name;   // "keep"
  std::string_view words;  // beside its swatch
  std::string_view path;   // of one tile
  std::string_view tile;   // its side, mm
};

constexpr std::array<Hatch, 4> kHatches = {{
    {"keep", "kept", "M0,4 L4,0", "4"},
    {"scrap", "scrap", "M0,0 L1.2,1.2", "1.2"},
    {"trim", "trimmed off", "M0.3,0 V0.6", "0.6"},
    {"defect", "defect", "M0,0 L1.6,1.6 M0,1.6 L1.6,0", "1.6"},
}};

std::string_view hatch_of(PieceKind kind) {
  switch (kind) {
    case PieceKind::kept:
      return "keep";
    case PieceKind::scrap:
      return "scrap";
    case PieceKind::trim:
      return "trim";
    case PieceKind::part:
      break;
  }
  return {};
}

bool has_hatch(const BoardLayout& layout, std::string_view name) {
  if (name == "defect") return !layout.defects.empty();
  return std::any_of(layout.pieces.begin(), layout.pieces.end(),
                     [&](const LetteredPiece& each) { return hatch_of(each.piece.kind) == name; });
}

/// The sooner a cut is made, the heavier; of the widths that ISO 128 has.
std::string_view weight_of(StepReason reason) {
  switch (reason) {
    case StepReason::section:
      return "0.7";
    case StepReason::strip:
      return "0.5";
    case StepReason::part:
      return "0.35";
    default:
      return "0.18";
  }
}

// ---- writing

/// Writes one block, its upper left corner where the user unit's zero is.
class BlockWriter {
 public:
  BlockWriter(SvgText& svg, const BoardBlock& block) : svg_(svg), block_(block) {}

  void write() {
    svg_.open("title").holds(block_.title);
    Length y;
    for (const DrawnRow& row : block_.rows) {
      if (row.is_board) board(y);
      if (row.is_legend) legend(y);
      for (const DrawnText& text : row.texts) {
        svg_.open("text")
            .with("x", kBoardLeft + text.x)
            .with("y", y + row.height - tenths_of_mm(12));
        if (text.bold) svg_.with("font-weight", "bold");
        svg_.holds(text.words);
      }
      y += row.height;
    }
  }

 private:
  std::string fill(std::string_view hatch) const {
    return "url(#" + block_.id + "-" + std::string(hatch) + ")";
  }

  void rect(const PaperBox& box) {
    svg_.open("rect").with("x", box.x).with("y", box.y).with("width", box.width);
    svg_.with("height", box.height);
  }

  void hatches() {
    svg_.open("defs").inside();
    for (const Hatch& hatch : kHatches) {
      if (!has_hatch(*block_.layout, hatch.name)) continue;
      svg_.open("pattern").with("id", block_.id + "-" + std::string(hatch.name));
      svg_.with("patternUnits", "userSpaceOnUse").with("width", hatch.tile);
      svg_.with("height", hatch.tile).inside();
      // What lies below is not to be seen through it.
      svg_.open("rect").with("width", hatch.tile).with("height", hatch.tile);
      svg_.with("fill", "#fff").empty();
      svg_.open("path").with("d", hatch.path).with("fill", "none").with("stroke", "#000");
      svg_.with("stroke-width", "0.13").empty();
      svg_.close();
    }
    svg_.close();
  }

  /// What each hatch stands for, of those that are there.
  void legend(Length y) {
    hatches();
    Length x = kBoardLeft;
    for (const Hatch& hatch : kHatches) {
      if (!has_hatch(*block_.layout, hatch.name)) continue;
      rect({x, y + whole_mm(1), whole_mm(8), whole_mm(3)});
      svg_.with("fill", fill(hatch.name)).with("stroke", "#000").with("stroke-width", "0.18");
      svg_.empty();
      x += whole_mm(9);
      svg_.open("text").with("x", x).with("y", y + tenths_of_mm(38)).holds(hatch.words);
      x += lettering_length(std::string(hatch.words), kLetter) + whole_mm(3);
    }
  }

  void board(Length y) {
    const BoardLayout& layout = *block_.layout;
    const std::string at =
        decimal(kBoardLeft, Unit::mm) + " " + decimal(y + layout.above, Unit::mm);
    svg_.open("g").with("class", "board").with("transform", "translate(" + at + ")");
    svg_.with("data-scale", std::to_string(layout.scale)).with("font-size", kSmallLetter);
    svg_.with("text-anchor", "middle").inside();
    for (const LetteredPiece& piece : layout.pieces)
      wood(piece);
    for (const PaperBox& defect : layout.defects)
      hatched(defect, "defect");
    cuts();
    for (const LetteredPiece& piece : layout.pieces)
      lettering(piece);
    rings();
    svg_.close();
  }

  void hatched(const PaperBox& box, std::string_view hatch) {
    rect(box);
    svg_.with("class", hatch).with("fill", fill(hatch)).empty();
  }

  void wood(const LetteredPiece& piece) {
    if (piece.piece.kind != PieceKind::part) return hatched(piece.box, hatch_of(piece.piece.kind));
    rect(piece.box);
    svg_.with("class", "part").with("fill", "#fff").with("data-part", piece.words);
    svg_.with("data-boards", std::to_string(block_.layout->alike));
    svg_.with("data-x-mm", piece.piece.spot.x).with("data-y-mm", piece.piece.spot.y);
    svg_.with("data-length-mm", piece.piece.spot.length);
    svg_.with("data-width-mm", piece.piece.spot.width).empty();
  }

  static std::string stretch(Length x1, Length y1, Length x2, Length y2) {
    const auto mm = [](Length length) { return decimal(length, Unit::mm); };
    return "M" + mm(x1) + " " + mm(y1) +
           (x1 == x2   ? "V" + mm(y2)
            : y1 == y2 ? "H" + mm(x2)
                       : "L" + mm(x2) + " " + mm(y2));
  }

  void cuts() {
    svg_.open("g").with("class", "cuts").with("stroke", "#000").inside();
    for (const DrawnCut& cut : block_.layout->cuts) {
      svg_.open("path").with("d", stretch(cut.x1, cut.y1, cut.x2, cut.y2));
      svg_.with("stroke-width", weight_of(cut.step->reason)).empty();
    }
    svg_.close();
    rect(block_.layout->board);
    svg_.with("class", "whole")
        .with("data-length-mm", block_.layout->length)
        .with("fill", "none")
        .with("stroke", "#000")
        .with("stroke-width", "0.35")
        .empty();
  }

  void lettering(const LetteredPiece& piece) {
    if (piece.piece.kind == PieceKind::kept && !piece.lines.empty()) {
      rect(piece.lettering);
      svg_.with("fill", "#fff").empty();
    }
    Length y = piece.lettering.y;
    for (const std::string& line : piece.lines) {
      text(piece.lettering.middle_x(), y, line);
      y += kSmallLine;
    }
    if (piece.leader) leader(*piece.leader, piece.key);
  }

  /// In a line whose upper edge is at `y`.
  void text(Length middle, Length y, const std::string& words) {
    svg_.open("text").with("x", middle).with("y", y + tenths_of_mm(25)).holds(words);
  }

  void leader(const KeyLeader& its, const std::string& key) {
    const auto point = [](Length x, Length y) {
      return decimal(x, Unit::mm) + "," + decimal(y, Unit::mm);
    };
    const Length edge = block_.layout->board.bottom();
    svg_.open("circle").with("cx", its.x).with("cy", its.y).with("r", "0.35").empty();
    svg_.open("polyline").with("fill", "none").with("stroke", "#000").with("stroke-width", "0.18");
    svg_.with("points", point(its.x, its.y) + " " + point(its.x, edge + whole_mm(1)) + " " +
                            point(its.key, edge + tenths_of_mm(38)));
    svg_.empty();
    text(its.key, edge + whole_mm(4), key);
  }

  void rings() {
    const std::vector<CutRing>& rings = block_.layout->rings;
    if (rings.empty()) return;
    svg_.open("g").with("class", "rings").with("fill", "#fff").with("stroke", "#000");
    svg_.with("stroke-width", "0.18").inside();
    std::string leaders;
    for (const CutRing& its : rings)
      leaders += stretch(its.from_x, its.from_y, its.x, its.y);
    svg_.open("path").with("d", leaders).empty();
    for (const CutRing& its : rings) {
      if (!its.led) continue;
      svg_.open("circle").with("cx", its.from_x).with("cy", its.from_y).with("r", "0.35");
      svg_.with("fill", "#000").empty();
    }
    for (const CutRing& its : rings) {
      svg_.open("circle").with("cx", its.x).with("cy", its.y);
      svg_.with("r", floor_half(ring_width(its.number))).empty();
    }
    svg_.close();
    for (const CutRing& its : rings)
      text(its.x, its.y - floor_half(kSmallLine), its.number);
  }

  SvgText& svg_;
  const BoardBlock& block_;
};

// ---- what is told of a board

struct Told {
  AlikeBoards alike;
  std::vector<CutLine> lines;
  BoardLayout layout;
};

/// Rows of words in a space of some width.
class Rows {
 public:
  explicit Rows(Length width) : width_(width) {}

  void paragraph(const std::string& words, bool bold = false) { add(words, {}, bold); }

  /// Under a number, which stands before it.
  void numbered(std::size_t number, const std::string& words) {
    add(words, std::to_string(number), false);
  }

  /// Texts side by side, in columns as wide as the longest that takes no more than half the width.
  void columns(const std::vector<std::string>& texts) {
    const Length half = floor_half(width_ - kColumnGap);
    Length longest = whole_mm(10);
    for (const std::string& text : texts)
      if (lettering_length(text, kLetter) <= half)
        longest = std::max(longest, lettering_length(text, kLetter));
    const Length column = longest + kColumnGap;
    const auto abreast = (width_ + kColumnGap).steps() / column.steps();
    std::int64_t in_row = abreast;
    for (const std::string& text : texts) {
      if (lettering_length(text, kLetter) > half) {
        paragraph(text);
        in_row = abreast;
        continue;
      }
      if (in_row == abreast) rows_.push_back({kLine, {}});
      in_row %= abreast;
      rows_.back().texts.push_back({column * in_row++, text});
    }
  }

  void space(Length height) { rows_.push_back({height, {}}); }
  void put(DrawnRow row) { rows_.push_back(std::move(row)); }
  std::vector<DrawnRow> take() { return std::move(rows_); }

 private:
  void add(const std::string& words, const std::string& number, bool bold) {
    const Length indent = number.empty() ? Length() : kIndent;
    bool first = true;
    const Letters letters = bold ? Letters::bold : Letters::plain;
    for (std::string& line :
         lettered_lines(words, mm_of(kLetter), mm_of(width_ - indent), letters)) {
      DrawnRow row{kLine, {}};
      if (first && !number.empty()) row.texts.push_back({Length(), number});
      row.texts.push_back({indent, std::move(line), bold});
      rows_.push_back(std::move(row));
      first = false;
    }
  }

  Length width_;
  std::vector<DrawnRow> rows_;
};

class BoardSheets {
 public:
  BoardSheets(const LumberReport& report, const LengthPrinter& lengths, Length width, Length height)
      : report_(report), lengths_(lengths), width_(width), height_(height) {
    for (AlikeBoards& alike : alike_boards(report, lengths)) {
      const CutRows rows(report, *alike.plan, lengths);
      std::vector<CutLine> lines = rows.lines(alike.boards);
      // Leaves room for the heading, the rings and the first lines below.
      const PaperBox space{Length(), Length(), width, height - whole_mm(60)};
      BoardLayout layout = layout_of(report, alike, lines, lengths, space);
      told_.push_back({std::move(alike), std::move(lines), std::move(layout)});
    }
  }

  std::vector<BoardBlock> blocks() const {
    std::vector<BoardBlock> all;
    for (std::size_t i = 0; i < told_.size(); ++i)
      add_blocks(told_[i], "board-" + std::to_string(i + 1), all);
    return all;
  }

 private:
  std::vector<DrawnRow> rows_of(const Told& told) const {
    const BoardLayout& layout = told.layout;
    Rows rows(width_ - kBoardLeft);
    rows.paragraph(board_heading(report_, told.alike, lengths_), true);
    rows.paragraph(scale_words(layout));
    rows.space(whole_mm(1));
    DrawnRow board{layout.above + layout.board.height + layout.below + whole_mm(1), {}};
    board.is_board = true;
    rows.put(board);
    if (layout.pieces.size() > 1 || !layout.defects.empty()) {
      DrawnRow legend{whole_mm(6), {}};
      legend.is_legend = true;
      rows.put(legend);
    }
    rows.columns(layout.told_beside());
    const std::string trim = trim_of(report_, told.alike, lengths_);
    if (!trim.empty()) rows.paragraph("first: " + trim);
    for (std::size_t i = 0; i < told.lines.size(); ++i)
      rows.numbered(i + 1, told.lines[i].words);
    return rows.take();
  }

  std::string scale_words(const BoardLayout& layout) const {
    return "scale 1 : " + std::to_string(layout.scale) + "; sizes in " +
           (lengths_.unit() == Unit::mm ? "mm" : "inches") +
           (layout.cuts.empty() ? "; as it is, without a cut"
                                : "; low edge below, low end to the left");
  }

  void add_blocks(const Told& told, const std::string& id, std::vector<BoardBlock>& all) const {
    const std::string title = board_heading(report_, told.alike, lengths_);
    all.push_back({title, id, &told.layout, {}});
    for (DrawnRow& row : rows_of(told)) {
      if (all.back().height() + row.height > height_) {
        all.push_back({title + ", continued", id + "-on", &told.layout, {}});
        all.back().rows.push_back({kLine, {{Length(), short_title(title) + ", continued", true}}});
      }
      all.back().rows.push_back(std::move(row));
    }
  }

  /// "BOARD 1": the words before the colon, as far as a line holds them.
  std::string short_title(const std::string& title) const {
    const Length width = width_ - kBoardLeft - kForContinued;
    return lettered_lines(title.substr(0, title.find(':')), mm_of(kLetter), mm_of(width),
                          Letters::bold)
        .front();
  }

  const LumberReport& report_;
  const LengthPrinter& lengths_;
  Length width_, height_;
  std::vector<Told> told_;
};

void root(SvgText& svg, Length width, Length height) {
  svg.open("svg").with("xmlns", "http://www.w3.org/2000/svg");
  svg.with("width", decimal(width, Unit::mm) + "mm");
  svg.with("height", decimal(height, Unit::mm) + "mm");
  svg.with("viewBox", "0 0 " + decimal(width, Unit::mm) + " " + decimal(height, Unit::mm));
  svg.with("font-family", "sans-serif").with("font-size", kLetter).with("fill", "#000");
  svg.with("style", "font-kerning: none").inside();  // what lines are reckoned by
}

// ---- sheets

/// Paper lying on its side.
struct LyingPaper {
  Length width, height;

  Length inner_width() const { return width - kFree * 2; }
  Length inner_height() const { return height - kFree * 2 - kFootLine; }
};

LyingPaper lying(const Paper& paper) {
  return {paper.height, paper.width};
}

/// What found no place, and that there is nothing else.
std::vector<BoardBlock> words_first(const LumberReport& report, const LengthPrinter& lengths,
                                    const LyingPaper& paper) {
  std::vector<std::string> texts = unplaced_texts(report, lengths);
  if (texts.empty() && !report.plans.empty()) return {};
  if (texts.empty()) texts = {"nothing is cut"};
  Rows rows(paper.inner_width() - kBoardLeft);
  for (std::size_t i = 0; i < texts.size(); ++i)
    rows.paragraph(texts[i], i == 0);
  std::vector<BoardBlock> all(1, {"not placed", "", nullptr, {}});
  for (DrawnRow& row : rows.take()) {
    if (all.back().height() + row.height > paper.inner_height())
      all.push_back({"not placed, continued", "", nullptr, {}});
    all.back().rows.push_back(std::move(row));
  }
  return all;
}

/// Which blocks stand on each sheet, one below the other.
std::vector<std::vector<const BoardBlock*>> shared_out(const std::vector<BoardBlock>& blocks,
                                                       const LyingPaper& paper) {
  std::vector<std::vector<const BoardBlock*>> sheets(1);
  Length used;
  for (const BoardBlock& block : blocks) {
    if (!sheets.back().empty() && used + block.height() > paper.inner_height()) {
      sheets.emplace_back();
      used = Length();
    }
    sheets.back().push_back(&block);
    used += block.height() + kBetween;
  }
  return sheets;
}

void sheet(SvgText& svg, const std::vector<const BoardBlock*>& blocks, const LyingPaper& paper,
           std::size_t number, std::size_t of) {
  const std::string title = "Boards, sheet " + std::to_string(number) + " of " + std::to_string(of);
  svg.open("svg").with("id", "sheet-" + std::to_string(number)).with("class", "sheet");
  svg.with("y", paper.height * static_cast<std::int64_t>(number - 1));
  svg.with("width", paper.width).with("height", paper.height).inside();
  svg.open("title").holds(title);
  svg.open("rect").with("width", paper.width).with("height", paper.height).with("fill", "#fff");
  svg.empty();
  Length y = kFree;
  for (const BoardBlock* block : blocks) {
    svg.open("svg").with("x", kFree).with("y", y).with("width", paper.inner_width());
    svg.with("height", block->height()).inside();
    BlockWriter(svg, *block).write();
    svg.close();
    y += block->height() + kBetween;
  }
  svg.open("text").with("x", paper.width - kFree).with("y", paper.height - kFree - whole_mm(1));
  svg.with("text-anchor", "end").holds(title);
  svg.close();
}

}  // namespace

std::vector<BoardDrawing> board_drawings(const LumberReport& report, const LengthPrinter& lengths,
                                         const Paper& standing) {
  const LyingPaper paper = lying(standing);
  const BoardSheets boards(report, lengths, paper.inner_width(), paper.inner_height());
  std::vector<BoardDrawing> drawings;
  for (const BoardBlock& block : boards.blocks()) {
    BoardDrawing& drawing = drawings.emplace_back();
    drawing.title = block.title;
    SvgText svg(drawing.svg);
    root(svg, paper.inner_width(), block.height());
    BlockWriter(svg, block).write();
    svg.close();
  }
  return drawings;
}

std::string lumber_svg(const LumberReport& report, const LengthPrinter& lengths,
                       std::string_view paper_name) {
  const LyingPaper paper = lying(*paper_called(paper_name.empty() ? "a4" : paper_name));
  const BoardSheets boards(report, lengths, paper.inner_width(), paper.inner_height());
  std::vector<BoardBlock> blocks = words_first(report, lengths, paper);
  for (BoardBlock& block : boards.blocks())
    blocks.push_back(std::move(block));
  const auto sheets = shared_out(blocks, paper);
  std::string out = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  SvgText svg(out);
  root(svg, paper.width, paper.height * static_cast<std::int64_t>(sheets.size()));
  svg.open("title").holds("Boards of a cutting plan");
  svg.open("style").holds(page_style({paper.width, paper.height}));
  for (std::size_t i = 0; i < sheets.size(); ++i)
    sheet(svg, sheets[i], paper, i + 1, sheets.size());
  svg.close();
  return out;
}

}  // namespace haunch
