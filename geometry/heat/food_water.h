// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// How a food holds its water: how eagerly it gives it off, how fast it moves, and what vapour carries through pores.
#pragma once

#include "geometry/heat/composition.h"

namespace tinwright {

/// What a kilogram of a food (as make_composition returns it) is before it dries, as far as its water goes.
struct WaterHolding {
  double sugar = 0.0;   // [kg] dissolved, as sucrose
  double solids = 0.0;  // [kg] all that is not water
  double volume = 0.0;  // [m³] of the solids
};
WaterHolding water_holding(const Composition& food);

/// Water activity [-] with `water` kg left (> 0) of what `holding` began with: Norrish (1966) for the sugar, all of it
/// dissolved, as in a hot syrup, times the share left free by starch and protein, which hold the last of it.
double water_activity(const WaterHolding& holding, double water);

/// A value, and how much more of it by each kilogram of `water`.
struct ByWater {
  double value = 0.0;
  double slope = 0.0;  // [1/kg]
};
ByWater water_activity_by_water(const WaterHolding& holding, double water);

/// [m²/s] at which liquid water moves through the food with `water` kg left, at `temperature` [K]: self-diffusion of
/// water (2.3e-9 m²/s at 25 °C, 18 kJ/mol; from memory) held up by the solids as in Mackie & Meares (1955). Sponge cake
/// at 20 °C comes out within the 0.5 to 7.5e-10 measured (J. Food Sci. 68, 2003).
double water_diffusivity(const WaterHolding& holding, double water, double temperature);

/// Its two factors: [m²/s] of water by itself, 0 below 0 °C, and [-] what the solids let through.
double water_self_diffusion(double temperature);
ByWater let_through(const WaterHolding& holding, double water);

/// [W/(m K)] of the gas in a wet pore: still air, and the latent heat of vapour that evaporates on its warm side and
/// condenses on its cold one (Krischer; de Vries 1958, Trans. Am. Geophys. Union 39, 909), at kPoreShare of what
/// saturated vapour would carry. Held above 80 °C, where pores open (71 to 81 °C: Foods 14, 1649, 2025).
double wet_pore_conductivity(double temperature);

/// [-] Crumb at room temperature conducts between what dry and what saturated pores would make of it (ASHRAE Handbook -
/// Refrigeration, cakes, after Sweat 1973): about a quarter of the way up.
inline constexpr double kPoreShare = 0.25;

}  // namespace tinwright
