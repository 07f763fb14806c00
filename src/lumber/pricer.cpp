#include "pricer.h"

#include <algorithm>
#include <utility>

#include "row_patterns.h"

namespace haunch::lumber {

Pricer::Pricer(const Model& model) : model_(model) {
  if (model.single_row) return;
  std::vector<StripTables::Boards> known;
  for (const BoardKind& board : model.boards) {
    const bool is_new = std::none_of(known.begin(), known.end(),
                                     [&](const auto& boards) { return boards.hold(board); });
    if (!is_new) continue;
    known.push_back({board.thickness, board.grain});
    for (const bool rip_first : {false, true})
      if (rip_first ? model.u_across : model.u_along) add_tables(View{rip_first}, known.back());
  }
}

void Pricer::add_tables(View view, StripTables::Boards boards) {
  Tables tables;
  tables.boards = boards;
  tables.bound = std::make_unique<StripTables>(model_, view, boards, GridRound::down);
  if (!tables.bound->exact())
    tables.layout = std::make_unique<StripTables>(model_, view, boards, GridRound::up);
  tables_.push_back(std::move(tables));
}

std::vector<Pricer::Priced> Pricer::price(const std::vector<double>& values,
                                          const std::vector<int>& demand) {
  for (Tables& tables : tables_) {
    tables.bound->price(values);
    if (tables.layout) tables.layout->price(values);
  }
  std::vector<Priced> priced;
  for (std::size_t board = 0; board < model_.boards.size(); ++board) {
    priced.push_back(model_.single_row ? price_row(board, values, demand) : price_strips(board));
  }
  return priced;
}

std::int64_t Pricer::work() const {
  constexpr std::int64_t kStepWork = 10;
  std::int64_t work = kStepWork * row_steps_;
  for (const Tables& tables : tables_)
    work += tables.bound->work() + (tables.layout ? tables.layout->work() : 0);
  return work;
}

Pricer::Priced Pricer::price_row(std::size_t board, const std::vector<double>& values,
                                 const std::vector<int>& demand) {
  constexpr std::int64_t kNodes = 200'000;
  const BoardKind& kind = model_.boards[board];
  Priced priced;
  Pattern pattern;
  pattern.board = board;
  for (const Span& span : kind.spans) {
    std::vector<std::pair<RowItem, Item>> items;
    for (std::uint32_t part = 0; part < model_.parts.size(); ++part) {
      const PartKind& wanted = model_.parts[part];
      if (values[part] <= 0 || demand[part] <= 0) continue;
      if (wanted.thickness != kind.thickness || wanted.length > span.length ||
          wanted.width > kind.clear_width)
        continue;
      items.push_back({{wanted.length, values[part], demand[part]}, {part, false}});
    }
    std::stable_sort(items.begin(), items.end(), [](const auto& a, const auto& b) {
      return a.first.value * static_cast<double>(b.first.size) >
             b.first.value * static_cast<double>(a.first.size);
    });
    std::vector<RowItem> row_items;
    for (const auto& [row_item, item] : items)
      row_items.push_back(row_item);
    RowSearch search;
    const RowChoice& choice = search.best(row_items, span.length, 0, kNodes);
    row_steps_ += search.steps();
    priced.at_most += choice.at_most;
    Row row;
    for (std::size_t index = 0; index < choice.counts.size(); ++index) {
      row.insert(row.end(), static_cast<std::size_t>(choice.counts[index]), items[index].second);
    }
    pattern.spans.push_back(in_a_row(row, model_));
  }
  count_parts(pattern);
  priced.patterns.push_back(std::move(pattern));
  return priced;
}

/// Patterns of one view: the first takes the best of each span.
void Pricer::add_strips(std::vector<Pattern>& patterns, std::size_t board,
                        const Tables& tables) const {
  constexpr std::size_t kAlternatives = 32;
  const BoardKind& kind = model_.boards[board];
  std::vector<std::vector<SpanLayout>> layouts;
  std::size_t most = 0;
  for (const Span& span : kind.spans) {
    layouts.push_back(tables.to_cut().layouts(kind, span, kAlternatives));
    most = std::max(most, layouts.back().size());
  }
  for (std::size_t alternative = 0; alternative < most; ++alternative) {
    Pattern pattern;
    pattern.board = board;
    for (const std::vector<SpanLayout>& span : layouts)
      pattern.spans.push_back(span[std::min(alternative, span.size() - 1)]);
    count_parts(pattern);
    const bool known = std::any_of(patterns.begin(), patterns.end(), [&](const Pattern& other) {
      return other.parts == pattern.parts;
    });
    if (!known) patterns.push_back(std::move(pattern));
  }
}

Pricer::Priced Pricer::price_strips(std::size_t board) const {
  const BoardKind& kind = model_.boards[board];
  Priced priced;
  for (const Tables& tables : tables_) {
    if (tables.boards.hold(kind)) add_strips(priced.patterns, board, tables);
  }
  for (const Span& span : kind.spans) {
    double most = 0;
    for (const Tables& tables : tables_) {
      if (tables.boards.hold(kind)) most = std::max(most, tables.bound->most(kind, span));
    }
    priced.at_most += most;
  }
  return priced;
}

}  // namespace haunch::lumber
