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
Ruling nothing_readable(const WrittenLength& written);
Ruling look_alike(const WrittenLength& written);
Ruling stray_character(const WrittenLength& written);

// other_things.cpp: what is not one length
Ruling sign(const WrittenLength& written);
Ruling no_number(const WrittenLength& written);
Ruling a_date(const WrittenLength& written);
Ruling something_before(const WrittenLength& written);
Ruling more_than_one(const WrittenLength& written);
Advice anything_else();

// numbers.cpp: numbers written in another way
Ruling hexadecimal(const WrittenLength& written);
Ruling exponent(const WrittenLength& written);
Ruling comma(const WrittenLength& written);
Ruling parted_thousands(const WrittenLength& written);
Ruling leading_zero(const WrittenLength& written);
Ruling too_many_digits(const WrittenLength& written);

// shapes.cpp: points, hyphens and fractions in the wrong place
Ruling wrong_shape(const WrittenLength& written);
Ruling no_decimals(const WrittenLength& written);
Ruling hyphenated_numbers(const WrittenLength& written);

// fractions.cpp: what fractions are worth; after too_many_digits and wrong_shape
Ruling fraction_value(const WrittenLength& written);
Ruling half_a_fraction(const WrittenLength& written);
Ruling bare_fraction(const WrittenLength& written);

// units.cpp: units that are not read, and more than one of them
Ruling unknown_word(const WrittenLength& written);
Ruling unit_first(const WrittenLength& written);
Ruling area(const WrittenLength& written);
Ruling after_last_unit(const WrittenLength& written);
Ruling two_units(const WrittenLength& written);
Ruling full_stop(const WrittenLength& written);

}  // namespace haunch::refusal
