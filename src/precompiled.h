// What of the standard library most files include, compiled once. Each file still includes what it
// uses: it is built without this too (-DCMAKE_DISABLE_PRECOMPILE_HEADERS=ON, as clang-tidy is run).
#pragma once

#include <algorithm>
#include <array>
#include <cstdint>
#include <functional>
#include <iterator>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>
#include <variant>
#include <vector>
