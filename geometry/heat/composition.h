// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What a food is made of, as a nutrition label would say it, how that is checked, and what follows from it about
// freezing: where ice first appears and how much of it there is. After ASHRAE Handbook - Refrigeration, chapter
// "Thermal properties of foods".
#pragma once

#include <optional>

#include "geometry/problem.h"

namespace tinwright {

/// Shares by mass of all that is not air (they sum to 1), air as a share of the whole volume.
struct Composition {
  double water = 0.0;         // [-]
  double protein = 0.0;       // [-]
  double fat = 0.0;           // [-]
  double carbohydrate = 0.0;  // [-] without fibre
  double fibre = 0.0;         // [-]
  double ash = 0.0;           // [-]
  double air = 0.0;           // [-] of the volume, 0 to 0.95

  /// [-] by mass: the part of `carbohydrate` that is dissolved sugar, counted as sucrose. Unknown: half of it.
  std::optional<double> sugar = std::nullopt;
  /// [K] where ice first appears, when measured. Unknown: estimated, see freezing_point.
  std::optional<double> freezing_point = std::nullopt;
};

/// [-] The six shares may miss 1 by this much (labels are rounded) and are then scaled to 1.
inline constexpr double kCompositionSlack = 0.02;
/// [-] More air than this is foam that no cake reaches, and a density near nothing.
inline constexpr double kMostAir = 0.95;
/// [-] kg of water that never freezes, to a kg of protein: x_b = 0.4 x_p (ASHRAE Handbook - Refrigeration).
inline constexpr double kBoundWaterOfProtein = 0.4;
/// [-] Share of the carbohydrate taken as dissolved sugar when not told (common practice, no source: sweet fillings
/// have nearly all, cookie dough about half, bread dough a tenth). Only the freezing point depends on it.
inline constexpr double kUsualSugarShare = 0.5;
/// [K] Nothing here begins to freeze below this: the eutectic of salt and water, -21.1 °C (from memory).
inline constexpr double kLowestFreezingPoint = 273.15 - 21.1;
/// [K] Pure water is taken to begin here, 0.01 K below 0 °C, so that ice grows over a (narrow) range of temperatures
/// and enthalpy has an inverse.
inline constexpr double kHighestFreezingPoint = 273.15 - 0.01;

/// The composition with its shares scaled to sum to exactly 1. Problem, with the field as its place ("water", "air",
/// "sugar", "freezing_point"; none for the sum), when a share is not finite, negative or over 1, when they do not sum
/// to 1 within kCompositionSlack, when air is outside [0, kMostAir], when there is more sugar than carbohydrate, or
/// when the freezing point is outside -40 to 0 °C.
Result<Composition> make_composition(const Composition& asked);

/// [-] kg of water per kg of food that can freeze: water less what protein binds, at least 0.
/// `food` as make_composition returns it, here and below.
double freezable_water(const Composition& food);

/// Water activity [-] (0 to 1) of `sugar` kg of sucrose dissolved in `water` kg of water (> 0): Norrish (1966),
/// a_w = x_w exp(-6.47 x_s²), x mole fractions; the constant of sucrose after Chirife, Ferro Fontan & Benmergui (1980),
/// from memory. Sugar over the eutectic's 1.66 kg per kg of water (62.4 % by mass) is taken as undissolved.
double sugar_water_activity(double water, double sugar);

/// [K] where ice first appears: the given one, else 0 °C less the depression by sugar in the freezable water (R T²/(M
/// L) times -ln a_w) and by salts, 46.4 K per kg of ash to a kg of water (Pham 1996). Always within
/// [kLowestFreezingPoint or the given one, kHighestFreezingPoint]. Good to a few tenths of a kelvin up to 50 % syrup;
/// 1 K too warm at the eutectic.
double freezing_point(const Composition& food);

/// [-] kg of ice per kg of food at `temperature` [K]: x_i = (x_w - x_b)(1 - t_f/t), t in °C (ASHRAE Handbook -
/// Refrigeration, after Schwartzberg 1976); 0 at and above the freezing point.
double ice_fraction(const Composition& food, double temperature);

}  // namespace tinwright
