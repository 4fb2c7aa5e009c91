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

#include <memory>
#include <vector>

#include "geometry/heat/composition.h"
#include "geometry/heat/food_properties.h"
#include "geometry/heat/food_water.h"
#include "geometry/heat/substance.h"
#include "geometry/problem.h"

namespace tinwright {

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
  };
  Edge edge(double dryness) const;
  /// The same line, for a food that can dry, knowing the edge.
  Line line(double enthalpy, const Edge& edge) const;

  /// [J/(m³ K)] the smallest slope of enthalpy at temperatures from `coolest` [K] up.
  double least_capacity(double coolest, double dryness) const;

  bool can_dry() const { return drying_ != nullptr; }
  /// [kg/m³] of water that can leave; 0 where nothing can.
  double water() const;
  /// [-] of the water at its surface.
  double activity(double dryness) const;
  /// [K] where what is left boils.
  double boiling_point(double dryness) const;
  /// [m²/s] of its liquid water.
  double diffusivity(double temperature, double dryness) const;
  /// [J/kg] of the water in it at `temperature` [K], above -40 °C.
  double water_enthalpy(double temperature) const;

  struct Left {
    double enthalpy = 0.0;  // [J/m³]
    double dryness = 0.0;   // [-]
  };
  /// What stays when the vapour that `enthalpy` stands for has gone.
  Left boil_off(double enthalpy, double dryness) const;

  /// Its conductivity is one value at all temperatures.
  bool conducts_evenly() const { return conducts_evenly_ && !drying_; }

  const ThermalTable& table() const { return wet_; }

 private:
  friend Result<Substance> make_substance(const Composition&);

  struct Boiling {  // a point of the boiling curve
    double temperature = 0.0, dryness = 0.0, enthalpy = 0.0;
  };
  struct DryingTables {
    std::vector<double> wet, dry;                            // [J/m³] on the table's grid
    std::vector<double> wet_conductivity, dry_conductivity;  // [W/(m K)] likewise
    std::vector<double> wet_integral, dry_integral;          // [W/m] of those
    std::vector<double> dry_least;                           // [J/(m³ K)] smallest slope from there up
    double water = 0.0;                                      // [kg/m³] that can leave
    double held = 0.0;                                       // [kg/kg] of the food that cannot
    double leaves = 0.0;                                     // [kg/kg] that can
    WaterHolding holding;
    std::vector<Boiling> curve;  // from dryness 0; enthalpy with the vapour counted in
  };

  Line cooled_line(double enthalpy, double dryness) const;
  Line boiling_line(double enthalpy, const Edge& edge) const;
  Boiling boiling_start(double dryness) const;
  void make_boiling_curve(DryingTables& tables) const;

  ThermalTable wet_;
  std::shared_ptr<const DryingTables> drying_;
  std::vector<double> least_;  // [J/(m³ K)] of wet_, from each point of the grid up
  bool conducts_evenly_ = true;
};

/// A food that can dry, boil and freeze. Problem as make_thermal_table.
Result<Substance> make_substance(const Composition& food);
/// Constants; nothing leaves.
Result<Substance> make_substance(const Properties& constants);

}  // namespace tinwright
