// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The pure parts that foods are made of, and how each conducts, weighs and stores heat: the polynomials of
// Choi & Okos (1986), "Effects of temperature and composition on the thermal properties of foods", in Food
// Engineering and Process Applications vol. 1, pp. 93-101, as printed in Ibarz & Barbosa-Canovas and in ASHRAE
// Handbook - Refrigeration (2006) ch. 9 tables 1 and 2.
//
// The polynomials hold from -40 to 150 °C. Outside, each property keeps the value it has at that end: a quadratic
// carried further turns over (water would have the density of petrol at 260 °C).
#pragma once

namespace tinwright {

/// [K] of 0 °C, exact by definition.
inline constexpr double kZeroCelsius = 273.15;
/// [J/kg] that a kilogram of ice takes up to melt at 0 °C: ASHRAE Handbook - Refrigeration, thermal properties of
/// foods (333.6 kJ/kg). Freezing times are proportional to it.
inline constexpr double kLatentHeatOfIce = 333.6e3;
/// [K] The range the polynomials were fitted over (Choi & Okos 1986).
inline constexpr double kCoolestFit = kZeroCelsius - 40.0;
inline constexpr double kHottestFit = kZeroCelsius + 150.0;

enum class FoodComponent { kWater, kIce, kProtein, kFat, kCarbohydrate, kFibre, kAsh };

/// Thermal conductivity [W/(m K)] of `component` at `temperature` [K].
double component_conductivity(FoodComponent component, double temperature);

/// Density [kg/m³] of `component` at `temperature` [K].
double component_density(FoodComponent component, double temperature);

/// Heat capacity [J/(kg K)] of `component` at `temperature` [K]. Liquid water has one curve above 0 °C and another
/// for the water that stays liquid below.
double component_heat_capacity(FoodComponent component, double temperature);

/// Enthalpy [J/kg] of `component` at `temperature` [K]: its heat capacity integrated, exactly, from 0 °C, where
/// liquid water has zero and ice has -kLatentHeatOfIce.
double component_enthalpy(FoodComponent component, double temperature);

/// Thermal conductivity [W/(m K)] of still, dry air at `temperature` [K]. A straight line through the tabulated
/// 0.0223 at 250 K, 0.0263 at 300 K and 0.0338 at 400 K (Incropera, table A.4; from memory) to 2 %.
double air_conductivity(double temperature);

}  // namespace tinwright
