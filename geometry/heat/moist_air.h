// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Water vapour in air at sea level: how much a wet surface gives off. After ASHRAE Handbook - Fundamentals, chapter
// "Psychrometrics" (saturation pressure by Hyland & Wexler 1983, humidity ratio, humid heat) and the Lewis relation.
#pragma once

namespace tinwright {

/// [Pa] of the standard atmosphere.
inline constexpr double kAtmosphere = 101325.0;
/// [J/(kg K)] heat capacities of dry air and of water vapour, and [-] the ratio of their molar masses (ASHRAE
/// Fundamentals, Psychrometrics: 1.006, 1.86 and 0.621945).
inline constexpr double kAirHeatCapacity = 1006.0;
inline constexpr double kVapourHeatCapacity = 1860.0;
inline constexpr double kVapourToAir = 0.621945;

/// Pressure [Pa] of water vapour over water, or over ice below 0 °C, at `temperature` [K], 173 to 473 K: Hyland &
/// Wexler (1983). Beyond the ends it keeps the value it has there.
double saturation_pressure(double temperature);

/// The same and its slope, from a table of cubics, in a fraction of the time: a heat solver asks thousands of times for
/// one bake. Above 0 °C within 1e-7 of it, below within 4e-6, but for the last kelvin below 0 °C, where the fits over
/// ice and over water are 1e-4 apart and the table leads from one to the other.
struct SaturationPressure {
  double pressure = 0.0;  // [Pa]
  double slope = 0.0;     // [Pa/K]
};
SaturationPressure tabulated_saturation_pressure(double temperature);

/// Latent heat [J/kg] of evaporation of water at `temperature` [K]: a cubic through the steam tables' 2500.9, 2382.0,
/// 2256.5 and 1939.8 kJ/kg at 0, 50, 100 and 200 °C (IAPWS-95, from memory), 1 kJ/kg off between. Held outside 0 to
/// 250 °C.
double latent_heat_of_evaporation(double temperature);

/// kg of water to a kg of dry air [-] where the vapour has `pressure` [Pa], 0 <= pressure < kAtmosphere.
double humidity_ratio(double pressure);

/// kg of water to a kg of dry air [-] that holds all it can at `temperature` [K]; endless from the boiling point up.
double saturated_humidity(double temperature);

/// [K] Temperature at which water boils when its activity is `activity` [-], 0 to 1: where saturation_pressure is
/// kAtmosphere / activity. At most `hottest` [K].
double boiling_temperature(double activity, double hottest);

/// kg/(m² s) that leaves a wet surface, how much more by each kelvin, and by the surface's water activity.
struct Drying {
  double rate = 0.0;         // [kg/(m² s)]
  double slope = 0.0;        // [kg/(m² s K)]
  double by_activity = 0.0;  // [kg/(m² s)]
};
/// What a surface at `temperature` [K], of water activity `activity` [-], loses to air of `humidity` [kg/kg dry air]
/// that exchanges `convection` [W/(m² K)] of heat with it: the Lewis relation, rate = convection/(humid heat) times the
/// difference of humidity ratios. An insulated surface then settles at the air's (thermodynamic) wet-bulb temperature.
/// Negative where dew settles. Where the vapour pressure comes within 5 % of the atmosphere's the rate goes on as a
/// straight line, so that it stays finite at and above boiling.
Drying drying(double temperature, double activity, double humidity, double convection);

}  // namespace tinwright
