// Catch2, version 2 (Debian 12) or 3.
#pragma once

#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
#else
#include <catch2/catch.hpp>
#endif
