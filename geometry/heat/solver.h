// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Heat conduction on a HeatGrid: enthalpy in every cell, exchange with the outside through surface coefficients. Time
// runs by the Runge-Kutta-Legendre method of second order (Meyer, Balsara and Aslam 2014, J. Comput. Phys. 257, 594):
// explicit, so energy is kept to rounding and any enthalpy curve will do, yet stable for steps far beyond the explicit
// limit.
#pragma once

#include <array>
#include <vector>

#include "geometry/heat/grid.h"
#include "geometry/heat/substance.h"

namespace tinwright {

/// Effective surface coefficients [W/m²K], each with the pan's wall in it where there is one.
struct Transfer {
  double top = 0.0, wall = 0.0, base = 0.0;
};

struct HeatProblem {
  HeatGrid grid;
  std::array<ThermalTable, 2> substances;  // by Part
};

/// Enthalpy [J/m³] by cell, and the heat taken in since the start [J].
struct HeatState {
  std::vector<double> enthalpy;
  double heat_in = 0.0;
};

/// All cells at one temperature [K].
HeatState start_at(const HeatProblem& problem, double temperature);

/// [J] stored in all cells.
double stored_heat(const HeatProblem& problem, const HeatState& state);

struct FoodTemperatures {
  double coldest = 0.0, mean = 0.0, hottest = 0.0;  // [K]; mean by volume
};
/// The coldest point is found within its cell by parabolas through the neighbours.
FoodTemperatures temperatures(const HeatProblem& problem, const HeatState& state);

/// Scratch and step size of a run; keep it between steps.
class HeatStepper {
 public:
  explicit HeatStepper(const HeatProblem& problem);

  /// Call when the air or the transfer jumps: steps start small again.
  void restart();

  /// Goes on by at most `most` [s] under air at `air` [K]; returns the time it went [s].
  double step(HeatState& state, const Transfer& transfer, double air, double most);

  long steps() const { return steps_; }
  long stages() const { return stages_; }

 private:
  void set_conductances(const Transfer& transfer);
  void find_temperatures(const std::vector<double>& enthalpy);
  void rate(const std::vector<double>& enthalpy, double air, std::vector<double>& rate, double& heat_rate);
  double explicit_limit() const;

  struct Pair {
    int a, b;
  };

  const HeatProblem& problem_;
  std::vector<ThermalTable::Line> lines_;  // of each cell's table, where it is now
  std::vector<double> per_volume_;         // [1/m³]
  std::vector<Pair> pairs_;                // the cells of each face
  std::vector<double> temperature_;
  std::vector<double> inner_;  // [W/K] by face
  std::vector<double> outer_;  // [W/K] by outer face
  std::array<std::vector<double>, 5> work_;
  double next_step_ = 0.0;
  long steps_ = 0, stages_ = 0;
};

/// [s] The longest step, for accuracy.
inline constexpr double kLongestStep = 20.0;
/// [-] By how much steps may grow from one to the next.
inline constexpr double kStepGrowth = 1.3;

}  // namespace tinwright
