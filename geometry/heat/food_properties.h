// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The thermal properties of a food from what it is made of: the parts of Choi & Okos (1986) put together by the
// rules of ASHRAE Handbook - Refrigeration, "Thermal properties of foods". Volumes add (density), heats add by mass
// (heat capacity, enthalpy), conductivities add by volume (parallel model), then air is stirred in as bubbles
// (Maxwell-Eucken).
//
// Valid from -40 to 150 °C, held beyond (food_components.h). No evaporation, no melting of fat, and no vapour
// carried through pores: light, moist crumb conducts better than these rules say (angel cake up to twice).
#pragma once

#include "geometry/heat/composition.h"

namespace tinwright {

struct Properties {
  double conductivity = 0.0;   // [W/(m K)]
  double density = 0.0;        // [kg/m³]
  double heat_capacity = 0.0;  // [J/(kg K)] sensible only: the latent heat of ice is in food_enthalpy
};

/// [K] whose density fixes the mass in a unit volume for all temperatures: a cell of a solver keeps its volume and
/// its mass, so the swelling (under 9 %, by ice) is left out.
inline constexpr double kDensityTemperature = 273.15 + 20.0;
/// [K] where enthalpy is zero: the reference of ASHRAE's enthalpy formulas, -40 °C.
inline constexpr double kEnthalpyZero = 273.15 - 40.0;

/// Properties of `food` (as make_composition returns it) at `temperature` [K], with as much of its water frozen as
/// ice_fraction says.
Properties food_properties(const Composition& food, double temperature);

/// Enthalpy [J/kg] of `food` at `temperature` [K] above its enthalpy at kEnthalpyZero: sensible heat of all parts and
/// the latent heat of the ice. A function of state, summed over the parts present, so the latent heat is 333.6 kJ/kg
/// at 0 °C and falls below as the heat capacities of water and ice require. Continuous and strictly increasing.
double food_enthalpy(const Composition& food, double temperature);

/// Conductivity [W/(m K)] of a body of `continuous` with `share` [-, 0 to 1] of its volume taken by bubbles of
/// `dispersed` (both [W/(m K)], > 0): Maxwell (1873), Eucken (1940). Exact for few round bubbles; the upper
/// Hashin-Shtrikman bound when the bubbles conduct less.
double maxwell_eucken(double continuous, double dispersed, double share);

}  // namespace tinwright
