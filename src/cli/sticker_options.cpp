#include "sticker_options.h"

#include <optional>
#include <string_view>
#include <utility>

#include "haunch/length_text.h"

namespace haunch {
namespace {

constexpr PrintSize kA4{210, 297};
constexpr PrintSize kLetter{215.9, 279.4};
constexpr PrintSize kUsualSticker{70, 36};  // three in a row fill A4, eight rows of them

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

std::string_view trimmed(std::string_view text) {
  const std::size_t first = std::min(text.find_first_not_of(' '), text.size());
  const std::size_t last = text.find_last_not_of(' ');
  return last == std::string_view::npos ? std::string_view() : text.substr(first, last + 1 - first);
}

double in_mm(Length length) {
  return static_cast<double>(length.steps()) / static_cast<double>(Length::from_mm(1).steps());
}

/// "70x36", "2 5/8 x 1 in": a unit behind the second holds for both. Nothing where it is no size.
std::optional<PrintSize> read_size(std::string_view text, Unit bare) {
  const std::size_t by = text.find('x');
  if (by == std::string_view::npos) return {};
  std::string wide(trimmed(text.substr(0, by)));
  const std::string_view high = trimmed(text.substr(by + 1));
  if (wide.empty() || high.empty()) return {};
  if (is_digit(wide.back())) wide += high.substr(high.find_last_of("0123456789") + 1);
  const auto width = read_length(wide, bare).length, height = read_length(high, bare).length;
  if (!width || !height) return {};
  return PrintSize{in_mm(*width), in_mm(*height)};
}

/// The same, or one length for both.
std::optional<PrintSize> read_margin(std::string_view text, Unit bare) {
  if (text.find('x') != std::string_view::npos) return read_size(text, bare);
  const auto both = read_length(text, bare).length;
  return both ? std::optional(PrintSize{in_mm(*both), in_mm(*both)}) : std::nullopt;
}

std::string no_size(std::string_view option, const std::string& text, std::string_view right) {
  return std::string(option) + ": \"" + text + "\" is no size; write " + std::string(right);
}

}  // namespace

std::variant<AskedSheet, std::string> asked_sheet(const Invocation& invocation) {
  const Unit bare = invocation.view.unit.value_or(Unit::mm);
  StickerSheet sheet;
  sheet.paper = invocation.paper == "letter" || (invocation.paper.empty() && bare == Unit::inch)
                    ? kLetter
                    : kA4;
  const auto sticker =
      invocation.sticker.empty() ? kUsualSticker : read_size(invocation.sticker, bare);
  if (!sticker || sticker->width <= 0 || sticker->height <= 0)
    return no_size("--sticker", invocation.sticker,
                   "width x height, such as 70x36, or \"2 5/8 x 1 in\"");
  sheet.sticker = *sticker;
  const std::pair<const char*, const std::string*> others[] = {{"--margin", &invocation.margin},
                                                               {"--gap", &invocation.gap}};
  for (const auto& [option, text] : others) {
    const auto size = text->empty() ? PrintSize() : read_margin(*text, bare);
    if (!size) return no_size(option, *text, "one length, or across x down, such as 2.5x0");
    (text == &invocation.margin ? sheet.margin : sheet.gap) = *size;
  }
  if (const auto grid = grid_of(sheet)) return AskedSheet{sheet, *grid};
  return "--sticker: not one of this size goes on the paper, with its margin; make them smaller";
}

}  // namespace haunch
