// Days, as they are written in specs, in lists of what jobs took, and on papers.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace haunch {

/// "2031-05-17" (ISO 8601); nothing where it is written otherwise, or there is no such day.
std::optional<std::chrono::sys_days> day_of(std::string_view text);

/// Of a year from 0 to 9999.
std::string day_text(std::chrono::sys_days day);

}  // namespace haunch
