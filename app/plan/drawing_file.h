// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The single pan's drawings as files: SVG by itself, in millimetres of paper, by day whatever the page looks like, with
// the measures in words beneath.
#pragma once

#include <string>
#include <string_view>

#include "app/plan/bench.h"
#include "app/plan/oven.h"

namespace tinwright {

inline constexpr std::string_view kDrawingMediaType = "image/svg+xml";

/// My pan cut through, and from above. The answer has to have a picture.
std::string section_file(const BenchAnswer& answer, UnitChoice units);
std::string above_file(const BenchAnswer& answer, UnitChoice units);
/// The temperatures against time. The answer has to have a curve.
std::string curve_file(const OvenAnswer& answer, bool with_cooling, UnitChoice units);

}  // namespace tinwright
