#include "kind.h"

#include <algorithm>
#include <array>
#include <utility>

#include "cabinet.h"
#include "door.h"
#include "door_defaults.h"
#include "doorset.h"
#include "drawer.h"
#include "extras.h"
#include "face_frame.h"
#include "frame.h"
#include "listed_fittings.h"
#include "mirrored.h"
#include "other_items.h"
#include "run.h"
#include "shop.h"
#include "spec_reader.h"
#include "tolerance_spec.h"
#include "usual_size.h"
#include "value_reader.h"

namespace haunch {
namespace {

struct Kind {
  std::string_view name;
  JobReading (*read)(const Value& item, const ShopDefaults* shop, std::string_view default_id);
  /// Of what takes others of its specs, in place of `read`.
  JobReading (*read_with)(const Value& item, const ShopDefaults* shop, std::string_view default_id,
                          const OtherItems* others) = nullptr;
};

/// Every kind of work. A new one is a line here.
constexpr std::array kKinds = {
    Kind{"door", read_door},
    Kind{"frame", read_frame},
    Kind{"doorset", read_doorset},
    Kind{"cabinet", read_cabinet},
    Kind{"face-frame", read_face_frame},
    Kind{"drawer", read_drawer},
    Kind{"run", nullptr, read_run},
};

const Kind* find_kind(std::string_view name) {
  const auto found = std::find_if(kKinds.begin(), kKinds.end(),
                                  [&](const Kind& kind) { return kind.name == name; });
  return found == kKinds.end() ? nullptr : &*found;
}

/// The same for one that a document says.
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

/// Whether mortise, tenon and allowance, where all are given, do.
bool agrees(const Spec& spec) {
  const auto mortise = spec.size("mortise.width");
  const auto tenon = spec.size("tenon.thickness");
  const auto allowance = spec.size("fit_allowance");
  return !mortise || !tenon || !allowance || *mortise - *tenon == *allowance;
}

}  // namespace

Length Chain::total() const {
  Length total;
  for (const Link& link : links)
    total += link.length;
  return total;
}

Touches Lever::touches() const {
  std::string_view own = key;
  for (const std::string_view group : {"leaf.", "face_frame.", "frame.", "fronts.drawer."})
    if (own.starts_with(group)) own.remove_prefix(group.size());
  const std::string_view last = own.substr(own.rfind('.') + 1);
  if (moves != Moves::nothing || last == "top" || last == "centre" || last == "bottom")
    return Touches::place;
  for (const std::string_view member :
       {"rail_width", "stile_width", "muntin_width", "mullion_width", "thickness", "jamb_width",
        "jamb_thickness", "head_thickness", "transom.thickness", "sill.height", "threshold.height",
        "front_thickness", "back_thickness", "box_front_thickness", "sides.", "bottom.thickness"})
    if (own.starts_with(member)) return Touches::proportion;
  return Touches::size;
}

namespace {

FinishSpec finish_said(const Spec& spec) {
  FinishSpec finish;
  finish.system = spec.text("finish.system");
  finish.faces = spec.word<FinishedFaces>("finish.faces").value_or(FinishedFaces::both);
  finish.coats = spec.count("finish.coats");
  finish.film = spec.size("finish.film").value_or(Length());
  finish.when = spec.word<FinishedWhen>("finish.when");
  return finish;
}

std::optional<Access> access_of(const Spec& spec, Unit unit) {
  if (!spec.speaks_of("access")) return {};
  const auto size = [&](SizeKey key) { return spec.size(key).value_or(Length()); };
  Access access;
  if (spec.size("access.door.width"))
    access.door = {size("access.door.width"), size("access.door.height")};
  if (const auto width = spec.size("access.stair.width"))
    access.stair = {*width, spec.size("access.stair.landing").value_or(*width),
                    spec.size("access.stair.headroom").value_or(usual_size(unit, 2'000'000, 80))};
  if (spec.size("access.lift.width"))
    access.lift = {size("access.lift.width"), size("access.lift.depth"),
                   size("access.lift.height")};
  if (spec["access.carry"].stated) access.carry = spec["access.carry"].figure;
  return access;
}

}  // namespace

void name_job(Job& job, const Spec& spec, std::string_view default_id) {
  const std::string& id = spec.text("id");
  const std::string& name = spec.text("name");
  job.id = id.empty() ? std::string(default_id) : id;
  if (id.empty()) job.assumed_names.push_back({"id", job.id, "made from the name of its file"});
  const auto quantity = spec.count("quantity");
  if (!quantity) job.assumed_names.push_back({"quantity", 1, "one, where nothing is said"});
  job.name = name.empty() ? std::string(job.kind) : name;
  job.note = spec.text("note");
  job.due = spec.text("due");
  job.finish = finish_said(spec);
  job.extras = extras_of(spec);
  job.access = access_of(spec, spec.units.value_or(Unit::mm));
  job.supply_only = spec.says("supply_only");
  job.other_work = spec.other_work;
  job.species = species_of(spec);
  job.species.all = spelt(job.species.all);
  for (auto& [role, wood] : job.species.own)
    wood = spelt(wood);
  job.woods = spec.woods;
  job.quantity = quantity.value_or(1);
  job.unit = spec.units.value_or(Unit::mm);
}

JobReading read_job(const Value& item, const ShopDefaults* shop, std::string_view default_id) {
  return read_job_among(item, shop, default_id, nullptr);
}

JobReading read_job_among(const Value& item, const ShopDefaults* shop, std::string_view default_id,
                          const OtherItems* others) {
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
  JobReading reading = known->read_with != nullptr
                           ? known->read_with(item, shop, default_id, others)
                           : known->read(item, shop, default_id);
  FittingsTaken fittings = fittings_taken(item, shop);
  add(reading.problems, std::move(fittings.problems));
  if (!reading.problems.empty()) return {nullptr, std::move(reading.problems)};
  for (TakenFitting& taken : fittings.all)
    reading.job->fittings.push_back(std::move(taken));
  const Value* mirror = item.find("mirror");
  if (reading.job && mirror != nullptr && mirror->text == "true")
    reading.job = mirrored(std::move(reading.job));
  return reading;
}

namespace {

/// What stands at the top of a shop file only.
const std::vector<Elsewhere>& elsewhere_of_use() {
  static const std::vector<Elsewhere> kElsewhere = [] {
    std::vector<Elsewhere> all;
    for (const Key key : std::initializer_list<Key>{"kind", "units", "use", "woods", "machines",
                                                    "hardware", "house", "cabinet"})
      all.push_back({key, "belongs at the top of the shop file; take it out"});
    return all;
  }();
  return kElsewhere;
}

/// What the shop says of one use alone, and of all work where it does not.
Spec shop_of_use(const Value& values, const Spec& of_all, const std::string& word,
                 std::vector<Problem>& problems) {
  Spec its;
  its.units = of_all.units;
  ValueReader read(its.units);
  const Value* section = values.find(word);
  if (section != nullptr && read.is_object(*section, "/" + word, "an object; write keys in it"))
    read_keys(read, *section, "/" + word, {.of = kOfShop, .elsewhere = &elsewhere_of_use()}, its);
  add(problems, read.take_problems());
  overlay(its, of_all, kOfShop);
  return its;
}

/// Settles what a shop file says of joints and tolerances, to find what cannot be.
std::vector<Problem> doubts_of_shop(const Spec& spec, const std::string& at) {
  std::vector<Problem> problems;
  if (!agrees(spec))
    problems.push_back(
        {"/fit_allowance",
         "does not agree with mortise.width and tenon.thickness; give two of the three",
         {}});
  if (speaks_of_tolerances(spec)) add(problems, settle_tolerances(spec).problems);
  add(problems, unlisted_in(spec));
  for (Problem& problem : problems)
    problem.path.insert(0, at);
  return problems;
}

}  // namespace

Use use_of(const Spec& item, const ShopDefaults& shop, Length height) {
  for (const Spec* says : {&item, &shop.spec})
    if (const auto use = says->word<Use>("use")) return *use;
  return usual_use(height);
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
  SpecReading reading = read_spec(values, {.of = kOfShop, .others = {"house", "cabinet"}}, {});
  problems = std::move(reading.problems);
  ShopDefaults shop;
  shop.house = shop_of_use(values, reading.spec, "house", problems);
  shop.cabinet = shop_of_use(values, reading.spec, "cabinet", problems);
  if (problems.empty()) problems = doubts_of_shop(reading.spec, "");
  for (const Use use : {Use::house, Use::cabinet})
    if (problems.empty())
      problems = doubts_of_shop(shop.of_use(use), "/" + std::string(word_of(use)));
  if (!problems.empty()) return {{}, std::move(problems)};
  shop.spec = std::move(reading.spec);
  if (kind != nullptr) shop.kind = kind->text;
  return {std::move(shop), {}};
}

}  // namespace haunch
