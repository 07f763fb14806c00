// An order as one HTML file: what is for all of it first, then item after item. It lays out the
// rows and words that the commands print each by itself.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "book_places.h"
#include "html_page.h"
#include "item_sheet.h"
#include "lumber_report.h"
#include "paper.h"
#include "setups_report.h"
#include "view.h"

namespace haunch {

/// What of each item is told.
Wanted wanted_for_book();

struct BookOrder {
  std::string name;     // empty: it has none
  SetupsReport setups;  // with its items
  LumberReport lumber;
};

class Book {
 public:
  Book(BookOrder order, const View& view, Unit unit, const Paper& paper);

  /// The head of the file, the contents, and what is for the whole order.
  std::string front() const;
  std::size_t items() const { return order_.setups.items.size(); }
  /// The pages of an item. Its report is given up for them: no more of the order is held than what
  /// is still to be told.
  std::string take_item(std::size_t item);
  static std::string_view end();

 private:
  /// A sheet of an item, from 1 on.
  struct Drawn {
    std::size_t item, sheet;
  };

  void find_setups();
  void find_boardless();
  std::string title() const;
  std::string contents() const;
  std::string cautions() const;
  std::string setups() const;
  std::string lumber() const;
  std::string boards() const;
  std::string id_of(std::size_t item) const;
  std::string boardless_marks(std::size_t item) const;
  void add_item_head(HtmlPage& page, std::size_t item, const ItemSheet& sheet) const;
  void add_drawing(HtmlPage& page, std::size_t item);
  std::string marks_linked(const std::string& svg, std::size_t item) const;
  void add_pieces(HtmlPage& page, std::size_t item) const;
  TextTable setups_table(std::size_t item) const;
  void add_assumed(HtmlPage& page, std::size_t item);
  void add_rods(HtmlPage& page, std::size_t item);

  BookOrder order_;
  View view_;
  LengthPrinter lengths_;
  Paper paper_;
  BookPlaces places_;
  std::vector<std::string> ids_;  // of all items, those too whose reports are given up
  std::vector<std::vector<std::vector<std::size_t>>> setups_of_;  // of each item's pieces
  std::vector<std::vector<std::size_t>> boardless_;  // of each item's parts those in no board
  std::map<std::string, Drawn> drawn_;               // sheets without names, and where they stand
  std::map<std::string, std::size_t> assumed_;  // what was, as text, and the item that tells it
};

}  // namespace haunch
