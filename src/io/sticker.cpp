#include "sticker.h"

#include <fmt/core.h>

#include <algorithm>
#include <iterator>
#include <utility>

#include "utf8.h"

namespace haunch {
namespace {

/// Sizes of the type, in mm: of the mark, which is read from afar, and of the rest. 2.1 is 6 point,
/// the least that is read at arm's length.
struct Types {
  double mark, rest;
};
/// The best first.
constexpr Types kTypes[] = {{5.6, 2.8}, {4.6, 2.8}, {5, 2.5},   {4, 2.5},
                            {4.2, 2.3}, {3.4, 2.3}, {3.4, 2.1}, {2.6, 2.1}};

/// Of a sticker so wide, or no drawing.
PrintSize drawing_for(PrintSize room) {
  constexpr double kLeastWidth = 45, kShare = 0.25, kLargest = 18, kHigh = 1.1;
  if (room.width < kLeastWidth) return {};
  const double width = std::min({kShare * room.width, kLargest, room.height / kHigh});
  return {width, width * kHigh};
}

/// Takes a word off the front, or a run of spaces before one.
std::string_view take_word(std::string_view& text) {
  const std::size_t begin = std::min(text.find_first_not_of(' '), text.size());
  const std::size_t end = std::min(text.find(' ', begin), text.size());
  const std::string_view word = text.substr(begin, end - begin);
  text.remove_prefix(end);
  return word;
}

/// How many bytes of a word without a space go into a line of so many em: whole characters, one at
/// least, up to a hyphen or stroke if there is one in its second half.
std::size_t bytes_that_fit(std::string_view word, Letters letters, double em) {
  std::size_t fit = 0;
  for (std::size_t end = 1; end <= word.size(); ++end) {
    if (end < word.size() && continues_character(word[end])) continue;
    if (fit > 0 && text_width(word.substr(0, end), letters) > em) break;
    fit = end;
  }
  const std::size_t joint = word.substr(0, fit).find_last_of("-/");
  return fit < word.size() && joint != std::string_view::npos && joint >= fit / 2 ? joint + 1 : fit;
}

/// Sets lines one below the other, narrower ones as long as they stand beside the drawing.
class Setter {
 public:
  Setter(PrintSize room, PrintSize drawing) : room_(room), drawing_(drawing) {}

  /// Whether it stands in one line of this type, set below the others.
  bool fits_line(std::string_view text, double type, Letters letters) const {
    return text_width(text, letters) * type <= width_here();
  }

  void add(std::string_view text, double type, Letters letters) {
    std::string line;
    while (!text.empty()) {
      std::string_view word = take_word(text);
      if (word.empty()) break;
      const std::string longer = line + (line.empty() ? "" : " ") + std::string(word);
      if (!line.empty() && !fits_line(longer, type, letters)) {
        end_line(std::exchange(line, {}), type, letters);
        line = broken(word, type, letters);
      } else {
        line = line.empty() ? broken(word, type, letters) : longer;
      }
    }
    if (!line.empty()) end_line(std::move(line), type, letters);
  }

  bool fits() const { return top_ <= room_.height && !too_wide_; }
  std::vector<StickerLine> take() { return std::move(lines_); }

 private:
  /// A word that begins a line; of one that is too long for any, what is left after whole lines.
  std::string broken(std::string_view word, double type, Letters letters) {
    while (!fits_line(word, type, letters)) {
      const std::size_t fit = bytes_that_fit(word, letters, width_here() / type);
      too_wide_ = too_wide_ || !fits_line(word.substr(0, fit), type, letters);
      if (fit == word.size()) break;
      end_line(std::string(word.substr(0, fit)), type, letters);
      word.remove_prefix(fit);
    }
    return std::string(word);
  }

  double width_here() const {
    constexpr double kBetween = 1.5;  // drawing and words, in mm
    const bool beside = top_ < drawing_.height;
    return room_.width - (beside ? drawing_.width + kBetween : 0);
  }

  void end_line(std::string line, double type, Letters letters) {
    lines_.push_back({std::move(line), type, letters});
    top_ += type * kLeading;
  }

  PrintSize room_, drawing_;
  std::vector<StickerLine> lines_;
  double top_ = 0;
  bool too_wide_ = false;  // not one character stands in a line
};

/// In one line, as large as goes; else as small as the rest, broken.
void add_mark(Setter& setter, const std::string& mark, Types types) {
  constexpr double kSmaller = 0.9;
  double type = types.mark;
  while (type > types.rest && !setter.fits_line(mark, type, Letters::bold))
    type = std::max(type * kSmaller, types.rest);
  setter.add(mark, type, Letters::bold);
}

/// How much may be left out: name, mates, wood, whence, the last first.
constexpr std::size_t kMayGo = 4;

/// With the first `kept` of them.
std::optional<Sticker> set(const StickerWords& words, PrintSize room, PrintSize drawing,
                           Types types, std::size_t kept) {
  const bool all = kept == kMayGo;
  std::size_t number = 0;
  const auto if_kept = [&](const std::string& text) {
    return number++ < kept ? text : std::string();
  };
  const std::string name = if_kept(words.name), mates = if_kept(words.mates),
                    wood = if_kept(words.wood), whence = if_kept(words.whence);
  Setter setter(room, drawing);
  add_mark(setter, words.mark, types);
  setter.add(name, types.rest, Letters::plain);
  setter.add(words.size, types.rest, Letters::bold);
  // What stands last tells that more would follow.
  std::vector<std::string> rest{words.sides, wood, mates, whence};
  std::erase(rest, "");
  if (rest.empty()) rest.emplace_back();
  if (!all) rest.back() += " …";
  for (const std::string& text : rest)
    setter.add(text, types.rest, Letters::plain);
  if (!setter.fits()) return {};
  return Sticker{setter.take(), drawing, !all};
}

}  // namespace

std::string print_figure(double mm) {
  std::string text = fmt::format("{:.3f}", mm);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::optional<Sticker> fit_sticker(const StickerWords& words, PrintSize room) {
  const PrintSize drawing = words.drawn ? drawing_for(room) : PrintSize();
  for (const Types& types : kTypes)
    if (auto sticker = set(words, room, drawing, types, kMayGo)) return sticker;
  const Types smallest = *std::rbegin(kTypes);
  for (std::size_t kept = kMayGo + 1; kept-- > 0;)
    if (auto sticker = set(words, room, {}, smallest, kept)) return sticker;
  return {};
}

}  // namespace haunch
