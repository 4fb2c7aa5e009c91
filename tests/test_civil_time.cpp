// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Civil dates and times against the rules of the calendar and published day numbers.
#include <cstdint>

#include <doctest/doctest.h>

#include "app/plan/civil_time.h"

namespace tinwright {
namespace {

CivilTime at(const char* text) {
  const auto time = parse_civil_time(text);
  REQUIRE(static_cast<bool>(time));
  return *time;
}

}  // namespace

TEST_CASE("days count up one by one through the calendar's own rules, from 1583 to 2420") {
  // Day after day by the rule of month lengths alone; Gregorian leap years by the definition.
  int year = 1583, month = 1, day = 1;
  std::int64_t days = days_from_civil(year, month, day);
  int weekday = weekday_from_days(days);
  while (year < 2421) {
    const CivilTime back = civil_from_minutes(days * kMinutesPerDay + 61);
    const bool is_same = back == CivilTime{year, month, day, 1, 1} && days_from_civil(year, month, day) == days &&
                         weekday_from_days(days) == weekday;
    if (!is_same) FAIL(year, "-", month, "-", day);
    const bool is_leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    const int lengths[] = {31, is_leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    if (last_day_of_month(year, month) != lengths[month - 1]) FAIL(year, "-", month);
    ++days;
    weekday = (weekday + 1) % 7;
    if (++day > lengths[month - 1]) day = 1, ++month;
    if (month > 12) month = 1, ++year;
  }
}

TEST_CASE("day numbers and weekdays are those published") {
  CHECK(days_from_civil(1970, 1, 1) == 0);
  // Modified Julian Date 51544 is 2000-01-01 and 40587 is 1970-01-01 (Explanatory Supplement to the Astronomical
  // Almanac).
  CHECK(days_from_civil(2000, 1, 1) == 51544 - 40587);
  CHECK(days_from_civil(1858, 11, 17) == -40587);
  CHECK(days_from_civil(2000, 3, 1) == 11017);  // Hinnant: 719468 days from 0000-03-01, and 5 eras of 146097
  CHECK(days_from_civil(-400, 3, 1) == days_from_civil(0, 3, 1) - 146097);
  CHECK(weekday_from_days(0) == 4);                              // 1970-01-01 was a Thursday
  CHECK(weekday_from_days(days_from_civil(2000, 1, 1)) == 6);    // a Saturday
  CHECK(weekday_from_days(days_from_civil(1582, 10, 15)) == 5);  // a Friday, the first Gregorian day
  CHECK(format_day({2026, 12, 24, 18, 0}) == "Thursday 24 December");
}

TEST_CASE("a day and time is read with a space or a T, and printed with a space") {
  CHECK(at("2026-12-24 18:00") == CivilTime{2026, 12, 24, 18, 0});
  CHECK(at("2028-02-29T06:05") == CivilTime{2028, 2, 29, 6, 5});
  CHECK(format_civil_time({2028, 2, 29, 6, 5}) == "2028-02-29 06:05");
}

TEST_CASE("other forms, and days that are not, are refused") {
  const auto code = [](const char* text) {
    CAPTURE(text);
    const auto time = parse_civil_time(text);
    REQUIRE_FALSE(static_cast<bool>(time));
    CHECK_FALSE(time.problem().message.empty());
    return time.problem().code;
  };
  for (const char* text : {"", "tomorrow", "2026-12-24", "18:00", "24.12.2026 18:00", "2026-12-24 6 pm",
                           "2026-12-24T18:00Z", "2026-12-24T18:00+01:00", "2026-12-24 18:00:00", "2026-1-24 18:00",
                           "-026-12-24 18:00", "2026/12/24 18:00", "2026-12-24t18:00"}) {
    CHECK(code(text) == ProblemCode::kUnreadable);
  }
  for (const char* text :
       {"2026-02-29 12:00", "1900-02-29 12:00", "2026-00-10 12:00", "2026-13-10 12:00", "2026-04-31 12:00",
        "2026-04-00 12:00", "2026-12-24 24:00", "2026-12-24 18:60", "1582-12-24 18:00"}) {
    CHECK(code(text) == ProblemCode::kOutOfRange);
  }
}

}  // namespace tinwright
