#include "rods_page.h"

#include <cctype>

#include "page_part.h"

namespace haunch {
namespace {

std::string capitals(std::string_view text) {
  std::string out;
  for (const char c : text)
    out += static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  return out;
}

/// "HEIGHT ROD, from the foot up; 2054 long"
std::string heading_of(const Rod& rod, const LengthPrinter& lengths) {
  constexpr std::string_view kFrom[] = {"from the foot up", "from the left",
                                        "from the front to the back"};
  return (rod.of.empty() ? "" : rod.of + ": ") + capitals(word_of(rod.direction)) + " ROD, " +
         std::string(kFrom[static_cast<std::size_t>(rod.direction)]) + "; " +
         lengths.one(rod.length) + " in all";
}

PageText table_of(const ItemRods& item, const Rod& rod, const LengthPrinter& lengths) {
  TextTable table({"at", "on", "", "takes"});
  for (const RodMark& mark : rod.marks)
    for (const RodName& name : mark.names)
      table.add({&name == &mark.names.front() ? std::optional(mark.at) : std::nullopt,
                 Cell::of_mark(pieces_text(item, rod, name)), name.what,
                 Cell::of_mark(joined(marks_of(item.wood, name.takes)))});
  return PageText::table(table, lengths, 2);
}

bool has_marks_before_zero(const Rod& rod) {
  return rod.marks.front().at < Length();
}

}  // namespace

PageParts rods_parts(const ItemRods& item, const LengthPrinter& lengths) {
  PageParts parts;
  for (const Rod& rod : item.rods) {
    PagePart part{heading_of(rod, lengths), table_of(item, rod, lengths)};
    if (has_marks_before_zero(rod))
      part.legends.push_back(PageText::paragraph(
          "below 0: before the " + std::string(zero_of(rod.direction)) +
          (rod.direction == RodDirection::width ? ", where the wall stands back"
                                                : ", as doors lie on the front of a case")));
    parts.push_back(std::move(part));
  }
  return parts;
}

PageText rods_remark() {
  return PageText::paragraph(
      "Finished sizes, horns not counted. What lies through the thickness is gauged from the face "
      "side: 'haunch joints' has it.",
      0);
}

std::string rods_page(const std::vector<ItemRods>& items, const LengthPrinter& lengths) {
  std::string page;
  for (const ItemRods& item : items) {
    if (!page.empty()) page += "\n";
    page += item.id + (item.name.empty() ? "" : ": " + item.name) + "; sizes in " +
            std::string(word_of(lengths.unit())) + "\n" + text_of(rods_parts(item, lengths));
  }
  return page + "\n" + rods_remark().text();
}

}  // namespace haunch
