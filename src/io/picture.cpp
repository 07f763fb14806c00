#include "picture.h"

#include <algorithm>
#include <utility>

#include "utf8.h"

namespace haunch {
namespace {

// Of the size of a text: how far letters reach above their base line and below it.
constexpr double kAbove = 0.8, kBelow = 0.25;

/// How many bytes of a word fit, one character at least.
std::size_t fitting_bytes(std::string_view word, double size, double width, Letters letters) {
  std::size_t bytes = 0;
  while (bytes < word.size()) {
    std::size_t next = bytes + 1;
    while (next < word.size() && continues_character(word[next]))
      ++next;
    if (bytes > 0 && text_width(word.substr(0, next), letters) * size > width) break;
    bytes = next;
  }
  return bytes;
}

}  // namespace

void Picture::add(const Picture& other, ViewSpot by) {
  for (Stroke stroke : other.strokes) {
    for (SpotRun& run : stroke.runs)
      for (ViewSpot& spot : run)
        spot = moved(spot, by);
    strokes.push_back(std::move(stroke));
  }
  for (Lettering lettering : other.letterings) {
    lettering.at = moved(lettering.at, by);
    letterings.push_back(std::move(lettering));
  }
}

void Picture::line(Pen pen, ViewSpot from, ViewSpot to) {
  strokes.push_back({pen, {{from, to}}});
}

double width_of(const Lettering& lettering) {
  return text_width(lettering.text, lettering.bold ? Letters::bold : Letters::plain) *
         lettering.size;
}

Extent extent_of(const Lettering& lettering) {
  const double width = width_of(lettering);
  const double before = lettering.anchor == Anchor::start    ? 0
                        : lettering.anchor == Anchor::middle ? width / 2
                                                             : width;
  const double above = kAbove * lettering.size, below = kBelow * lettering.size;
  const auto [u, v] = lettering.at;
  if (lettering.upright) return {{u - above, v - before}, {u + below, v - before + width}};
  return {{u - before, v - below}, {u - before + width, v + above}};
}

std::optional<Extent> extent_of(const Picture& picture) {
  std::optional<Extent> all;
  const auto take = [&](const Extent& extent) { all = all ? around(*all, extent) : extent; };
  for (const Stroke& stroke : picture.strokes)
    for (const SpotRun& run : stroke.runs)
      for (const ViewSpot& spot : run)
        take({spot, spot});
  for (const Lettering& lettering : picture.letterings)
    take(extent_of(lettering));
  return all;
}

Extent around(const Extent& a, const Extent& b) {
  return {{std::min(a.low.u, b.low.u), std::min(a.low.v, b.low.v)},
          {std::max(a.high.u, b.high.u), std::max(a.high.v, b.high.v)}};
}

Extent grown(const Extent& extent, double by) {
  return {{extent.low.u - by, extent.low.v - by}, {extent.high.u + by, extent.high.v + by}};
}

bool overlap(const Extent& a, const Extent& b) {
  return a.low.u < b.high.u && b.low.u < a.high.u && a.low.v < b.high.v && b.low.v < a.high.v;
}

std::vector<std::string> lettered_lines(const std::string& text, double size, double width,
                                        Letters letters) {
  std::vector<std::string> lines;
  std::string line;
  std::string_view rest = text;
  while (!rest.empty()) {
    const std::size_t taken = fitting_bytes(rest.substr(0, rest.find(' ')), size, width, letters);
    const std::string_view word = rest.substr(0, taken);
    const std::string longer = line.empty() ? std::string(word) : line + " " + std::string(word);
    if (!line.empty() && text_width(longer, letters) * size > width)
      lines.push_back(std::exchange(line, std::string(word)));
    else
      line = longer;
    rest.remove_prefix(taken);
    if (!rest.empty() && rest.front() == ' ') rest.remove_prefix(1);
  }
  if (!line.empty()) lines.push_back(std::move(line));
  return lines;
}

}  // namespace haunch
