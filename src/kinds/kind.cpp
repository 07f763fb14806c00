#include "kind.h"

#include <algorithm>
#include <array>
#include <utility>

#include "door.h"
#include "doorset.h"
#include "frame.h"
#include "shop.h"
#include "spec_reader.h"
#include "tolerance_spec.h"
#include "value_reader.h"

namespace haunch {
namespace {

struct Kind {
  std::string_view name;
  JobReading (*read)(const Value& item, const ShopDefaults* shop, std::string_view default_id);
};

/// Every kind of work. A new one is a line here.
constexpr std::array kKinds = {
    Kind{"door", read_door},
    Kind{"frame", read_frame},
    Kind{"doorset", read_doorset},
};

const Kind* find_kind(std::string_view name) {
  const auto found = std::find_if(kKinds.begin(), kKinds.end(),
                                  [&](const Kind& kind) { return kind.name == name; });
  return found == kKinds.end() ? nullptr : &*found;
}

/// The same for one that a document says.
const Kind* find_kind(const Value& kind, std::vector<Problem>& problems) {
  ValueReader reader({});
  const auto number = reader.choice(kind, "/kind", kinds_of_work());
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

/// Whether mortise, tenon and allowance, where all are given, do.
bool agrees(const Spec& spec) {
  const auto mortise = spec.size("mortise.width");
  const auto tenon = spec.size("tenon.thickness");
  const auto allowance = spec.size("fit_allowance");
  return !mortise || !tenon || !allowance || *mortise - *tenon == *allowance;
}

}  // namespace

std::vector<std::string_view> kinds_of_work() {
  std::vector<std::string_view> words;
  for (const Kind& kind : kKinds)
    words.push_back(kind.name);
  return words;
}

void name_job(Job& job, const Spec& spec, std::string_view default_id) {
  const std::string& id = spec.text("id");
  const std::string& name = spec.text("name");
  job.id = id.empty() ? std::string(default_id) : id;
  if (id.empty()) job.assumed_names.push_back({"id", job.id, "made from the name of its file"});
  const auto quantity = spec.count("quantity");
  if (!quantity) job.assumed_names.push_back({"quantity", 1, "one, where nothing is said"});
  job.name = name.empty() ? std::string(job.kind) : name;
  job.note = spec.text("note");
  job.species = species_of(spec);
  job.quantity = quantity.value_or(1);
  job.unit = spec.units.value_or(Unit::mm);
}

JobReading read_job(const Value& item, const ShopDefaults* shop, std::string_view default_id) {
  if (item.kind != Value::Kind::object)
    return {
        nullptr,
        {{"", as_written(item) + " is not a spec; write an object, {\"kind\": \"door\", …}", {}}}};
  std::vector<Problem> problems;
  const Value* kind = item.find("kind");
  const Kind* known = kind != nullptr   ? find_kind(*kind, problems)
                      : shop != nullptr ? find_kind(shop->kind)
                                        : nullptr;
  if (known == nullptr && problems.empty()) problems.push_back(missing_kind(item));
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
  const Value* kind = values.find("kind");
  if (kind != nullptr && find_kind(*kind, problems) == nullptr) return {{}, std::move(problems)};
  SpecReading reading = read_spec(values, {.of = kOfShop}, {});
  problems = std::move(reading.problems);
  if (!agrees(reading.spec))
    problems.push_back(
        {"/fit_allowance",
         "does not agree with mortise.width and tenon.thickness; give two of the three",
         {}});
  if (speaks_of_tolerances(reading.spec) && problems.empty())
    problems = settle_tolerances(reading.spec).problems;
  if (!problems.empty()) return {{}, std::move(problems)};
  return {ShopDefaults{std::move(reading.spec), kind != nullptr ? kind->text : ""}, {}};
}

}  // namespace haunch
