#include <algorithm>
#include <string>
#include <vector>

#include "commands.h"
#include "complaints.h"
#include "document.h"
#include "example_texts.h"
#include "json_reader.h"
#include "order_sheet.h"
#include "value_reader.h"

namespace haunch {
namespace {

const ExampleText* example_of(const std::string& name) {
  const auto all = example_texts();
  const auto found = std::find_if(all.begin(), all.end(),
                                  [&](const ExampleText& each) { return each.name == name; });
  return found == all.end() ? nullptr : &*found;
}

std::string unknown(const std::string& name) {
  std::vector<std::string_view> names;
  for (const ExampleText& each : example_texts())
    names.push_back(each.name);
  const std::string_view nearest = nearest_word(name, names);
  return "example: \"" + name + "\" is not known; " +
         (nearest.empty() ? "there are " + quoted_list(names, "and")
                          : "did you mean " + std::string(nearest) + "?");
}

/// A sheet with several jobs shows how rows that say different things share their columns.
std::vector<std::string> usual_words(Format format) {
  if (format == Format::csv) return {"door", "cabinet-door", "inches"};
  return {"door"};
}

}  // namespace

ExitStatus run_example(const Invocation& invocation, const Streams& streams) {
  Complaints complaints(streams);
  const Format format = invocation.view.format;
  const std::vector<std::string> words =
      invocation.words.empty() ? usual_words(format) : invocation.words;
  if (format != Format::csv && words.size() > 1)
    return complaints.refuse("example: give one name, or --format csv for a sheet of several");
  std::vector<Value> items;
  for (const std::string& word : words) {
    const ExampleText* example = example_of(word);
    if (example == nullptr) return complaints.refuse(unknown(word));
    if (format != Format::csv) return write_result(std::string(example->text), invocation, streams);
    items.push_back(*read_json(example->text).value);
  }
  return write_result(sheet_of(items, invocation.view.csv), invocation, streams);
}

}  // namespace haunch
