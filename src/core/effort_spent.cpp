#include "effort_spent.h"

namespace haunch {
namespace {

thread_local std::int64_t spent = 0;

}  // namespace

void spend_effort(std::size_t effort) {
  spent += static_cast<std::int64_t>(effort);
}

std::int64_t effort_spent() {
  return spent;
}

}  // namespace haunch
