// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The clock of the benchmarks: processor time, the best of many runs, so that other programs disturb it little.
#pragma once

#include <algorithm>
#include <chrono>
#include <ctime>

namespace tinwright {

inline constexpr int kFewestRuns = 5;
inline constexpr int kMostRuns = 60;
inline constexpr double kLongEnough = 0.6;  // [s] after which no more runs are started, but for the fewest

/// [s] since some moment. Node has no clock of its own processor time that is fine enough.
inline double now() {
#ifdef __wasm__
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
#else
  return static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
#endif
}

/// [s] that `work` takes at best.
template <class Work>
double best_time(const Work& work) {
  double best = 1e9;
  double all = 0.0;
  for (int run = 0; run < kMostRuns && (run < kFewestRuns || all < kLongEnough); ++run) {
    const double start = now();
    work();
    const double time = now() - start;
    best = std::min(best, time);
    all += time;
  }
  return best;
}

}  // namespace tinwright
