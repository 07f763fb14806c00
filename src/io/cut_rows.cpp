#include "cut_rows.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "board_pieces.h"

namespace haunch {
namespace {

using lumber::BoardPlan;
using lumber::is_kept;
using lumber::is_something;
using lumber::part_at;
using lumber::sides_of;
using lumber::Spot;
using lumber::Step;
using lumber::step_of;
using lumber::StepKind;
using lumber::StepReason;

/// Of what a row of cuts gives, the size that is set for it.
Length size_along(const Spot& spot, StepKind kind) {
  return kind == StepKind::rip ? spot.width : spot.length;
}

std::string kind_word(StepKind kind) {
  return kind == StepKind::rip ? "rip " : "crosscut ";
}

std::string reason_words(StepReason reason) {
  switch (reason) {
    case StepReason::defect:
      return "defect out: ";
    case StepReason::to_size:
      return "to size: ";
    default:
      return {};
  }
}

/// What a trim takes off at the low and at the high side of a piece.
struct Trimmed {
  std::optional<Length> low, high;
};

std::string trimmed_words(const Trimmed& off, StepKind kind, const LengthPrinter& lengths) {
  const std::string side = kind == StepKind::rip ? "edge" : "end";
  if (off.low && off.high == off.low)
    return kind_word(kind) + lengths.one(*off.low) + " off each " + side;
  std::string words;
  if (off.low) words = lengths.one(*off.low) + " off the low " + side;
  if (off.high)
    words += (words.empty() ? "" : ", ") + lengths.one(*off.high) + " off the high " + side;
  return words.empty() ? words : kind_word(kind) + words;
}

/// "3 4", of more than two in a row "3 to 6".
std::string counted(const std::vector<std::size_t>& numbers) {
  std::string words;
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    std::size_t last = i;
    while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1)
      ++last;
    words += (words.empty() ? "" : " ") + std::to_string(numbers[i]);
    if (last < i + 2) continue;
    words += " to " + std::to_string(numbers[last]);
    i = last;
  }
  return words;
}

/// "1148, 2 of 865 and 552.2 to keep"
std::string in_a_row(const std::vector<std::string>& words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i)
    text += (i == 0 ? "" : i + 1 == words.size() ? " and " : ", ") + words[i];
  return text;
}

}  // namespace

CutRows::Row CutRows::row_of(const BoardPlan& board, const Step& first) {
  Row row{first.kind, first.reason, {}, {}};
  const Step* step = &first;
  while (true) {
    row.cuts.push_back(step);
    const auto [low, high] = sides_of(*step);
    if (is_something(low)) row.gives.push_back(low);
    if (!is_something(high)) return row;
    const Step* next = step_of(board, high);
    if (next == nullptr || next->kind != row.kind || next->reason != row.reason) {
      row.gives.push_back(high);
      return row;
    }
    step = next;
  }
}

std::string CutRows::trims(const BoardPlan& board, Spot& spot) const {
  Trimmed ends;
  Trimmed edges;
  const Step* step = step_of(board, spot);
  for (; step != nullptr && step->reason == StepReason::trim; step = step_of(board, spot)) {
    const auto [low, high] = sides_of(*step);
    const Length low_size = size_along(low, step->kind);
    const Length high_size = size_along(high, step->kind);
    const bool off_low = low_size < high_size;
    Trimmed& off = step->kind == StepKind::rip ? edges : ends;
    // With the kerf, which comes off too.
    (off_low ? off.low : off.high) =
        size_along(step->piece, step->kind) - std::max(low_size, high_size);
    spot = off_low ? high : low;
  }
  const std::string crosscuts = trimmed_words(ends, StepKind::crosscut, lengths_);
  const std::string rips = trimmed_words(edges, StepKind::rip, lengths_);
  return crosscuts + (crosscuts.empty() || rips.empty() ? "" : ", ") + rips;
}

std::string CutRows::trim(const BoardPlan& board) const {
  if (board.steps.empty()) return {};
  Spot spot = board.steps.front().piece;
  return trims(board, spot);
}

Spot CutRows::after_trim(const BoardPlan& board) const {
  Spot spot = board.steps.front().piece;
  trims(board, spot);
  return spot;
}

std::string CutRows::becomes(const BoardPlan& board, const Spot& spot) const {
  if (part_at(board, spot) != nullptr) return "part";
  if (is_kept(board, spot)) return "kept";
  const Step* step = step_of(board, spot);
  if (step == nullptr) return "scrap";
  if (step->reason == StepReason::trim) {
    Spot left = spot;
    std::string words = trims(board, left);
    return words + "[" + becomes(board, left) + "]";
  }
  const Row row = row_of(board, *step);
  std::string words = reason_words(row.reason) + kind_word(row.kind);
  for (const Spot& each : row.gives)
    words += std::to_string(size_along(each, row.kind).steps()) + "[" + becomes(board, each) + "]";
  return words;
}

std::string CutRows::pattern(const BoardPlan& board) const {
  if (board.steps.empty()) return "whole";
  const Spot whole = board.steps.front().piece;
  return std::to_string(whole.length.steps()) + " " + std::to_string(whole.width.steps()) + " " +
         becomes(board, whole);
}

std::string CutRows::names(const std::vector<LumberPiece>& pieces) const {
  std::string text;
  for (std::size_t i = 0; i < pieces.size();) {
    const std::size_t part = pieces[i].part;
    const bool one = pieces[i].of == 1;
    std::vector<std::size_t> numbers;
    for (; i < pieces.size() && pieces[i].part == part; ++i)
      numbers.push_back(pieces[i].number);
    text += (text.empty() ? "" : ", ") + report_.parts[part].name;
    if (!one) text += " " + counted(numbers);
  }
  return text;
}

/// The parts that these are; of several boards with the board's number.
std::vector<std::string> CutRows::names_by_board(const std::vector<OnSaw>& alike) const {
  std::vector<std::pair<std::size_t, std::vector<LumberPiece>>> boards;
  for (const OnSaw& each : alike) {
    const auto on = std::find_if(boards.begin(), boards.end(),
                                 [&](const auto& it) { return it.first == each.of.number; });
    auto& pieces =
        (on == boards.end() ? boards.emplace_back(each.of.number, std::vector<LumberPiece>()) : *on)
            .second;
    pieces.push_back(plan_.pieces[part_at(*each.of.board, each.spot)->want]);
  }
  std::vector<std::string> texts;
  for (const auto& [number, pieces] : boards)
    texts.push_back(
        (boards.size() > 1 ? "of board " + std::to_string(number) + ": " : std::string()) +
        names(pieces));
  return texts;
}

std::string CutRows::part_names(const std::vector<OnSaw>& alike) const {
  std::string text;
  for (const std::string& each : names_by_board(alike))
    text += (text.empty() ? "" : "; ") + each;
  return text;
}

std::string CutRows::row_words(const std::vector<OnSaw>& alike,
                               const std::vector<Row>& rows) const {
  const Row& row = rows.front();
  const BoardPlan& board = *alike.front().of.board;
  std::vector<std::string> words;
  for (std::size_t i = 0; i < row.gives.size();) {
    const Length along = size_along(row.gives[i], row.kind);
    const std::string becoming = becomes(board, row.gives[i]);
    const std::size_t first = i;
    while (i < row.gives.size() && size_along(row.gives[i], row.kind) == along &&
           becomes(board, row.gives[i]) == becoming)
      ++i;
    const std::string count = i - first > 1 ? std::to_string(i - first) + " of " : "";
    std::string one = count + lengths_.one(along);
    if (becoming == "kept") one += " to keep";
    if (becoming == "scrap") one += " scrap";
    if (becoming == "part") {
      std::vector<OnSaw> parts;
      for (std::size_t piece = 0; piece < alike.size(); ++piece)
        for (std::size_t each = first; each < i; ++each)
          parts.push_back({alike[piece].of, rows[piece].gives[each]});
      one += " (" + part_names(parts) + ")";
    }
    words.push_back(one);
  }
  const auto on_one_board = std::count_if(alike.begin(), alike.end(), [&](const OnSaw& it) {
    return it.of.number == alike.front().of.number;
  });
  return reason_words(row.reason) + kind_word(row.kind) +
         (on_one_board > 1 ? "each of " + std::to_string(on_one_board) + ", " : "") +
         size(alike.front().spot) + (on_one_board > 1 ? ", into " : " into ") + in_a_row(words);
}

/// Of pieces that are cut alike; and of what comes of that in turn.
void CutRows::add_lines(std::vector<OnSaw> alike, std::vector<CutLine>& lines) const {
  const std::string trim = trims(*alike.front().of.board, alike.front().spot);
  if (!trim.empty()) {
    for (std::size_t i = 1; i < alike.size(); ++i)
      trims(*alike[i].of.board, alike[i].spot);
    lines.push_back({"trim: " + trim + ", leaves " + size(alike.front().spot), {}});
  }
  std::vector<Row> rows;
  for (const OnSaw& each : alike)
    if (const Step* step = step_of(*each.of.board, each.spot))
      rows.push_back(row_of(*each.of.board, *step));
  if (rows.empty()) {
    if (part_at(*alike.front().of.board, alike.front().spot) != nullptr)
      lines.push_back({"what is left is " + part_names(alike), {}});
    return;
  }
  CutLine& line = lines.emplace_back(CutLine{row_words(alike, rows), {}});
  for (std::size_t piece = 0; piece < rows.size(); ++piece)
    if (alike[piece].of.number == alike.front().of.number) line.cuts.push_back(rows[piece].cuts);
  std::vector<std::pair<std::string, std::vector<OnSaw>>> next;
  for (std::size_t piece = 0; piece < alike.size(); ++piece)
    for (const Spot& spot : rows[piece].gives) {
      const BoardPlan& board = *alike[piece].of.board;
      if (step_of(board, spot) == nullptr || part_at(board, spot) != nullptr) continue;
      const std::string pattern =
          std::to_string(size_along(spot, rows[piece].kind).steps()) + becomes(board, spot);
      const auto same = std::find_if(next.begin(), next.end(),
                                     [&](const auto& it) { return it.first == pattern; });
      (same == next.end() ? next.emplace_back(pattern, std::vector<OnSaw>()) : *same)
          .second.push_back({alike[piece].of, spot});
    }
  for (auto& [pattern, pieces] : next)
    add_lines(std::move(pieces), lines);
}

std::vector<CutLine> CutRows::lines(const std::vector<NumberedBoard>& boards) const {
  std::vector<OnSaw> alike;
  for (const NumberedBoard& each : boards)
    if (!each.board->steps.empty()) alike.push_back({each, after_trim(*each.board)});
  std::vector<CutLine> lines;
  if (!alike.empty()) add_lines(std::move(alike), lines);
  return lines;
}

std::vector<std::string> CutRows::names_at(const std::vector<NumberedBoard>& boards,
                                           const Spot& spot) const {
  std::vector<OnSaw> alike;
  for (const NumberedBoard& each : boards)
    if (part_at(*each.board, spot) != nullptr) alike.push_back({each, spot});
  return names_by_board(alike);
}

}  // namespace haunch
