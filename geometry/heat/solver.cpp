// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See solver.h.
#include "geometry/heat/solver.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/checks.h"

namespace tinwright {
namespace {

/// [-] The first step after a jump, as a share of the explicit limit.
constexpr double kFirstStep = 0.5;
constexpr int kFewestStages = 3;
constexpr int kMostStages = 200;

double transfer_at(const Transfer& transfer, Side side) {
  switch (side) {
    case Side::kTop:
      return transfer.top;
    case Side::kWall:
      return transfer.wall;
    case Side::kBase:
      break;
  }
  return transfer.base;
}

double temperature_of(const HeatProblem& problem, const HeatState& state, std::size_t cell) {
  const auto part = static_cast<std::size_t>(problem.grid.cells[cell].part);
  return problem.substances[part].temperature(state.enthalpy[cell]);
}

/// [K] How much colder than its mean the coldest cell is at its coldest point, along one axis. A cell at the middle
/// plane or axis is mirrored there. Means of u² over a cell: along a line size²/12 about its own middle, size²/3 from
/// the mirror, size²/2 from an axis.
double dip_along(const HeatProblem& problem, const HeatState& state, std::size_t cell, std::size_t axis) {
  const HeatGrid::Cell& own = problem.grid.cells[cell];
  const auto [before, after] = own.neighbours[axis];
  const double size = own.size[axis];
  const double t = temperature_of(problem, state, cell);
  const auto to = [&](int other) {
    return std::abs(problem.grid.cells[static_cast<std::size_t>(other)].middle[axis] - own.middle[axis]);
  };
  const auto rise = [&](int other) { return temperature_of(problem, state, static_cast<std::size_t>(other)) - t; };
  const bool is_mirrored = axis < 2 && before < 0 && after >= 0 && own.middle[axis] < 0.51 * size;
  if (is_mirrored) {
    const double distance = to(after);
    const double curve = rise(after) / ((own.middle[axis] + distance) * (own.middle[axis] + distance) -
                                        own.middle[axis] * own.middle[axis]);
    return std::max(0.0, curve * size * size / (problem.grid.is_round ? 2.0 : 3.0));
  }
  if (before < 0 || after < 0) return 0.0;
  const double a = to(before);
  const double b = to(after);
  const double curve = (rise(before) / a + rise(after) / b) / (a + b);
  if (curve <= 0.0) return 0.0;
  const double slope = rise(after) / b - curve * b;
  const double bottom = std::clamp(-0.5 * slope / curve, -0.5 * size, 0.5 * size);
  return curve * size * size / 12.0 - (slope + curve * bottom) * bottom;
}

}  // namespace

HeatState start_at(const HeatProblem& problem, double temperature) {
  HeatState state;
  for (const HeatGrid::Cell& cell : problem.grid.cells) {
    state.enthalpy.push_back(problem.substances[static_cast<std::size_t>(cell.part)].enthalpy(temperature));
  }
  return state;
}

double stored_heat(const HeatProblem& problem, const HeatState& state) {
  double heat = 0.0;
  for (std::size_t i = 0; i < state.enthalpy.size(); ++i) heat += state.enthalpy[i] * problem.grid.cells[i].volume;
  return heat;
}

FoodTemperatures temperatures(const HeatProblem& problem, const HeatState& state) {
  FoodTemperatures found{std::numeric_limits<double>::infinity(), 0.0, 0.0};
  double volume = 0.0;
  std::size_t coldest = 0;
  for (std::size_t i = 0; i < state.enthalpy.size(); ++i) {
    const HeatGrid::Cell& cell = problem.grid.cells[i];
    const double t = problem.substances[static_cast<std::size_t>(cell.part)].temperature(state.enthalpy[i]);
    if (t < found.coldest) {
      found.coldest = t;
      coldest = i;
    }
    found.hottest = std::max(found.hottest, t);
    found.mean += t * cell.volume;
    volume += cell.volume;
  }
  found.mean /= volume;
  for (std::size_t axis = 0; axis < 3; ++axis) found.coldest -= dip_along(problem, state, coldest, axis);
  return found;
}

HeatStepper::HeatStepper(const HeatProblem& problem)
    : problem_(problem),
      lines_(problem.grid.cells.size(), {.low = 1.0, .high = 0.0}),  // empty, so that the first look finds one
      temperature_(problem.grid.cells.size()),
      inner_(problem.grid.faces.size()),
      outer_(problem.grid.outer.size()) {
  for (auto& values : work_) values.resize(problem.grid.cells.size());
  for (const HeatGrid::Cell& cell : problem.grid.cells) per_volume_.push_back(1.0 / cell.volume);
  for (const HeatGrid::Face& face : problem.grid.faces) pairs_.push_back({face.a, face.b});
}

void HeatStepper::restart() {
  next_step_ = 0.0;
}

void HeatStepper::set_conductances(const Transfer& transfer) {
  const HeatGrid& grid = problem_.grid;
  const auto conductivity = [&](int cell) {
    const auto i = static_cast<std::size_t>(cell);
    return problem_.substances[static_cast<std::size_t>(grid.cells[i].part)].conductivity(temperature_[i]);
  };
  for (std::size_t f = 0; f < grid.faces.size(); ++f) {
    const HeatGrid::Face& face = grid.faces[f];
    inner_[f] = face.area / (face.half_a / conductivity(face.a) + face.half_b / conductivity(face.b));
  }
  for (std::size_t f = 0; f < grid.outer.size(); ++f) {
    const HeatGrid::OuterFace& face = grid.outer[f];
    const double h = transfer_at(transfer, face.side);
    outer_[f] = h > 0.0 ? face.area / (1.0 / h + face.half / conductivity(face.cell)) : 0.0;
  }
}

/// [s] The longest stable explicit step, by Gershgorin's circles. Links across corners may be negative.
double HeatStepper::explicit_limit() const {
  const HeatGrid& grid = problem_.grid;
  std::vector<double> sum(grid.cells.size(), 0.0);
  for (std::size_t f = 0; f < grid.faces.size(); ++f) {
    sum[static_cast<std::size_t>(grid.faces[f].a)] += std::abs(inner_[f]);
    sum[static_cast<std::size_t>(grid.faces[f].b)] += std::abs(inner_[f]);
  }
  for (std::size_t f = 0; f < grid.outer.size(); ++f) sum[static_cast<std::size_t>(grid.outer[f].cell)] += outer_[f];
  double limit = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < sum.size(); ++i) {
    const auto part = static_cast<std::size_t>(grid.cells[i].part);
    const double capacity = grid.cells[i].volume * problem_.substances[part].least_capacity();
    if (sum[i] > 0.0) limit = std::min(limit, capacity / sum[i]);
  }
  return limit;
}

void HeatStepper::find_temperatures(const std::vector<double>& enthalpy) {
  for (std::size_t i = 0; i < enthalpy.size(); ++i) {
    ThermalTable::Line& line = lines_[i];
    if (!(enthalpy[i] >= line.low && enthalpy[i] < line.high)) {
      line = problem_.substances[static_cast<std::size_t>(problem_.grid.cells[i].part)].line(enthalpy[i]);
    }
    temperature_[i] = line.temperature_at(enthalpy[i]);
  }
}

void HeatStepper::rate(const std::vector<double>& enthalpy, double air, std::vector<double>& rate, double& heat_rate) {
  find_temperatures(enthalpy);
  std::fill(rate.begin(), rate.end(), 0.0);
  for (std::size_t f = 0; f < pairs_.size(); ++f) {
    const auto a = static_cast<std::size_t>(pairs_[f].a);
    const auto b = static_cast<std::size_t>(pairs_[f].b);
    const double flow = inner_[f] * (temperature_[b] - temperature_[a]);
    rate[a] += flow;
    rate[b] -= flow;
  }
  heat_rate = 0.0;
  for (std::size_t f = 0; f < outer_.size(); ++f) {
    const auto cell = static_cast<std::size_t>(problem_.grid.outer[f].cell);
    const double flow = outer_[f] * (air - temperature_[cell]);
    rate[cell] += flow;
    heat_rate += flow;
  }
  for (std::size_t i = 0; i < rate.size(); ++i) rate[i] *= per_volume_[i];
}

double HeatStepper::step(HeatState& state, const Transfer& transfer, double air, double most) {
  GEOMETRY_ASSERT(most > 0.0);
  auto& [before, before_rate, previous, current, current_rate] = work_;
  before = state.enthalpy;
  find_temperatures(before);
  set_conductances(transfer);
  const double limit = explicit_limit();
  if (next_step_ <= 0.0) next_step_ = kFirstStep * limit;
  double dt = std::min({next_step_, kLongestStep, most});
  next_step_ = std::min(next_step_ * kStepGrowth, kLongestStep);

  // Stages s with dt <= limit (s² + s - 2) / 4.
  int s = std::max(kFewestStages, static_cast<int>(std::ceil(0.5 * (std::sqrt(9.0 + 16.0 * dt / limit) - 1.0))));
  if (s > kMostStages) {
    s = kMostStages;
    dt = 0.25 * limit * (s * s + s - 2);
  }
  const auto b = [](int j) { return j < 2 ? 1.0 / 3.0 : (j * j + j - 2.0) / (2.0 * j * (j + 1.0)); };
  const double w1 = 4.0 / (s * s + s - 2.0);

  double before_heat_rate = 0.0;
  rate(before, air, before_rate, before_heat_rate);
  const double first = b(1) * w1 * dt;
  previous = before;
  for (std::size_t i = 0; i < before.size(); ++i) current[i] = before[i] + first * before_rate[i];
  double previous_heat = 0.0;
  double current_heat = first * before_heat_rate;
  for (int j = 2; j <= s; ++j) {
    const double mu = (2.0 * j - 1.0) / j * b(j) / b(j - 1);
    const double nu = -(j - 1.0) / j * b(j) / b(j - 2);
    const double mu_dt = mu * w1 * dt;
    const double gamma_dt = -(1.0 - b(j - 1)) * mu_dt;
    double heat_rate = 0.0;
    rate(current, air, current_rate, heat_rate);
    for (std::size_t i = 0; i < before.size(); ++i) {
      const double next = mu * current[i] + nu * previous[i] + (1.0 - mu - nu) * before[i] + mu_dt * current_rate[i] +
                          gamma_dt * before_rate[i];
      previous[i] = current[i];
      current[i] = next;
    }
    const double next_heat = mu * current_heat + nu * previous_heat + mu_dt * heat_rate + gamma_dt * before_heat_rate;
    previous_heat = current_heat;
    current_heat = next_heat;
  }
  state.enthalpy = current;
  state.heat_in += current_heat;
  ++steps_;
  stages_ += s;
  return dt;
}

}  // namespace tinwright
