#include "fittings_spec.h"

#include <algorithm>

namespace haunch {
namespace {

constexpr std::size_t kMostFittings = 50;
constexpr std::size_t kMostRecesses = 50;
constexpr bool kFromZero = true;
constexpr bool kAboveZero = false;

const std::vector<std::string_view> kFittingKeys = {"name", "on", "into", "at", "cuts"};
const std::vector<std::string_view> kRecessKeys = {"start", "length", "width",  "diameter",
                                                   "from",  "depth",  "through"};

bool is_list(ValueReader& read, const Value& value, const std::string& path, std::size_t most,
             std::string_view wanted) {
  if (value.kind == Value::Kind::list && !value.list.empty() && value.list.size() <= most)
    return true;
  if (value.kind == Value::Kind::list && !value.list.empty())
    read.problem(path, "has " + std::to_string(value.list.size()) + " members; write at most " +
                           std::to_string(most));
  else if (value.kind == Value::Kind::list)
    read.problem(path, "the list is empty; leave it out, or fill it");
  else
    read.wrong_type(value, path, wanted);
  return false;
}

void demand(ValueReader& read, const Value& object, const std::string& path,
            const std::vector<std::string_view>& keys, std::string_view why) {
  for (const std::string_view key : keys)
    if (object.find(key) == nullptr && !read.was_meant(child_path(path, key)))
      read.problem(path, "\"" + std::string(key) + "\" is missing; " + std::string(why));
}

/// Reads the values of one recess, key by key.
class RecessReader {
 public:
  RecessReader(ValueReader& read, const Value& value, std::string path)
      : read_(read), value_(value), path_(std::move(path)) {}

  RecessSpec recess() {
    for (const Entry& entry : value_.entries)
      read_entry(entry, child_path(path_, entry.key));
    if (has("diameter"))
      refuse_box();
    else
      demand(read_, value_, path_, {"length", "width"},
             "a recess has a length and a width, a round hole a \"diameter\"");
    if (has("depth") && through_)
      read_.problem(path_ + "/through", "goes right through, so it has no depth; keep one of them");
    if (!through_)
      demand(read_, value_, path_, {"depth"},
             "write how deep it is, or \"through\": true where it goes right through");
    return recess_;
  }

 private:
  bool has(std::string_view key) const { return value_.find(key) != nullptr; }

  void read_entry(const Entry& entry, const std::string& path) {
    const auto size = [&](bool zero_allowed) {
      return read_.length(entry.value, path, zero_allowed);
    };
    if (entry.key == "start")
      recess_.start = size(kFromZero).value_or(Length());
    else if (entry.key == "length")
      recess_.length = size(kAboveZero).value_or(Length());
    else if (entry.key == "width")
      recess_.width = size(kAboveZero).value_or(Length());
    else if (entry.key == "diameter")
      recess_.diameter = size(kAboveZero).value_or(Length());
    else if (entry.key == "from")
      recess_.from = size(kFromZero);
    else if (entry.key == "depth")
      recess_.depth = size(kAboveZero);
    else if (entry.key == "through")
      through_ = read_.flag(entry.value, path).value_or(false);
    else
      read_.unknown_key(entry, path, kRecessKeys);
  }

  void refuse_box() {
    for (const std::string_view key : {"length", "width"})
      if (has(key))
        read_.problem(child_path(path_, key),
                      "a round hole has a diameter only; for a recess with square corners take "
                      "\"diameter\" out");
  }

  ValueReader& read_;
  const Value& value_;
  std::string path_;
  RecessSpec recess_;
  bool through_ = false;
};

std::vector<RecessSpec> read_recesses(ValueReader& read, const Value& value,
                                      const std::string& path) {
  constexpr std::string_view kWanted =
      "a list of recesses; write such as [{\"length\": 150, \"width\": 20, \"depth\": 3}]";
  std::vector<RecessSpec> recesses;
  if (!is_list(read, value, path, kMostRecesses, kWanted)) return recesses;
  for (std::size_t i = 0; i < value.list.size(); ++i) {
    const std::string its_path = child_path(path, i);
    if (value.list[i].kind == Value::Kind::object)
      recesses.push_back(RecessReader(read, value.list[i], its_path).recess());
    else
      read.wrong_type(value.list[i], its_path,
                      "a recess; write such as {\"length\": 150, \"width\": 20, \"depth\": 3}");
  }
  return recesses;
}

void read_fitting_entry(ValueReader& read, const Entry& entry, const std::string& path,
                        FittingSpec& fitting) {
  if (entry.key == "name")
    fitting.name = read.text(entry.value, path).value_or("");
  else if (entry.key == "on")
    fitting.on = read.text(entry.value, path).value_or("");
  else if (entry.key == "at")
    fitting.at = read.length(entry.value, path, kFromZero).value_or(Length());
  else if (entry.key == "cuts")
    fitting.recesses = read_recesses(read, entry.value, path);
  else if (entry.key != "into")
    read.unknown_key(entry, path, kFittingKeys);
  else if (const auto word = read.choice(entry.value, path, kWords<Surface>))
    fitting.into = static_cast<Surface>(*word);
}

FittingSpec read_fitting(ValueReader& read, const Value& value, const std::string& path,
                         std::size_t number) {
  FittingSpec fitting;
  for (const Entry& entry : value.entries)
    read_fitting_entry(read, entry, child_path(path, entry.key), fitting);
  demand(read, value, path, {"on"}, "write the name or the mark of the piece, such as \"B\"");
  demand(read, value, path, {"into"}, "write which side of it: " + quoted_list(kWords<Surface>));
  demand(read, value, path, {"at"},
         "write where it begins, above the leaf's foot, or on level pieces from its left edge");
  demand(read, value, path, {"cuts"}, "write what is cut for it");
  if (fitting.name.empty()) fitting.name = "fitting " + std::to_string(number + 1);
  return fitting;
}

HingePlace read_hinge_place(ValueReader& read, const Value& value, const std::string& path) {
  const std::vector<std::string_view> keys{"from_foot", "from_top"};
  HingePlace place;
  if (value.kind != Value::Kind::object) {
    place.distance = read.length(value, path, kFromZero).value_or(Length());
    return place;
  }
  for (const Entry& entry : value.entries) {
    const std::string its_path = child_path(path, entry.key);
    if (std::find(keys.begin(), keys.end(), entry.key) == keys.end()) {
      read.unknown_key(entry, its_path, keys);
      continue;
    }
    place.from_top = entry.key == "from_top";
    place.distance = read.length(entry.value, its_path, kFromZero).value_or(Length());
  }
  if (value.entries.size() != 1)
    read.problem(path, "a hinge is placed by one figure; write \"from_foot\" or \"from_top\"");
  return place;
}

}  // namespace

std::vector<FittingSpec> read_fittings(ValueReader& read, const Value& value,
                                       const std::string& path) {
  constexpr std::string_view kWanted =
      "a list of fittings; write such as [{\"name\": \"bolt\", \"on\": \"B\", \"into\": \"back\", "
      "\"at\": 1800, \"cuts\": […]}]";
  std::vector<FittingSpec> fittings;
  if (!is_list(read, value, path, kMostFittings, kWanted)) return fittings;
  for (std::size_t i = 0; i < value.list.size(); ++i) {
    const std::string its_path = child_path(path, i);
    if (value.list[i].kind == Value::Kind::object)
      fittings.push_back(read_fitting(read, value.list[i], its_path, i));
    else
      read.wrong_type(value.list[i], its_path,
                      "a fitting; its keys are " + quoted_list(kFittingKeys, "and"));
  }
  return fittings;
}

std::vector<HingePlace> read_hinge_places(ValueReader& read, const Value& value,
                                          const std::string& path, int most) {
  std::vector<HingePlace> places;
  if (!is_list(read, value, path, static_cast<std::size_t>(most),
               "a list of heights; write such as [230, 1000, {\"from_top\": 150}]"))
    return places;
  for (std::size_t i = 0; i < value.list.size(); ++i)
    places.push_back(read_hinge_place(read, value.list[i], child_path(path, i)));
  return places;
}

}  // namespace haunch
