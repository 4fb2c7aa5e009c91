// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A substance as the heat solver meets it: a ThermalTable and, for a food, what happens as its water leaves. A cell's
// state is its enthalpy [J per m³ of the food as it went in] and its dryness [-], the share of its water that has gone:
// 0 to 1, never falling by boiling. Between wet and dry everything is a straight mixture of two tables.
//
// Free water boils off at the temperature at which its activity times the saturation pressure is one atmosphere; sugar
// grows stronger as water leaves, and that temperature rises. While a cell is heated through that range its enthalpy
// counts the vapour as if it were still there; boil_off takes it out.
#pragma once

#include <algorithm>
#include <cstddef>
#include <limits>
#include <memory>
#include <vector>

#include "geometry/heat/composition.h"
#include "geometry/heat/food_properties.h"
#include "geometry/heat/food_water.h"
#include "geometry/heat/substance.h"
#include "geometry/problem.h"

namespace tinwright {

/// The lines of the grid of temperatures of a Substance's tables, the one at a temperature, and how far along it.
inline constexpr std::size_t kGridLines = static_cast<std::size_t>((kTableHottest - kTableCoolest) / kTableStep + 0.5);
struct GridPlace {
  std::size_t line = 0;
  double along = 0.0;  // beyond 0 to 1 off the grid's ends
};
inline GridPlace grid_place(double temperature) {
  const double steps = (temperature - kTableCoolest) / kTableStep;
  const auto line = static_cast<std::size_t>(std::clamp(steps, 0.0, static_cast<double>(kGridLines - 1)));
  return {line, steps - static_cast<double>(line)};
}

class Substance {
 public:
  /// One that loses nothing.
  Substance(ThermalTable table);  // NOLINT(google-explicit-constructor): a table is a substance

  /// [J/m³] at `temperature` [K] and `dryness`; below boiling.
  double enthalpy(double temperature, double dryness) const;
  /// [K]; on the boiling curve of that dryness where the enthalpy is more than the liquid can hold.
  double temperature(double enthalpy, double dryness) const;
  /// [W/(m K)]
  double conductivity(double temperature, double dryness) const;
  /// [W/m] see ThermalTable::conductivity_integral.
  double conductivity_integral(double temperature, double dryness) const;
  /// Both, with one lookup.
  struct Conduction {
    double conductivity = 0.0, integral = 0.0;  // [W/(m K)], [W/m]
  };
  Conduction conduction(double temperature, double dryness) const;

  /// The straight line temperature = offset + slope * enthalpy that holds an enthalpy, low <= enthalpy < high.
  struct Line {
    double low = 1.0, high = 0.0;  // [J/m³] empty, until looked up
    double offset = 0.0;           // [K]
    double slope = 0.0;            // [K m³/J]
    bool is_boiling = false;
    double temperature_at(double h) const { return offset + slope * h; }
  };
  Line line(double enthalpy, double dryness) const;

  /// Where a food of some dryness begins to boil; a solver keeps it while the dryness stays.
  struct Edge {
    double dryness = -1.0;     // none yet
    double enthalpy = 0.0;     // [J/m³] there
    double temperature = 0.0;  // [K] there
    double shift = 0.0;        // [J/m³] from the boiling curve's enthalpy to the food's
    std::size_t near = 0;      // where on the boiling curve
  };
  /// The search on the boiling curve starts from `near`.
  Edge edge(double dryness, std::size_t near = 0) const;
  /// The same line, for a food that can dry, from what is known of it: `edge` is renewed where it is needed and of
  /// another dryness, and the search starts from where the last one with `near` ended.
  Line line(double enthalpy, double dryness, Edge& edge, std::size_t& near) const;

  /// [J/(m³ K)] the smallest slope of enthalpy at temperatures from `coolest` [K] up.
  double least_capacity(double coolest, double dryness) const;

  bool can_dry() const { return drying_ != nullptr; }
  /// [kg/m³] of water that can leave; 0 where nothing can.
  double water() const;
  /// [-] of the water at its surface.
  double activity(double dryness) const;
  /// A value, and how much more of it by dryness.
  struct ByDryness {
    double value = 0.0, slope = 0.0;
  };
  ByDryness activity_by_dryness(double dryness) const;
  /// [K] where what is left boils.
  double boiling_point(double dryness) const;
  /// [m²/s] of its liquid water.
  double diffusivity(double temperature, double dryness) const;
  /// Its two factors: [m²/s] with its slope [m²/(s K)] of water by itself, and [-] what the solids let through.
  struct ByTemperature {
    double value = 0.0, slope = 0.0;
  };
  ByTemperature self_diffusion(double temperature) const;
  ByDryness let_through(double dryness) const;
  /// [J/kg] of the water in it at `temperature` [K], above -40 °C.
  double water_enthalpy(double temperature) const;

  struct Left {
    double enthalpy = 0.0;  // [J/m³]
    double dryness = 0.0;   // [-]
  };
  /// What stays when the vapour that `enthalpy` stands for has gone.
  Left boil_off(double enthalpy, double dryness) const;
  /// The same, knowing the temperature [K] on the boiling curve, and about where on it that is.
  Left boil_off_at(double temperature, double dryness, std::size_t near) const;

  /// Its conductivity is one value at all temperatures.
  bool conducts_evenly() const { return conducts_evenly_ && !drying_; }

  const ThermalTable& table() const { return wet_; }

 private:
  friend Result<Substance> make_substance(const Composition&);

  struct Boiling {  // a point of the boiling curve, and the slopes of its straight line from the point before
    double temperature = 0.0, dryness = 0.0, enthalpy = 0.0;
    double kelvin_by_dryness = 0.0, enthalpy_by_dryness = 0.0, kelvin_by_enthalpy = 0.0, dryness_by_kelvin = 0.0;
  };
  struct Mixed {                   // side by side, as they are asked for together
    double wet = 0.0, more = 0.0;  // of the wet food, and by how much that of the dry one is more
    double at(double dryness) const { return wet + dryness * more; }
  };
  struct Knot {
    Mixed enthalpy;            // [J/m³]
    double temperature = 0.0;  // [K]
  };
  struct DryingTables {
    std::vector<Mixed> enthalpy;         // [J/m³] on the table's grid
    std::vector<Knot> knots;             // the ends of its straight lines
    std::size_t below_boiling = 0;       // so many of those lines end below where any of it boils
    std::vector<Mixed> conductivity;     // [W/(m K)] on the table's grid
    std::vector<Mixed> integral;         // [W/m] of that
    std::vector<double> self_diffusion;  // [m²/s] on the grid, below 0 °C as at 0 °C
    std::vector<double> dry_least;       // [J/(m³ K)] smallest slope from there up
    double water = 0.0;                  // [kg/m³] that can leave
    double held = 0.0;                   // [kg/kg] of the food that cannot
    double leaves = 0.0;                 // [kg/kg] that can
    WaterHolding holding;
    std::vector<Boiling> curve;  // from dryness 0; enthalpy with the vapour counted in
    double left(double dryness) const { return (1.0 - dryness) * leaves + held; }  // [kg/kg] of the food
  };

  Line straight_line(std::size_t knot, double dryness) const;
  Line other_line(double enthalpy, double dryness, Edge& edge, std::size_t& near) const;
  std::size_t find_knot(double enthalpy, double dryness, std::size_t near) const;
  Line boiling_line(double enthalpy, Edge& edge) const;
  std::size_t next_on_curve(double Boiling::*of, double value, std::size_t near) const;
  Boiling boiling_start(double dryness, std::size_t& near) const;
  void make_boiling_curve(DryingTables& tables) const;

  ThermalTable wet_;
  std::shared_ptr<const DryingTables> drying_;
  std::vector<double> least_;  // [J/(m³ K)] of the wet one, from each point of the grid up
  bool conducts_evenly_ = true;
};

// Here, where a solver's loop over its cells can take it in.
inline Substance::Conduction Substance::conduction(double temperature, double dryness) const {
  if (!drying_) return {wet_.conductivity(temperature), wet_.conductivity_integral(temperature)};
  const auto [i, along] = grid_place(temperature);
  const double within = std::clamp(along, 0.0, 1.0);
  const double low = drying_->conductivity[i].at(dryness);
  const double rise = drying_->conductivity[i + 1].at(dryness) - low;
  return {low + rise * within,
          drying_->integral[i].at(dryness) +
              kTableStep * (within * (low + 0.5 * within * rise) + (along - within) * (low + within * rise))};
}

inline Substance::Line Substance::straight_line(std::size_t knot, double dryness) const {
  const Knot& from = drying_->knots[knot];
  const Knot& to = drying_->knots[knot + 1];
  const double at_from = from.enthalpy.at(dryness);
  Line line;
  line.low = knot == 0 ? -std::numeric_limits<double>::infinity() : at_from;
  line.high = to.enthalpy.at(dryness);
  line.slope = (to.temperature - from.temperature) / (line.high - at_from);
  line.offset = from.temperature - at_from * line.slope;
  if (knot + 2 == drying_->knots.size()) line.high = std::numeric_limits<double>::infinity();
  return line;
}

/// Only lines near boiling need the edge, so it is not looked up for the others.
inline Substance::Line Substance::line(double h, double dryness, Edge& edge, std::size_t& near) const {
  if (near < drying_->below_boiling) {
    const Line same = straight_line(near, std::max(dryness, 0.0));
    if (h >= same.low && h < same.high) return same;
  }
  return other_line(h, dryness, edge, near);
}

/// A food that can dry, boil and freeze. Problem as make_thermal_table.
Result<Substance> make_substance(const Composition& food);
/// Constants; nothing leaves.
Result<Substance> make_substance(const Properties& constants);

}  // namespace tinwright
