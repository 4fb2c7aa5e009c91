// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Heat on a HeatGrid: enthalpy and dryness in every cell, exchange with the surroundings. Time runs by the
// Runge-Kutta-Legendre method of second order (Meyer, Balsara and Aslam 2014, J. Comput. Phys. 257, 594): explicit, so
// energy is kept to rounding and any enthalpy curve will do, yet stable for steps far beyond the explicit limit.
// Conductances and surfaces are taken at the middle of each step; water that boiled, dried or moved is settled at its
// end.
#pragma once

#include <array>
#include <vector>

#include "geometry/heat/grid.h"
#include "geometry/heat/moist_substance.h"
#include "geometry/heat/surroundings.h"

namespace tinwright {

struct HeatProblem {
  HeatGrid grid;
  std::array<Substance, 2> substances;  // by Part

  const Substance& substance_of(std::size_t cell) const {
    return substances[static_cast<std::size_t>(grid.cells[cell].part)];
  }
};

/// By cell: enthalpy [J/m³] and dryness [-]. Since the start: heat taken in through surfaces [J], heat that left with
/// water [J], and that water [kg].
struct HeatState {
  std::vector<double> enthalpy, dryness;
  double heat_in = 0.0;
  double heat_with_water = 0.0;
  double water_lost = 0.0;
};

/// All cells at one temperature [K], none dried.
HeatState start_at(const HeatProblem& problem, double temperature);

/// [J] stored in all cells.
double stored_heat(const HeatProblem& problem, const HeatState& state);

/// [K] of each cell.
std::vector<double> temperature_field(const HeatProblem& problem, const HeatState& state);

/// Scratch and step size of a run; keep it between steps. `problem` has to outlive it.
class HeatStepper {
 public:
  explicit HeatStepper(const HeatProblem& problem);

  /// Call when the air or the surroundings jump: steps start small again.
  void restart();

  /// Goes on by at most `most` [s] from `time` [s] into a stage; returns the time it went [s].
  double step(HeatState& state, const Surroundings& around, const Air& air, double time, double most);

  /// What going back to an earlier state needs besides that state.
  struct Mark {
    std::vector<double> before, surface, inflow;
    double next_step = 0.0, last_step = 0.0;
  };
  void mark(Mark& mark) const;
  void go_back(const Mark& mark);

  /// [K] by cell, of `state` as step left it.
  const std::vector<double>& temperatures(const HeatState& state);

  long steps() const { return steps_; }
  long stages() const { return stages_; }

 private:
  struct Link {
    int other;
    double conductance;  // [W/K]
  };

  void make_links();
  Substance::Line line_of(std::size_t cell, double enthalpy, double dryness);
  void find_temperatures(const std::vector<double>& enthalpy, const std::vector<double>& dryness);
  void remember(double dt);
  void look_ahead(double dt);
  double conductivity_between(std::size_t cell, double dryness, double a, double b) const;
  void set_inner(const std::vector<double>& dryness);
  SurfaceFlow drying_surface_flow(const Surface& side, double air, double humidity, SurfaceCell& cell, double half,
                                  std::size_t of, double dryness) const;
  void set_outer(const HeatState& state, const Surroundings& around, double air, double dt);
  double explicit_limit(const std::vector<double>& dryness) const;
  void advance(HeatState& state, double dt, int stages);
  void rate(std::vector<double>& rate) const;
  double surface_heat() const;
  void settle_boiling(HeatState& state);
  void settle_drying(HeatState& state, double dt);
  void find_moving_water(const HeatState& state);
  void move_water(HeatState& state, double dt);
  void water_left(HeatState& state, std::size_t cell, double mass);

  const HeatProblem& problem_;
  bool is_constant_ = false;  // conductivities never change
  bool can_dry_ = false;
  bool has_inner_ = false;
  std::vector<Substance::Line> lines_;                  // where each cell is now
  std::vector<Substance::Edge> edges_;                  // of each cell's dryness
  std::vector<double> per_volume_;                      // [1/m³]
  std::vector<int> first_link_;                         // by cell, and one past the last
  std::vector<Link> links_;                             // of each cell in turn
  std::vector<std::array<int, 2>> of_face_;             // each face's two links
  std::vector<double> temperature_, before_, ahead_;    // [K] now, a step ago, at the middle of the next step
  std::vector<double> conductivity_, integral_;         // [W/(m K)], [W/m] by cell
  std::vector<double> outer_conductance_, outer_heat_;  // [W/K], [W at 0 K] by cell
  std::vector<int> outer_cells_;                        // that have any
  std::vector<double> surface_, drying_;                // [K], [kg/s] by outer face
  std::vector<char> is_moving_;                         // by cell; all 0 between steps
  std::vector<int> moving_faces_, moving_cells_;        // where water moves in this step
  std::vector<double> fluidity_, water_heat_;           // [m²/s], [J/kg] of their water by cell
  std::vector<double> moved_, carried_;                 // [kg], [J] by cell in one small step
  std::vector<double> inflow_;                          // [kg/s] of water by cell, over the last step
  std::array<std::vector<double>, 4> work_;
  double next_step_ = 0.0;
  double last_step_ = 0.0;  // 0 just after a restart
  double coolest_ = 0.0;    // [K] of cells and air
  long steps_ = 0, stages_ = 0;
};

/// [s] The longest step in the first hour after a jump, for accuracy; later, when all goes slower, kStepShare of the
/// time since then. Against steps of 1 s the coldest point of a bake is within 0.1 K at 30 to 45 % of water and 0.6 K
/// at 70 %, where the drying surface is what limits it; a freezing is within 0.01 K.
inline constexpr double kLongestStep = 60.0;
inline constexpr double kStepShare = 0.02;  // [-]
/// [-] By how much steps may grow from one to the next.
inline constexpr double kStepGrowth = 1.4;

}  // namespace tinwright
