// Boards drawn: every part once, nothing on anything else, and what has no room told beside.
#include "lumber_svg.h"

#include <algorithm>
#include <map>
#include <random>
#include <set>

#include "board_layout.h"
#include "pages.h"
#include "stock_words.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

LumberPart sawn_part(const std::string& name, int length, int width) {
  LumberPart made;
  made.name = name;
  made.item = made.face = "bin";
  made.label = "piece";
  made.material = "beech";
  made.finished = {mm(length), mm(width), mm(20), Length()};
  made.is_rough = true;
  return made;
}

StockFile rack(int count, int length, int width, const std::string& more = {}) {
  return stock(R"({"units": "mm", "kerf": 3, "trim": {"end": 10, "edge": 2}, "stock": [{
      "id": "rack", "thickness": 20, "surface": "surfaced", "species": "beech", "length": )" +
               std::to_string(length) + R"(, "width": )" + std::to_string(width) +
               R"(, "count": )" + std::to_string(count) + more + "}]}");
}

const LengthPrinter& plain() {
  static const LengthPrinter printer(Unit::mm, {});
  return printer;
}

std::vector<BoardLayout> layouts_of(const LumberReport& report) {
  std::vector<BoardLayout> layouts;
  for (const AlikeBoards& alike : alike_boards(report, plain())) {
    const CutRows rows(report, *alike.plan, plain());
    layouts.push_back(layout_of(report, alike, rows.lines(alike.boards), plain(),
                                {Length(), Length(), mm(277), mm(123)}));
  }
  return layouts;
}

/// How often a text stands in another.
std::size_t count_of(const std::string& text, const std::string& words) {
  std::size_t count = 0;
  for (std::size_t at = 0; (at = text.find(words, at)) != std::string::npos; at += words.size())
    ++count;
  return count;
}

std::string all_of(const std::vector<BoardDrawing>& drawings) {
  std::string all;
  for (const BoardDrawing& drawing : drawings)
    all += drawing.svg;
  return all;
}

bool lie_on_each_other(const PaperBox& a, const PaperBox& b) {
  return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom();
}

const LetteredPiece& piece_called(const BoardLayout& layout, const std::string& words) {
  const auto found =
      std::find_if(layout.pieces.begin(), layout.pieces.end(),
                   [&](const LetteredPiece& piece) { return piece.words.starts_with(words); });
  REQUIRE(found != layout.pieces.end());
  return *found;
}

void check_nothing_overlaps(const BoardLayout& layout) {
  for (std::size_t i = 0; i < layout.pieces.size(); ++i) {
    const LetteredPiece& piece = layout.pieces[i];
    CHECK(piece.words.empty() == (piece.lines.empty() && !piece.beside));
    for (std::size_t other = i + 1; other < layout.pieces.size(); ++other)
      CHECK_FALSE(lie_on_each_other(piece.box, layout.pieces[other].box));
    if (piece.lines.empty()) continue;
    CHECK(piece.lettering.x >= piece.box.x);
    CHECK(piece.lettering.right() <= piece.box.right());
    CHECK(piece.lettering.y >= piece.box.y);
    CHECK(piece.lettering.bottom() <= piece.box.bottom());
    for (const LetteredPiece& other : layout.pieces)
      if (other.leader && other.leader->y <= piece.lettering.bottom())
        CHECK((other.leader->x < piece.lettering.x || other.leader->x > piece.lettering.right()));
  }
}

TEST_CASE("a board of 2100 is drawn at 1 : 10, one of 4200 at 1 : 20, a short one at 1 : 5",
          "[lumber_svg]") {
  // 277 less 12 for what stands beside it: 2650 at 1 : 10, 1325 at 1 : 5.
  for (const auto& [length, scale] : std::map<int, int>{{900, 5}, {2100, 10}, {4200, 20}}) {
    const LumberReport report =
        report_lumber({sawn_part("A", 500, 150)}, rack(1, length, 170), Unit::mm, {});
    const std::vector<BoardLayout> layouts = layouts_of(report);
    REQUIRE(layouts.size() == 1);
    CHECK(layouts[0].scale == scale);
    CHECK(layouts[0].board.width == floor_divide(mm(length), scale));
  }
}

TEST_CASE("a part says what it is and how large, on the board where it has room", "[lumber_svg]") {
  const LumberReport report =
      report_lumber({sawn_part("bin/A", 900, 150)}, rack(1, 2100, 170), Unit::mm, {});
  const BoardLayout layout = layouts_of(report).front();
  const LetteredPiece& piece = piece_called(layout, "bin/A");
  CHECK(piece.lines == std::vector<std::string>{"bin/A, 900 x 150"});
  CHECK(layout.told_beside().empty());
}

TEST_CASE("a name too long for its part is told beside the board", "[lumber_svg]") {
  const std::string name = "the island's long bank of drawers for flour and for scoops#12/A";
  const LumberReport report =
      report_lumber({sawn_part(name, 400, 150)}, rack(1, 2100, 170), Unit::mm, {});
  const BoardLayout layout = layouts_of(report).front();
  const LetteredPiece& piece = piece_called(layout, name);
  CHECK(piece.lines == std::vector<std::string>{"p1"});
  CHECK(layout.told_beside() == std::vector<std::string>{"p1 " + name + ", 400 x 150"});
}

TEST_CASE("a strip too narrow for lettering is led to its key below the board", "[lumber_svg]") {
  // 20 wide is 2 mm of paper.
  const LumberReport report = report_lumber({sawn_part("A", 1900, 20), sawn_part("B", 1900, 120)},
                                            rack(1, 2100, 170), Unit::mm, {});
  const BoardLayout layout = layouts_of(report).front();
  const LetteredPiece& strip = piece_called(layout, "A,");
  REQUIRE(strip.leader);
  CHECK(strip.key == "p1");
  CHECK(layout.below > Length());
  CHECK(piece_called(layout, "B,").lines == std::vector<std::string>{"B, 1900 x 120"});
  check_nothing_overlaps(layout);
}

TEST_CASE("each numbered cut has its ring, led to it where lettering fills its pieces",
          "[lumber_svg]") {
  const LumberReport report =
      report_lumber({sawn_part("side-door/A", 1148, 96), sawn_part("side-door/B", 865, 124),
                     sawn_part("side-door/C", 865, 201), sawn_part("side-door/D", 865, 236),
                     sawn_part("side-door/E", 717, 96)},
                    rack(1, 4200, 280, R"(, "defects": [[3630, 3640]])"), Unit::mm, {});
  const BoardLayout layout = layouts_of(report).front();
  std::set<std::string> numbers;
  for (const CutRing& ring : layout.rings)
    numbers.insert(ring.number);
  const AlikeBoards alike = alike_boards(report, plain()).front();
  const CutRows rows(report, *alike.plan, plain());
  CHECK(numbers.size() == rows.lines(alike.boards).size());
  CHECK(std::any_of(layout.rings.begin(), layout.rings.end(),
                    [](const CutRing& ring) { return ring.led; }));
}

TEST_CASE("boards that are cut alike are drawn once, with the parts of each", "[lumber_svg]") {
  std::vector<LumberPart> parts;
  for (const char* name : {"A", "B", "C", "D"})
    parts.push_back(sawn_part(name, 1000, 160));
  const LumberReport report = report_lumber(parts, rack(2, 2100, 170), Unit::mm, {});
  const std::vector<BoardDrawing> drawings = board_drawings(report, plain(), *paper_called("a4"));
  REQUIRE(drawings.size() == 1);
  CHECK(tells(drawings[0].title, "2 cut alike"));
  CHECK(count_of(drawings[0].svg, "class=\"part\"") == 2);
  for (const char* name : {"A", "B", "C", "D"})
    CHECK(count_of(drawings[0].svg, std::string(": ") + name) >= 1);
}

TEST_CASE("what a user wrote is text in a drawing, whatever it is", "[lumber_svg]") {
  const LumberReport report =
      report_lumber({sawn_part("<b>&\"'</b>", 900, 150)}, rack(1, 2100, 170), Unit::mm, {});
  const std::string svg = lumber_svg(report, plain(), "");
  CHECK(svg.find("<b>") == std::string::npos);
  CHECK(tells(svg, "&lt;b&gt;&amp;&quot;&#39;&lt;/b&gt;, 900 x 150"));
}

TEST_CASE("of many tiny pieces none is lost", "[lumber_svg]") {
  // 20 x 20: 2 mm of paper each; leaders have no room for so many.
  std::vector<LumberPart> parts;
  for (int i = 0; i < 300; ++i)
    parts.push_back(sawn_part("T" + std::to_string(i), 20, 20));
  const LumberReport report = report_lumber(parts, rack(1, 2100, 170), Unit::mm, {});
  REQUIRE(report.unplaced.empty());
  const BoardLayout layout = layouts_of(report).front();
  CHECK(layout.told_beside().size() == 300);
  check_nothing_overlaps(layout);
  const std::string svg = all_of(board_drawings(report, plain(), *paper_called("a4")));
  for (int i = 0; i < 300; ++i)
    CHECK(count_of(svg, " T" + std::to_string(i) + ", 20 x 20</text>") == 1);
}

TEST_CASE("every part of a plan is drawn once and nothing lies on anything else", "[lumber_svg]") {
  std::mt19937 dice(11);
  const auto between = [&](int least, int most) {
    return least + static_cast<int>(dice() % static_cast<unsigned>(most - least + 1));
  };
  for (int round = 0; round < 25; ++round) {
    std::vector<LumberPart> parts;
    for (int i = between(1, 25); i > 0; --i)
      parts.push_back(
          sawn_part("bin/P" + std::to_string(i), between(5, 90) * 20, between(3, 30) * 5));
    const LumberReport report =
        report_lumber(parts, rack(30, 2100, 170, R"(, "defects": [[1500, 1560]])"), Unit::mm, {});
    std::size_t drawn = 0;
    for (const AlikeBoards& alike : alike_boards(report, plain())) {
      const CutRows rows(report, *alike.plan, plain());
      const BoardLayout layout = layout_of(report, alike, rows.lines(alike.boards), plain(),
                                           {Length(), Length(), mm(277), mm(123)});
      check_nothing_overlaps(layout);
      for (const LetteredPiece& piece : layout.pieces)
        if (piece.piece.kind == lumber::PieceKind::part) drawn += alike.boards.size();
      CHECK(layout.cuts.size() == alike.first().steps.size());
    }
    CHECK(drawn + report.unplaced.size() == parts.size());
  }
}

}  // namespace
}  // namespace haunch::test
