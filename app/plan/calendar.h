// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The plan's tasks as an iCalendar file (RFC 5545), for whatever calendar the cook keeps. Times are floating (section
// 3.3.5, form 1: no time zone, no Z): they stand where the kitchen clock stands. The same tasks always make the same
// file: each UID comes from its event's content, so that a calendar which reads it twice has the event once.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "app/plan/civil_time.h"
#include "geometry/problem.h"

namespace tinwright {

/// The name of the file's kind (section 8.1).
inline constexpr std::string_view kCalendarMediaType = "text/calendar;charset=utf-8";

struct CalendarEvent {
  std::string summary;              // UTF-8, like all texts here; line breaks are kept
  std::string description;          // empty: none
  std::string location;             // empty: none
  CivilTime start, end;             // end not before start; equal: an event of no length
  std::optional<int> alarm_before;  // [min] before the start, >= 0; nothing: no alarm
};

/// The whole file, lines ending in CR LF and folded at 75 octets between characters (section 3.1).
///  name   of the calendar (RFC 7986 section 5.1); empty: none
///  stamp  when the file is made, in UTC (DTSTAMP, section 3.8.7.2)
/// Control characters other than line breaks and tabs cannot stand in a text (section 3.3.11) and become spaces; octets
/// that are not UTF-8 become U+FFFD.
/// Refused: no event (kMissing, "events"; section 3.6 wants one), an end before its start (kContradiction,
/// "events[N].end"), an alarm after the start (kOutOfRange, "events[N].alarm_before").
Result<std::string> calendar_text(std::span<const CalendarEvent> events, std::string_view name, const CivilTime& stamp);

}  // namespace tinwright
