// What is measured on the first piece of a set-up.
#pragma once

#include <optional>
#include <vector>

#include "setup.h"
#include "setup_item.h"

namespace haunch {

/// By the shop's plus and minus, those of the strictest item; of a tenon without any by the
/// mortises or grooves that it goes into. Nothing of what has no size to measure.
std::optional<FirstPiece> first_piece_of(const Setup& setup, const std::vector<SetupItem>& items);

}  // namespace haunch
