#include "shops.h"

#include <cstdlib>
#include <filesystem>
#include <utility>

#include "file_place.h"
#include "single_file.h"

namespace haunch {
namespace {

constexpr std::string_view kNone = "none";

/// Empty for the folder that the run is in.
std::string folder_of(const std::string& spec) {
  if (spec == "-" || spec == "<stdin>") return {};
  return std::filesystem::path(spec).parent_path().string();
}

std::string shop_file_in(const std::string& folder) {
  return (std::filesystem::path(folder) / std::string(kShopFileName)).string();
}

}  // namespace

std::string Shops::environment() {
  const char* named = std::getenv("HAUNCH_SHOP");  // NOLINT(concurrency-mt-unsafe): never set here
  return named == nullptr ? std::string() : std::string(named);
}

bool Shops::take(const std::vector<std::string>& specs, Complaints& complaints) {
  const std::string named = environment();
  for_all_ = !invocation_.shop.empty() || !named.empty();
  if (!invocation_.shop.empty())
    return invocation_.shop == kNone || take_one(invocation_.shop, FoundBy::option, complaints);
  if (named == "-") {
    complaints.refuse("HAUNCH_SHOP: \"-\" names no file; name the shop file, or none");
    return false;
  }
  if (!named.empty()) return named == kNone || take_one(named, FoundBy::environment, complaints);
  bool all = true;
  for (const std::string& spec : specs)
    all = take_beside(spec, complaints) && all;
  return all;
}

bool Shops::take_beside(const std::string& spec, Complaints& complaints) {
  const std::string folder = folder_of(spec);
  const std::string file = shop_file_in(folder);
  if (of_folder_.contains(folder) || !is_present(file) || is_folder(file)) return true;
  if (is_one_file(file, spec)) {
    complaints.note(
        {{spec, 1, 1, "", "is a shop file, and no spec; name the specs that it is for"}});
    return false;
  }
  of_folder_[folder] = found_.size();
  return take_one(file, FoundBy::place, complaints);
}

bool Shops::take_one(const std::string& file, FoundBy by, Complaints& complaints) {
  tell(file, by, complaints);
  SingleObject single = read_single(file, "a shop file", false, streams_.in);
  for (const FileFault& fault : single.faults)
    complaints.note(fault);
  if (!complaints.note(single.problems) || !single.record) return false;
  ShopReading reading = read_shop(*single.record->item);
  if (!complaints.note(single.record->place(reading.problems)) || !reading.shop) return false;
  found_.push_back({file, by, std::move(*single.record), std::move(*reading.shop)});
  return true;
}

/// Sizes that no word of the command line accounts for are not taken in silence.
void Shops::tell(const std::string& file, FoundBy by, Complaints& complaints) const {
  if (invocation_.quiet || by == FoundBy::option) return;
  complaints.tell(
      "haunch: shop file " + file +
      (by == FoundBy::environment ? ", named by HAUNCH_SHOP" : ", found beside the spec"));
}

const ShopDefaults* Shops::of(const std::string& source) const {
  if (for_all_) return found_.empty() ? nullptr : &found_.front().shop;
  const auto place = of_folder_.find(folder_of(source));
  return place == of_folder_.end() ? nullptr : &found_[place->second].shop;
}

std::vector<std::string> Shops::files() const {
  std::vector<std::string> files;
  for (const FoundShop& each : found_)
    files.push_back(each.file);
  return files;
}

std::vector<std::string> files_read(const SpecSource& source, const Shops& shops) {
  std::vector<std::string> files = source.files();
  for (const auto& more : {shops.files(), source.files_taken()})
    files.insert(files.end(), more.begin(), more.end());
  return files;
}

}  // namespace haunch
