// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Numbers as cooks write them: 9, 9.5, .5, 23,5, 1/4, 2 1/2, 2-1/2, 2½. No sign, no unit, no locale.
#pragma once

#include "app/quantity/characters.h"
#include "geometry/problem.h"

namespace tinwright {

/// Largest number taken in any unit; more is a slip of the keyboard. Keeps every later product finite and printable.
inline constexpr double kLargestNumber = 1e9;

/// True where a number could start: a digit, a point or comma, a fraction sign.
bool starts_number(const Cursor& cursor);

/// Reads one number and leaves the cursor behind it. Accuracy: correctly rounded for fractions, and for decimals
/// of at most 15 digits with at most 22 behind the point; within 4 units in the last place for all others.
/// Refused as kNotANumber: thousands commas, exponents, hexadecimal, ranges, division by zero, two numbers in a
/// row, a fraction part of one or more; as kOutOfRange: more than kLargestNumber.
Result<double> read_number(Cursor& cursor);

}  // namespace tinwright
