// The places of a book that others lead to: each piece, set-up and item has one.
#pragma once

#include <cstddef>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace haunch {

/// Places are called by numbers and by marks, so that nothing of a user's text is part of a link;
/// and in few letters, as there are thousands of links.
class BookPlaces {
 public:
  /// The next item: what it is called in the order, and the marks of its pieces.
  void add_item(const std::string& id, const std::vector<std::string>& marks);
  void set_setups(std::size_t number) { setups_ = number; }

  static std::string of_item(std::size_t item) { return "i" + std::to_string(item + 1); }
  static std::string of_part(std::size_t item, std::string_view part) {
    return of_item(item) + "-" + std::string(part);
  }

  /// "K1", and of several alike "K1#2".
  std::optional<std::size_t> item_called(std::string_view name) const;

  /// Where a name leads: "S3" to a set-up; "K1/A", and of several alike "K1#2/A", to a piece, and
  /// where `item` is told of so does "A". Nothing where there is no such place.
  std::optional<std::string> told_at(std::string_view name, std::optional<std::size_t> item) const;

  /// How much of a text, from its beginning, is the mark of a piece with its item's name before it;
  /// 0: it does not begin with one.
  std::size_t order_mark_at(std::string_view text) const;

 private:
  std::optional<std::string> of_piece(std::size_t item, std::string_view mark) const;

  std::map<std::string, std::size_t, std::less<>> items_;
  std::vector<std::set<std::string, std::less<>>> marks_;  // of each item
  std::size_t setups_ = 0;
};

}  // namespace haunch
