#include "book_places.h"

#include <algorithm>

namespace haunch {
namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

bool is_letter(char c) {
  return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
}

/// The number of "S12"; nothing of all else.
std::optional<std::size_t> setup_number(std::string_view name) {
  constexpr std::size_t kMostDigits = 9;
  if (name.size() < 2 || name.size() > kMostDigits || name[0] != 'S') return {};
  std::size_t number = 0;
  for (const char c : name.substr(1)) {
    if (!is_digit(c)) return {};
    number = number * 10 + static_cast<std::size_t>(c - '0');
  }
  return number;
}

std::size_t mark_size(std::string_view text) {
  const auto end = std::find_if_not(text.begin(), text.end(),
                                    [](char c) { return is_letter(c) || is_digit(c); });
  return static_cast<std::size_t>(end - text.begin());
}

/// "K1" of "K1#2".
std::string_view without_copy(std::string_view name) {
  const std::size_t sign = name.rfind('#');
  if (sign == std::string_view::npos || sign + 1 == name.size()) return name;
  const std::string_view copy = name.substr(sign + 1);
  return std::all_of(copy.begin(), copy.end(), is_digit) ? name.substr(0, sign) : name;
}

}  // namespace

void BookPlaces::add_item(const std::string& id, const std::vector<std::string>& marks) {
  items_.emplace(id, marks_.size());
  marks_.emplace_back(marks.begin(), marks.end());
}

std::optional<std::size_t> BookPlaces::item_called(std::string_view name) const {
  auto its = items_.find(name);
  if (its == items_.end()) its = items_.find(without_copy(name));
  return its == items_.end() ? std::nullopt : std::optional(its->second);
}

std::optional<std::string> BookPlaces::of_piece(std::size_t item, std::string_view mark) const {
  const bool is_safe = !mark.empty() && mark_size(mark) == mark.size();
  if (!is_safe || marks_[item].find(mark) == marks_[item].end()) return {};
  return of_part(item, mark);
}

std::optional<std::string> BookPlaces::told_at(std::string_view name,
                                               std::optional<std::size_t> item) const {
  if (const auto number = setup_number(name)) {
    if (*number == 0 || *number > setups_) return {};
    return "s" + std::to_string(*number);
  }
  const std::size_t slash = name.rfind('/');
  if (slash != std::string_view::npos) {
    item = item_called(name.substr(0, slash));
    name.remove_prefix(slash + 1);
  }
  return item ? of_piece(*item, name) : std::nullopt;
}

std::size_t BookPlaces::order_mark_at(std::string_view text) const {
  for (std::size_t slash = text.find('/'); slash != std::string_view::npos;
       slash = text.find('/', slash + 1)) {
    const std::size_t end = slash + 1 + mark_size(text.substr(slash + 1));
    if (told_at(text.substr(0, end), {})) return end;
    if (slash > 200) break;  // no name is so long
  }
  return 0;
}

}  // namespace haunch
