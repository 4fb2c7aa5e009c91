// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The plan on the kitchen clock, backwards from "on the table at".
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/plan/clock.h"
#include "app/plan/plan_oven.h"
#include "app/plan/report.h"

namespace tinwright {

/// Hands at work on one part, and on getting pans and oven ready [s]. Our own estimates, no source; a cook who is
/// slower begins earlier.
inline constexpr double kMixing = 15 * 60.0;
inline constexpr double kLiningPans = 20 * 60.0;
inline constexpr double kSlab = 60 * 60.0;  // a part that is baked apart, cooled and crumbled

struct ClockPlan {
  std::vector<Task> tasks;
  std::vector<ScheduledTask> times;  // of each task
};

/// Nothing where the job does not say when it is to be on the table; a Problem at "plan.table_at" where that is no date
/// and time, or the tasks are longer than the clock reaches.
Result<std::optional<ClockPlan>> clock_plan(const Job& job, const std::vector<PanBake>& baked);

/// A line for each task: "the day before, 18:30", what, until when.
Report describe_clock(const ClockPlan& clock);

/// The tasks as an iCalendar file; `stamp` is now, in UTC.
Result<std::string> clock_calendar(const Job& job, const ClockPlan& clock, const CivilTime& stamp);

}  // namespace tinwright
