// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Filling a pan or a lined cavity: how high an amount stands, how far below the rim that is, and whether it stays
// inside when it rises.
#pragma once

#include <optional>

#include "geometry/pan.h"

namespace tinwright {

struct FillQuestion {
  std::optional<double> amount = std::nullopt;  // [m³] of filling there is, for one cavity
  std::optional<double> level =
      std::nullopt;   // [-] share of the cavity's depth wanted; with an amount too, what is over is left
  double rise = 1.0;  // [-] volume after rising over volume poured, at least 1
};

struct FillAnswer {
  double height = 0.0;           // [m] above the cavity's floor
  double below_rim = 0.0;        // [m] below the cavity's top
  double level = 0.0;            // [-] of the cavity's depth
  double volume = 0.0;           // [m³] the filling asked about: the amount, or what the level takes
  double left = 0.0;             // [m³] of the amount, when a level was wanted too
  double missing = 0.0;          // [m³] by which the amount falls short of the level
  double overflow = 0.0;         // [m³] that does not stay inside once risen
  double risen_height = 0.0;     // [m]
  double risen_below_rim = 0.0;  // [m]
};

/// Fills `cavity` (a pan, or line_pan's answer). Problem (place "volume", "level", "rise") when neither amount nor
/// level is given or one is out of range. An amount that does not fit is not a Problem: it fills to the brim and
/// the rest is `overflow`.
Result<FillAnswer> fill_cavity(const Pan& cavity, const FillQuestion& question);

}  // namespace tinwright
