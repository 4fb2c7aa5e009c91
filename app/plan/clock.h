// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A clock backwards from "on the table at": when each task starts and ends, as late as can be, so that all is fresh.
//
// Tasks follow each other. A waiting task may last longer than it needs (chilling, freezing overnight), and what a task
// makes may keep for a while before the next one begins. This slack is used so that nobody works at night:
//   - whoever works or watches is awake from start to end,
//   - somebody awake starts every task, waiting ones too (out of the oven, into the refrigerator),
//   - a task that may not be done the day before is not, wherever that can be helped.
// Of all schedules the one with the least of that (counted in minutes, see below) is taken, and of those the one whose
// last task is latest, then the one before it, and so on. There is always an answer; what could not be helped is
// marked.
//
// Durations are rounded up to whole minutes. With a range of durations the late end is planned with, so that the table
// is not kept waiting, and the early end is when to start looking.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <vector>

#include "app/plan/civil_time.h"
#include "geometry/problem.h"

namespace tinwright {

enum class Attention { kHandsOn, kWatched, kWaiting };

struct Task {
  std::string label = "";  // "bake", "chill the dough"
  std::string place = "";  // "worktop", "oven", "refrigerator"; only carried along
  double duration = 0.0;   // [s] planned: the late end of a range, >= 0
  double early = 0.0;      // [s] the early end of the range; 0: there is none
  double longest = 0.0;    // [s] of a waiting task: how long it may last; 0: no longer than `duration`
  double keeps = 0.0;      // [s] how long the result may stand before the next task begins (a dough chilled, 2 days)
  Attention attention = Attention::kHandsOn;
  bool may_be_day_before = false;
};

/// When somebody is awake, on the clock. Common practice, no source; the cook may say otherwise.
struct Waking {
  int from = 7 * 60;    // [min] after midnight, 07:00
  int until = 22 * 60;  // [min] after midnight, 22:00; > from
};

/// What is counted against a schedule, in minutes of work at night.
inline constexpr std::int64_t kStartAtNight = 30;       // getting up to put something in the refrigerator
inline constexpr std::int64_t kTooEarlyADay = 100'000;  // more than any night: it would not be what the recipe means

struct ScheduledTask {
  CivilTime start, end;  // end: when it is over, lasting longer included; its result stands from then
  CivilTime look_from;   // when it can first be ready: the early end of its range, or else the planned time
  int days_before = 0;   // of its start. 0: on the day of the table, 1: the day before. These days begin in the middle
                         // of the night, so a table at half past midnight belongs to the evening before
  double longer = 0.0;   // [s] it lasts longer than it needs
  double stands = 0.0;   // [s] its result stands before the next task
  bool is_at_night = false;   // work, or a start, at night that could not be helped
  bool is_too_early = false;  // on an earlier day than it may be
};

/// Longest that one task may last, or its result may stand [s]: four weeks.
inline constexpr double kLongestTask = 28.0 * 24.0 * 3600.0;

/// The schedule, one for each task in the same order; the last one ends (or stands until) `on_the_table`.
/// Refused (all kOutOfRange): a duration, early end, longest or keeping time that is negative, not finite or above
/// kLongestTask; an early end after the late one; a longest that is below the duration, or of a task that is not
/// waiting; with the place "tasks[N].duration" and so on, N from 0. Waking hours that are none: "waking".
Result<std::vector<ScheduledTask>> count_back(const CivilTime& on_the_table, std::span<const Task> tasks,
                                              const Waking& waking = {});

/// "on the day", "the day before", "2 days before".
std::string days_before_words(int days_before);

}  // namespace tinwright
