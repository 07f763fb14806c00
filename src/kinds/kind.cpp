#include "kind.h"

#include <algorithm>
#include <array>
#include <utility>

#include "door.h"
#include "doorset.h"
#include "frame.h"
#include "shop.h"
#include "value_reader.h"

namespace haunch {
namespace {

struct Kind {
  std::string_view name;
  JobReading (*read)(const Value& item, const ShopDefaults* shop, std::string_view default_id);
  std::vector<Problem> (*shop_problems)(const Value& shop);  // null: a shop file has none of it
};

/// Every kind of work. A new one is a line here.
constexpr std::array kKinds = {
    Kind{"door", read_door, door_shop_problems},
    Kind{"frame", read_frame, frame_shop_problems},
    Kind{"doorset", read_doorset, nullptr},
};

const Kind* find_kind(const Value& kind, std::vector<Problem>& problems) {
  std::vector<std::string_view> names;
  for (const Kind& known : kKinds)
    names.push_back(known.name);
  ValueReader reader({});
  const auto number = reader.choice(kind, "/kind", names);
  problems = reader.take_problems();
  return number ? &kKinds.at(*number) : nullptr;
}

/// An item that does not say what it is, or says it under a misspelt key.
Problem missing_kind(const Value& item) {
  for (const Entry& entry : item.entries)
    if (!nearest_word(entry.key, {"kind"}).empty())
      return {child_path("", entry.key), "unknown key; did you mean \"kind\"?", entry.offset};
  return {"", "\"kind\" is missing; write \"kind\": \"door\"", {}};
}

}  // namespace

JobReading read_job(const Value& item, const ShopDefaults* shop, std::string_view default_id) {
  if (item.kind != Value::Kind::object)
    return {
        nullptr,
        {{"", as_written(item) + " is not a spec; write an object, {\"kind\": \"door\", …}", {}}}};
  const Value* kind = item.find("kind");
  if (kind == nullptr && shop != nullptr) kind = shop->values().find("kind");
  if (kind == nullptr) return {nullptr, {missing_kind(item)}};
  std::vector<Problem> problems;
  const Kind* known = find_kind(*kind, problems);
  if (known == nullptr) return {nullptr, std::move(problems)};
  return known->read(item, shop, default_id);
}

ShopReading read_shop(const Value& values) {
  if (values.kind != Value::Kind::object)
    return {{},
            {{"",
              as_written(values) +
                  " is not a shop file; write an object of the keys that a spec may leave out",
              {}}}};
  std::vector<Problem> problems;
  if (const Value* kind = values.find("kind");
      kind != nullptr && find_kind(*kind, problems) == nullptr)
    return {{}, std::move(problems)};
  for (const Kind& kind : kKinds) {
    if (kind.shop_problems == nullptr) continue;
    for (Problem& problem : kind.shop_problems(values))
      problems.push_back(std::move(problem));
  }
  if (!problems.empty()) return {{}, std::move(problems)};
  std::optional<Unit> units;
  if (const Value* word = values.find("units"); word != nullptr)
    units = word->text == "in" ? Unit::inch : Unit::mm;
  return {ShopDefaults(values, units), {}};
}

}  // namespace haunch
