#include "explain_figures.h"

#include <utility>

#include "json_reader.h"
#include "report_json.h"

namespace haunch {
namespace {

/// Of the numbers of a report those that are no lengths, and those that are no sizes to be read off
/// but the exact wood, whose cuts are many or few as it comes.
bool is_no_figure(std::string_view key) {
  return key == "quantity" || key == "count" || key == "cuts" || key == "prisms" ||
         key == "feature";
}

Length length_in(std::string_view number) {
  const bool minus = number.starts_with('-');
  const Length length = read_length(number.substr(minus ? 1 : 0), Unit::mm).length.value();
  return minus ? -length : length;
}

void collect(const Value& value, const std::string& name, std::vector<NamedLength>& all) {
  if (value.kind == Value::Kind::number) all.push_back({name, length_in(value.text)});
  for (std::size_t i = 0; i < value.list.size(); ++i)
    collect(value.list[i], name + "." + std::to_string(i), all);
  for (const Entry& entry : value.entries)
    if (!is_no_figure(entry.key)) collect(entry.value, name + "." + entry.key, all);
}

/// Each of a list, named by one of its texts.
void collect_each(const Value& item, std::string_view list, std::string_view called,
                  std::vector<NamedLength>& all) {
  const Value* each = item.find(list);
  if (each == nullptr) return;
  for (const Value& one : each->list)
    collect(one, one.find(called)->text, all);
}

}  // namespace

std::vector<NamedLength> figures_of(const ItemReport& report) {
  std::string text;
  append_item_json(text, report, Section::joints, Unit::mm, true);
  const Reading reading = read_json(text);
  const Value& item = reading.value.value();
  std::vector<NamedLength> all;
  collect(*item.find("size"), "whole", all);
  collect_each(item, "rooms", "what", all);
  collect_each(item, "parts", "mark", all);
  collect_each(item, "joints", "id", all);
  const Value* operations = item.find("operations");
  for (std::size_t i = 0; i < operations->list.size(); ++i)
    collect(operations->list[i], "operation-" + std::to_string(i + 1), all);
  return all;
}

}  // namespace haunch
