// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The water's part of a step, see solver.h: what boiled inside, what dried off the surface, and what moved from cell to
// cell. Water that goes takes along its own enthalpy, so that none of this changes a cell's temperature.
#include <algorithm>
#include <cmath>

#include "geometry/heat/solver.h"

namespace tinwright {
namespace {

/// [-] Cells drier than their neighbours by less draw no water.
constexpr double kSameDryness = 1e-5;
/// [-] of the explicit limit, for the small steps in which water moves.
constexpr double kWaterStep = 0.9;
constexpr int kMostWaterSteps = 50;

}  // namespace

void HeatStepper::settle_boiling(HeatState& state) {
  for (std::size_t i = 0; i < lines_.is_boiling.size(); ++i) {
    if (lines_.is_boiling[i] == 0) continue;
    const Substance& substance = substance_of(i);
    const double volume = problem_.grid.cells[i].volume;
    const Substance::Left left = substance.boil_off_at(temperature_[i], state.dryness[i], edges_[i].near);
    state.heat_with_water += (state.enthalpy[i] - left.enthalpy) * volume;
    state.water_lost += (left.dryness - state.dryness[i]) * substance.water() * volume;
    state.enthalpy[i] = left.enthalpy;
    state.dryness[i] = left.dryness;
    leave_line(i);
  }
}

/// `mass` [kg] of water leaves a cell at the cell's temperature.
void HeatStepper::water_left(HeatState& state, std::size_t cell, double mass) {
  const Substance& substance = substance_of(cell);
  const double dryness = std::clamp(state.dryness[cell] + mass * per_volume_[cell] / substance.water(), 0.0, 1.0);
  const double gone = (dryness - state.dryness[cell]) * substance.water();
  state.enthalpy[cell] -= gone * substance.water_enthalpy(temperature_[cell]);
  state.dryness[cell] = dryness;
  leave_line(cell);
}

void HeatStepper::settle_drying(HeatState& state, double dt) {
  const HeatGrid& grid = problem_.grid;
  for (std::size_t f = 0; f < grid.outer.size(); ++f) {
    if (drying_[f] <= 0.0) continue;
    const auto i = index(grid.outer[f].cell);
    const double stored = state.enthalpy[i];
    const double dryness = state.dryness[i];
    water_left(state, i, drying_[f] * dt);
    state.heat_with_water += (stored - state.enthalpy[i]) * grid.cells[i].volume;
    state.water_lost += (state.dryness[i] - dryness) * substance_of(i).water() * grid.cells[i].volume;
  }
}

/// Where water will move: faces with what they let through, and their cells, with what each of those holds and passes.
/// Returns the largest share of a cell's water that may pass in a second [1/s].
double HeatStepper::find_moving_water(const HeatState& state) {
  moving_pores_.clear();
  moving_cells_.clear();
  const auto touch = [&](std::size_t i) {
    if (is_moving_[i]) return;
    is_moving_[i] = 1;
    moving_cells_.push_back(static_cast<int>(i));
    const Substance& substance = substance_of(i);
    fluidity_[i] = substance.diffusivity(temperature_[i], state.dryness[i]);
    water_heat_[i] = substance.water_enthalpy(temperature_[i]);
    moved_[i] = 0.0;
  };
  for (const Pore& pore : pores_) {
    const auto a = index(pore.a);
    const auto b = index(pore.b);
    if (std::abs(state.dryness[a] - state.dryness[b]) < kSameDryness) continue;
    touch(a);
    touch(b);
    const double exchange = 0.5 * (fluidity_[a] + fluidity_[b]) * pore.across;  // [m³/s]
    moved_[a] += exchange;
    moved_[b] += exchange;
    moving_pores_.push_back({pore.a, pore.b, pore.across, exchange * substance_of(a).water()});
  }
  double fastest = 0.0;
  for (const int cell : moving_cells_) {
    is_moving_[index(cell)] = 0;
    fastest = std::max(fastest, moved_[index(cell)] * per_volume_[index(cell)]);
  }
  return fastest;
}

void HeatStepper::move_water(HeatState& state, double dt) {
  std::fill(inflow_.begin(), inflow_.end(), 0.0);
  const double fastest = find_moving_water(state);
  if (fastest <= 0.0) return;
  const int steps = std::clamp(static_cast<int>(std::ceil(dt * fastest / kWaterStep)), 1, kMostWaterSteps);
  const double part = std::min(dt / steps, kWaterStep / fastest);
  for (int k = 0; k < steps; ++k) {
    for (const int cell : moving_cells_) moved_[index(cell)] = carried_[index(cell)] = 0.0;
    for (const Pore& pore : moving_pores_) {
      const auto a = index(pore.a);
      const auto b = index(pore.b);
      const double mass = part * pore.exchange * (state.dryness[b] - state.dryness[a]);
      const double heat = mass * water_heat_[mass > 0.0 ? a : b];
      moved_[a] += mass;
      moved_[b] -= mass;
      carried_[a] += heat;
      carried_[b] -= heat;
    }
    for (const int cell : moving_cells_) {
      const auto i = index(cell);
      state.dryness[i] += moved_[i] * per_volume_[i] / substance_of(i).water();
      state.enthalpy[i] -= carried_[i] * per_volume_[i];
      inflow_[i] -= moved_[i] / dt;
    }
  }
  for (const int cell : moving_cells_) leave_line(index(cell));
}

}  // namespace tinwright
