// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See composition.h.
#include "geometry/heat/composition.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>

#include "geometry/checks.h"
#include "geometry/heat/food_components.h"

namespace tinwright {
namespace {

/// [J/(mol K)] molar gas constant (SI 2019, exact to the digits given).
constexpr double kGasConstant = 8.314462618;
/// [kg/mol] of water and of sucrose C12H22O11 (standard atomic weights).
constexpr double kMolarMassOfWater = 0.018015;
constexpr double kMolarMassOfSucrose = 0.34230;
/// [-] Norrish's constant of sucrose; see sugar_water_activity.
constexpr double kNorrishOfSucrose = 6.47;
/// [-] kg of sucrose per kg of water at the eutectic of the pair (62.4 % by mass, -13.95 °C; handbook value, from
/// memory): colder syrup drops sugar, so more of it lowers the freezing point no further.
constexpr double kMostDissolvedSugar = 1.66;
/// [K] per kg of ash to a kg of water: Pham (1996), t_f = -4.66 x_o/x_w - 46.4 x_a/x_w. Fitted to meats; milk's
/// salts depress about two thirds as much.
constexpr double kFreezingDropOfAsh = 46.4;
/// [K] Coldest freezing point that can be given.
constexpr double kColdestGiven = kZeroCelsius - 40.0;
/// [-] What adding decimal shares may round off.
constexpr double kShareRounding = 1e-9;

struct Share {
  const char* name;
  double Composition::*field;
};
constexpr std::array<Share, 6> kShares{{{"water", &Composition::water},
                                        {"protein", &Composition::protein},
                                        {"fat", &Composition::fat},
                                        {"carbohydrate", &Composition::carbohydrate},
                                        {"fibre", &Composition::fibre},
                                        {"ash", &Composition::ash}}};

/// "0.87": for messages only. `share` is known to be small.
std::string share_text(double share) {
  const long hundredths = std::lround(share * 100.0);
  const std::string rest = std::to_string(hundredths % 100);
  return std::to_string(hundredths / 100) + (rest.size() == 1 ? ".0" : ".") + rest;
}

std::optional<Problem> check_share(double share, const std::string& name, double most) {
  if (!std::isfinite(share)) return Problem{ProblemCode::kNotANumber, "the " + name + " is not a number", name};
  if (share < 0.0) {
    return Problem{ProblemCode::kOutOfRange, "the " + name + " cannot be less than nothing; give 0 or more", name};
  }
  if (share > most) {
    return Problem{ProblemCode::kOutOfRange,
                   "the " + name + " can be at most " + share_text(most) + "; it is a share of one, so 30 % is 0.3",
                   name};
  }
  return std::nullopt;
}

std::optional<Problem> check_sum(double sum) {
  if (std::abs(sum - 1.0) <= kCompositionSlack + kShareRounding) return std::nullopt;
  return Problem{ProblemCode::kContradiction,
                 "water, protein, fat, carbohydrate, fibre and ash come to " + share_text(sum) +
                     "; they have to come to 1 (0.98 to 1.02 will do)",
                 ""};
}

std::optional<Problem> check_freezing_point(double temperature) {
  if (!std::isfinite(temperature)) {
    return Problem{ProblemCode::kNotANumber, "the freezing point is not a number", "freezing_point"};
  }
  if (temperature < kColdestGiven || temperature > kZeroCelsius) {
    return Problem{ProblemCode::kOutOfRange, "the freezing point has to be between -40 °C and 0 °C, like -2 °C",
                   "freezing_point"};
  }
  return std::nullopt;
}

std::optional<Problem> check_sugar(const Composition& asked) {
  if (auto problem = check_share(*asked.sugar, "sugar", 1.0 + kCompositionSlack)) return problem;
  if (*asked.sugar <= asked.carbohydrate + kShareRounding) return std::nullopt;
  return Problem{ProblemCode::kContradiction,
                 "there is more sugar (" + share_text(*asked.sugar) + ") than carbohydrate (" +
                     share_text(asked.carbohydrate) + "); the carbohydrate includes the sugar",
                 "sugar"};
}

}  // namespace

Result<Composition> make_composition(const Composition& asked) {
  double sum = 0.0;
  for (const Share& share : kShares) {
    if (auto problem = check_share(asked.*share.field, share.name, 1.0 + kCompositionSlack)) return *problem;
    sum += asked.*share.field;
  }
  if (auto problem = check_sum(sum)) return *problem;
  if (auto problem = check_share(asked.air, "air", kMostAir)) return *problem;
  if (asked.freezing_point) {
    if (auto problem = check_freezing_point(*asked.freezing_point)) return *problem;
  }
  if (asked.sugar) {
    if (auto problem = check_sugar(asked)) return *problem;
  }
  Composition food = asked;
  for (const Share& share : kShares) food.*share.field /= sum;
  if (food.sugar) *food.sugar /= sum;
  return food;
}

double freezable_water(const Composition& food) {
  return std::max(0.0, food.water - kBoundWaterOfProtein * food.protein);
}

double sugar_water_activity(double water, double sugar) {
  GEOMETRY_ASSERT(water > 0.0 && sugar >= 0.0);
  const double moles_of_water = water / kMolarMassOfWater;
  const double moles_of_sugar = std::min(sugar, kMostDissolvedSugar * water) / kMolarMassOfSucrose;
  const double x_s = moles_of_sugar / (moles_of_water + moles_of_sugar);
  return (1.0 - x_s) * std::exp(-kNorrishOfSucrose * x_s * x_s);
}

double freezing_point(const Composition& food) {
  if (food.freezing_point) return std::min(*food.freezing_point, kHighestFreezingPoint);
  const double solvent = freezable_water(food);
  if (solvent <= 0.0) return kLowestFreezingPoint;
  const double sugar = food.sugar.value_or(kUsualSugarShare * food.carbohydrate);
  const double kelvin_per_log = kGasConstant * kZeroCelsius * kZeroCelsius / (kMolarMassOfWater * kLatentHeatOfIce);
  const double sugar_drop = -kelvin_per_log * std::log(sugar_water_activity(solvent, sugar));
  const double salt_drop = kFreezingDropOfAsh * food.ash / food.water;
  return std::clamp(kZeroCelsius - sugar_drop - salt_drop, kLowestFreezingPoint, kHighestFreezingPoint);
}

double ice_fraction(const Composition& food, double temperature) {
  const double t_f = freezing_point(food) - kZeroCelsius;
  const double t = temperature - kZeroCelsius;
  return t < t_f ? freezable_water(food) * (1.0 - t_f / t) : 0.0;
}

}  // namespace tinwright
