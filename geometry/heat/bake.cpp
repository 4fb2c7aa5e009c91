// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See bake.h.
#include "geometry/heat/bake.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace tinwright {
namespace {

/// [K] Ovens, freezers and food lie between these.
constexpr double kColdest = 173.15;
constexpr double kHottest = 673.15;
constexpr double kMostTransfer = 1e5;    // [W/m²K] boiling water and steam stay below
constexpr double kTimeTolerance = 1e-9;  // [s]

std::optional<Problem> check_temperature(double temperature, const std::string& place) {
  if (std::isfinite(temperature) && temperature >= kColdest && temperature <= kHottest) return std::nullopt;
  return Problem{ProblemCode::kOutOfRange, "a temperature here is between -100 and 400 °C", place};
}

std::optional<Problem> check_question(const BakeQuestion& q) {
  if (auto problem = check_temperature(q.start, "start")) return problem;
  if (q.stages.empty()) return Problem{ProblemCode::kMissing, "a programme needs at least one stage", "stages"};
  double length = 0.0;
  for (std::size_t i = 0; i < q.stages.size(); ++i) {
    const std::string place = "stages." + std::to_string(i);
    if (auto problem = check_temperature(q.stages[i].air, place + ".air")) return problem;
    if (!(q.stages[i].duration > 0.0)) {
      return Problem{ProblemCode::kOutOfRange, "a stage takes some time, like 20 min", place + ".for"};
    }
    length += q.stages[i].duration;
  }
  if (!(length <= kLongestProgramme)) {
    return Problem{ProblemCode::kOutOfRange, "the programme is longer than a week", "stages"};
  }
  for (const auto& [h, place] : {std::pair{q.transfer.top, "transfer.top"}, std::pair{q.transfer.wall, "transfer.wall"},
                                 std::pair{q.transfer.base, "transfer.base"}}) {
    if (!(h >= 0.0 && h <= kMostTransfer)) {
      return Problem{ProblemCode::kOutOfRange, "a surface coefficient is between 0 and 100000 W/m2K, mostly 5 to 50",
                     place};
    }
  }
  if (q.transfer.top + q.transfer.wall + q.transfer.base <= 0.0) {
    return Problem{ProblemCode::kOutOfRange, "no heat can reach the food; give at least one coefficient", "transfer"};
  }
  if (!(q.report_every > 0.0))
    return Problem{ProblemCode::kOutOfRange, "report every so often, like 5 min", "report_every"};
  if (length / q.report_every > 1e5) {
    return Problem{ProblemCode::kOutOfRange, "that would be over 100000 rows; report less often", "report_every"};
  }
  return std::nullopt;
}

/// What the run goes through: the food, the clock, and what was seen last.
struct Run {
  HeatState state;
  double time = 0.0;
  double coldest = 0.0;
};

/// Time within the last step at which the coldest point passed `target`, between the two ends' temperatures.
double passing_time(double before_time, double before, double time, double coldest, double target) {
  return before_time + (time - before_time) * (target - before) / (coldest - before);
}

}  // namespace

Result<BakeAnswer> bake(const HeatProblem& problem, const BakeQuestion& question) {
  if (auto wrong = check_question(question)) return *wrong;
  Run run{start_at(problem, question.start), 0.0, question.start};
  const double stored_first = stored_heat(problem, run.state);
  HeatStepper stepper(problem);
  BakeAnswer answer;
  answer.cells = static_cast<long>(problem.grid.cells.size());
  const bool is_rising = question.until_coldest && *question.until_coldest > question.start;
  const auto has_passed = [&](double coldest) {
    return question.until_coldest &&
           (is_rising ? coldest >= *question.until_coldest : coldest <= *question.until_coldest);
  };

  const auto note = [&](double air) {
    const FoodTemperatures food = temperatures(problem, run.state);
    answer.history.push_back({run.time, food.coldest, food.mean, air});
  };
  note(question.stages.front().air);
  answer.time = 0.0;
  bool done = has_passed(question.start);
  double stage_end = 0.0;
  for (const Stage& stage : question.stages) {
    if (done) break;
    stepper.restart();
    stage_end += stage.duration;
    while (!done && run.time < stage_end - kTimeTolerance) {
      if (stepper.steps() >= kMostSteps) {
        return Problem{ProblemCode::kOutOfRange, "this programme takes too many steps to work out; make it shorter",
                       "stages"};
      }
      const double next_row = question.report_every * static_cast<double>(answer.history.size());
      const double goal = std::min(stage_end, next_row);
      const double before_time = run.time;
      const double before = run.coldest;
      run.time += stepper.step(run.state, question.transfer, stage.air, goal - run.time);
      if (goal - run.time < kTimeTolerance) run.time = goal;
      if (question.until_coldest) {
        run.coldest = temperatures(problem, run.state).coldest;
        if (has_passed(run.coldest)) {
          answer.time = passing_time(before_time, before, run.time, run.coldest, *question.until_coldest);
          answer.coldest = *question.until_coldest;
          done = true;
        }
      }
      if (run.time == next_row) note(stage.air);
    }
  }
  const FoodTemperatures food = temperatures(problem, run.state);
  answer.mean = food.mean;
  answer.hottest = food.hottest;
  answer.reached = !question.until_coldest || done;
  if (!done) {
    answer.time = run.time;
    answer.coldest = food.coldest;
  } else if (answer.time == 0.0) {
    answer.coldest = food.coldest;
  }
  const double stored = stored_heat(problem, run.state) - stored_first;
  const double through = std::max(std::abs(stored), std::abs(run.state.heat_in));
  answer.energy_imbalance = through > 0.0 ? (stored - run.state.heat_in) / through : 0.0;
  answer.steps = stepper.steps();
  answer.stages = stepper.stages();
  return answer;
}

}  // namespace tinwright
