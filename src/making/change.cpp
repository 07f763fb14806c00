#include "change.h"

namespace haunch {

std::optional<Length> FigureChange::by() const {
  return was && is ? std::optional(*is - *was) : std::nullopt;
}

void Changes::add(std::string_view what, std::optional<Length> was, std::optional<Length> is) {
  if (!same_size(was, is)) figures.push_back({what, was, is});
}

void Changes::add(const std::vector<NamedSize>& was, const std::vector<NamedSize>& is) {
  for (const NamedSize& size : was)
    add(word_of(size.name), size.size, size_of(is, size.name));
  for (const NamedSize& size : is)
    if (!size_of(was, size.name)) add(word_of(size.name), std::nullopt, size.size);
}

void Changes::add(std::string_view what, std::string_view was, std::string_view is) {
  if (was != is) words.push_back({what, std::string(was), std::string(is)});
}

}  // namespace haunch
