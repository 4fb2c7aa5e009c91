// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See solver.h.
#include "geometry/heat/solver.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/checks.h"
#include "geometry/heat/lanes.h"

namespace tinwright {
namespace {

/// [-] The first step after a jump, as a share of the explicit limit.
constexpr double kFirstStep = 0.5;
constexpr int kFewestStages = 3;
constexpr int kMostStages = 200;
/// [-] of the last step: a step so short is no lever to look ahead by; and how far ahead at most, in last steps.
constexpr double kShortStep = 0.5;
constexpr double kFurthestAhead = 1.0;

/// Stages s are stable for dt <= limit (s² + s - 2) / 4.
int stages_for(double dt, double limit) {
  return std::max(kFewestStages, static_cast<int>(std::ceil(0.5 * (std::sqrt(9.0 + 16.0 * dt / limit) - 1.0))));
}
double longest_with_stages(double limit) {
  constexpr double kAll = kMostStages;
  return 0.25 * limit * (kAll * kAll + kAll - 2.0);
}

}  // namespace

HeatState start_at(const HeatProblem& problem, double temperature) {
  HeatState state;
  for (std::size_t i = 0; i < problem.grid.cells.size(); ++i) {
    state.enthalpy.push_back(problem.substance_of(i).enthalpy(temperature, 0.0));
  }
  state.dryness.assign(state.enthalpy.size(), 0.0);
  return state;
}

double stored_heat(const HeatProblem& problem, const HeatState& state) {
  double heat = 0.0;
  for (std::size_t i = 0; i < state.enthalpy.size(); ++i) heat += state.enthalpy[i] * problem.grid.cells[i].volume;
  return heat;
}

std::vector<double> temperature_field(const HeatProblem& problem, const HeatState& state) {
  std::vector<double> field;
  for (std::size_t i = 0; i < state.enthalpy.size(); ++i) {
    field.push_back(problem.substance_of(i).temperature(state.enthalpy[i], state.dryness[i]));
  }
  return field;
}

HeatStepper::HeatStepper(const HeatProblem& problem) : problem_(problem) {
  const HeatGrid& grid = problem.grid;
  const std::size_t cells = grid.cells.size();
  for (auto* values : {&lines_.low, &lines_.high, &lines_.offset, &lines_.slope}) values->resize(cells);
  lines_.is_boiling.resize(cells);
  lines_.near.assign(cells, 0);
  for (std::size_t i = 0; i < cells; ++i) leave_line(i);
  edges_.resize(cells);
  for (auto* values : {&temperature_, &before_, &ahead_, &conductivity_, &integral_, &outer_conductance_, &outer_heat_,
                       &moved_, &fluidity_, &carried_, &steepest_, &backward_, &water_heat_, &inflow_}) {
    values->resize(cells);
  }
  surface_.resize(grid.outer.size());
  drying_.resize(grid.outer.size());
  surface_share_.resize(grid.outer.size());
  for (const HeatGrid::Cell& cell : grid.cells) {
    per_volume_.push_back(1.0 / cell.volume);
    part_.push_back(static_cast<std::uint8_t>(cell.part));
  }
  is_moving_.assign(cells, 0);
  std::vector<char> is_outer(cells, 0);
  for (const HeatGrid::OuterFace& face : grid.outer) is_outer[index(face.cell)] = 1;
  for (std::size_t i = 0; i < cells; ++i) {
    if (is_outer[i]) outer_cells_.push_back(static_cast<int>(i));
  }
  is_constant_ = problem.substances[0].conducts_evenly() && problem.substances[1].conducts_evenly();
  can_dry_ = problem.substances[0].can_dry() || problem.substances[1].can_dry();
  make_links();
}

void HeatStepper::restart() {
  next_step_ = 0.0;
  last_step_ = 0.0;
}

void HeatStepper::mark(Mark& mark) const {
  mark.before = before_;
  mark.surface = surface_;
  mark.surface_share = surface_share_;
  mark.inflow = inflow_;
  mark.next_step = next_step_;
  mark.last_step = last_step_;
}

void HeatStepper::go_back(const Mark& mark, const HeatState& now, const HeatState& then) {
  before_ = mark.before;
  surface_ = mark.surface;
  surface_share_ = mark.surface_share;
  inflow_ = mark.inflow;
  next_step_ = mark.next_step;
  last_step_ = mark.last_step;
  for (std::size_t i = 0; i < lines_.low.size(); ++i) {
    if (now.dryness[i] != then.dryness[i]) leave_line(i);
  }
}

void HeatStepper::leave_line(std::size_t cell) {
  lines_.low[cell] = 1.0;
  lines_.high[cell] = 0.0;
  lines_.is_boiling[cell] = 0;
}

void HeatStepper::find_line(std::size_t cell, double enthalpy, double dryness) {
  const Substance& substance = substance_of(cell);
  Substance::Line line;
  if (substance.can_dry()) {
    line = substance.line(enthalpy, dryness, edges_[cell], lines_.near[cell]);
  } else {
    line = substance.line(enthalpy, dryness);
  }
  lines_.low[cell] = line.low;
  lines_.high[cell] = line.high;
  lines_.offset[cell] = line.offset;
  lines_.slope[cell] = line.slope;
  lines_.is_boiling[cell] = line.is_boiling ? 1 : 0;
  is_too_steep_ = is_too_steep_ || line.slope > steepest_[cell];
}

void HeatStepper::find_stage_temperatures(const double* enthalpy, const std::vector<double>& dryness) {
  const std::size_t cells = dryness.size();
  const double* const low = lines_.low.data();
  const double* const high = lines_.high.data();
  const double* const offset = lines_.offset.data();
  const double* const slope = lines_.slope.data();
  double* const temperature = staged_.data() + margin_;
  const auto find_one = [&](std::size_t i) {
    if (!(enthalpy[i] >= low[i] && enthalpy[i] < high[i])) find_line(i, enthalpy[i], dryness[i]);
    temperature[i] = offset[i] + slope[i] * enthalpy[i];
  };
  std::size_t i = 0;
  for (; i + kBlock <= cells; i += kBlock) {
    const Pair h0 = load_pair(enthalpy + i);
    const Pair h1 = load_pair(enthalpy + i + 2);
    const PairTest on_line0 = (h0 >= load_pair(low + i)) & (h0 < load_pair(high + i));
    const PairTest on_line1 = (h1 >= load_pair(low + i + 2)) & (h1 < load_pair(high + i + 2));
    if (holds_for_both(on_line0 & on_line1)) {
      store_pair(temperature + i, load_pair(offset + i) + load_pair(slope + i) * h0);
      store_pair(temperature + i + 2, load_pair(offset + i + 2) + load_pair(slope + i + 2) * h1);
    } else {
      for (std::size_t k = 0; k < kBlock; ++k) find_one(i + k);
    }
  }
  for (; i < cells; ++i) find_one(i);
}

void HeatStepper::find_temperatures(const std::vector<double>& enthalpy, const std::vector<double>& dryness) {
  find_stage_temperatures(enthalpy.data(), dryness);
  const double* const temperature = staged_.data() + margin_;
  std::copy(temperature, temperature + temperature_.size(), temperature_.begin());
}

const std::vector<double>& HeatStepper::temperatures(const HeatState& state) {
  find_temperatures(state.enthalpy, state.dryness);
  return temperature_;
}

/// Keeps the present for the next look ahead. A short step, cut off by a row of history or a stage's end, would make a
/// poor lever for a long one after it: then the older past stays, so much further back.
void HeatStepper::remember(double dt) {
  if (dt < kShortStep * last_step_) {
    last_step_ += dt;
    return;
  }
  before_ = temperature_;
  last_step_ = dt;
}

/// Temperatures half a step on, along the line through now and a step ago.
void HeatStepper::look_ahead(double dt) {
  const double share = last_step_ > 0.0 ? std::min(0.5 * dt / last_step_, kFurthestAhead) : 0.0;
  for (std::size_t i = 0; i < ahead_.size(); ++i) {
    ahead_[i] = temperature_[i] + share * (temperature_[i] - before_[i]);
  }
}

/// Calls use(i, rate0, rate1) with the rates [W/m³] of cells i and i + 1, and of i + 2 and i + 3, for every block.
template <class Use>
void HeatStepper::for_rates(const Use& use) const {
  static_assert(kBlock == 4);
  const double* const temperatures = staged_.data() + margin_;
  const double* conductance = conductance_.data();
  const Link* link = links_.data();
  for (std::size_t block = 0; block + 1 < first_link_.size(); ++block) {
    const std::size_t i = block * kBlock;
    const double* const temperature = temperatures + i;
    const Pair own0 = load_pair(temperature);
    const Pair own1 = load_pair(temperature + 2);
    Pair flow0 = load_pair(&outer_heat_[i]) - load_pair(&outer_conductance_[i]) * own0;  // [W]
    Pair flow1 = load_pair(&outer_heat_[i + 2]) - load_pair(&outer_conductance_[i + 2]) * own1;
    for (const Link* const end = links_.data() + first_link_[block + 1]; link != end; ++link, conductance += kBlock) {
      const double* const other = temperature + link->apart;
      flow0 += load_pair(conductance) * (load_pair(other) - own0);
      flow1 += load_pair(conductance + 2) * (load_pair(other + 2) - own1);
    }
    use(i, flow0 * load_pair(&per_volume_[i]), flow1 * load_pair(&per_volume_[i + 2]));
  }
}

/// [W] through all surfaces.
double HeatStepper::surface_heat() const {
  double heat = 0.0;
  for (const int cell : outer_cells_) {
    const auto i = index(cell);
    heat += outer_heat_[i] - outer_conductance_[i] * staged_[margin_ + i];
  }
  return heat;
}

/// Whether a cell's line is steeper than explicit_limit has allowed for.
bool HeatStepper::any_too_steep() const {
  for (std::size_t i = 0; i < steepest_.size(); ++i) {
    if (lines_.slope[i] > steepest_[i]) return true;
  }
  return false;
}

/// One step of `s` stages; temperature_ is that of state at its start.
void HeatStepper::advance(HeatState& state, double dt, int s) {
  is_too_steep_ = false;
  stages_ += s;
  double* const start = work_[0].data();  // whole blocks, unlike what is in `state`
  double* const start_rate = work_[1].data();
  double* previous = work_[2].data();
  double* current = work_[3].data();
  std::copy(state.enthalpy.begin(), state.enthalpy.end(), start);
  const auto b = [](int j) { return j < 2 ? 1.0 / 3.0 : (j * j + j - 2.0) / (2.0 * j * (j + 1.0)); };
  const double w1 = 4.0 / (s * s + s - 2.0);
  const double start_heat = surface_heat();
  const double first = b(1) * w1 * dt;
  for_rates([&](std::size_t i, Pair rate0, Pair rate1) {
    store_pair(start_rate + i, rate0);
    store_pair(start_rate + i + 2, rate1);
    const Pair start0 = load_pair(start + i);
    const Pair start1 = load_pair(start + i + 2);
    store_pair(previous + i, start0);
    store_pair(previous + i + 2, start1);
    store_pair(current + i, start0 + first * rate0);
    store_pair(current + i + 2, start1 + first * rate1);
  });
  double previous_heat = 0.0;
  double current_heat = first * start_heat;
  for (int j = 2; j <= s; ++j) {
    const double mu = (2.0 * j - 1.0) / j * b(j) / b(j - 1);
    const double nu = -(j - 1.0) / j * b(j) / b(j - 2);
    const double rest = 1.0 - mu - nu;
    const double mu_dt = mu * w1 * dt;
    const double gamma_dt = -(1.0 - b(j - 1)) * mu_dt;
    find_stage_temperatures(current, state.dryness);
    const double heat = surface_heat();
    // next = mu now + nu previous + rest start + mu_dt rate + gamma_dt start_rate, over `previous`.
    const auto combine = [&](std::size_t i, Pair rate) {
      store_pair(previous + i, mu * load_pair(current + i) + nu * load_pair(previous + i) +
                                   rest * load_pair(start + i) + mu_dt * rate + gamma_dt * load_pair(start_rate + i));
    };
    for_rates([&](std::size_t i, Pair rate0, Pair rate1) {
      combine(i, rate0);
      combine(i + 2, rate1);
    });
    std::swap(previous, current);
    previous_heat = mu * current_heat + nu * previous_heat + mu_dt * heat + gamma_dt * start_heat;
    std::swap(previous_heat, current_heat);
  }
  state.heat_in += current_heat;
  std::copy(current, current + state.enthalpy.size(), state.enthalpy.begin());
}

double HeatStepper::step(HeatState& state, const Surroundings& around, const Air& air, double time, double most) {
  GEOMETRY_ASSERT(most > 0.0);
  find_temperatures(state.enthalpy, state.dryness);
  const double longest = std::max(kLongestStep, kStepShare * time);
  double dt = std::min({next_step_ > 0.0 ? next_step_ : longest, longest, most});
  const double middle = air.at(time + 0.5 * dt);
  coolest_ = std::min(*std::min_element(temperature_.begin(), temperature_.end()), std::min(air.at(time), middle));
  for (const Surface* side : {&around.top, &around.wall, &around.base}) {
    if (side->held_at) coolest_ = std::min(coolest_, *side->held_at);
  }
  look_ahead(dt);
  set_inner(state.dryness);
  set_outer(state, around, middle, dt);
  double limit = explicit_limit(state.dryness, false);
  if (can_dry_ && any_too_steep()) limit = explicit_limit(state.dryness, true);
  if (next_step_ <= 0.0) {
    next_step_ = kFirstStep * limit;
    dt = std::min(dt, next_step_);
  }
  next_step_ = std::min(next_step_ * kStepGrowth, longest);
  dt = std::min(dt, longest_with_stages(limit));
  const double heat_in = state.heat_in;
  advance(state, dt, stages_for(dt, limit));
  if (can_dry_ && is_too_steep_) {  // a cell ran dry unforeseen: again from the start
    std::copy(work_[0].data(), work_[0].data() + state.enthalpy.size(), state.enthalpy.begin());
    state.heat_in = heat_in;
    find_temperatures(state.enthalpy, state.dryness);
    limit = explicit_limit(state.dryness, true);
    dt = std::min(dt, longest_with_stages(limit));
    advance(state, dt, stages_for(dt, limit));
  }
  remember(dt);
  if (can_dry_) {
    find_temperatures(state.enthalpy, state.dryness);
    settle_boiling(state);
    settle_drying(state, dt);
    move_water(state, dt);
  }
  ++steps_;
  return dt;
}

}  // namespace tinwright
