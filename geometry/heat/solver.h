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
#include <cstddef>
#include <cstdint>
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
    std::vector<double> before, surface, surface_share, inflow;
    double next_step = 0.0, last_step = 0.0;
  };
  void mark(Mark& mark) const;
  /// From `now`, as step left it, to `then`, as it was at the mark.
  void go_back(const Mark& mark, const HeatState& now, const HeatState& then);

  /// [K] by cell, of `state` as step left it.
  const std::vector<double>& temperatures(const HeatState& state);

  long steps() const { return steps_; }
  long stages() const { return stages_; }

 private:
  /// Cells that are worked on together, two to a vector instruction.
  static constexpr std::size_t kBlock = 4;
  /// The faces between a block's cells and those `apart` further on (or, negative, back) in the grid's list. Grids
  /// number their cells row by row, so a block has few of these; each has kBlock conductances, 0 where there is no
  /// face.
  struct Link {
    std::ptrdiff_t apart;
  };
  /// The line of each cell, see Substance::Line.
  struct Lines {
    std::vector<double> low, high, offset, slope;
    std::vector<char> is_boiling;
    std::vector<std::size_t> near;  // see Substance::line
  };

  void make_links();
  void leave_line(std::size_t cell);
  void find_line(std::size_t cell, double enthalpy, double dryness);
  void find_stage_temperatures(const double* enthalpy, const std::vector<double>& dryness);
  void find_temperatures(const std::vector<double>& enthalpy, const std::vector<double>& dryness);
  void remember(double dt);
  void look_ahead(double dt);
  double conductivity_to(double temperature, std::size_t cell, double dryness) const;
  void set_inner(const std::vector<double>& dryness);
  void set_outer(const HeatState& state, const Surroundings& around, double air, double dt);
  double explicit_limit(const std::vector<double>& dryness, bool all_may_dry);
  bool any_too_steep() const;
  void advance(HeatState& state, double dt, int stages);
  template <class Use>
  void for_rates(const Use& use) const;
  double surface_heat() const;
  void settle_boiling(HeatState& state);
  void settle_drying(HeatState& state, double dt);
  double find_moving_water(const HeatState& state);
  void move_water(HeatState& state, double dt);
  void water_left(HeatState& state, std::size_t cell, double mass);

  /// Where the conductance of a face of the grid goes: a place in the block of each of its two cells.
  using Places = std::array<std::uint32_t, 2>;
  /// A face between neighbours: half distances over area [1/m], and area over both together [m].
  struct Joint {
    std::uint32_t a = 0, b = 0;
    Places places{};
    double half_a = 0.0, half_b = 0.0, across = 0.0;
    bool is_within = false;  // one part on both sides
  };
  /// A link across a corner, and the other two cells there.
  struct Corner {
    std::array<std::uint32_t, 4> cells{};
    Places places{};
    double area = 0.0;
  };
  /// A face that water can cross.
  struct Pore {
    int a = 0, b = 0;
    double across = 0.0;    // [m]
    double exchange = 0.0;  // [kg/s] for all the dryness between, in this step
  };

  const Substance& substance_of(std::size_t cell) const { return problem_.substances[part_[cell]]; }

  const HeatProblem& problem_;
  bool is_constant_ = false;  // conductivities never change
  bool can_dry_ = false;
  bool has_inner_ = false;
  Lines lines_;                          // where each cell is now; low > high: to be looked up
  std::vector<Substance::Edge> edges_;   // of each cell's dryness
  std::vector<double> steepest_;         // [K m³/J] by cell: for lines up to this a step was made
  bool is_too_steep_ = false;            // one that was found since was steeper
  std::vector<std::uint8_t> part_;       // by cell
  std::vector<double> per_volume_;       // [1/m³]
  std::vector<std::size_t> first_link_;  // by block, and one past the last
  std::vector<Link> links_;              // of each block in turn
  std::vector<double> conductance_;      // [W/K] kBlock for each link
  std::vector<double> backward_;         // [W/K] by cell: sum of the negative ones
  std::vector<Joint> joints_;
  std::vector<Corner> corners_;
  std::vector<Pore> pores_;                             // faces within what can dry
  std::size_t margin_ = 0;                              // of staged_, so that every link of a block stays within it
  std::vector<double> staged_;                          // [K] temperature_ within a step
  std::vector<double> temperature_, before_, ahead_;    // [K] now, a step ago, at the middle of the next step
  std::vector<double> conductivity_, integral_;         // [W/(m K)], [W/m] by cell
  std::vector<double> outer_conductance_, outer_heat_;  // [W/K], [W at 0 K] by cell
  std::vector<int> outer_cells_;                        // that have any
  std::vector<double> surface_, drying_;                // [K], [kg/s] by outer face
  std::vector<double> surface_share_;                   // [-] likewise, see drying_surface_flow
  std::vector<char> is_moving_;                         // by cell; all 0 between steps
  std::vector<Pore> moving_pores_;                      // where water moves in this step
  std::vector<int> moving_cells_;
  std::vector<double> fluidity_, water_heat_;  // [m²/s], [J/kg] of their water by cell
  std::vector<double> moved_, carried_;        // [kg], [J] by cell in one small step
  std::vector<double> inflow_;                 // [kg/s] of water by cell, over the last step
  std::array<std::vector<double>, 4> work_;
  double next_step_ = 0.0;
  double last_step_ = 0.0;  // 0 just after a restart
  double coolest_ = 0.0;    // [K] of cells and air
  long steps_ = 0, stages_ = 0;
};

/// [s] The longest step in the first hour after a jump, for accuracy; later, when all goes slower, kStepShare of the
/// time since then. Against steps of 1 s the coldest point of a bake is within 0.1 K at 30 to 45 % of water and 0.6 K
/// at 70 %, where the drying surface is what limits it, and up to 1.4 K in a shallow tart whose crust dries through; a
/// freezing is within 0.01 K.
inline constexpr double kLongestStep = 60.0;
inline constexpr double kStepShare = 0.02;  // [-]
/// [-] By how much steps may grow from one to the next.
inline constexpr double kStepGrowth = 1.4;

}  // namespace tinwright
