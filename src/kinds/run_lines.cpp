#include "run_lines.h"

#include <algorithm>

#include "run_plan.h"
#include "value_reader.h"

namespace haunch {
namespace {

constexpr std::string_view kTopDrawer = "top-drawer";

Value* find_in(Value& object, std::string_view key) {
  for (Entry& entry : object.entries)
    if (entry.key == key) return &entry.value;
  return nullptr;
}

bool is_drawer(const Value& node) {
  const Value* front = node.find("front");
  return front != nullptr && front->text == "drawer";
}

/// A drawer, or drawers side by side.
bool is_of_drawers(const Value& node) {
  const Value* columns = node.find("columns");
  if (columns == nullptr) return is_drawer(node) && node.find("grade") == nullptr;
  return !columns->list.empty() &&
         std::all_of(columns->list.begin(), columns->list.end(), is_of_drawers);
}

/// In millimetres with all its decimals: whatever unit the cabinet is in.
Value as_value(Length height) {
  Value value;
  value.kind = Value::Kind::text;
  value.text = decimal(height, Unit::mm) + " mm";
  return value;
}

void set_height(Value& row, Length height, SetLine& set) {
  set.rows += 1;
  set.other = set.other || row.find("front_height") != nullptr || row.find("height") != nullptr;
  std::erase_if(row.entries, [](const Entry& entry) {
    return entry.key == "front_height" || entry.key == "height";
  });
  row.entries.push_back({"front_height", 0, as_value(height)});
}

void set_in(Value& node, Length height, SetLine& set) {
  if (Value* columns = find_in(node, "columns"))
    for (Value& column : columns->list)
      set_in(column, height, set);
  Value* rows = find_in(node, "rows");
  if (rows == nullptr || rows->list.empty()) return;
  Value& uppermost = rows->list.front();
  if (is_of_drawers(uppermost))
    set_height(uppermost, height, set);
  else
    set_in(uppermost, height, set);
}

}  // namespace

std::vector<RunLine> read_lines(const Value& run, Unit unit, std::vector<Problem>& problems) {
  std::vector<RunLine> lines;
  const Value* said = run.find("lines");
  if (said == nullptr) return lines;
  ValueReader read(unit);
  if (!read.is_object(*said, "/lines", R"(an object; write such as {"top-drawer": 140})")) {
    add(problems, read.take_problems());
    return lines;
  }
  for (const Entry& entry : said->entries) {
    const std::string path = child_path("/lines", entry.key);
    if (entry.key != kTopDrawer) {
      read.problem(path,
                   "is no line of rows; the one that is known is \"top-drawer\", the uppermost "
                   "drawers: give other rows a \"front_height\" in each cabinet",
                   entry.offset);
      continue;
    }
    if (const auto height = read.length(entry.value, path, false))
      lines.push_back({entry.key, *height});
  }
  add(problems, read.take_problems());
  return lines;
}

SetLine set_line(Value& cabinet, const RunLine& line) {
  SetLine set;
  if (Value* layout = find_in(cabinet, "layout")) set_in(*layout, line.height, set);
  return set;
}

std::optional<Caution> lines_caution(const WallRunPlan& plan, const RunSpec& spec) {
  if (spec.lines.empty()) return {};
  const Unit unit = spec.own.units.value_or(Unit::mm);
  std::string words;
  for (std::size_t line = 0; line < spec.lines.size(); ++line) {
    std::string with, other, without;
    const auto name = [](std::string& list, const RunMember& member) {
      list += (list.empty() ? "" : ", ") + member.name;
    };
    for (const RunMember& member : plan.members) {
      if (member.what != RunEntry::What::cabinet) continue;
      const SetLine& set = spec.order[*member.entry].taken->set_lines[line];
      name(set.rows > 0 ? with : without, member);
      if (set.other) name(other, member);
    }
    words += (line == 0 ? "" : "; ") + spec.lines[line].name + ", fronts " +
             in_words(spec.lines[line].height, unit) +
             " high: " + (with.empty() ? "no cabinet has one" : with);
    if (!other.empty()) words += "; in place of a height of its own in " + other;
    if (!without.empty() && !with.empty()) words += "; no drawer is uppermost in " + without;
  }
  return Caution{"lines", std::move(words)};
}

}  // namespace haunch
