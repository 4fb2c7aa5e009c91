// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Durations as recipe data gives them: ISO 8601 ("PT1H30M"), or in words ("1 hour 30 minutes").
#pragma once

#include <string>
#include <string_view>

#include "geometry/problem.h"

namespace tinwright {

/// Seconds of an ISO 8601 duration. Weeks and days count as 7 d and 24 h; a time part may lack its T ("P45M" is read as
/// months by the standard and by nobody who bakes: it is refused); the last number may have a fraction.
/// Failure: kNotANumber where it is none, kOutOfRange for years, months and more than 10 years.
Result<double> read_duration(std::string_view text);

/// The duration as parse_quantity reads it, "1 h 30 min"; a text in words that parse_quantity reads comes out likewise.
/// Nothing, "0 min", for a duration of nothing.
Result<std::string> duration_in_words(std::string_view text);

/// Seconds [0 or more, finite] as "1 h 30 min"; whole seconds.
std::string time_text(double seconds);

}  // namespace tinwright
