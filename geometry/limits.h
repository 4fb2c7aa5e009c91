// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The sizes a pan may have and the tolerances geometry works to, each with its meaning, and the check that
// every size from outside goes through.
#pragma once

#include <optional>
#include <string>

#include "geometry/problem.h"

namespace tinwright {

/// [m] Smaller than this is a slip of the unit, not a pan.
inline constexpr double kSmallestSize = 1e-4;
/// [m] Larger than this is a slip of the unit too (the largest deck-oven tray is under 2 m).
inline constexpr double kLargestSize = 5.0;
/// [m] Two sizes closer than this are the same size: a nanometre, far below any ruler.
inline constexpr double kLengthTolerance = 1e-9;
/// [-] Amounts closer than this share are the same amount.
inline constexpr double kAmountTolerance = 1e-9;
/// [-] More corners than this in a freeform outline are refused: nobody measures that many.
inline constexpr int kMostCorners = 200;

/// "23.5 mm" for a length in metres: for messages only, no more than a tenth of a millimetre.
std::string mm_text(double metres);

/// The same rounded down, for a size that is the most possible: what is advised must not be refused.
std::string at_most_text(double metres);

/// A Problem when `size` [m] is not finite, not positive, or outside [kSmallestSize, kLargestSize].
/// `what` names it for the cook ("diameter"), `place` is its field.
std::optional<Problem> check_size(double size, const std::string& what, const std::string& place);

/// The same for a size that may also be zero or tiny (a corner radius, an inset, a lining's wall).
std::optional<Problem> check_size_or_zero(double size, const std::string& what, const std::string& place);

}  // namespace tinwright
