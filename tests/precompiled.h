// What every test includes, compiled once; see src/precompiled.h.
#pragma once

#include "../src/precompiled.h"  // of the standard library
#include "catch.h"
