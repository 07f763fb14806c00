#include "page_text.h"

#include <iterator>
#include <utility>

namespace haunch {
namespace {

constexpr std::size_t kNumberWidth = 2;

}  // namespace

std::string PageBlock::text() const {
  switch (kind) {
    case Kind::paragraph:
      return std::string(indent, ' ') + wrapped(words, width, indent) + "\n";
    case Kind::hanging:
      return std::string(indent, ' ') + wrapped(words, width, indent + 2) + "\n";
    case Kind::numbered: {
      const std::string its = std::to_string(number);
      const std::size_t words_at = indent + kNumberWidth + 2;
      return std::string(words_at - 2 - its.size(), ' ') + its + "  " +
             wrapped(words, width, words_at) + "\n";
    }
    case Kind::table:
      return table.text(indent);
    case Kind::gap:
      break;
  }
  return "\n";
}

PageText PageText::of(PageBlock block) {
  PageText text;
  text.blocks_.push_back(std::move(block));
  return text;
}

PageText PageText::paragraph(std::string words, std::size_t indent, std::size_t width) {
  if (words.empty()) return {};
  return of({PageBlock::Kind::paragraph, indent, width, std::move(words)});
}

PageText PageText::hanging(std::string words, std::size_t indent, std::size_t width) {
  if (words.empty()) return {};
  return of({PageBlock::Kind::hanging, indent, width, std::move(words)});
}

PageText PageText::table(const TextTable& table, const LengthPrinter& lengths, std::size_t indent) {
  if (table.empty()) return {};
  PageBlock block{PageBlock::Kind::table, indent};
  block.table = table.printed(lengths);
  return of(std::move(block));
}

PageText PageText::gap() {
  return of({PageBlock::Kind::gap});
}

PageText PageText::numbered(std::size_t number, std::string words) {
  PageBlock block{PageBlock::Kind::numbered, 2, kPageWidth, std::move(words)};
  block.number = number;
  return of(std::move(block));
}

PageText PageText::named(const std::string& name, const std::string& words, std::size_t indent) {
  PageBlock block{PageBlock::Kind::hanging, indent, kPageWidth, name + "  " + words};
  block.names = name;
  return of(std::move(block));
}

PageText PageText::about(std::vector<std::string> marks, std::string words, std::size_t indent) {
  PageBlock block{PageBlock::Kind::hanging, indent, kPageWidth, std::move(words)};
  block.marks = std::move(marks);
  return of(std::move(block));
}

std::string PageText::text() const {
  std::string text;
  for (const PageBlock& block : blocks_)
    text += block.text();
  return text;
}

PageBlock PageText::take_first() {
  PageBlock first = std::move(blocks_.front());
  blocks_.erase(blocks_.begin());
  return first;
}

PageText& PageText::operator+=(PageText more) {
  blocks_.insert(blocks_.end(), std::make_move_iterator(more.blocks_.begin()),
                 std::make_move_iterator(more.blocks_.end()));
  return *this;
}

}  // namespace haunch
