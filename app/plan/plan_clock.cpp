// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See plan_clock.h.
#include "app/plan/plan_clock.h"

#include <algorithm>

#include "app/plan/calendar.h"
#include "app/plan/words.h"
#include "app/quantity/print.h"

namespace tinwright {
namespace {

constexpr int kAlarm = 10;  // [min] before something starts

bool is_cold(const Rest& rest) {
  return rest.where != "room";
}

/// Whether what comes out of the oven may stand in the cold overnight.
bool may_bake_before(const Job& job) {
  return std::any_of(job.rests.begin(), job.rests.end(),
                     [](const Rest& rest) { return rest.is_after_oven && is_cold(rest); });
}

void add_mixing(std::vector<Task>& tasks, const Job& job, bool is_dough, bool may_be_before) {
  for (const RecipePart& part : job.parts) {
    const bool belongs =
        (part.role == Role::kBase || part.role == Role::kLining || part.role == Role::kCrumbled) == is_dough;
    if (!belongs) continue;
    Task task;
    task.label = "Make: " + part.name;
    task.place = "worktop";
    task.duration = kMixing;
    task.may_be_day_before = may_be_before;
    tasks.push_back(task);
    if (part.role != Role::kCrumbled) continue;
    task.label = "Bake, cool and crumble: " + part.name;
    task.place = "oven";
    task.duration = kSlab;
    task.attention = Attention::kWatched;
    tasks.push_back(task);
  }
}

void add_rests(std::vector<Task>& tasks, const Job& job, bool is_after_oven, bool may_be_before) {
  for (const Rest& rest : job.rests) {
    if (rest.is_after_oven != is_after_oven) continue;
    Task task;
    task.label = rest.what.empty() ? "Rest" : rest.what;
    task.place = rest.where;
    task.duration = rest.least;
    task.longest = std::max(rest.most, rest.least + rest.keeps);
    task.attention = Attention::kWaiting;
    task.may_be_day_before = may_be_before || rest.keeps > 0.0;
    tasks.push_back(task);
  }
}

/// The longest of the pans, with the earliest of all to start looking.
std::optional<Task> baking(const std::vector<PanBake>& baked) {
  Task task;
  for (const PanBake& each : baked) {
    if (!each.solved || !each.solved->run.reached) continue;
    const auto& timing = each.solved->timing;
    const bool has_band = timing && timing->reached;
    const double late = has_band && !timing->band.is_open ? timing->band.late : each.solved->oven_time;
    const double early = has_band ? timing->band.early : each.solved->oven_time;
    task.early = task.duration > 0.0 ? std::min(task.early, early) : early;
    task.duration = std::max(task.duration, std::max(late, each.solved->oven_time));
  }
  if (task.duration <= 0.0) return std::nullopt;
  task.label = "Bake";
  task.place = "oven";
  task.attention = Attention::kWatched;
  return task;
}

/// Where the recipe says nothing of cooling, until it can be cut.
std::optional<Task> cooling(const Job& job, const std::vector<PanBake>& baked) {
  const bool is_said =
      std::any_of(job.rests.begin(), job.rests.end(), [](const Rest& rest) { return rest.is_after_oven; });
  Task task;
  for (const PanBake& each : baked) {
    if (each.solved && each.solved->cooling)
      task.duration = std::max(task.duration, each.solved->cooling->room.value_or(0.0));
  }
  if (is_said || task.duration <= 0.0) return std::nullopt;
  task.label = "Cool on the rack";
  task.place = "rack";
  task.attention = Attention::kWaiting;
  return task;
}

std::string when(const ScheduledTask& task) {
  return days_before_words(task.days_before) + ", " + format_clock(task.start);
}

}  // namespace

Result<std::optional<ClockPlan>> clock_plan(const Job& job, const std::vector<PanBake>& baked) {
  if (job.table_at.empty()) return std::optional<ClockPlan>();
  const auto at = parse_civil_time(job.table_at);
  if (!at) return Problem{at.problem().code, at.problem().message, "plan.table_at"};
  ClockPlan clock;
  const bool may_bake = may_bake_before(job);
  const bool rests_keep = std::any_of(job.rests.begin(), job.rests.end(),
                                      [](const Rest& rest) { return !rest.is_after_oven && rest.keeps > 0.0; });
  add_mixing(clock.tasks, job, true, may_bake || rests_keep);
  add_rests(clock.tasks, job, false, may_bake);
  add_mixing(clock.tasks, job, false, may_bake);
  clock.tasks.push_back({.label = "Line and fill the pans, heat the oven",
                         .place = "worktop",
                         .duration = kLiningPans,
                         .may_be_day_before = may_bake});
  if (auto bake = baking(baked)) {
    bake->may_be_day_before = may_bake;
    clock.tasks.push_back(*bake);
  }
  if (const auto cool = cooling(job, baked)) clock.tasks.push_back(*cool);
  add_rests(clock.tasks, job, true, may_bake);
  const auto times = count_back(*at, clock.tasks);
  if (!times) return Problem{times.problem().code, times.problem().message, "plan.table_at"};
  clock.times = *times;
  return std::optional<ClockPlan>(clock);
}

Report describe_clock(const ClockPlan& clock) {
  Report report;
  for (std::size_t i = 0; i < clock.tasks.size(); ++i) {
    const ScheduledTask& time = clock.times[i];
    std::string detail = "until " + format_clock(time.end);
    if (clock.tasks[i].early > 0.0)
      detail = "look from " + format_clock(time.look_from) + ", ready by " + format_clock(time.end);
    if (time.longer > 60.0) detail += ", " + format_duration(time.longer) + " longer than it needs";
    if (clock.tasks[i].may_be_day_before && time.days_before == 0) detail += "; can be done the day before";
    if (time.is_at_night) detail += "; at night, which cannot be helped";
    if (time.is_too_early) detail += "; earlier than it should be";
    report.push_back(figure(when(time), clock.tasks[i].label, detail));
  }
  return report;
}

Result<std::string> clock_calendar(const Job& job, const ClockPlan& clock, const CivilTime& stamp) {
  std::vector<CalendarEvent> events;
  for (std::size_t i = 0; i < clock.tasks.size(); ++i) {
    const ScheduledTask& time = clock.times[i];
    CalendarEvent event;
    event.summary = clock.tasks[i].label;
    event.description = title_of(job);
    event.location = clock.tasks[i].place;
    event.start = time.start;
    event.end = time.end;
    event.alarm_before = kAlarm;
    events.push_back(std::move(event));
  }
  return calendar_text(events, title_of(job), stamp);
}

}  // namespace tinwright
