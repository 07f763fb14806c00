#include "likes.h"

#include <algorithm>
#include <filesystem>
#include <utility>

#include "spec_merge.h"
#include "spec_source.h"

namespace haunch {
namespace {

constexpr std::string_view kLike = "like";

/// As files are named from the folder that haunch is run in.
std::string beside(const std::string& source, const std::string& named) {
  const std::filesystem::path folder =
      source == "<stdin>" ? std::filesystem::path() : std::filesystem::path(source).parent_path();
  return (folder / named).lexically_normal().string();
}

/// The keys of one item are not those of another that is like it.
void drop_own_keys(Value& item) {
  std::erase_if(item.entries, [](const Entry& entry) {
    return entry.key == "id" || entry.key == "quantity" || entry.key == "note" ||
           entry.key == "$schema";
  });
}

std::string circle_words(const std::vector<std::string>& way, const std::string& file) {
  std::string words;
  for (auto each = std::find(way.begin(), way.end(), file); each != way.end(); ++each)
    words += *each + " is like ";
  return words + file;
}

/// Sizes of both would else be read in the unit of one.
std::string unit_fault(const Value& item, const Value& other, const std::string& file) {
  const Value* own = item.find("units");
  const Value* its = other.find("units");
  if (own == nullptr || its == nullptr || own->text == its->text) return {};
  return file + " has units \"" + its->text + "\", and this one \"" + own->text +
         "\"; leave \"units\" out here, and give the sizes of this one with their unit";
}

}  // namespace

std::vector<Problem> Likes::take(Value& item, const std::string& source, std::uint32_t start,
                                 Lists lists, std::vector<OtherText>& others) {
  if (item.find(kLike) == nullptr) return {};
  const std::string own =
      source == "<stdin>" ? source : std::filesystem::path(source).lexically_normal().string();
  std::string fault = put_under(item, source, start, lists, others, {own});
  if (fault.empty()) return {};
  return {{"/like", std::move(fault), {}}};
}

std::vector<std::string> Likes::files() const {
  std::vector<std::string> all;
  for (const auto& [file, other] : others_)
    all.push_back(file);
  return all;
}

std::string Likes::put_under(Value& item, const std::string& source, std::uint32_t start,
                             Lists lists, std::vector<OtherText>& others,
                             const std::vector<std::string>& way) {
  const Value* like = item.find(kLike);
  if (like->kind != Value::Kind::text || like->text.empty())
    return "names no file; write that of a spec, such as \"shaker.json\"";
  const std::string file = beside(source, like->text);
  if (std::find(way.begin(), way.end(), file) != way.end())
    return "goes in a circle: " + circle_words(way, file);
  const Other& found = other(file, way);
  if (!found.fault.empty()) return found.fault;
  if (std::string fault = unit_fault(item, found.item, file); !fault.empty()) return fault;
  Value whole = found.item;
  shift(whole, start);
  for (OtherText text : found.texts) {
    text.start += start;
    others.push_back(std::move(text));
  }
  std::erase_if(item.entries, [](const Entry& entry) { return entry.key == kLike; });
  put_over(whole, std::move(item), lists);
  item = std::move(whole);
  return {};
}

const Likes::Other& Likes::other(const std::string& file, std::vector<std::string> way) {
  const auto known = others_.find(file);
  if (known != others_.end()) return known->second;
  Other read_now = read(file, std::move(way));
  return others_.insert_or_assign(file, std::move(read_now)).first->second;
}

Likes::Other Likes::read(const std::string& file, std::vector<std::string> way) {
  Other result;
  SpecSource source({file}, -1);
  const std::vector<FileFault> faults = source.check();
  if (!faults.empty()) {
    result.fault = faults.front().file + " " + faults.front().words;
    return result;
  }
  auto record = source.next();
  if (record && record->fault) result.fault = file + " " + record->fault->words;
  if (record && (!record->item || record->spoilt)) {
    const PlacedProblem first = record->place({}).front();
    result.fault = file + " cannot be read: line " + std::to_string(first.line) + ", column " +
                   std::to_string(first.column) + ": " + first.message;
  } else if (!record || record->index || record->item->kind != Value::Kind::object ||
             source.next()) {
    result.fault = file + " is no single spec; name a file with one object";
  }
  if (!result.fault.empty()) return result;
  result.item = std::move(*record->item);
  result.extent = static_cast<std::uint32_t>(record->text->text.size()) + 1;
  result.texts = {{file, std::make_shared<const std::string>(std::move(record->text->text)), 0}};
  way.push_back(file);
  if (result.item.find(kLike) != nullptr) {
    const std::string fault =
        put_under(result.item, file, result.extent, Lists::whole, result.texts, way);
    if (!fault.empty()) result.fault = fault;
    for (const OtherText& text : result.texts)
      result.extent =
          std::max(result.extent, text.start + static_cast<std::uint32_t>(text.text->size()) + 1);
  }
  drop_own_keys(result.item);
  return result;
}

}  // namespace haunch
