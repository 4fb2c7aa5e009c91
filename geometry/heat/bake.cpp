// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See bake.h.
#include "geometry/heat/bake.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "geometry/checks.h"

namespace tinwright {
namespace {

/// [K] Ovens, freezers and food lie between these.
constexpr double kColdest = 173.15;
constexpr double kHottest = 673.15;
constexpr double kMostTransfer = 1e5;      // [W/m²K] boiling water and steam stay below
constexpr double kMostResistance = 1.0;    // [m²K/W] no pan keeps heat out so well
constexpr double kMostHumidity = 10.0;     // [kg/kg] nearly steam
constexpr double kSameTemperature = 1e-5;  // [K] so near a target is there
constexpr double kSameTime = 1e-9;         // [s]
constexpr double kRim = 0.1;               // [-] of the volume

std::optional<Problem> check_temperature(double temperature, const std::string& place) {
  if (std::isfinite(temperature) && temperature >= kColdest && temperature <= kHottest) return std::nullopt;
  return Problem{ProblemCode::kOutOfRange, "a temperature here is between -100 and 400 °C", place};
}

std::optional<Problem> check_side(const Surface& side, const std::string& place) {
  if (!(side.coefficient >= 0.0 && side.coefficient <= kMostTransfer)) {
    return Problem{ProblemCode::kOutOfRange, "a surface coefficient is between 0 and 100000 W/m2K, mostly 5 to 50",
                   place};
  }
  if (!(side.emissivity >= 0.0 && side.emissivity <= 1.0)) {
    return Problem{ProblemCode::kOutOfRange, "an emissivity is between 0 and 1", place};
  }
  if (!(side.resistance >= 0.0 && side.resistance <= kMostResistance)) {
    return Problem{ProblemCode::kOutOfRange, "the pan's wall resists more than any pan does", place};
  }
  if (!(side.drying >= 0.0 && side.drying <= kMostTransfer)) {
    return Problem{ProblemCode::kOutOfRange, "the part of a coefficient that dries is between 0 and the coefficient",
                   place};
  }
  return side.held_at ? check_temperature(*side.held_at, place) : std::nullopt;
}

std::optional<Problem> check_surroundings(const Surroundings& around, const std::string& place) {
  if (auto problem = check_side(around.top, place + ".top")) return problem;
  if (auto problem = check_side(around.wall, place + ".wall")) return problem;
  if (auto problem = check_side(around.base, place + ".base")) return problem;
  if (!(around.humidity >= 0.0 && around.humidity <= kMostHumidity)) {
    return Problem{ProblemCode::kOutOfRange, "air holds between 0 and 10 kg of water to a kg of dry air", place};
  }
  double any = 0.0;
  for (const Surface* side : {&around.top, &around.wall, &around.base}) any += side->coefficient + side->emissivity;
  if (any > 0.0) return std::nullopt;
  return Problem{ProblemCode::kOutOfRange, "no heat can reach the food; give at least one coefficient", place};
}

std::optional<Problem> check_stage(const Stage& stage, const std::string& place) {
  if (auto problem = check_temperature(stage.air, place + ".air")) return problem;
  if (stage.air_before) {
    if (auto problem = check_temperature(*stage.air_before, place + ".from")) return problem;
  }
  if (!(stage.duration > 0.0)) {
    return Problem{ProblemCode::kOutOfRange, "a stage takes some time, like 20 min", place + ".for"};
  }
  if (!(stage.lag >= 0.0)) return Problem{ProblemCode::kOutOfRange, "a lag is a time, like 10 min", place + ".lag"};
  if (stage.ends_when && !std::isfinite(stage.ends_when->value)) {
    return Problem{ProblemCode::kNotANumber, "the temperature that ends it is not a number", place + ".until"};
  }
  return stage.around ? check_surroundings(*stage.around, place) : std::nullopt;
}

std::optional<Problem> check_question(const BakeQuestion& q) {
  if (auto problem = check_temperature(q.start, "start")) return problem;
  if (q.stages.empty()) return Problem{ProblemCode::kMissing, "a programme needs at least one stage", "stages"};
  double length = 0.0;
  bool needs_transfer = false;
  for (std::size_t i = 0; i < q.stages.size(); ++i) {
    if (auto problem = check_stage(q.stages[i], "stages." + std::to_string(i))) return problem;
    length += q.stages[i].duration;
    needs_transfer = needs_transfer || !q.stages[i].around;
  }
  if (!(length <= kLongestProgramme)) {
    return Problem{ProblemCode::kOutOfRange, "the programme is longer than a week", "stages"};
  }
  if (needs_transfer) {
    if (auto problem = check_surroundings(surroundings_of(q.transfer), "transfer")) return problem;
  }
  if (!(q.report_every > 0.0))
    return Problem{ProblemCode::kOutOfRange, "report every so often, like 5 min", "report_every"};
  if (length / q.report_every > 1e5) {
    return Problem{ProblemCode::kOutOfRange, "that would be over 100000 rows; report less often", "report_every"};
  }
  return std::nullopt;
}

double measured(const FoodTemperatures& food, Ending::Measure measure) {
  switch (measure) {
    case Ending::Measure::kColdest:
      return food.coldest;
    case Ending::Measure::kMean:
      return food.mean;
    case Ending::Measure::kHottest:
      break;
  }
  return food.hottest;
}

/// [s] into a step, and by how much an ending [K] has been passed then.
struct Point {
  double at, over;
};
/// [s] Where `over` likely passes 0: on the curve through all three points, at as a quadratic of over, or on the line
/// through two. Always within them, and nearer the middle than their ends.
double crossing(const Point& low, const Point& high, const std::optional<Point>& third) {
  const double apart = high.at - low.at;
  double share = low.over / (low.over - high.over);
  if (third && third->over != low.over && third->over != high.over) {
    const double slope = 1.0 / (high.over - low.over);
    const double bend = ((third->at - high.at) / (third->over - high.over) - apart * slope) / (third->over - low.over);
    const double curved = -low.over * slope + bend * low.over * high.over / apart;
    if (curved > 0.0 && curved < 1.0) share = curved;
  }
  return low.at + std::clamp(share, 0.02, 0.98) * apart;
}

/// A programme under way.
class Run {
 public:
  Run(const HeatProblem& problem, const BakeQuestion& question)
      : problem_(problem), question_(question), stepper_(problem), state_(start_at(problem, question.start)) {
    food_ = {question.start, question.start, question.start, 0};
    answer_.cells = static_cast<long>(problem.grid.cells.size());
    stored_first_ = stored_heat(problem, state_);
  }

  Result<BakeAnswer> all() {
    GEOMETRY_ASSERT(question_.watched_cell < problem_.grid.cells.size());
    note(air_of(question_.stages.front()).at(0.0));
    bool done = question_.until_coldest && question_.start == *question_.until_coldest;
    for (const Stage& stage : question_.stages) {
      if (done) break;
      std::optional<Ending> last;
      if (question_.until_coldest) last = Ending{Ending::Measure::kColdest, *question_.until_coldest};
      if (auto problem = run(stage, last, done)) return *problem;
      answer_.stage_ends.push_back(state());
    }
    if (question_.until_coldest && !done) answer_.reached = false;
    return finished();
  }

 private:
  static Air air_of(const Stage& stage) {
    return {stage.air_before.value_or(stage.air), stage.air, stage.ramp > 0.0 ? stage.ramp : stage.duration, stage.lag};
  }

  void note(double air) {
    const std::vector<double>& field = stepper_.temperatures(state_);
    answer_.history.push_back({time_, food_.coldest, food_.mean, air, food_.hottest, field[question_.watched_cell]});
    if (time_ <= question_.keeps_fields_to) answer_.fields.push_back(field);
  }

  void look() { food_ = observe(problem_, stepper_.temperatures(state_)); }

  BakeState state() {
    const std::vector<double>& field = stepper_.temperatures(state_);
    return {.time = time_,
            .coldest = food_.coldest,
            .mean = food_.mean,
            .hottest = food_.hottest,
            .rim = warmest_share(problem_, field, kRim),
            .water_lost = state_.water_lost,
            .wobble = question_.sets_at ? wobble_radius(problem_, field, *question_.sets_at) : 0.0};
  }

  /// Goes through one stage, to its time, its own ending, or the whole programme's `last`, which sets `done`.
  std::optional<Problem> run(const Stage& stage, const std::optional<Ending>& last, bool& done) {
    const Surroundings around = stage.around.value_or(surroundings_of(question_.transfer));
    const Air air = air_of(stage);
    const double begin = time_;
    const double end = begin + stage.duration;
    stepper_.restart();
    const auto rises = [&](const std::optional<Ending>& ending) {
      return ending && ending->value > measured(food_, ending->measure);
    };
    const bool own_rises = rises(stage.ends_when);
    const bool last_rises = last && last->value > question_.start;
    const auto missing = [&](const std::optional<Ending>& ending, bool is_rising) {
      if (!ending) return -1.0;
      const double over = measured(food_, ending->measure) - ending->value;
      return is_rising ? over : -over;
    };
    const auto over = [&] { return std::max(missing(stage.ends_when, own_rises), missing(last, last_rises)); };
    bool ended = over() >= -kSameTemperature;
    while (!ended && time_ < end - kSameTime) {
      if (static_cast<double>(stepper_.stages()) * static_cast<double>(answer_.cells) > kMostWork) {
        return Problem{ProblemCode::kOutOfRange, "this programme takes too long to work out; make it shorter",
                       "stages"};
      }
      const double next_row = question_.report_every * static_cast<double>(answer_.history.size());
      const double goal = std::min(end, next_row);
      if (stage.ends_when || last) {
        go_watching(around, air, begin, goal, over);
        done = missing(last, last_rises) >= -kSameTemperature;
        ended = over() >= -kSameTemperature;
      } else {
        time_ += stepper_.step(state_, around, air, time_ - begin, goal - time_);
      }
      if (!ended && goal - time_ < kSameTime) time_ = goal;
      if (time_ != next_row) continue;
      look();
      note(air.at(time_ - begin));
    }
    look();
    if (stage.ends_when && !ended) answer_.reached = false;
    return std::nullopt;
  }

  /// One step towards `goal`, or to the moment within it at which `over` passes 0.
  template <class Over>
  void go_watching(const Surroundings& around, const Air& air, double begin, double goal, const Over& over) {
    Point low{0.0, over()};
    before_ = state_;
    stepper_.mark(mark_);
    const double start = time_;
    Point high{stepper_.step(state_, around, air, time_ - begin, goal - time_), 0.0};
    time_ = start + high.at;
    look();
    high.over = over();
    if (high.over <= kSameTemperature) return;
    std::optional<Point> third;  // the last point is always one that has passed
    while (high.at - low.at > kTimeTolerance) {
      Point middle{crossing(low, high, third), 0.0};
      repeat(around, air, begin, start, middle.at);
      middle.over = over();
      if (std::abs(middle.over) <= kSameTemperature) return;
      Point& same_side = middle.over < 0.0 ? low : high;
      third = same_side;
      same_side = middle;
    }
    if (time_ != start + high.at) repeat(around, air, begin, start, high.at);
  }

  void repeat(const Surroundings& around, const Air& air, double begin, double start, double length) {
    stepper_.go_back(mark_, state_, before_);
    state_ = before_;
    time_ = start + stepper_.step(state_, around, air, start - begin, length);
    look();
  }

  BakeAnswer finished() {
    answer_.time = time_;
    answer_.coldest = food_.coldest;
    answer_.coldest_cell = food_.coldest_cell;
    answer_.mean = food_.mean;
    answer_.hottest = food_.hottest;
    answer_.water_lost = state_.water_lost;
    const double stored = stored_heat(problem_, state_) - stored_first_;
    const double through = std::max(std::abs(stored), std::abs(state_.heat_in));
    answer_.energy_imbalance = through > 0.0 ? (stored - (state_.heat_in - state_.heat_with_water)) / through : 0.0;
    answer_.steps = stepper_.steps();
    answer_.stages = stepper_.stages();
    return answer_;
  }

  const HeatProblem& problem_;
  const BakeQuestion& question_;
  HeatStepper stepper_;
  HeatState state_, before_;
  HeatStepper::Mark mark_;
  BakeAnswer answer_;
  FoodTemperatures food_;
  double time_ = 0.0;
  double stored_first_ = 0.0;
};

}  // namespace

Result<BakeAnswer> bake(const HeatProblem& problem, const BakeQuestion& question) {
  if (auto wrong = check_question(question)) return *wrong;
  return Run(problem, question).all();
}

}  // namespace tinwright
