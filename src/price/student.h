// Student's distribution, for ranges that rest on few jobs.
#pragma once

namespace haunch {

inline constexpr double kNineOfTen = 0.9;

/// The t between whose minus and plus a share of all lies (0 < `share` < 1), with `degrees` >= 1 of
/// freedom: 6.314 for nine of ten with one, 1.833 with nine.
double student_t(double share, int degrees);

}  // namespace haunch
