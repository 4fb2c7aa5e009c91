// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The single pan's drawings in words, for who does not see them and for files; and how far the curve of temperatures
// goes.
#pragma once

#include <string>
#include <utility>

#include "app/plan/bench.h"
#include "app/plan/oven.h"

namespace tinwright {

/// My pan cut through, and from above. The answer has to have a picture.
std::string section_words(const BenchAnswer& answer, UnitChoice units);
std::string above_words(const BenchAnswer& answer, UnitChoice units);
/// The temperatures against time; the answer has to have a curve.
std::string curve_words(const OvenAnswer& answer, bool with_cooling, UnitChoice units);

/// Whether there is more to the curve than what is shown without the cooling.
bool goes_on_cooling(const OvenAnswer& answer);
/// [s] where the curve that is shown ends.
double curve_end(const OvenAnswer& answer, bool with_cooling);
/// [K] the lowest and highest temperature up to `end` [s].
std::pair<double, double> curve_range(const OvenAnswer& answer, double end);

}  // namespace tinwright
