// What the checks say of joints, in short.
#pragma once

#include <algorithm>
#include <array>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>

#include "checks.h"
#include "vocabulary.h"

namespace haunch::test {

/// The checks that are not ok, each once, in lines.
inline std::string not_ok(const Assembly& wood, Unit unit = Unit::mm) {
  std::string text;
  for (const Finding& finding : check_assembly(wood, unit)) {
    if (finding.status == Status::ok) continue;
    const std::string line =
        std::string(finding.rule->check) + (finding.status == Status::fail ? " fail" : " caution");
    if (text.find(line) == std::string::npos) text += (text.empty() ? "" : "\n") + line;
  }
  return text;
}

/// The measure of one kind of check, where it is the same wherever it is taken.
inline Length measured(const Assembly& wood, std::string_view check, Unit unit = Unit::mm) {
  std::optional<Length> value;
  for (const Finding& finding : check_assembly(wood, unit)) {
    if (finding.rule->check != check) continue;
    if (value && *value != finding.value) throw std::invalid_argument("not the same everywhere");
    value = finding.value;
  }
  return value.value();
}

/// The least measure of one kind of check.
inline Length least(const Assembly& wood, std::string_view check, Unit unit = Unit::mm) {
  std::optional<Length> value;
  for (const Finding& finding : check_assembly(wood, unit))
    if (finding.rule->check == check)
      value = value ? std::min(*value, finding.value) : finding.value;
  return value.value();
}

/// From the low to the high end of an outline: u, then v.
using Room = std::array<Length, 4>;
inline Room room(const Prism& prism) {
  Room room{prism.outline[0].u, prism.outline[0].u, prism.outline[0].v, prism.outline[0].v};
  for (const Corner& corner : prism.outline) {
    room[0] = std::min(room[0], corner.u);
    room[1] = std::max(room[1], corner.u);
    room[2] = std::min(room[2], corner.v);
    room[3] = std::max(room[3], corner.v);
  }
  return room;
}

}  // namespace haunch::test
