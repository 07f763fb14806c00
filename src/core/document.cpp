#include "document.h"

#include <algorithm>
#include <charconv>
#include <iterator>

namespace haunch {
namespace {

/// One step of a JSON Pointer as the key it stands for. `~01` means `~1`, so the order matters.
std::string unescaped(std::string_view step) {
  std::string key;
  for (std::size_t i = 0; i < step.size(); ++i) {
    const bool escape = step[i] == '~' && i + 1 < step.size();
    if (escape && step[i + 1] == '1') {
      key += '/';
      ++i;
    } else if (escape && step[i + 1] == '0') {
      key += '~';
      ++i;
    } else {
      key += step[i];
    }
  }
  return key;
}

const Value* element(const std::vector<Value>& list, std::string_view step) {
  std::size_t index = 0;
  const char* end = step.data() + step.size();
  const auto [stopped, error] = std::from_chars(step.data(), end, index);
  if (error != std::errc() || stopped != end || index >= list.size()) return nullptr;
  return &list[index];
}

const Value* child(const Value& parent, std::string_view step) {
  if (parent.kind == Value::Kind::list) return element(parent.list, step);
  return parent.find(unescaped(step));
}

/// Letters to insert, delete, change or swap with their neighbour to make one word of the other, no
/// letter worked twice (optimal string alignment).
std::size_t letters_wrong(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before_last(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j)
    row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    before_last.swap(last);
    last.swap(row);
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t changed = a[i - 1] == b[j - 1] ? 0 : 1;
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + changed});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        row[j] = std::min(row[j], before_last[j - 2] + 1);
    }
  }
  return row[b.size()];
}

}  // namespace

const Value* Value::find(std::string_view key) const {
  for (const Entry& entry : entries)
    if (entry.key == key) return &entry.value;
  return nullptr;
}

std::string child_path(std::string_view path, std::string_view key) {
  std::string result(path);
  result += '/';
  for (const char c : key) {
    if (c == '~') {
      result += "~0";
    } else if (c == '/') {
      result += "~1";
    } else {
      result += c;
    }
  }
  return result;
}

std::string child_path(std::string_view path, std::size_t index) {
  return std::string(path) + '/' + std::to_string(index);
}

std::uint32_t offset_of(const Value& document, std::string_view path) {
  const Value* value = &document;
  while (!path.empty()) {
    path.remove_prefix(1);  // the slash
    const std::string_view step = path.substr(0, path.find('/'));
    path.remove_prefix(step.size());
    const Value* next = child(*value, step);
    if (next == nullptr) break;
    value = next;
  }
  return value->offset;
}

std::string_view nearest_word(std::string_view word, const std::vector<std::string_view>& known) {
  const std::size_t limit = word.size() <= 4 ? 1 : 2;
  std::string_view nearest;
  std::size_t fewest = limit + 1;
  for (const std::string_view candidate : known) {
    if (candidate.size() > word.size() + limit || word.size() > candidate.size() + limit) continue;
    const std::size_t wrong = letters_wrong(word, candidate);
    if (wrong >= fewest || 2 * wrong >= word.size()) continue;
    fewest = wrong;
    nearest = candidate;
  }
  return nearest;
}

void add(std::vector<Problem>& problems, std::vector<Problem> more) {
  problems.insert(problems.end(), std::make_move_iterator(more.begin()),
                  std::make_move_iterator(more.end()));
}

}  // namespace haunch
