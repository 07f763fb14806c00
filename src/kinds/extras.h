// Extras: pieces that come with an item and have no place in it. They are laid beside the work once
// that is checked, in a group of their own.
#pragma once

#include <string>
#include <vector>

#include "extra_spec.h"
#include "spec.h"
#include "value_reader.h"

namespace haunch {

/// Of a spec that was read without problems.
std::vector<ExtraSpec> extras_of(const KeyValues& spec);

/// What can be wrong with one besides: what its work needs, and whether its wood has room for it.
void check_extra(ValueReader& read, const Value& extra, const KeyValues& item,
                 const std::string& path);

/// The handed twin of one, as it lies face up: its ends changed over.
ExtraSpec turned_about(ExtraSpec extra);

/// Adds them, each with the next mark, to the right of the work.
void lay_beside(Assembly& wood, const std::vector<ExtraSpec>& extras);

/// Whether a piece lies beside the work.
inline bool lies_beside(const Piece& piece) {
  return piece.role == Role::extra;
}

/// The name that all pieces of one extra share: "stave" of "stave 3".
std::string extra_name(const Piece& piece);

}  // namespace haunch
