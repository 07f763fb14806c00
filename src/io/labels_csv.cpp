#include "csv_row.h"
#include "labels_text.h"

namespace haunch {
namespace {

void add_head(std::string& out, Unit unit, CsvProfile profile) {
  const std::string suffix = "_" + std::string(word_of(unit));
  CsvRow head(out, unit, profile);
  for (const char* title : {"label", "order", "item", "piece", "name", "role"})
    head.plain(title);
  for (const char* title : {"length", "width", "thickness"})
    head.plain(title + suffix);
  for (const char* title :
       {"material", "grain", "face_side", "face_edge", "joined_to", "item_name", "bag"})
    head.plain(title);
  head.end();
}

void add_row(CsvRow row, const LabelOrder& order, const ItemLabels& item, const std::string& one,
             const Label& label) {
  row.text(order_mark(one, label.piece));
  row.text(order.name);
  row.text(one);
  row.text(label.piece);
  row.text(label.name);
  row.plain(word_of(label.role));
  for (const Length length : {label.length, label.width, label.thickness})
    row.length(length);
  row.text(label.material);
  row.plain(label.grain);
  row.plain(label.is_marked() ? side_words(label.face) : "");
  row.plain(label.is_marked() ? side_words(label.edge) : "");
  row.text(mates_words(label.mates, one + "/"));
  row.text(item.name);
  row.plain(label.in_bag() ? "yes" : "no");
  row.end();
}

}  // namespace

std::string labels_csv(const LabelOrder& order, Unit unit, CsvProfile profile) {
  std::string out(csv_start(profile));
  add_head(out, unit, profile);
  for (const ItemLabels& item : order.items)
    for (int copy = 1; copy <= item.quantity; ++copy)
      for (const Label& label : item.labels)
        add_row({out, unit, profile}, order, item, item.one(copy), label);
  return out;
}

}  // namespace haunch
