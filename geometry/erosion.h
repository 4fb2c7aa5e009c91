// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Turns exact measurements of an outline moved inwards into an AreaCurve, measuring more densely where the cubic
// pieces would be off: at kinks (a corner vanishes, an island splits off) and near the closing inset.
#pragma once

#include <functional>

#include "geometry/area_curve.h"

namespace tinwright {

/// [-] Largest error of an interpolated area, as a share of the rim's area, and of a perimeter, of the rim's.
inline constexpr double kAreaTolerance = 1e-9;
inline constexpr double kPerimeterTolerance = 1e-6;

/// Extends `curve` from `from` to `to` (both exact samples) by measurements of `measure(inset)`.
/// `rim` is the sample at inset 0, which sets the tolerances.
void append_measured(AreaCurve& curve, const std::function<AreaCurve::Sample(double)>& measure,
                     const AreaCurve::Sample& rim, const AreaCurve::Sample& from, const AreaCurve::Sample& to);

}  // namespace tinwright
