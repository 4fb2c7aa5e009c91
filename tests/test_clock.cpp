// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Civil dates against the rules of the calendar and published day numbers; the clock backwards against cases worked out
// by hand and against trying every schedule.
#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "app/plan/clock.h"

namespace tinwright {
namespace {

constexpr double kMinute = 60.0, kHour = 3600.0, kDay = 86400.0;

CivilTime at(const char* text) {
  const auto time = parse_civil_time(text);
  REQUIRE(static_cast<bool>(time));
  return *time;
}

Task work(const char* label, double minutes) {
  return {.label = label, .duration = minutes * kMinute};
}

Task wait(const char* label, double minutes, double longest_minutes = 0.0) {
  return {.label = label,
          .duration = minutes * kMinute,
          .longest = longest_minutes * kMinute,
          .attention = Attention::kWaiting};
}

std::vector<Task> day_before(std::vector<Task> tasks) {
  for (Task& task : tasks) task.may_be_day_before = true;
  return tasks;
}

std::vector<ScheduledTask> schedule(const char* table, const std::vector<Task>& tasks, const Waking& waking = {}) {
  const auto done = count_back(at(table), tasks, waking);
  REQUIRE(static_cast<bool>(done));
  REQUIRE(done->size() == tasks.size());
  return *done;
}

std::vector<std::string> starts(const std::vector<ScheduledTask>& done) {
  std::vector<std::string> texts;
  for (const ScheduledTask& task : done) texts.push_back(format_civil_time(task.start));
  return texts;
}

using Texts = std::vector<std::string>;

/// Minutes, told a second time: the night counted minute by minute, every day beginning at 02:30.
std::int64_t plain_cost(const Task& task, std::int64_t start, std::int64_t table) {
  const auto asleep = [](std::int64_t t) { return t % kMinutesPerDay < 420 || t % kMinutesPerDay >= 1320; };
  const auto day = [](std::int64_t t) { return (t - 150) / kMinutesPerDay; };
  const auto needs = static_cast<std::int64_t>(task.duration / kMinute);
  std::int64_t night = 0;
  for (std::int64_t t = start; task.attention != Attention::kWaiting && t < start + needs; ++t) night += asleep(t);
  if (night == 0 && asleep(start) && start % kMinutesPerDay != 1320) night = kStartAtNight;
  return night + (task.may_be_day_before ? 0 : kTooEarlyADay * (day(table) - day(start)));
}

/// What there is to say of a schedule, smaller being better: its cost, then how early each task starts, last one first.
using Merit = std::vector<std::int64_t>;

/// Tries every schedule of tasks[0] to tasks[count − 1] whose last one ends by `until`, with slack by quarters of an
/// hour.
void try_all(const std::vector<Task>& tasks, std::size_t count, std::int64_t until, std::int64_t table, Merit merit,
             Merit& best) {
  if (count == 0) {
    best = std::min(best, merit);
    return;
  }
  const Task& task = tasks[count - 1];
  const double slack = std::max(0.0, task.longest - task.duration) + task.keeps;
  for (std::int64_t wait = 0; static_cast<double>(wait) * kMinute <= slack; wait += 15) {
    const std::int64_t start = until - wait - static_cast<std::int64_t>(task.duration / kMinute);
    Merit longer = merit;
    longer[0] += plain_cost(task, start, table);
    longer.push_back(-start);
    try_all(tasks, count - 1, start, table, longer, best);
  }
}

}  // namespace

TEST_CASE("tasks follow each other back from the table, over the turn of the year") {
  const auto done =
      schedule("2027-01-01 12:00", day_before({work("mix", 30), wait("chill", 14 * 60), work("serve", 10)}));
  CHECK(starts(done) == Texts{"2026-12-31 21:20", "2026-12-31 21:50", "2027-01-01 11:50"});
  CHECK(done[0].days_before == 1);
  CHECK(done[2].days_before == 0);
  CHECK(format_civil_time(done[1].end) == "2027-01-01 11:50");
}

TEST_CASE("a leap day is one of the days before") {
  const auto done = schedule("2028-03-01 20:00", day_before({work("mix", 60), wait("mature", 2 * 24 * 60)}));
  CHECK(starts(done) == Texts{"2028-02-28 19:00", "2028-02-28 20:00"});
  CHECK(done[0].days_before == 2);
  CHECK(days_before_words(done[0].days_before) == "2 days before");
  CHECK(days_before_words(1) == "the day before");
  CHECK(days_before_words(0) == "on the day");
}

TEST_CASE("a stage that may last longer is stretched over the night") {
  // Without slack the chilling would begin at 03:50, so mixing, baking and cooling fall in the night.
  std::vector<Task> tasks = day_before(
      {work("mix", 30), wait("bake", 60), wait("cool", 120), wait("chill", 8 * 60, 36 * 60), work("serve", 10)});
  tasks[1].attention = Attention::kWatched;
  const auto done = schedule("2026-06-20 12:00", tasks);
  // The latest is: chilling begins at the end of the waking day, 22:00.
  CHECK(starts(done) ==
        Texts{"2026-06-19 18:30", "2026-06-19 19:00", "2026-06-19 20:00", "2026-06-19 22:00", "2026-06-20 11:50"});
  CHECK(done[3].longer == doctest::Approx((5 * 60 + 50) * kMinute));
  for (const ScheduledTask& task : done) CHECK_FALSE(task.is_at_night);
}

TEST_CASE("a long day's work is moved by nearly a day to stand between two nights") {
  const auto done = schedule("2026-06-20 18:00", day_before({work("build", 12 * 60), wait("chill", 60, 48 * 60)}));
  CHECK(starts(done) == Texts{"2026-06-19 10:00", "2026-06-19 22:00"});
  CHECK(done[1].longer == doctest::Approx(19 * kHour));
}

TEST_CASE("what keeps may stand, and standing comes after lasting longer") {
  std::vector<Task> tasks =
      day_before({work("make the dough", 20), wait("chill", 60, 120), work("roll out", 30), wait("bake", 10 * 60)});
  tasks[1].keeps = 2.0 * kDay;
  const auto done = schedule("2026-06-20 18:00", tasks);
  // Baking is from 08:00 and rolling out from 07:30 in any case; the latest that chilling can begin before that is
  // 22:00.
  CHECK(starts(done) == Texts{"2026-06-19 21:40", "2026-06-19 22:00", "2026-06-20 07:30", "2026-06-20 08:00"});
  CHECK(done[1].longer == doctest::Approx(kHour));
  CHECK(done[1].stands == doctest::Approx(7.5 * kHour));
  CHECK(format_civil_time(done[1].end) == "2026-06-20 00:00");
}

TEST_CASE("the early end of a range says when to start looking, the late end is planned with") {
  Task bake = work("bake", 50);
  bake.early = 40.0 * kMinute;
  const auto done = schedule("2026-06-20 18:00", {bake});
  CHECK(format_civil_time(done[0].start) == "2026-06-20 17:10");
  CHECK(format_civil_time(done[0].look_from) == "2026-06-20 17:50");
  CHECK(format_civil_time(done[0].end) == "2026-06-20 18:00");
}

TEST_CASE("what cannot be helped is still answered, and marked") {
  const auto early = schedule("2026-06-20 08:00", {work("bake", 180)});
  CHECK(starts(early) == Texts{"2026-06-20 05:00"});
  CHECK(early[0].is_at_night);
  CHECK_FALSE(early[0].is_too_early);
  const auto before = schedule("2026-06-20 12:00", {work("mix", 60), wait("chill", 20 * 60)});
  CHECK(starts(before) == Texts{"2026-06-19 15:00", "2026-06-19 16:00"});
  CHECK(before[0].is_too_early);
  CHECK_FALSE(before[0].is_at_night);
}

TEST_CASE("a task that may not be done the day before stays on the day, even at the price of the night") {
  std::vector<Task> tasks{work("mix", 60), wait("chill", 5 * 60, 24 * 60), work("serve", 30)};
  const auto done = schedule("2026-06-20 12:00", tasks);
  CHECK(starts(done) == Texts{"2026-06-20 05:30", "2026-06-20 06:30", "2026-06-20 11:30"});
  CHECK(done[0].is_at_night);
  CHECK_FALSE(done[0].is_too_early);
}

TEST_CASE("a table after midnight belongs to the evening before") {
  const auto done = schedule("2027-01-01 00:30", {work("mix", 60), wait("chill", 4 * 60)});
  CHECK(starts(done) == Texts{"2026-12-31 19:30", "2026-12-31 20:30"});
  CHECK(done[0].days_before == 0);
}

TEST_CASE("waking hours are the cook's own") {
  const std::vector<Task> tasks = day_before({work("mix", 60), wait("prove", 8 * 60, 12 * 60), work("bake", 60)});
  CHECK(starts(schedule("2026-06-20 08:00", tasks)) ==
        Texts{"2026-06-19 21:00", "2026-06-19 22:00", "2026-06-20 07:00"});
  const Waking early{.from = 5 * 60, .until = 20 * 60};
  CHECK(starts(schedule("2026-06-20 08:00", tasks, early)) ==
        Texts{"2026-06-19 19:00", "2026-06-19 20:00", "2026-06-20 07:00"});
}

TEST_CASE("seconds are rounded up to the minute, so that nothing is late") {
  Task task = work("mix", 0);
  task.duration = 90.5;
  CHECK(starts(schedule("2026-06-20 18:00", {task})) == Texts{"2026-06-20 17:58"});
}

TEST_CASE("no tasks make no schedule") {
  CHECK(schedule("2026-06-20 18:00", {}).empty());
}

TEST_CASE("no other schedule has less of the night, and of the best none is later") {
  std::mt19937 dice(17);
  const auto below = [&](unsigned count) { return static_cast<int>(dice() % count); };
  for (int round = 0; round < 60; ++round) {
    CAPTURE(round);
    std::vector<Task> tasks;
    for (int i = 0; i < 3; ++i) {
      const double needs = 15.0 * (1 + below(24)), longer = 15.0 * below(48);
      Task task = below(2) == 0 ? wait("wait", needs, longer > 0.0 ? needs + longer : 0.0) : work("work", needs);
      task.keeps = below(3) == 0 ? 15.0 * kMinute * below(32) : 0.0;
      task.may_be_day_before = below(3) > 0;
      tasks.push_back(task);
    }
    const std::int64_t table = days_from_civil(2026, 6, 20) * kMinutesPerDay + 15 * (28 + below(64));
    Merit best{std::numeric_limits<std::int64_t>::max()};
    try_all(tasks, 3, table, table, {0}, best);
    const auto done = count_back(civil_from_minutes(table), tasks);
    REQUIRE(static_cast<bool>(done));
    Merit found{0};
    for (std::size_t i = 3; i-- > 0;) {
      const std::int64_t start = minutes_from_civil((*done)[i].start);
      found[0] += plain_cost(tasks[i], start, table);
      found.push_back(-start);
    }
    REQUIRE(found == best);
  }
}

TEST_CASE("tasks that cannot be are refused with their place") {
  const auto place = [](const auto& spoil) {
    std::vector<Task> tasks{work("mix", 30), wait("chill", 60, 90)};
    spoil(tasks[0], tasks[1]);
    const auto done = count_back({2026, 6, 20, 12, 0}, tasks);
    REQUIRE_FALSE(static_cast<bool>(done));
    CHECK(done.problem().code == ProblemCode::kOutOfRange);
    return done.problem().place;
  };
  CHECK(place([](Task& mix, Task&) { mix.duration = -1.0; }) == "tasks[0].duration");
  CHECK(place([](Task& mix, Task&) { mix.duration = std::nan(""); }) == "tasks[0].duration");
  CHECK(place([](Task&, Task& chill) { chill.duration = 29.0 * kDay; }) == "tasks[1].duration");
  CHECK(place([](Task& mix, Task&) { mix.early = 31.0 * kMinute; }) == "tasks[0].early");
  CHECK(place([](Task& mix, Task&) { mix.longest = 60.0 * kMinute; }) == "tasks[0].longest");
  CHECK(place([](Task&, Task& chill) { chill.longest = 10.0; }) == "tasks[1].longest");
  CHECK(place([](Task&, Task& chill) { chill.keeps = std::numeric_limits<double>::infinity(); }) == "tasks[1].keeps");
  const auto never = count_back({2026, 6, 20, 12, 0}, {}, {.from = 600, .until = 600});
  REQUIRE_FALSE(static_cast<bool>(never));
  CHECK(never.problem().place == "waking");
}

}  // namespace tinwright
