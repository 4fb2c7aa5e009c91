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
  for (std::size_t i = 0; i < lines_.size(); ++i) {
    if (!lines_[i].is_boiling) continue;
    const Substance& substance = problem_.substance_of(i);
    const double volume = problem_.grid.cells[i].volume;
    const Substance::Left left = substance.boil_off(state.enthalpy[i], state.dryness[i]);
    state.heat_with_water += (state.enthalpy[i] - left.enthalpy) * volume;
    state.water_lost += (left.dryness - state.dryness[i]) * substance.water() * volume;
    state.enthalpy[i] = left.enthalpy;
    state.dryness[i] = left.dryness;
    lines_[i] = {};
  }
}

/// `mass` [kg] of water leaves a cell at the cell's temperature.
void HeatStepper::water_left(HeatState& state, std::size_t cell, double mass) {
  const Substance& substance = problem_.substance_of(cell);
  const double dryness = std::clamp(state.dryness[cell] + mass * per_volume_[cell] / substance.water(), 0.0, 1.0);
  const double gone = (dryness - state.dryness[cell]) * substance.water();
  state.enthalpy[cell] -= gone * substance.water_enthalpy(temperature_[cell]);
  state.dryness[cell] = dryness;
  lines_[cell] = {};
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
    state.water_lost += (state.dryness[i] - dryness) * problem_.substance_of(i).water() * grid.cells[i].volume;
  }
}

/// Faces across which water will move, their cells, and what each of those holds and passes.
void HeatStepper::find_moving_water(const HeatState& state) {
  const HeatGrid& grid = problem_.grid;
  moving_faces_.clear();
  moving_cells_.clear();
  for (std::size_t f = 0; f < grid.faces.size(); ++f) {
    const auto a = index(grid.faces[f].a);
    const auto b = index(grid.faces[f].b);
    if (std::abs(state.dryness[a] - state.dryness[b]) < kSameDryness) continue;
    if (grid.cells[a].part != grid.cells[b].part || !problem_.substance_of(a).can_dry()) continue;
    moving_faces_.push_back(static_cast<int>(f));
    for (const auto cell : {a, b}) {
      if (is_moving_[cell]) continue;
      is_moving_[cell] = 1;
      moving_cells_.push_back(static_cast<int>(cell));
    }
  }
  for (const int cell : moving_cells_) {
    const auto i = index(cell);
    is_moving_[i] = 0;
    const Substance& substance = problem_.substance_of(i);
    fluidity_[i] = substance.diffusivity(temperature_[i], state.dryness[i]);
    water_heat_[i] = substance.water_enthalpy(temperature_[i]);
  }
}

void HeatStepper::move_water(HeatState& state, double dt) {
  const HeatGrid& grid = problem_.grid;
  std::fill(inflow_.begin(), inflow_.end(), 0.0);
  find_moving_water(state);
  if (moving_faces_.empty()) return;
  const auto exchange = [&](const HeatGrid::Face& face) {  // [m³/s]
    return std::max(
        0.0, 0.5 * (fluidity_[index(face.a)] + fluidity_[index(face.b)]) * face.area / (face.half_a + face.half_b));
  };
  const auto clear = [&] {
    for (const int cell : moving_cells_) moved_[index(cell)] = carried_[index(cell)] = 0.0;
  };
  clear();
  double fastest = 0.0;  // [1/s]
  for (const int f : moving_faces_) {
    const HeatGrid::Face& face = grid.faces[index(f)];
    for (const auto cell : {index(face.a), index(face.b)}) {
      moved_[cell] += exchange(face);
      fastest = std::max(fastest, moved_[cell] * per_volume_[cell]);
    }
  }
  if (fastest <= 0.0) return;
  const int steps = std::clamp(static_cast<int>(std::ceil(dt * fastest / kWaterStep)), 1, kMostWaterSteps);
  const double part = std::min(dt / steps, kWaterStep / fastest);
  for (int k = 0; k < steps; ++k) {
    clear();
    for (const int f : moving_faces_) {
      const HeatGrid::Face& face = grid.faces[index(f)];
      const auto a = index(face.a);
      const auto b = index(face.b);
      const double mass =
          part * exchange(face) * problem_.substance_of(a).water() * (state.dryness[b] - state.dryness[a]);
      const double heat = mass * water_heat_[mass > 0.0 ? a : b];
      moved_[a] += mass;
      moved_[b] -= mass;
      carried_[a] += heat;
      carried_[b] -= heat;
    }
    for (const int cell : moving_cells_) {
      const auto i = index(cell);
      state.dryness[i] += moved_[i] * per_volume_[i] / problem_.substance_of(i).water();
      state.enthalpy[i] -= carried_[i] * per_volume_[i];
      inflow_[i] -= moved_[i] / dt;
    }
  }
  for (const int cell : moving_cells_) lines_[index(cell)] = {};
}

}  // namespace tinwright
