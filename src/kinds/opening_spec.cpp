#include "opening_spec.h"

#include <fmt/core.h>

#include <algorithm>
#include <string>

#include "found_opening.h"

namespace haunch {
namespace {

std::string path_of(Key key, std::string_view root) {
  std::string path(key.path().substr(root.size()));
  std::replace(path.begin(), path.end(), '.', '/');
  return "/" + path;
}

/// Fills `readings`; false where some could not be read, of which was told.
template <std::size_t kCount>
bool take(const Spec& spec, Key list, SizeKey item, std::array<Length, kCount>& readings) {
  const std::vector<KeyValues>& items = spec[list].items;
  if (items.size() != kCount) return false;
  for (std::size_t i = 0; i < kCount; ++i) {
    const auto size = items[i].size(item);
    if (!size) return false;
    readings[i] = *size;
  }
  return true;
}

std::optional<OpeningReadings> readings_of(const Spec& spec, const OpeningKeys& keys) {
  OpeningReadings readings;
  if (!take(spec, keys.widths, keys.one_width, readings.widths) ||
      !take(spec, keys.heights, keys.one_height, readings.heights) ||
      !take(spec, keys.diagonals, keys.one_diagonal, readings.diagonals))
    return {};
  return readings;
}

std::vector<Problem> incomplete(const Spec& spec, const OpeningKeys& keys, std::string_view root) {
  std::vector<Problem> problems;
  const auto tell = [&](Key key, std::string message) {
    problems.push_back({path_of(key, root), std::move(message), {}});
  };
  if (spec[keys.width].stated && spec[keys.widths].stated)
    tell(keys.widths, "says what \"width\" says; keep one of the two");
  if (spec[keys.height].stated && spec[keys.heights].stated)
    tell(keys.heights, "says what \"height\" says; keep one of the two");
  for (const Key key : {keys.widths, keys.heights, keys.diagonals})
    if (spec[key].stated && problems.empty() &&
        !(spec[keys.widths].stated && spec[keys.heights].stated && spec[keys.diagonals].stated))
      tell(key,
           "is part of an opening as it was found; give \"widths\", \"heights\" and \"diagonals\" "
           "together: without the diagonals nobody knows whether it is square");
  return problems;
}

}  // namespace

Length told_of(Length reading, Unit unit) {
  return nearest_multiple(reading, unit == Unit::mm ? Length::from_mm_thousandths(100)
                                                    : Length::from_inch_parts(1, 64));
}

namespace {

std::string way_words(Length diagonal_short, Unit unit) {
  const Length by = told_of(std::max(diagonal_short, -diagonal_short), unit);
  return fmt::format("{} {}", in_words(by, unit), diagonal_short > Length() ? "more" : "less");
}

std::optional<std::string> cannot_be(const OpeningReadings& readings, Unit unit) {
  const auto by = diagonal_short(readings);
  if (!by) return "no opening has such widths, heights and diagonals; measure again";
  if (std::max(*by, -*by) < kReadingsFault) return {};
  return fmt::format(
      "with these widths and heights and the first diagonal the second would read {}; measure "
      "again (under {} the tightest is worked with)",
      way_words(*by, unit), in_words(kReadingsFault, unit));
}

}  // namespace

std::vector<Problem> take_found_opening(Spec& spec, const OpeningKeys& keys,
                                        std::string_view root) {
  std::vector<Problem> problems = incomplete(spec, keys, root);
  const auto readings = readings_of(spec, keys);
  if (!problems.empty() || !readings) return problems;
  const Unit unit = spec.units.value_or(Unit::mm);
  if (const auto fault = cannot_be(*readings, unit))
    return {{path_of(keys.diagonals, root), *fault, {}}};
  const bool follows = spec.says("opening.follow");
  const SquareOpening square =
      follows ? box_to_follow(*readings, unit) : largest_square(*readings, unit);
  spec.set(keys.width, square.width);
  spec.set(keys.height, square.height);
  spec.found = square.found;
  return {};
}

std::optional<Length> disagreement(const Spec& spec, const OpeningKeys& keys) {
  const auto readings = readings_of(spec, keys);
  const auto by = readings ? diagonal_short(*readings) : std::nullopt;
  return by && disagree(*by) ? by : std::nullopt;
}

}  // namespace haunch
