#include "dotted_keys.h"

namespace haunch {
namespace {

void add_leaves(std::vector<Leaf>& leaves, const std::string& key, const Value& value) {
  const std::string before = key.empty() ? "" : key + ".";
  for (const Entry& entry : value.entries)
    add_leaves(leaves, before + entry.key, entry.value);
  for (std::size_t i = 0; i < value.list.size(); ++i)
    add_leaves(leaves, before + std::to_string(i), value.list[i]);
  if (value.entries.empty() && value.list.empty() && !key.empty()) leaves.push_back({key, &value});
}

}  // namespace

std::vector<Leaf> leaves_of(const Value& document) {
  std::vector<Leaf> leaves;
  add_leaves(leaves, "", document);
  return leaves;
}

}  // namespace haunch
