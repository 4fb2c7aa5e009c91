// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See machine.h.
#include "tests/bench/machine.h"

#include <cmath>
#include <vector>

#include "tests/bench/timing.h"

namespace tinwright {
namespace {

// Two doubles where the build has vectors (SSE2, wasm's simd128), else one.
#if defined(__wasm__) && !defined(__wasm_simd128__)
using Lanes = double;
double first(Lanes value) {
  return value;
}
#else
using Lanes = double __attribute__((vector_size(16)));
double first(Lanes value) {
  return value[0];
}
#endif

/// Keeps the work that made `value` from being left out.
void use(double value) {
  volatile double sink = value;
  static_cast<void>(sink);
}

// Called by pointer, so that they stay functions of their own: an engine that runs wasm compiles well only what it
// finds called again.
double run_chains(int turns) {
  const Lanes factor = Lanes{} + 0.999999;
  const Lanes rest = Lanes{} + 1e-6;
  Lanes a = rest, b = rest, c = rest, d = rest, e = rest, f = rest, g = rest, h = rest, i = rest, j = rest;
  for (int turn = 0; turn < turns; ++turn) {
    a = a * factor + rest;
    b = b * factor + rest;
    c = c * factor + rest;
    d = d * factor + rest;
    e = e * factor + rest;
    f = f * factor + rest;
    g = g * factor + rest;
    h = h * factor + rest;
    i = i * factor + rest;
    j = j * factor + rest;
    // The chains must differ, or a compiler may work out one of them.
    if ((turn & 4095) == 0) {
      b += 1e-9;
      c += 2e-9;
      d += 3e-9;
      e += 4e-9;
      f += 5e-9;
      g += 6e-9;
      h += 7e-9;
      i += 8e-9;
      j += 9e-9;
    }
  }
  return first(a + b + c + d + e + f + g + h + i + j);
}

void run_triad(double* to, const double* one, const double* other, std::size_t count, double scale) {
  for (std::size_t i = 0; i < count; ++i) to[i] = one[i] + scale * other[i];
}

}  // namespace

double peak_operations() {
  constexpr int kTurns = 1 << 18;
  constexpr double kChains = 10.0;  // a multiplication and an addition each; with both factors they fill 12 registers
  double (*const volatile run)(int) = run_chains;
  const double time = best_time([&] { use(run(kTurns)); });
  return 2.0 * kChains * kTurns * static_cast<double>(sizeof(Lanes) / sizeof(double)) / time;
}

double triad_bandwidth(std::size_t bytes) {
  constexpr double kWork = 2e7;  // [B] of one timed run
  const std::size_t count = bytes / (3 * sizeof(double));
  std::vector<double> a(count, 0.0), b(count, 1.0), c(count, 2.0);
  const int turns = static_cast<int>(std::ceil(kWork / static_cast<double>(bytes)));
  double scale = 0.5;
  void (*const volatile run)(double*, const double*, const double*, std::size_t, double) = run_triad;
  const double time = best_time([&] {
    for (int turn = 0; turn < turns; ++turn) {
      run(a.data(), b.data(), c.data(), count, scale);
      scale = 1.0 - scale + 1e-9 * a[static_cast<std::size_t>(turn) % count];
    }
    use(scale);
  });
  return static_cast<double>(3 * sizeof(double) * count) * turns / time;
}

}  // namespace tinwright
