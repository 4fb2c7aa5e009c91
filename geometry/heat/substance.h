// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What a heat solver asks of a substance at every cell and step, made quick: enthalpy per volume and conductivity
// as straight lines between the points of an even grid of temperatures from -60 to 260 °C, and the inverse of the
// first. Latent heat is inside the enthalpy, so freezing needs no case of its own.
//
// Beyond the grid enthalpy goes on along its last line (a food's heat capacity is held there, so this is the model)
// and conductivity keeps its last value, which leaves both positive at any temperature.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "geometry/heat/composition.h"
#include "geometry/heat/food_properties.h"
#include "geometry/problem.h"

namespace tinwright {

/// [K] Ends of the grid, and its step for a food: ice grows over some kelvin, so a quarter of one shows it; the energy
/// between two points of the grid is exact whatever happens between them.
inline constexpr double kTableCoolest = 273.15 - 60.0;
inline constexpr double kTableHottest = 273.15 + 260.0;
inline constexpr double kTableStep = 0.25;

/// A substance that melts at one temperature and whose properties are constant on either side: water, a pure fat, and
/// the bodies of exact solutions.
struct Melting {
  Properties solid, liquid;  // of one density, since a cell keeps both its volume and its mass
  double temperature = 0.0;  // [K] -50 to 250 °C
  double latent_heat = 0.0;  // [J/kg] 1e3 to 3e6
  /// [K] 0.02 to 20: it melts evenly over this much, half of it below `temperature`, for enthalpy to have an inverse.
  double range = 0.2;
};

/// Enthalpy [J/m³] and conductivity [W/(m K)] against temperature [K]; made by make_thermal_table. Immutable.
class ThermalTable {
 public:
  /// [J/m³] above -40 °C. One lookup.
  double enthalpy(double temperature) const;

  /// [K] where enthalpy(temperature) is `enthalpy` [J/m³], to under 1e-9 K. One lookup and at most longest_search()
  /// comparisons.
  double temperature(double enthalpy) const;

  /// The straight line of the table that holds an enthalpy; the first and the last go on for ever. A solver that keeps
  /// the line of each cell need look it up only when the cell has left it.
  struct Line {
    double low = 0.0, high = 0.0;      // [J/m³]
    double enthalpy = 0.0;             // [J/m³] of a point on it,
    double temperature = 0.0;          // [K] and there
    double kelvin_per_enthalpy = 0.0;  // [K m³/J]
    double temperature_at(double h) const { return temperature + (h - enthalpy) * kelvin_per_enthalpy; }
  };
  Line line(double enthalpy) const;

  /// [W/(m K)]. One lookup.
  double conductivity(double temperature) const;

  /// [W/m] conductivity summed over temperature from the grid's start: between two places the difference of this, over
  /// the distance, is the heat that flows, however much the conductivity changes on the way (Kirchhoff).
  double conductivity_integral(double temperature) const;

  /// [J/(m³ K)] slope of enthalpy at `temperature`; at a point of the grid that of the line above it.
  double capacity(double temperature) const;

  /// [J/(m³ K)] the smallest slope anywhere; an explicit solver's step hangs on it.
  double least_capacity() const { return least_capacity_; }

  /// [kg/m³] that the enthalpies stand for, the same at all temperatures.
  double density() const { return density_; }

  /// Comparisons the slowest temperature() needs; a few.
  int longest_search() const { return longest_search_; }

 private:
  friend Result<ThermalTable> make_thermal_table(const Composition&);
  friend Result<ThermalTable> make_thermal_table(const Properties&);
  friend Result<ThermalTable> make_thermal_table(const Melting&);

  ThermalTable(double density, double step, std::vector<double> enthalpy, std::vector<double> conductivity);
  std::size_t line_at(double temperature) const;
  std::size_t line_holding(double enthalpy) const;
  void make_guide();

  double density_;
  double step_;                       // [K]
  double per_kelvin_;                 // [1/K] 1 / step_
  std::vector<double> enthalpy_;      // [J/m³] at kTableCoolest + i step_, increasing; two or more
  std::vector<double> conductivity_;  // [W/(m K)] likewise
  std::vector<double> integral_;      // [W/m] of the conductivity, likewise
  std::vector<std::uint16_t> guide_;  // line to start at, for even steps of enthalpy
  double guide_per_enthalpy_ = 0.0;   // [m³/J]
  double least_capacity_ = 0.0;
  int longest_search_ = 0;
};

/// The table of a food: its enthalpy times its density at kDensityTemperature. `food` is checked by make_composition,
/// whose Problems come back.
Result<ThermalTable> make_thermal_table(const Composition& food);

/// The table of a substance with constant properties: enthalpy one straight line, conductivity one value, at all
/// temperatures. Problem (place "conductivity", "density", "heat_capacity") when one is not finite, not positive, or
/// outside what a solid or liquid can have.
Result<ThermalTable> make_thermal_table(const Properties& constants);

/// The table of a melting substance, in steps of a quarter of its melting range; conductivity passes evenly from the
/// one phase to the other within the range, and the solid's enthalpy is counted from kEnthalpyZero. Problem (place
/// "solid.conductivity", "liquid.density", "temperature", "latent_heat", "range" and so on) when a phase cannot be,
/// when the densities differ, or when a number is outside what Melting says.
Result<ThermalTable> make_thermal_table(const Melting& substance);

}  // namespace tinwright
