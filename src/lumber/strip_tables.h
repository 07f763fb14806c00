// The most value that a span can hold in sections, rows and items, with no limit to how often a
// part is taken: by dynamic programming on a grid, for spans of all sizes at once.
//
//   GridRound       which way sizes go onto the grid
//   StripTables     one view of the spans
#pragma once

#include <cstdint>
#include <vector>

#include "pattern.h"

namespace haunch::lumber {

enum class GridRound : unsigned char {
  down,  // parts down and spans up: nothing holds more than the tables say
  up,    // parts up and spans down: what the tables say can be cut
};

class StripTables {
 public:
  /// A row that may be stacked with others across a section.
  struct RowOption {
    std::int64_t size = 0;  // cells along v
    double value = 0;
    std::size_t level = 0;
  };

  /// Which boards of the model the tables are for.
  struct Boards {
    std::size_t thickness = 0;
    bool grain = true;

    bool hold(const BoardKind& board) const {
      return board.thickness == thickness && board.grain == grain;
    }
  };

  StripTables(const Model& model, View view, Boards boards, GridRound round);

  /// All sizes are whole cells: rounding either way gives the same.
  bool exact() const { return u_.exact && v_.exact; }

  /// Works the tables out for these values, each >= 0.
  void price(const std::vector<double>& values);
  /// Work so far, counted.
  std::int64_t work() const { return work_; }
  double most(const BoardKind& board, const Span& span) const;
  /// What is worth so much, then others worth nearly as much, that differ in some section.
  std::vector<SpanLayout> layouts(const BoardKind& board, const Span& span,
                                  std::size_t count) const;

 private:
  /// How sizes along one axis go into cells; exact: all of them are whole cells.
  struct Grid {
    std::int64_t cell = 1;  // steps
    bool exact = true;
  };
  struct Place {
    Item item;
    std::int64_t u = 0, v = 0;  // cells
    double value = 0;
  };
  /// Sections of one extent that are of use, and the rows stacked across them.
  struct Option {
    std::size_t extent = 0;  // cells along u
    double value = 0;
    std::vector<std::size_t> levels;
  };

  void choose_cells(std::int64_t most_u, std::int64_t most_v);
  std::int64_t part_cells(std::int64_t steps, const Grid& grid) const;
  std::int64_t span_cells(std::int64_t steps, const Grid& grid) const;
  std::size_t across_index(std::int64_t v) const;
  void price_rows();
  std::vector<double> densities() const;
  void price_spans();
  std::vector<RowOption> row_options(std::size_t extent) const;
  Section section_of(const Option& option) const;
  void add_sections(SpanLayout& layout, std::size_t across, std::size_t room) const;
  Row row(std::size_t level, std::size_t extent) const;

  const Model& model_;
  View view_;
  GridRound round_;
  Grid u_, v_;
  std::int64_t most_u_ = 0, most_v_ = 0;              // cells
  std::vector<std::int64_t> spans_v_;                 // sizes across that spans have, in cells
  std::vector<Place> places_;                         // by v
  std::vector<std::size_t> level_end_;                // of places_, by level: a level is one v
  std::vector<std::vector<double>> rows_;             // by level and extent along u
  std::vector<std::vector<double>> spans_;            // by size across and size along u
  std::vector<std::vector<Option>> section_options_;  // by size across
  std::int64_t work_ = 0;
};

}  // namespace haunch::lumber
