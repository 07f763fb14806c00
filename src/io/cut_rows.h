// How boards are cut up, as a page tells it: a row of cuts one after the other in a line, pieces
// and boards that are cut alike once.
#pragma once

#include <string>
#include <vector>

#include "lumber_report.h"
#include "text_table.h"

namespace haunch {

/// A board of a plan, and its number on the page.
struct NumberedBoard {
  const lumber::BoardPlan* board;
  std::size_t number;
};

/// A line of cuts that are set alike: for each piece on the saw, of the first of the boards, its
/// cuts one after the other.
struct CutLine {
  std::string words;
  std::vector<std::vector<const lumber::Step*>> cuts;
};

class CutRows {
 public:
  CutRows(const LumberReport& report, const MaterialPlan& plan, const LengthPrinter& lengths)
      : report_(report), plan_(plan), lengths_(lengths) {}

  /// What is taken off before anything else: "crosscut 20 off each end, rip 4 off each edge".
  std::string trim(const lumber::BoardPlan& board) const;
  /// The same of boards that are cut alike, whatever parts come of them.
  std::string pattern(const lumber::BoardPlan& board) const;
  /// The cuts after the trim, of boards that are cut alike, in order.
  std::vector<CutLine> lines(const std::vector<NumberedBoard>& boards) const;
  /// The parts that come of boards that are cut alike at one place of them, a text a board.
  std::vector<std::string> names_at(const std::vector<NumberedBoard>& boards,
                                    const lumber::Spot& spot) const;

 private:
  /// A piece that lies on the saw.
  struct OnSaw {
    NumberedBoard of;
    lumber::Spot spot;
  };
  /// Cuts of one kind, each of what the one before leaves, and all that comes of them.
  struct Row {
    lumber::StepKind kind;
    lumber::StepReason reason;
    std::vector<lumber::Spot> gives;
    std::vector<const lumber::Step*> cuts;
  };

  static Row row_of(const lumber::BoardPlan& board, const lumber::Step& first);
  /// The words of the trims that a piece is begun with; `spot` becomes what they leave.
  std::string trims(const lumber::BoardPlan& board, lumber::Spot& spot) const;
  lumber::Spot after_trim(const lumber::BoardPlan& board) const;
  std::string becomes(const lumber::BoardPlan& board, const lumber::Spot& spot) const;

  void add_lines(std::vector<OnSaw> alike, std::vector<CutLine>& lines) const;
  std::string row_words(const std::vector<OnSaw>& alike, const std::vector<Row>& rows) const;
  std::vector<std::string> names_by_board(const std::vector<OnSaw>& alike) const;
  std::string part_names(const std::vector<OnSaw>& alike) const;
  std::string names(const std::vector<LumberPiece>& pieces) const;
  std::string size(const lumber::Spot& spot) const {
    return lengths_.one(spot.length) + " x " + lengths_.one(spot.width);
  }

  const LumberReport& report_;
  const MaterialPlan& plan_;
  const LengthPrinter& lengths_;
};

}  // namespace haunch
