// How one board is laid out, and a whole order laid out in boards.
//
//   Row, Section, SpanLayout, Pattern    a board
//   View                                 which way round a span is looked at
//   Solution, Score, score_of            an order
//
// A span is looked at along u and across v: u is along the board where it is crosscut first, and
// across where it is ripped first, so that the first cuts always part sections along u, the second
// rows of a section across v, the third the items of a row along u. With two stages there is one
// section as long as the span, and the first cuts part rows.
#pragma once

#include <compare>
#include <cstdint>
#include <utility>
#include <vector>

#include "model.h"

namespace haunch::lumber {

using Row = std::vector<Item>;     // beside each other along u
using Section = std::vector<Row>;  // above each other along v

struct SpanLayout {
  bool rip_first = false;
  std::vector<Section> sections;

  friend bool operator==(const SpanLayout&, const SpanLayout&) = default;
};

/// How many of a kind.
using Count = std::pair<std::uint32_t, int>;

struct Pattern {
  std::size_t board = 0;          // index into Model::boards
  std::vector<SpanLayout> spans;  // as many as the board has
  std::vector<Count> parts;       // by kind, each > 0: what the spans hold

  friend bool operator==(const Pattern&, const Pattern&) = default;
};

/// A span with its items one after the other along the board, for a model of a single row.
SpanLayout in_a_row(const Row& items, const Model& model);

/// Sets `parts` from what the spans hold.
void count_parts(Pattern& pattern);

/// Takes items out until there are at most `limit[kind]` of each, and what is left empty.
void drop_beyond(Pattern& pattern, const std::vector<int>& limit);

/// Sizes of items and spans looked at one way.
struct View {
  bool rip_first = false;

  std::int64_t u(const PartKind& part, bool turned) const {
    return rip_first ? across(part, turned) : along(part, turned);
  }
  std::int64_t v(const PartKind& part, bool turned) const {
    return rip_first ? along(part, turned) : across(part, turned);
  }
  std::int64_t u(const BoardKind& board, const Span& span) const {
    return rip_first ? board.clear_width : span.length;
  }
  std::int64_t v(const BoardKind& board, const Span& span) const {
    return rip_first ? span.length : board.clear_width;
  }
};

/// Along u, kerfs included.
std::int64_t extent(const Row& row, const Model& model, View view);
std::int64_t extent(const Section& section, const Model& model, View view);
/// Across v, kerf included: the widest item.
std::int64_t height(const Row& row, const Model& model, View view);

/// An order laid out: patterns, a board each, and how many of each kind they leave.
struct Solution {
  std::vector<Pattern> patterns;
  std::vector<int> missing;  // by kind
};

/// Less is better: what a plan is best by, in order.
struct Score {
  double missing_area = 0;
  std::int64_t price = 0;
  Money cost = 0;
  std::int64_t area_square_mm = 0;
  std::int64_t boards = 0;

  friend auto operator<=>(const Score&, const Score&) = default;
};

Score score_of(const Solution& solution, const Model& model);

}  // namespace haunch::lumber
