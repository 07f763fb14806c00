// What stands on a page below a heading, as what it is: words and tables. It is printed as lines of
// text, or laid out by whoever knows of something better.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "text_table.h"

namespace haunch {

/// One paragraph, or one table.
struct PageBlock {
  enum class Kind : unsigned char {
    paragraph,  // words whose lines are all indented alike
    hanging,    // the later ones by two more
    numbered,   // one of several in their order, its number before it
    table,
    gap  // an empty line
  };

  Kind kind = Kind::paragraph;
  std::size_t indent = 0;
  std::size_t width = kPageWidth;  // of the page that words go on below themselves in
  std::string words = {};
  std::string names = {};  // what words begin with where others refer to them: "S3"
  std::size_t number = 0;
  std::vector<std::string> marks = {};  // of the pieces that words are about, which name them first
  PrintedTable table = {};

  std::string text() const;
  friend bool operator==(const PageBlock&, const PageBlock&) = default;
};

class PageText {
 public:
  PageText() = default;

  // Nothing where there are no words, or no rows.
  static PageText paragraph(std::string words, std::size_t indent = 2,
                            std::size_t width = kPageWidth);
  static PageText hanging(std::string words, std::size_t indent = 2,
                          std::size_t width = kPageWidth);
  static PageText table(const TextTable& table, const LengthPrinter& lengths, std::size_t indent);
  static PageText gap();
  static PageText numbered(std::size_t number, std::string words);
  /// "S3  15 wide, 78 deep": words that others refer to by what they begin with.
  static PageText named(const std::string& name, const std::string& words, std::size_t indent = 2);
  /// Words that name pieces by their marks before they say what is true of them.
  static PageText about(std::vector<std::string> marks, std::string words, std::size_t indent = 2);

  bool empty() const { return blocks_.empty(); }
  const std::vector<PageBlock>& blocks() const { return blocks_; }
  /// Whole lines.
  std::string text() const;
  /// Takes the first block off.
  PageBlock take_first();

  PageText& operator+=(PageText more);
  friend PageText operator+(PageText first, PageText more) { return std::move(first += more); }
  friend bool operator==(const PageText&, const PageText&) = default;

 private:
  static PageText of(PageBlock block);

  std::vector<PageBlock> blocks_;
};

}  // namespace haunch
