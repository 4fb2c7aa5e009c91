// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See clock.h. Times are whole minutes before the table: "lead". Going through the tasks from the first, the least cost
// of everything up to a task is kept for each lead its start can have; from the table backwards the latest of the best
// starts are then picked. The leads a start can have form one range, because slack is any number of minutes up to a
// day: a whole day more moves everything before by a day, which no night notices.
#include "app/plan/clock.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <deque>
#include <limits>

namespace tinwright {
namespace {

using Minutes = std::int64_t;

struct Step {
  Minutes needs = 0;       // planned duration
  Minutes longer = 0;      // how much longer it may last
  Minutes stands = 0;      // how long the result may stand
  Minutes slack = 0;       // of both, what is of use
  Minutes least_lead = 0;  // of its start, without any slack
};

Minutes rounded_up(double seconds) {
  return static_cast<Minutes>(std::ceil(seconds / 60.0 - 1e-9));
}

Minutes rounded_down(double seconds) {
  return static_cast<Minutes>(std::floor(seconds / 60.0 + 1e-9));
}

std::vector<Step> steps_of(std::span<const Task> tasks) {
  std::vector<Step> steps(tasks.size());
  Minutes lead = 0;
  for (std::size_t i = tasks.size(); i-- > 0;) {
    const Task& task = tasks[i];
    Step& step = steps[i];
    step.needs = rounded_up(task.duration);
    step.longer = task.longest > 0.0 ? std::max<Minutes>(0, rounded_down(task.longest) - step.needs) : 0;
    step.stands = rounded_down(task.keeps);
    step.slack = std::min(step.longer + step.stands, kMinutesPerDay - 1);
    step.least_lead = lead += step.needs;
  }
  return steps;
}

/// The cook's day on the clock. Kitchen days begin in the middle of the night, so that a table at half past midnight
/// belongs to the evening before.
class Day {
 public:
  explicit Day(const Waking& waking) : waking_(waking) {}

  bool is_awake(Minutes time) const {
    const Minutes minute = minute_of_day(time);
    return minute >= waking_.from && minute <= waking_.until;
  }
  /// Minutes of [from, to) when nobody is awake.
  Minutes asleep(Minutes from, Minutes to) const { return (to - from) - (awake_until(to) - awake_until(from)); }
  Minutes kitchen_day(Minutes time) const {
    const Minutes begin = (waking_.from + waking_.until - kMinutesPerDay) / 2;
    return floor_days(time - begin);
  }

 private:
  static Minutes floor_days(Minutes time) { return (time >= 0 ? time : time - (kMinutesPerDay - 1)) / kMinutesPerDay; }
  static Minutes minute_of_day(Minutes time) { return time - floor_days(time) * kMinutesPerDay; }
  Minutes awake_until(Minutes time) const {
    const Minutes awake_a_day = waking_.until - waking_.from;
    return floor_days(time) * awake_a_day + std::clamp<Minutes>(minute_of_day(time) - waking_.from, 0, awake_a_day);
  }

  Waking waking_;
};

struct Faults {
  Minutes at_night = 0, days_too_early = 0;
  Minutes cost() const { return at_night + days_too_early * kTooEarlyADay; }
};

Faults faults_of(const Task& task, const Step& step, const Day& day, Minutes start, Minutes table) {
  Faults faults;
  if (task.attention != Attention::kWaiting) faults.at_night = day.asleep(start, start + step.needs);
  if (faults.at_night == 0 && !day.is_awake(start)) faults.at_night = kStartAtNight;
  if (!task.may_be_day_before) faults.days_too_early = day.kitchen_day(table) - day.kitchen_day(start);
  return faults;
}

/// least[i] = the smallest of values[i] to values[i + width], as far as there are any; as many as asked for.
std::vector<Minutes> sliding_least(const std::vector<Minutes>& values, Minutes width, std::size_t count) {
  std::vector<Minutes> least(count);
  std::deque<std::size_t> rising;  // indices whose values rise; the first is the least of the window
  std::size_t next = 0;
  for (std::size_t i = 0; i < count; ++i) {
    for (; next < values.size() && next <= i + static_cast<std::size_t>(width); ++next) {
      while (!rising.empty() && values[rising.back()] > values[next]) rising.pop_back();
      rising.push_back(next);
    }
    while (rising.front() < i) rising.pop_front();
    least[i] = values[rising.front()];
  }
  return least;
}

/// For each task, how many minutes of slack lie between its start and the table.
std::vector<Minutes> choose_slack(std::span<const Task> tasks, const std::vector<Step>& steps, const Day& day,
                                  Minutes table) {
  const std::size_t n = tasks.size();
  std::vector<Minutes> most(n + 1, 0);  // slack between a start and the table
  for (std::size_t i = n; i-- > 0;) most[i] = most[i + 1] + steps[i].slack;
  std::vector<std::vector<Minutes>> cost(n);  // [task][slack], of the task and all before it
  for (std::size_t i = 0; i < n; ++i) {
    const auto count = static_cast<std::size_t>(most[i] + 1);
    cost[i] = i == 0 ? std::vector<Minutes>(count, 0) : sliding_least(cost[i - 1], steps[i - 1].slack, count);
    for (std::size_t slack = 0; slack < count; ++slack) {
      const Minutes start = table - steps[i].least_lead - static_cast<Minutes>(slack);
      cost[i][slack] += faults_of(tasks[i], steps[i], day, start, table).cost();
    }
  }
  std::vector<Minutes> chosen(n + 1, 0);
  for (std::size_t i = n; i-- > 0;) {
    const auto first = cost[i].begin() + static_cast<std::ptrdiff_t>(chosen[i + 1]);
    const auto last = first + static_cast<std::ptrdiff_t>(steps[i].slack + 1);
    chosen[i] = std::min_element(first, last) - cost[i].begin();
  }
  return chosen;
}

ScheduledTask scheduled(const Task& task, const Step& step, const Day& day, Minutes start, Minutes slack,
                        Minutes table) {
  ScheduledTask done;
  const Minutes longer = std::min(slack, step.longer);
  const Minutes ready = start + (task.early > 0.0 ? rounded_down(task.early) : step.needs);
  const Faults faults = faults_of(task, step, day, start, table);
  done.start = civil_from_minutes(start);
  done.end = civil_from_minutes(start + step.needs + longer);
  done.look_from = civil_from_minutes(ready);
  done.days_before = static_cast<int>(day.kitchen_day(table) - day.kitchen_day(start));
  done.longer = 60.0 * static_cast<double>(longer);
  done.stands = 60.0 * static_cast<double>(slack - longer);
  done.is_at_night = faults.at_night > 0;
  done.is_too_early = faults.days_too_early > 0;
  return done;
}

bool is_time(double seconds) {
  return std::isfinite(seconds) && seconds >= 0.0 && seconds <= kLongestTask;
}

Problem refused(std::size_t task, const char* field, std::string message) {
  return {ProblemCode::kOutOfRange, std::move(message), "tasks[" + std::to_string(task) + "]." + field};
}

/// What is wrong with a task; an empty message if nothing is.
Problem fault_of(const Task& task, std::size_t i) {
  const std::string range = "A time has to be from nothing to four weeks.";
  if (!is_time(task.duration)) return refused(i, "duration", range);
  if (!is_time(task.early)) return refused(i, "early", range);
  if (!is_time(task.longest)) return refused(i, "longest", range);
  if (!is_time(task.keeps)) return refused(i, "keeps", range);
  if (task.early > task.duration) return refused(i, "early", "The early end has to come before the late one.");
  if (task.longest > 0.0 && task.attention != Attention::kWaiting) {
    return refused(i, "longest", "Only waiting can last longer; work takes the time it takes.");
  }
  if (task.longest > 0.0 && task.longest < task.duration) {
    return refused(i, "longest", "The longest time has to be at least the time it needs.");
  }
  return {};
}

}  // namespace

Result<std::vector<ScheduledTask>> count_back(const CivilTime& on_the_table, std::span<const Task> tasks,
                                              const Waking& waking) {
  if (waking.from < 0 || waking.until > kMinutesPerDay || waking.from >= waking.until) {
    return Problem{ProblemCode::kOutOfRange, "Getting up has to come before going to bed, on one day.", "waking"};
  }
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    Problem fault = fault_of(tasks[i], i);
    if (!fault.message.empty()) return fault;
  }
  const Minutes table = minutes_from_civil(on_the_table);
  const Day day(waking);
  const std::vector<Step> steps = steps_of(tasks);
  const std::vector<Minutes> slack = choose_slack(tasks, steps, day, table);
  std::vector<ScheduledTask> schedule;
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    const Minutes start = table - steps[i].least_lead - slack[i];
    schedule.push_back(scheduled(tasks[i], steps[i], day, start, slack[i] - slack[i + 1], table));
  }
  return schedule;
}

std::string days_before_words(int days_before) {
  if (days_before <= 0) return "on the day";
  return days_before == 1 ? "the day before" : std::to_string(days_before) + " days before";
}

}  // namespace tinwright
