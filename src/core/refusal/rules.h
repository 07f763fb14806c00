// What can be wrong with a text that is not a length, rule by rule, with the words for it.
#pragma once

#include <optional>
#include <string>

#include "refusal/written.h"

namespace haunch::refusal {

/// What a rule says of a text that it fits.
struct Advice {
  std::string why;
  // Another text to write, not yet known to be a length; empty where what was meant cannot be told.
  std::string proposal = {};
  // Whether a proposal that is not a length may be put right by the advice on it in turn.
  bool may_need_more = true;
};

using Ruling = std::optional<Advice>;  // nothing when the rule does not fit

inline constexpr const char* kExamples = "write one such as 65 mm, 2 9/16 in or 6 ft 6 in";

// characters.cpp: characters that no length has
Ruling nothing_readable(const Written& written);
Ruling look_alike(const Written& written);
Ruling stray_character(const Written& written);

// other_things.cpp: what is not one length
Ruling sign(const Written& written);
Ruling no_number(const Written& written);
Ruling a_date(const Written& written);
Ruling something_before(const Written& written);
Ruling more_than_one(const Written& written);
Advice anything_else();

// numbers.cpp: numbers written in another way
Ruling hexadecimal(const Written& written);
Ruling exponent(const Written& written);
Ruling comma(const Written& written);
Ruling parted_thousands(const Written& written);
Ruling leading_zero(const Written& written);
Ruling too_many_digits(const Written& written);

// shapes.cpp: points, hyphens and fractions in the wrong place
Ruling wrong_shape(const Written& written);
Ruling no_decimals(const Written& written);
Ruling hyphenated_numbers(const Written& written);

// fractions.cpp: what fractions are worth; after too_many_digits and wrong_shape
Ruling fraction_value(const Written& written);
Ruling half_a_fraction(const Written& written);
Ruling bare_fraction(const Written& written);

// units.cpp: units that are not read, and more than one of them
Ruling unknown_word(const Written& written);
Ruling unit_first(const Written& written);
Ruling area(const Written& written);
Ruling after_last_unit(const Written& written);
Ruling two_units(const Written& written);
Ruling full_stop(const Written& written);

}  // namespace haunch::refusal
