// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Dates and times as the kitchen clock shows them: year, month, day, hour, minute, without a time zone ("floating" in
// RFC 5545 section 3.3.5). Arithmetic is on the civil (proleptic Gregorian) calendar by days_from_civil and
// civil_from_days of H. Hinnant, "chrono-Compatible Low-Level Date Algorithms" (2021). Where clocks are put back or
// forward in the night, a stage through that night is in truth an hour longer or shorter than the clock says; nothing
// here knows of it.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "geometry/problem.h"

namespace tinwright {

struct CivilTime {
  int year = 1970;
  int month = 1;   // 1 to 12
  int day = 1;     // 1 to the month's last
  int hour = 0;    // 0 to 23
  int minute = 0;  // 0 to 59

  bool operator==(const CivilTime&) const = default;
};

inline constexpr std::int64_t kMinutesPerDay = 24 * 60;

/// Days from 1970-01-01 to a date; negative before it. `month` is 1 to 12, `day` 1 to 31.
std::int64_t days_from_civil(int year, int month, int day);

/// Minutes of the wall clock from 1970-01-01 00:00, every day having 24 hours.
std::int64_t minutes_from_civil(const CivilTime& time);

/// The inverse of minutes_from_civil.
CivilTime civil_from_minutes(std::int64_t minutes);

/// 0 Sunday to 6 Saturday, of a day counted as by days_from_civil.
int weekday_from_days(std::int64_t days);

/// Last day of the month, 28 to 31.
int last_day_of_month(int year, int month);

/// "2026-12-24 18:00" or with a T instead of the space (ISO 8601), on the local clock; years 1583 to 9999.
/// Refused with an empty place: kUnreadable (another form; a time zone is one), kOutOfRange (no such day or time).
Result<CivilTime> parse_civil_time(std::string_view text);

/// "2026-12-24 18:00".
std::string format_civil_time(const CivilTime& time);

/// "18:00".
std::string format_clock(const CivilTime& time);

/// "Thursday 24 December".
std::string format_day(const CivilTime& time);

}  // namespace tinwright
