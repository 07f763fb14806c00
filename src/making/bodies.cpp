#include "bodies.h"

#include "polyhedron.h"

namespace haunch {

std::vector<Box> bodies_of(const Feature& feature) {
  std::vector<Box> bodies = feature.cuts;
  for (const Prism& prism : feature.prisms)
    bodies.push_back(bounds_of(prism));
  return bodies;
}

}  // namespace haunch
