#include "labels_text.h"

namespace haunch {
namespace {

std::string heading(const ItemLabels& item) {
  const std::string first = item.labels.empty() ? std::string() : item.labels.front().piece;
  const std::string last = item.labels.empty() ? std::string() : item.labels.back().piece;
  std::string text = item.id + ": " + item.name;
  if (item.quantity > 1)
    text += ", " + std::to_string(item.quantity) + " off: " + order_mark(item.one(1), first) +
            " to " + order_mark(item.one(item.quantity), last);
  return text;
}

}  // namespace

TextTable labels_table(const ItemLabels& item) {
  TextTable table({"piece", "name", "length", "width", "thick", "face side", "edge", "grain", "of",
                   "joined to"});
  for (const Label& label : item.labels) {
    const auto marked = [&](Surface side) {
      return std::string(label.is_marked() ? side_words(side) : "");
    };
    table.add({Cell::of_name(label.piece), label.name, label.length, label.width, label.thickness,
               marked(label.face), marked(label.edge),
               std::string(label.grain == "none" ? "" : label.grain), label.material,
               Cell::of_mark(mates_words(label.mates))});
  }
  return table;
}

std::string labels_page(const LabelOrder& order, const LengthPrinter& lengths) {
  const std::size_t count = count_of(order.items);
  std::string text = "labels for " + std::to_string(count) + (count == 1 ? " piece" : " pieces") +
                     " of " + std::to_string(order.items.size()) +
                     (order.items.size() == 1 ? " item" : " items") +
                     (order.name.empty() ? "" : ", order " + order.name) + "; finished sizes in " +
                     std::string(word_of(lengths.unit())) + "\n";
  for (const ItemLabels& item : order.items)
    text += "\n" + hanging(heading(item), 0) + labels_table(item).text(lengths, 2);
  return text;
}

}  // namespace haunch
