// docs/keys.md, made from the table of keys.
#pragma once

#include <string>

namespace haunch::test {

std::string keys_page();

}  // namespace haunch::test
