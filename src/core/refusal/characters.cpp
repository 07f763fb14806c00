#include <array>
#include <cstdio>

#include "refusal/rules.h"

namespace haunch::refusal {
namespace {

struct LookAlike {
  char32_t first, last;
  std::string_view name;
  std::string_view plain;  // what it stands for; empty: nothing
};

constexpr const char* kDash = "a dash";

constexpr LookAlike kLookAlikes[] = {
    {0x0009, 0x0009, "a tab", " "},
    {0x000A, 0x000D, "a line break", " "},
    {0x0000, 0x001F, "a control character", ""},
    {0x007F, 0x009F, "a control character", ""},
    {0x00AD, 0x00AD, "an invisible character", ""},
    {0x200B, 0x200F, "an invisible character", ""},
    {0x202A, 0x202E, "an invisible character", ""},
    {0x2060, 0x2069, "an invisible character", ""},
    {0xFE00, 0xFE0F, "an invisible character", ""},
    {0xFEFF, 0xFEFF, "an invisible character", ""},
    {0x2000, 0x200A, "an unusual space", " "},
    {0x2028, 0x2029, "a line break", " "},
    {0x205F, 0x205F, "an unusual space", " "},
    {0x3000, 0x3000, "an unusual space", " "},
    {0x2010, 0x2011, "an unusual hyphen", "-"},
    {0x2012, 0x2015, kDash, "-"},
    {'\\', '\\', "a backslash", "/"},
    {0x00F7, 0x00F7, "a division sign", "/"},
    {0x2215, 0x2215, "a division slash", "/"},
    {0x29F8, 0x29F8, "a division slash", "/"},
    {0x201C, 0x201C, "a left quotation mark", "\""},
    {0x201E, 0x201F, "an unusual quotation mark", "\""},
    {0x2018, 0x2018, "a left quotation mark", "'"},
    {0x201A, 0x201B, "an unusual quotation mark", "'"},
    {'`', '`', "a grave accent", "'"},
    {0x00B4, 0x00B4, "an acute accent", "'"},
    {0x215F, 0x215F, "a fraction character without its lower half", "1/"},
};

struct Digits {
  char32_t first, last;
  char32_t first_digit;
  std::string_view name;
};

constexpr const char* kRaisedDigit = "a raised digit";

constexpr Digits kOtherDigits[] = {
    {0xFF10, 0xFF19, '0', "a full-width digit"},
    {0x0660, 0x0669, '0', "an Arabic-Indic digit"},
    {0x06F0, 0x06F9, '0', "an Arabic-Indic digit"},
    {0x2070, 0x2070, '0', kRaisedDigit},
    {0x2074, 0x2079, '4', kRaisedDigit},
    {0x00B9, 0x00B9, '1', kRaisedDigit},
    {0x00B2, 0x00B3, '2', kRaisedDigit},
    {0x2080, 0x2089, '0', "a lowered digit"},
};

struct Plain {
  std::string_view name;
  std::string text;
};

std::string one_character(char32_t ascii) {
  return {static_cast<char>(ascii)};
}

std::optional<Plain> plain_character(char32_t character) {
  for (const Digits& digits : kOtherDigits)
    if (character >= digits.first && character <= digits.last)
      return Plain{digits.name, one_character(digits.first_digit + (character - digits.first))};
  if (character >= 0xFF01 && character <= 0xFF5E)
    return Plain{"a full-width character", one_character('!' + (character - 0xFF01))};
  for (const LookAlike& look_alike : kLookAlikes)
    if (character >= look_alike.first && character <= look_alike.last)
      return Plain{look_alike.name, std::string(look_alike.plain)};
  return {};
}

/// The text with plain characters; a raised digit straight after a whole number begins its
/// fraction.
std::string plain_text(const WrittenLength& written) {
  std::string plain;
  for (std::size_t i = 0; i < written.tokens.size(); ++i) {
    const auto character = plain_character(written.tokens[i].character);
    const bool raised = character && character->name == kRaisedDigit;
    if (raised && i > 0 && written.at(i - 1) == 'd') plain += ' ';
    plain += character ? character->text : written.text(i, i + 1);
  }
  return plain;
}

std::string code_point(char32_t character) {
  std::array<char, 12> text{};
  const int size =
      std::snprintf(text.data(), text.size(), "U+%04X", static_cast<unsigned>(character));
  return {text.data(), static_cast<std::size_t>(size)};
}

}  // namespace

Ruling look_alike(const WrittenLength& written) {
  for (const Token& token : written.tokens) {
    const auto plain = plain_character(token.character);
    if (!plain) continue;
    const std::string which = " (" + code_point(token.character) + ")";
    const std::string_view doubt = plain->name == kDash ? ", which could mean a range" : "";
    return Advice{"it has " + std::string(plain->name) + which + " in it" + std::string(doubt),
                  plain_text(written)};
  }
  return {};
}

Ruling nothing_readable(const WrittenLength& written) {
  if (written.empty) return Advice{std::string("it is empty; ") + kExamples};
  if (written.tokens.empty()) return Advice{std::string("it is only spaces; ") + kExamples};
  if (written.find("!") != WrittenLength::kNone) return Advice{"it is not UTF-8 text"};
  return {};
}

Ruling stray_character(const WrittenLength& written) {
  const std::size_t i = written.find("?");
  if (i == WrittenLength::kNone) return {};
  const Token& token = written.tokens[i];
  const bool ascii = token.character < 0x80;
  Advice advice{(ascii ? quoted(token.text) : "the character " + code_point(token.character)) +
                " has no place in a length"};
  const bool harmless = one_of(token.text, {"?", "!", ";", ":", "|", "(", "[", ")", "]", "~"});
  const bool outside = i == 0 || i + 1 == written.tokens.size();
  if (harmless && outside) advice.proposal = written.with(i, 1, "");
  return advice;
}

}  // namespace haunch::refusal
