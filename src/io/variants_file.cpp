#include "variants_file.h"

#include <algorithm>
#include <utility>

#include "dotted_keys.h"
#include "value_reader.h"

namespace haunch {
namespace {

constexpr int kMostOfOne = 100'000;
constexpr std::size_t kMostVariants = 100;
constexpr std::string_view kForm =
    R"(a list; write [{"name": "ash", "with": {"species": "European ash"}, "quantity": 1}])";

class VariantsReader {
 public:
  VariantsReader(std::string source, std::shared_ptr<const std::string> text)
      : source_(std::move(source)), text_(std::move(text)), values_({}, "") {}

  VariantsReading read(const Value& document) {
    if (document.kind != Value::Kind::list)
      values_.wrong_type(document, "", kForm);
    else if (document.list.empty() || document.list.size() > kMostVariants)
      values_.problem("", "has " + std::to_string(document.list.size()) + " variants; write 1 to " +
                              std::to_string(kMostVariants));
    else
      for (std::size_t i = 0; i < document.list.size(); ++i)
        read_variant(document.list[i], child_path("", i));
    return {std::move(variants_), values_.take_problems()};
  }

 private:
  void read_variant(const Value& value, const std::string& path) {
    static const std::vector<std::string_view> kKeys{"name", "with", "quantity"};
    if (!values_.is_object(value, path, R"(a variant; write {"name": …, "with": {…}})")) return;
    for (const Entry& entry : value.entries)
      if (std::find(kKeys.begin(), kKeys.end(), entry.key) == kKeys.end())
        values_.unknown_key(entry, child_path(path, entry.key), kKeys);
    VariantWish wish;
    wish.with.source = source_;
    wish.with.text = text_;
    read_name(value, path, wish);
    if (const Value* quantity = value.find("quantity"))
      wish.quantity = values_.whole_number(*quantity, child_path(path, "quantity"), 1, kMostOfOne);
    if (const Value* with = value.find("with"))
      if (values_.is_object(*with, child_path(path, "with"),
                            R"(an object with keys of specs; write {"thickness": 44})"))
        for (const Entry& entry : with->entries)
          add_key(entry, child_path(child_path(path, "with"), entry.key), {}, wish.with);
    variants_.push_back(std::move(wish));
  }

  void read_name(const Value& value, const std::string& path, VariantWish& wish) {
    const Value* name = value.find("name");
    if (name == nullptr) {
      if (!values_.was_meant(child_path(path, "name")))
        values_.problem(path, R"(lacks "name", by which it is told from the others)");
      return;
    }
    wish.name = values_.text(*name, child_path(path, "name")).value_or("");
    if (std::any_of(variants_.begin(), variants_.end(),
                    [&](const VariantWish& other) { return other.name == wish.name; }))
      values_.problem(child_path(path, "name"),
                      "\"" + wish.name + "\" stands here twice; give each its own name");
  }

  /// Below the keys `steps`; what is in an object is set by itself, so that its neighbours stay.
  void add_key(const Entry& entry, const std::string& path, std::vector<std::string> steps,
               SetKeys& with) {
    const auto more = steps_of(entry.key);
    if (!more) return values_.problem(path, "is no key, such as \"clearance.foot\"", entry.offset);
    steps.insert(steps.end(), more->begin(), more->end());
    if (entry.value.kind == Value::Kind::object && !entry.value.entries.empty()) {
      for (const Entry& member : entry.value.entries)
        add_key(member, child_path(path, member.key), steps, with);
      return;
    }
    const bool left_out = entry.value.kind == Value::Kind::null;
    with.keys.push_back(
        {std::move(steps), left_out ? std::nullopt : std::optional(entry.value), entry.offset});
  }

  std::string source_;
  std::shared_ptr<const std::string> text_;
  ValueReader values_;
  std::vector<VariantWish> variants_;
};

}  // namespace

VariantsReading read_variants(const Value& document, const std::string& source,
                              std::shared_ptr<const std::string> text) {
  return VariantsReader(source, std::move(text)).read(document);
}

}  // namespace haunch
