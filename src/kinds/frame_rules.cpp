#include "frame_rules.h"

namespace haunch {
namespace {

constexpr Length mm(std::int64_t millimetres) {
  return Length::from_mm(millimetres);
}

}  // namespace

const std::vector<FrameRule>& frame_rules() {
  // 885 x 2005 in the wall is 834 x 1972 of a square-edged leaf and 860 x 1985 of a rebated one,
  // whose lip stands 13 mm over each side and the head.
  static const std::vector<FrameRule> kRules = {
      {"din-18101-square",
       "DIN 18101, square-edged leaf: 51 mm wider, 33 mm higher",
       mm(51),
       mm(33),
       mm(3),
       {},
       {}},
      {"din-18101-rebated",
       "DIN 18101, rebated leaf by its outer size: 25 mm wider, 20 mm higher",
       mm(25),
       mm(20),
       mm(3),
       {},
       mm(13)},
      {"us-rough-opening",
       "US rough opening: 2 in wider, 2 1/2 in higher than the leaf",
       Length::from_inch_parts(2),
       Length::from_inch_parts(5, 2),
       Length::from_inch_parts(1, 8),
       {},
       {}},
      {"us-prehung",
       "US rough opening of a pre-hung door: 2 in wider and higher than the leaf",
       Length::from_inch_parts(2),
       Length::from_inch_parts(2),
       Length::from_inch_parts(1, 8),
       {},
       {}},
      {"uk-doorset",
       "UK doorsets: 7 mm between wall and frame, 3 mm beside the leaf",
       {},
       {},
       mm(3),
       mm(7),
       {}},
  };
  return kRules;
}

}  // namespace haunch
