// Specs put together: one spec's keys under another's, and single keys set.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "document.h"
#include "key_row.h"

namespace haunch {

/// The row of a key in a spec of whatever kind; null where there is none.
const KeyRow* key_row(const std::vector<std::string>& steps);

/// Of an object in whose place its first member's value may stand, that member's name.
std::string first_member(const KeyRow& row);

enum class Lists : std::uint8_t { whole, by_place };

/// Puts `own` over `base`: objects key by key, what is no object whole. One value for several keys,
/// as "clearance": 3, is taken as each of them where the other says one of them. Lists go whole
/// too, or, as of a row of a sheet, place by place: those that `own` leaves open (null, or beyond
/// its last) are the base's.
void put_over(Value& base, Value own, Lists lists = Lists::whole);

/// Sets a key whatever stood there, and what has to stand round it.
void set_key(Value& document, const std::vector<std::string>& steps, std::uint32_t key_offset,
             Value value);

/// Leaves a key out, if it is there.
void drop_key(Value& document, const std::vector<std::string>& steps);

/// All places of a document go on by so many bytes.
void shift(Value& document, std::uint32_t bytes);

}  // namespace haunch
