// Parts of a page laid out as HTML: the same words and tables as in text.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "book_places.h"
#include "page_part.h"

namespace haunch {

/// Writes parts of a page one after the other; names in them that have a place in the book lead
/// there.
class HtmlPage {
 public:
  /// `item`: whose pieces are told of by their marks alone.
  HtmlPage(const BookPlaces& places, std::optional<std::size_t> item)
      : places_(places), item_(item) {}

  /// `level`: of the headings; those below the name of a section are a level further down. A legend
  /// stands once.
  void add(const PageParts& parts, int level);
  void add(const PageText& text);
  /// `words` are escaped; `id`: empty: it has no place of its own.
  void add_heading(std::string_view words, int level, std::string_view id = {});
  /// As it stands.
  void add_html(std::string_view html) { html_ += html; }

  std::string take() { return std::move(html_); }

 private:
  void add_block(const PageBlock& block);
  void add_table(const PrintedTable& table);
  void add_cell(const PrintedColumn& column, const std::string& text);
  void add_words(const PageBlock& block);
  using PlaceOf = std::function<std::optional<std::string>(std::string_view word)>;
  /// Marks with their item's name lead to their pieces, other words where `place_of` says.
  std::string with_links(std::string_view text, const PlaceOf& place_of) const;
  static std::string link(std::string_view name, const std::string& place);
  /// Words with links: those that are among `marks` once each, and marks with their item's name.
  std::string linked(std::string_view words, std::vector<std::string> marks) const;
  std::string marks_linked(std::string_view marks) const;

  const BookPlaces& places_;
  std::optional<std::size_t> item_;
  std::string html_;
  std::set<std::string> read_;  // legends
};

}  // namespace haunch
