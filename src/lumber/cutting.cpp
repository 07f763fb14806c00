#include "cutting.h"

namespace haunch::lumber {

Plan plan_cutting(const CuttingOrder& order) {
  Plan plan;
  for (std::size_t want = 0; want < order.wants.size(); ++want) {
    plan.unplaced.push_back({.want = want,
                             .why = Lack::size,
                             .stock_length = order.wants[want].length,
                             .stock_width = order.wants[want].width});
  }
  return plan;
}

std::vector<std::string> faults_of(const Plan&, const CuttingOrder&) {
  return {};
}

}  // namespace haunch::lumber
