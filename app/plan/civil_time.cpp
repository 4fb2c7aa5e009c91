// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See civil_time.h.
#include "app/plan/civil_time.h"

#include <algorithm>
#include <array>

#include "geometry/checks.h"

namespace tinwright {
namespace {

constexpr std::array<std::string_view, 7> kWeekdays{"Sunday",   "Monday", "Tuesday", "Wednesday",
                                                    "Thursday", "Friday", "Saturday"};
constexpr std::array<std::string_view, 12> kMonths{"January",   "February", "March",    "April",
                                                   "May",       "June",     "July",     "August",
                                                   "September", "October",  "November", "December"};
constexpr std::string_view kForm = "0000-00-00 00:00";  // 0 stands for a digit

bool has_form(std::string_view text) {
  if (text.size() != kForm.size()) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool is_digit = text[i] >= '0' && text[i] <= '9';
    const bool fits = kForm[i] == '0' ? is_digit : text[i] == kForm[i] || (kForm[i] == ' ' && text[i] == 'T');
    if (!fits) return false;
  }
  return true;
}

int digits(std::string_view text, std::size_t from, std::size_t count) {
  int value = 0;
  for (const char c : text.substr(from, count)) value = 10 * value + (c - '0');
  return value;
}

std::string padded(int value, std::size_t width) {
  const std::string digits = std::to_string(value);
  return std::string(width - std::min(width, digits.size()), '0') + digits;
}

bool is_leap(int year) {
  return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
}

}  // namespace

std::int64_t days_from_civil(int year, int month, int day) {
  GEOMETRY_ASSERT(month >= 1 && month <= 12 && day >= 1 && day <= 31);
  // Years begin with March, so that the leap day is their last; eras are 400 years of 146097 days.
  const std::int64_t y = month <= 2 ? std::int64_t{year} - 1 : year;
  const std::int64_t era = (y >= 0 ? y : y - 399) / 400;
  const std::int64_t year_of_era = y - era * 400;
  const std::int64_t day_of_year = (153 * (month > 2 ? month - 3 : month + 9) + 2) / 5 + day - 1;
  const std::int64_t day_of_era = year_of_era * 365 + year_of_era / 4 - year_of_era / 100 + day_of_year;
  return era * 146097 + day_of_era - 719468;
}

std::int64_t minutes_from_civil(const CivilTime& time) {
  return days_from_civil(time.year, time.month, time.day) * kMinutesPerDay + time.hour * 60 + time.minute;
}

CivilTime civil_from_minutes(std::int64_t minutes) {
  const std::int64_t days = (minutes >= 0 ? minutes : minutes - (kMinutesPerDay - 1)) / kMinutesPerDay;
  const auto minute_of_day = static_cast<int>(minutes - days * kMinutesPerDay);
  const std::int64_t z = days + 719468;
  const std::int64_t era = (z >= 0 ? z : z - 146096) / 146097;
  const std::int64_t day_of_era = z - era * 146097;
  const std::int64_t year_of_era = (day_of_era - day_of_era / 1460 + day_of_era / 36524 - day_of_era / 146096) / 365;
  const std::int64_t day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
  const std::int64_t month_from_march = (5 * day_of_year + 2) / 153;
  const auto day = static_cast<int>(day_of_year - (153 * month_from_march + 2) / 5 + 1);
  const auto month = static_cast<int>(month_from_march < 10 ? month_from_march + 3 : month_from_march - 9);
  const auto year = static_cast<int>(year_of_era + era * 400 + (month <= 2 ? 1 : 0));
  return {year, month, day, minute_of_day / 60, minute_of_day % 60};
}

int weekday_from_days(std::int64_t days) {
  return static_cast<int>(days >= -4 ? (days + 4) % 7 : (days + 5) % 7 + 6);
}

int last_day_of_month(int year, int month) {
  GEOMETRY_ASSERT(month >= 1 && month <= 12);
  if (month == 2) return is_leap(year) ? 29 : 28;
  return month == 4 || month == 6 || month == 9 || month == 11 ? 30 : 31;
}

Result<CivilTime> parse_civil_time(std::string_view text) {
  if (!has_form(text)) {
    return Problem{ProblemCode::kUnreadable,
                   "Write the day and time on your own clock as 2026-12-24 18:00, without a time zone.", ""};
  }
  const CivilTime time{digits(text, 0, 4), digits(text, 5, 2), digits(text, 8, 2), digits(text, 11, 2),
                       digits(text, 14, 2)};
  const auto refused = [](std::string message) { return Problem{ProblemCode::kOutOfRange, std::move(message), ""}; };
  if (time.year < 1583) return refused("The calendar begins with 1583 here.");  // ISO 8601 asks for agreement before
  if (time.month < 1 || time.month > 12) return refused("Months go from 01 to 12.");
  const int last = last_day_of_month(time.year, time.month);
  if (time.day < 1 || time.day > last) {
    return refused("That month has days 01 to " + padded(last, 2) + ".");
  }
  if (time.hour > 23 || time.minute > 59) return refused("The time of day goes from 00:00 to 23:59.");
  return time;
}

std::string format_civil_time(const CivilTime& time) {
  return padded(time.year, 4) + "-" + padded(time.month, 2) + "-" + padded(time.day, 2) + " " + format_clock(time);
}

std::string format_clock(const CivilTime& time) {
  return padded(time.hour, 2) + ":" + padded(time.minute, 2);
}

std::string format_day(const CivilTime& time) {
  const int weekday = weekday_from_days(days_from_civil(time.year, time.month, time.day));
  return std::string(kWeekdays[static_cast<std::size_t>(weekday)]) + " " + std::to_string(time.day) + " " +
         std::string(kMonths[static_cast<std::size_t>(time.month - 1)]);
}

}  // namespace tinwright
