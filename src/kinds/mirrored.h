// A job whose work is the handed twin of another's.
#pragma once

#include <memory>

#include "kind.h"

namespace haunch {

/// The spec is worked as it is written, so that what is assumed, what a remedy changes and what is
/// wrong are told by its own keys; then left and right of the wood are changed over.
std::unique_ptr<Job> mirrored(std::unique_ptr<Job> plain);

}  // namespace haunch
