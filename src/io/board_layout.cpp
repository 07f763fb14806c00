#include "board_layout.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <string_view>
#include <utility>

#include "spread.h"
#include "text_width.h"

namespace haunch {
namespace {

using lumber::PieceKind;
using lumber::Spot;
using lumber::StepKind;

// Scales of reduction, ISO 5455; larger than 1 : 5 no board needs to be.
constexpr std::array<std::int64_t, 12> kScales = {5,   10,   20,   50,   100,   200,
                                                  500, 1000, 2000, 5000, 10000, 20000};

constexpr Length kBeside = Length::from_mm(6);                  // of rings beside the board
constexpr Length kRingOff = Length::from_mm_thousandths(3200);  // of their middles
constexpr Length kInside = Length::from_mm_thousandths(800);    // from a line to lettering
constexpr Length kApart = Length::from_mm_thousandths(1200);    // of leaders
constexpr Length kLeaderFall = Length::from_mm(4);              // below the board
constexpr std::size_t kMostRings = 200;  // of more cuts none is looked for a place within the board
constexpr std::size_t kFewBoards = 4;    // cut alike, whose parts are all named on a piece
constexpr int kPasses = 4;  // in which pieces are given leaders, as leaders take room of others

Length small_letters(const std::string& text) {
  return lettering_length(text, kSmallLetter);
}

std::int64_t scale_for(const Spot& whole, const PaperBox& space) {
  const auto fitting = std::find_if(kScales.begin(), kScales.end(), [&](std::int64_t scale) {
    return whole.length <= (space.width - kBeside * 2) * scale &&
           whole.width <= space.height * scale;
  });
  return fitting == kScales.end() ? kScales.back() : *fitting;
}

bool meet(const PaperBox& a, const PaperBox& b) {
  return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom();
}

/// What is told of a piece.
struct PieceWords {
  std::vector<std::string> names;  // of boards that are cut alike one each
  std::string rough, finished;
  std::string_view between = ", ";  // the names and the sizes

  std::string name() const {
    std::string all;
    for (const std::string& each : names)
      all += (all.empty() ? "" : "; ") + each;
    return all;
  }
  std::string sizes() const { return finished.empty() ? rough : rough + ", " + finished; }
  std::string all() const { return name().append(between) + sizes(); }

  using Ways = std::vector<std::vector<std::string>>;
  Ways whole_ways() const {
    Ways ways = {{all()}, {name(), sizes()}, below_names({sizes()})};
    if (!finished.empty()) ways.push_back(below_names({rough, finished}));
    return ways;
  }
  /// Without the finished sizes, and at last without any.
  Ways shorter_ways() const {
    return {{name() + ", " + rough}, below_names({rough}), {name()}, below_names({})};
  }

 private:
  std::vector<std::string> below_names(const std::vector<std::string>& lines) const {
    std::vector<std::string> all = names;
    all.insert(all.end(), lines.begin(), lines.end());
    return all;
  }
};

class Layouter {
 public:
  Layouter(const LumberReport& report, const AlikeBoards& alike, const LengthPrinter& lengths,
           const PaperBox& space)
      : report_(report),
        alike_(alike),
        lengths_(lengths),
        space_(space),
        stock_(alike.plan->order.stock[alike.first().stock]) {}

  BoardLayout of(const std::vector<CutLine>& lines) {
    out_.scale = scale_for({Length(), Length(), stock_.length, stock_.width}, space_);
    out_.alike = alike_.boards.size();
    out_.length = stock_.length;
    out_.board = on_paper({Length(), Length(), stock_.length, stock_.width});
    for (const lumber::Defect& each : stock_.defects)
      out_.defects.push_back(on_paper({each.from, Length(), each.to - each.from, stock_.width}));
    lay_pieces();
    letter_pieces();
    lay_keys();
    for (const lumber::Step& step : alike_.first().steps)
      out_.cuts.push_back(drawn(step));
    lay_rings(lines);
    tell_glued();
    return std::move(out_);
  }

 private:
  // ---- scale

  /// To a thousandth of a millimetre, so that what is written is short.
  Length scaled(Length length) const {
    return nearest_multiple(floor_divide(length, out_.scale), Length::from_mm_thousandths(1));
  }
  Length x_of(Length x) const { return scaled(x); }
  Length y_of(Length y) const { return scaled(stock_.width - y); }
  PaperBox on_paper(const Spot& spot) const {
    const Length x = x_of(spot.x);
    const Length y = y_of(spot.y + spot.width);
    return {x, y, x_of(spot.x + spot.length) - x, y_of(spot.y) - y};
  }

  // ---- pieces

  std::string size(Length length, Length width) const {
    return lengths_.one(length) + " x " + lengths_.one(width);
  }

  PieceWords words_of(const lumber::BoardPiece& piece) const {
    const Spot& spot = piece.spot;
    if (piece.kind == PieceKind::kept) return {{"keep"}, size(spot.length, spot.width), "", " "};
    const lumber::Cut& cut = alike_.first().cuts[piece.cut];
    PieceWords words{
        CutRows(report_, *alike_.plan, lengths_).names_at(alike_.boards, spot),
        cut.turned ? size(spot.width, spot.length) + " turned" : size(spot.length, spot.width), ""};
    // Of a glued-up part the finished sizes are not those of its pieces; tell_glued() tells them.
    const LumberPiece& made = alike_.plan->pieces[cut.want];
    const LumberPart& part = report_.parts[made.part];
    if (made.of == 1 && !part.is_rough) words.finished = finished_words(part);
    return words;
  }

  std::string finished_words(const LumberPart& part) const {
    return "finished " + size(part.finished.length, part.finished.width) + " x " +
           lengths_.one(part.finished.thickness);
  }

  void lay_pieces() {
    for (const lumber::BoardPiece& piece : pieces_of(alike_.first(), stock_)) {
      LetteredPiece& laid = out_.pieces.emplace_back();
      laid.piece = piece;
      laid.box = on_paper(piece.spot);
      PieceWords& words = words_.emplace_back();
      if (piece.kind != PieceKind::part && piece.kind != PieceKind::kept) continue;
      words = words_of(piece);
      laid.words = words.all();
    }
  }

  // ---- lettering on pieces

  /// Where leaders of pieces above leave the widest room for lettering.
  PaperBox room_on(const LetteredPiece& piece) const {
    std::vector<Length> walls = {piece.box.x, piece.box.right()};
    for (const LetteredPiece& other : out_.pieces)
      if (other.leader && other.leader->y <= piece.box.bottom() && other.leader->x > piece.box.x &&
          other.leader->x < piece.box.right())
        walls.push_back(other.leader->x);
    std::sort(walls.begin(), walls.end());
    PaperBox room{piece.box.x, piece.box.y, Length(), piece.box.height};
    for (std::size_t i = 1; i < walls.size(); ++i) {
      const Length width = walls[i] - walls[i - 1] - kInside * 2;
      if (width <= room.width) continue;
      room.x = walls[i - 1] + kInside;
      room.width = width;
    }
    return room;
  }

  static bool has_room(const PaperBox& room, const std::vector<std::string>& lines) {
    return kSmallLine * static_cast<std::int64_t>(lines.size()) <= room.height &&
           std::all_of(lines.begin(), lines.end(),
                       [&](const std::string& line) { return small_letters(line) <= room.width; });
  }

  static void put(LetteredPiece& piece, const PaperBox& room, std::vector<std::string> lines) {
    Length width;
    for (const std::string& line : lines)
      width = std::max(width, small_letters(line));
    const Length height = kSmallLine * static_cast<std::int64_t>(lines.size());
    piece.lettering = {room.middle_x() - floor_half(width), room.middle_y() - floor_half(height),
                       width, height};
    piece.lines = std::move(lines);
  }

  static bool put_any(LetteredPiece& piece, const PaperBox& room, PieceWords::Ways ways) {
    for (std::vector<std::string>& lines : ways) {
      if (!has_room(room, lines)) continue;
      put(piece, room, std::move(lines));
      return true;
    }
    return false;
  }

  /// Whatever of its words there is room for, or its key; false: for neither.
  bool letter(std::size_t number) {
    LetteredPiece& piece = out_.pieces[number];
    const PaperBox room = room_on(piece);
    piece.key.clear();
    piece.beside = !put_any(piece, room, words_[number].whole_ways());
    // Offcuts are all called alike, and pieces of many boards by too many names.
    const bool is_named = piece.piece.kind == PieceKind::part && alike_.boards.size() <= kFewBoards;
    if (!piece.beside || (is_named && put_any(piece, room, words_[number].shorter_ways())))
      return true;
    piece.key = "p99";  // as wide as most are
    return put_any(piece, room, {{piece.key}});
  }

  /// Pieces too small for lettering first: their leaders run over others.
  void letter_pieces() {
    bool again = true;
    for (int pass = 0; again && pass < kPasses; ++pass) {
      again = false;
      for (std::size_t i = 0; i < out_.pieces.size(); ++i) {
        LetteredPiece& piece = out_.pieces[i];
        if (piece.words.empty() || piece.leader || letter(i)) continue;
        again = true;
        piece.lines.clear();
        lead(piece);
      }
    }
    // What a last leader crosses is told by its place alone.
    for (std::size_t i = 0; i < out_.pieces.size(); ++i) {
      LetteredPiece& piece = out_.pieces[i];
      if (!piece.words.empty() && !piece.leader && !letter(i)) piece.lines.clear();
    }
  }

  std::size_t most_leaders() const {
    return static_cast<std::size_t>(out_.board.width.steps() /
                                    (small_letters("p999") + kApart).steps());
  }

  bool is_led_at(Length x) const {
    return std::any_of(out_.pieces.begin(), out_.pieces.end(), [&](const LetteredPiece& other) {
      return other.leader && other.leader->x > x - kApart && other.leader->x < x + kApart;
    });
  }

  void lead(LetteredPiece& piece) {
    if (leaders_ >= most_leaders()) return;
    const PaperBox& box = piece.box;
    for (Length x = std::min(box.x + kApart, box.middle_x()); x < box.right(); x += kApart) {
      if (is_led_at(x)) continue;
      piece.leader = KeyLeader{x, box.middle_y(), x};
      ++leaders_;
      return;
    }
  }

  // ---- keys

  /// Numbers them in the order of the cuts, and puts those that leaders go to side by side.
  void lay_keys() {
    std::size_t number = 0;
    std::vector<LetteredPiece*> led;
    for (LetteredPiece& piece : out_.pieces) {
      if (piece.key.empty()) continue;
      const bool is_seen = piece.leader || !piece.lines.empty();
      piece.key = is_seen ? "p" + std::to_string(++number)
                          : "at " + lengths_.one(piece.piece.spot.x) + " from the low end, " +
                                lengths_.one(piece.piece.spot.y) + " from the low edge:";
      if (!piece.lines.empty()) put(piece, piece.lettering, {piece.key});
      if (piece.leader) led.push_back(&piece);
    }
    if (led.empty()) return;
    out_.below = kLeaderFall + kSmallLine;
    std::stable_sort(led.begin(), led.end(), [](const LetteredPiece* a, const LetteredPiece* b) {
      return a->leader->x < b->leader->x;
    });
    std::vector<Block> blocks;
    for (const LetteredPiece* piece : led) {
      const Length width = small_letters(piece->key) + kInside;
      blocks.push_back({piece->leader->x - floor_half(width), width});
    }
    const std::vector<Length> left = spread(blocks, Length(), out_.board.width);
    for (std::size_t i = 0; i < led.size(); ++i)
      led[i]->leader->key = left[i] + floor_half(blocks[i].height);
  }

  // ---- cuts

  DrawnCut drawn(const lumber::Step& step) const {
    const PaperBox box = on_paper(step.piece);
    const Length middle = floor_half(step.from + step.to);
    if (step.kind == StepKind::crosscut)
      return {&step, x_of(middle), box.y, x_of(middle), box.bottom()};
    return {&step, box.x, y_of(middle), box.right(), y_of(middle)};
  }

  void lay_rings(const std::vector<CutLine>& lines) {
    for (std::size_t line = 0; line < lines.size(); ++line)
      for (const std::vector<const lumber::Step*>& row : lines[line].cuts)
        for (std::size_t i = 0; i < row.size(); ++i) {
          const DrawnCut cut = drawn(*row[i]);
          CutRing ring{std::to_string(line + 1), cut.x1, cut.y1, cut.x1, cut.y1};
          if (ring_beside(ring, cut) || (i == 0 && ring_within(ring, cut)))
            out_.rings.push_back(ring);
        }
    lead_rings(lines);
    if (std::any_of(out_.rings.begin(), out_.rings.end(),
                    [](const CutRing& ring) { return ring.y < Length(); }))
      out_.above = kBeside;
  }

  /// To lines that have none yet, over other pieces.
  void lead_rings(const std::vector<CutLine>& lines) {
    if (out_.cuts.size() > kMostRings) return;
    for (std::size_t line = 0; line < lines.size(); ++line) {
      const std::string number = std::to_string(line + 1);
      bool has_ring = std::any_of(out_.rings.begin(), out_.rings.end(),
                                  [&](const CutRing& ring) { return ring.number == number; });
      for (const std::vector<const lumber::Step*>& row : lines[line].cuts)
        for (const lumber::Step* step : row)
          if (!has_ring) has_ring = lead_ring(number, drawn(*step));
    }
  }

  bool lead_ring(const std::string& number, const DrawnCut& cut) {
    if (lead_ring(number, cut, true)) return true;
    // Keys stand below the board, where there are any.
    const bool may_go_down = out_.below == Length() || leads_down_;
    if (!may_go_down || !lead_ring(number, cut, false)) return false;
    leads_down_ = true;
    out_.below = kBeside;
    return true;
  }

  /// Straight up past the board, or down, where it runs over no lettering and along no other cut.
  bool lead_ring(const std::string& number, const DrawnCut& cut, bool up) {
    const Length from = up ? cut.y1 : cut.y2;
    const Length to = up ? -kRingOff : out_.board.bottom() + kRingOff;
    const bool upright = cut.step->kind == StepKind::crosscut;
    const Length last = upright ? cut.x1 : cut.x2 - kApart;
    for (Length x = upright ? cut.x1 : cut.x1 + kApart; x <= last; x += kApart) {
      const CutRing ring{number, x, to, x, from, true};
      if (!is_clear_of_rings(ring) || !may_lead(x, std::min(from, to), std::max(from, to), cut))
        continue;
      out_.rings.push_back(ring);
      return true;
    }
    return false;
  }

  bool may_lead(Length x, Length top, Length bottom, const DrawnCut& cut) const {
    const PaperBox line{x - kInside, top, kInside * 2, bottom - top};
    const auto is_met = [&](const LetteredPiece& piece) {
      const bool led = piece.leader && piece.leader->x >= line.x &&
                       piece.leader->x <= line.right() && piece.leader->y <= bottom;
      return led || (!piece.lines.empty() && meet(piece.lettering, line));
    };
    const auto runs_along = [&](const DrawnCut& other) {
      return other.step != cut.step && other.x1 == other.x2 && other.x1 >= line.x &&
             other.x1 <= line.right() && other.y1 < bottom && other.y2 > top;
    };
    return std::none_of(out_.pieces.begin(), out_.pieces.end(), is_met) &&
           std::none_of(out_.cuts.begin(), out_.cuts.end(), runs_along) &&
           std::none_of(out_.rings.begin(), out_.rings.end(),
                        [&](const CutRing& other) { return meet(box_of(other), line); });
  }

  // ---- parts that are glued up

  void tell_glued() {
    std::set<std::size_t> told;
    for (const NumberedBoard& board : alike_.boards)
      for (const lumber::Cut& cut : board.board->cuts) {
        const LumberPiece& made = alike_.plan->pieces[cut.want];
        const LumberPart& part = report_.parts[made.part];
        if (made.of == 1 || part.is_rough || !told.insert(made.part).second) continue;
        out_.glued.push_back(part.name + ", glued up of " + std::to_string(made.of) + ": " +
                             finished_words(part));
      }
  }

  static PaperBox box_of(const CutRing& ring) {
    const Length width = ring_width(ring.number);
    return {ring.x - floor_half(width), ring.y - floor_half(width), width, width};
  }

  bool is_clear_of_rings(const CutRing& ring) const {
    return std::none_of(out_.rings.begin(), out_.rings.end(),
                        [&](const CutRing& other) { return meet(box_of(ring), box_of(other)); });
  }

  /// Above the board or at one of its ends, where the cut reaches it but for what was trimmed off.
  bool ring_beside(CutRing& ring, const DrawnCut& cut) const {
    const Length reach = Length::from_mm_thousandths(1500);
    if (cut.step->kind == StepKind::crosscut) {
      if (cut.y1 > reach) return false;
      ring.y = -kRingOff;
    } else if (cut.x1 <= reach) {
      ring.x = -kRingOff;
    } else if (cut.x2 >= out_.board.width - reach) {
      ring.from_x = cut.x2;
      ring.x = out_.board.width + kRingOff;
    } else {
      return false;
    }
    return is_clear_of_rings(ring);
  }

  bool is_clear(const CutRing& ring, const DrawnCut& cut) const {
    const PaperBox box = box_of(ring);
    const auto lies_on = [&](const DrawnCut& other) {
      const bool same = other.step == cut.step;
      return !same && other.x1 <= box.right() && box.x <= other.x2 && other.y1 <= box.bottom() &&
             box.y <= other.y2;
    };
    const auto is_met = [&](const LetteredPiece& piece) {
      const bool led = piece.leader && piece.leader->x >= box.x && piece.leader->x <= box.right() &&
                       piece.leader->y <= box.bottom();
      return led || (!piece.lines.empty() && meet(piece.lettering, box));
    };
    return is_clear_of_rings(ring) && std::none_of(out_.cuts.begin(), out_.cuts.end(), lies_on) &&
           std::none_of(out_.pieces.begin(), out_.pieces.end(), is_met);
  }

  /// On the cut itself, where nothing else is.
  bool ring_within(CutRing& ring, const DrawnCut& cut) const {
    if (out_.cuts.size() > kMostRings) return false;
    const bool upright = cut.step->kind == StepKind::crosscut;
    const Length in = floor_half(ring_width(ring.number)) + kInside;
    const Length end = (upright ? cut.y2 : cut.x2) - in;
    for (Length at = (upright ? cut.y1 : cut.x1) + in; at <= end; at += kApart) {
      ring.x = upright ? cut.x1 : at;
      ring.y = upright ? at : cut.y1;
      if (!is_clear(ring, cut)) continue;
      ring.from_x = ring.x;
      ring.from_y = ring.y;
      return true;
    }
    return false;
  }

  const LumberReport& report_;
  const AlikeBoards& alike_;
  const LengthPrinter& lengths_;
  const PaperBox& space_;
  const lumber::Stock& stock_;
  BoardLayout out_;
  std::vector<PieceWords> words_;  // of each piece
  std::size_t leaders_ = 0;
  bool leads_down_ = false;  // rings stand below the board
};

}  // namespace

std::vector<std::string> BoardLayout::told_beside() const {
  std::vector<std::string> told;
  for (const LetteredPiece& piece : pieces)
    if (piece.beside) told.push_back((piece.key.empty() ? "" : piece.key + " ") + piece.words);
  told.insert(told.end(), glued.begin(), glued.end());
  return told;
}

Length lettering_length(const std::string& text, Length size) {
  const double width = text_width(text) * static_cast<double>(size.steps());
  return Length::from_steps(static_cast<std::int64_t>(std::ceil(width)));
}

Length ring_width(const std::string& number) {
  const Length least = Length::from_mm_thousandths(3800);
  return std::max(least, small_letters(number) + Length::from_mm_thousandths(600));
}

BoardLayout layout_of(const LumberReport& report, const AlikeBoards& alike,
                      const std::vector<CutLine>& lines, const LengthPrinter& lengths,
                      const PaperBox& space) {
  return Layouter(report, alike, lengths, space).of(lines);
}

}  // namespace haunch
