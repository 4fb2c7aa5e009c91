// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Assertions for a caller's bug (never for a cook's input, which gets a Problem). They are live in Debug,
// in the sanitizer build and with TINWRIGHT_HEAVY_CHECKS, and cost nothing otherwise.
#pragma once

#if defined(TINWRIGHT_CHECKS)
#include <cstdio>
#include <cstdlib>
#define GEOMETRY_ASSERT(condition)                                                           \
  do {                                                                                       \
    if (!(condition)) {                                                                      \
      std::fprintf(stderr, "%s:%d: assertion failed: %s\n", __FILE__, __LINE__, #condition); \
      std::abort();                                                                          \
    }                                                                                        \
  } while (false)
#else
#define GEOMETRY_ASSERT(condition) static_cast<void>(0)
#endif
