// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The worker's module: runs one errand after another for worker.js.
#include <emscripten/emscripten.h>

#include <cstddef>
#include <cstdlib>
#include <string>
#include <string_view>

#include "app/plan/errand.h"

extern "C" void errand_progress(double done);  // in imports.js

namespace {

std::string outcome;

}  // namespace

extern "C" {

EMSCRIPTEN_KEEPALIVE void* errand_alloc(int size) {
  return std::malloc(static_cast<std::size_t>(size));
}

/// Takes the errand's bytes, which it frees, and returns the size of the outcome's.
EMSCRIPTEN_KEEPALIVE int errand_run(char* bytes, int size) {
  static tinwright::LastErrand last;
  const auto errand = tinwright::unpacked<tinwright::Errand>({bytes, static_cast<std::size_t>(size)});
  std::free(bytes);
  outcome.clear();
  if (errand) outcome = tinwright::packed(tinwright::run_errand(last, *errand, errand_progress));
  return static_cast<int>(outcome.size());
}

/// Where the outcome is until the next errand.
EMSCRIPTEN_KEEPALIVE const char* errand_outcome() {
  return outcome.data();
}

}  // extern "C"
