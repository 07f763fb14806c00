#include "operation_names.h"

#include <algorithm>

#include "setup.h"

namespace haunch {
namespace {

constexpr std::string_view kFit = "fit";

std::vector<std::string> all_names() {
  std::vector<std::string> names{"sand", std::string(kFit)};
  for (const GroupKind hung : {GroupKind::leaf, GroupKind::drawer, GroupKind::front})
    for (const std::string_view where : {"", "-on-site"})
      names.push_back("hang-" + std::string(word_of(hung)) + std::string(where));
  Setup setup;
  for (std::size_t step = 0; step < std::size(kWords<Step>); ++step) {
    setup.step = static_cast<Step>(step);
    const bool by_process = setup.step == Step::cut || setup.step == Step::fitting;
    if (!by_process) names.push_back(setup.operation());
    for (std::size_t process = 0; by_process && process < std::size(kWords<Process>); ++process)
      for (std::size_t cut = 0; cut < std::size(kWords<Cut>); ++cut) {
        setup.process = static_cast<Process>(process);
        setup.cut = static_cast<Cut>(cut);
        names.push_back(setup.operation());
      }
  }
  return names;
}

}  // namespace

const std::vector<std::string>& operation_names() {
  static const std::vector<std::string> names = all_names();
  return names;
}

bool is_family_of(std::string_view family, std::string_view name) {
  return name.starts_with(family) && (name.size() == family.size() || name[family.size()] == '-');
}

bool names_operation(std::string_view name) {
  if (is_family_of(kFit, name)) return true;
  const auto& names = operation_names();
  return std::any_of(names.begin(), names.end(),
                     [&](const std::string& each) { return is_family_of(name, each); });
}

std::string hyphened(std::string name) {
  std::replace(name.begin(), name.end(), ' ', '-');
  return name;
}

}  // namespace haunch
