#include "listed_fittings.h"

#include <algorithm>
#include <utility>

#include "spec_reader.h"

namespace haunch {
namespace {

const ListedFitting* listed_as(const std::vector<ListedFitting>& listed, std::string_view name) {
  const auto found = std::find_if(listed.begin(), listed.end(),
                                  [&](const ListedFitting& it) { return it.bought.name == name; });
  return found == listed.end() ? nullptr : &*found;
}

BoughtFitting bought_of(const KeyValues& item) {
  BoughtFitting bought;
  bought.name = item.text("hardware[].name");
  bought.code = item.text("hardware[].code");
  bought.mass = item["hardware[].mass"].figure;
  bought.pack = item.count("hardware[].pack").value_or(1);
  if (item["hardware[].price"].stated) bought.price = item["hardware[].price"].figure;
  bought.priced = item.text("hardware[].priced");
  bought.lead_days = item.count("hardware[].lead_days");
  return bought;
}

bool is_of(Key key, const FittingKeys& keys) {
  return key == keys.group || key.is_below(keys.group);
}

/// What a fitting of the list can say, or an object that has it in it. It names no other.
bool is_of_fitting(Key key) {
  return std::any_of(std::begin(kFittingKeys), std::end(kFittingKeys),
                     [&](const FittingKeys& keys) {
                       return (is_of(key, keys) && key != keys.fitting) || keys.group.is_below(key);
                     });
}

}  // namespace

std::vector<ListedFitting> listed_of(const std::vector<KeyValues>& items) {
  std::vector<ListedFitting> listed;
  for (const KeyValues& item : items) {
    ListedFitting its{bought_of(item), {}};
    const auto& said = item["hardware[].cuts"].items;
    if (!said.empty()) its.said = said.front();
    listed.push_back(std::move(its));
  }
  return listed;
}

void check_listed(ValueReader& read, const Value& list, const std::vector<ListedFitting>& listed,
                  const std::string& path) {
  for (std::size_t i = 0; i < listed.size(); ++i) {
    const BoughtFitting& its = listed[i].bought;
    const std::string its_path = child_path(path, i);
    if (!its.name.empty() && listed_as(listed, its.name) != &listed[i])
      read.problem(child_path(its_path, "name"),
                   "\"" + its.name + "\" is the name of another fitting too; give each its own");
    if (!its.priced.empty() && !its.price && list.list[i].find("price") == nullptr)
      read.problem(child_path(its_path, "priced"),
                   "is the day of a price that is not told; write \"price\" too");
    for (const auto& said : listed[i].said.all())
      if (said.second.stated && !is_of_fitting(said.first))
        read.problem(child_path(its_path, "cuts"),
                     "\"" + std::string(said.first.path()) +
                         "\" is not of a fitting; write keys of \"hinges\", \"lock\", "
                         "\"fronts.hinges\" or \"fronts.drawer.runner\"");
  }
}

void take_listed(Spec& spec, const std::vector<ListedFitting>& listed) {
  for (const FittingKeys& keys : kFittingKeys) {
    const KeyValue named = std::as_const(spec)[keys.fitting];
    if (!named.stated) continue;
    const auto mark = [&](Key key, const KeyValue& value) {
      if (std::as_const(spec)[key].stated) return;
      spec.edit(key) = value;
      spec.edit(key).by_shop = true;
    };
    KeyValue whole;
    whole.stated = true;
    if (!std::as_const(spec)[keys.group].stated) {
      spec.edit(keys.group) = whole;
      spec.edit(keys.group).by_shop = named.by_shop;
    }
    const ListedFitting* its = listed_as(listed, named.text);
    if (its == nullptr) continue;
    for (const auto& [key, value] : its->said.all())
      if (value.stated && is_of(key, keys)) mark(key, value);
  }
}

namespace {

std::string not_listed(const std::string& name, const std::vector<ListedFitting>& listed) {
  std::vector<std::string_view> names;
  for (const ListedFitting& each : listed)
    names.push_back(each.bought.name);
  const std::string nearest(nearest_word(name, names));
  return "\"" + name + "\" is not in the shop file's \"hardware\"" +
         (nearest.empty() ? "; write a name from there" : "; did you mean \"" + nearest + "\"?");
}

}  // namespace

std::vector<Problem> unlisted_in(const Spec& shop) {
  std::vector<Problem> problems;
  for (const FittingKeys& keys : kFittingKeys) {
    const std::string& name = shop.text(keys.fitting);
    if (name.empty() || listed_as(shop.listed, name) != nullptr) continue;
    std::string path = "/" + std::string(keys.fitting.path());
    std::replace(path.begin(), path.end(), '.', '/');
    problems.push_back({std::move(path), not_listed(name, shop.listed), {}});
  }
  return problems;
}

namespace {

/// Looks for what is taken by name, in an item and all objects in it.
class FittingNames {
 public:
  explicit FittingNames(const ShopDefaults* shop) : shop_(shop) {}

  FittingsTaken all(const Value& item) {
    look_in(item, "", "");
    for (const FittingKeys& keys : kFittingKeys)
      if (shop_ != nullptr && !named(keys.use))
        if (const std::string& name = shop_->spec.text(keys.fitting); !name.empty())
          if (const ListedFitting* its = listed_as(shop_->spec.listed, name))
            taken_.all.push_back({keys.use, its->bought});
    return std::move(taken_);
  }

 private:
  const TakenFitting* named(FittingUse use) const {
    const auto found = std::find_if(taken_.all.begin(), taken_.all.end(),
                                    [&](const TakenFitting& it) { return it.use == use; });
    return found == taken_.all.end() ? nullptr : &*found;
  }

  /// `inside`: the key of the object that `value` stands in.
  void look_in(const Value& value, const std::string& path, std::string_view inside) {
    for (std::size_t i = 0; i < value.list.size(); ++i)
      look_in(value.list[i], child_path(path, i), inside);
    for (const Entry& entry : value.entries) {
      const std::string its_path = child_path(path, entry.key);
      const auto use = use_of(entry.key, inside);
      if (use && entry.value.kind == Value::Kind::text && *use != FittingUse::runners)
        take(*use, entry.value, its_path);
      else if (const Value* name = use ? entry.value.find("fitting") : nullptr;
               name != nullptr && name->kind == Value::Kind::text)
        take(*use, *name, child_path(its_path, "fitting"));
      else
        look_in(entry.value, its_path, entry.key);
    }
  }

  static std::optional<FittingUse> use_of(std::string_view key, std::string_view inside) {
    if (key == "lock") return FittingUse::lock;
    if (key == "runner") return FittingUse::runners;
    if (key == "hinges") return inside == "fronts" ? FittingUse::cup_hinges : FittingUse::hinges;
    return {};
  }

  void take(FittingUse use, const Value& name, const std::string& path) {
    const ListedFitting* its =
        shop_ == nullptr ? nullptr : listed_as(shop_->spec.listed, name.text);
    const TakenFitting* before = named(use);
    if (path.starts_with("/layout/"))
      problem(path, "a fitting is named for all fronts alike: in \"fronts\", not in the layout");
    else if (its == nullptr)
      problem(path, unknown(name));
    else if (before != nullptr && before->bought.name != its->bought.name)
      problem(path,
              "an item takes one fitting for one use, so that they can be counted; it takes "
              "\"" +
                  before->bought.name + "\" already");
    else if (before == nullptr)
      taken_.all.push_back({use, its->bought});
  }

  std::string unknown(const Value& name) const {
    if (shop_ == nullptr || shop_->spec.listed.empty())
      return as_written(name) +
             " is taken by name from the shop file, which lists no \"hardware\"; give one with "
             "--shop, or write the sizes here";
    return not_listed(name.text, shop_->spec.listed);
  }

  void problem(const std::string& path, std::string message) {
    taken_.problems.push_back({path, std::move(message), {}});
  }

  const ShopDefaults* shop_;
  FittingsTaken taken_;
};

}  // namespace

FittingsTaken fittings_taken(const Value& item, const ShopDefaults* shop) {
  return FittingNames(shop).all(item);
}

}  // namespace haunch
