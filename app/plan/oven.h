// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What the page shows of the oven. It is worked out apart from the rest of the bench because it takes some tens of
// milliseconds.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/plan/bake_job.h"
#include "app/plan/bench.h"

namespace tinwright {

/// One moment of the temperature curve. Times [s] from the start, temperatures [K]; the core is the place that is
/// coldest when it leaves the oven.
struct CurvePoint {
  double time = 0.0, air = 0.0, core = 0.0, mean = 0.0;
};

/// One cell of the cut through my pan: the right-hand half, x from its middle and y from its floor [m].
struct Patch {
  double x = 0.0, y = 0.0, width = 0.0, height = 0.0;
  bool is_dough = false;
};

struct OvenAnswer {
  std::string sentence;  // what a cook would say; empty when there is no answer
  Report report, cautions;
  std::vector<CurvePoint> curve;   // oven, rack, store
  double oven_ends = 0.0;          // [s] on the curve
  double early = 0.0, late = 0.0;  // [s] around oven_ends; both 0 without a band
  std::vector<Patch> patches;
  std::vector<double> frame_times;                  // [s]
  std::vector<std::vector<double>> frames;          // [K] by patch, for each of frame_times
  double coldest_shown = 0.0, warmest_shown = 0.0;  // [K] over all frames
  Texts problems;                                   // by path: "oven.stages.0.air", "oven.start", "oven" for the whole
};

/// The curve and the cut of a bake that was solved with its cooling; words and problems are left empty.
OvenAnswer pictures_of(const BakeJobAnswer& solved);

/// `answer` is that of the same bench: its pans, crust and filling go into the oven. Says in `sentence` what is missing
/// where the bench has no filling yet.
OvenAnswer answer_oven(const Bench& bench, const BenchAnswer& answer, const Progress& progress = {});

}  // namespace tinwright
