// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See drying_surface.h.
#include "geometry/heat/drying_surface.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "geometry/heat/surroundings_detail.h"

namespace tinwright {
namespace {

/// [-] How near a surface's dryness is found, or how near what comes to it is to what leaves; in so many tries at most.
constexpr double kSameDryness = 1e-3;
constexpr double kSameFlow = 2e-3;
constexpr int kDrynessTries = 12;
/// Newton's steps in both at once, from a moment ago: two are usual, and where these do not do it is no case for him.
constexpr int kMostSteps = 8;

/// [kg/(m² s)] of water that comes to a surface, and how much more by its dryness and by each kelvin.
struct Coming {
  double rate = 0.0, by_dryness = 0.0, by_kelvin = 0.0;
};
Coming coming(const WaterSource& from, double surface, double dryness) {
  const Substance::ByTemperature by_itself = from.substance.self_diffusion(surface);
  const Substance::ByDryness through = from.substance.let_through(0.5 * (dryness + from.dryness));
  const double per_dryness = from.substance.water() / from.half;
  const double apart = (dryness - from.dryness) * per_dryness;
  return {by_itself.value * through.value * apart,
          by_itself.value * (through.value * per_dryness + 0.5 * through.slope * apart),
          by_itself.slope * through.value * apart};
}

struct Dried {
  SurfaceFlow flow;
  double dryness;
};

/// Newton's method for the two balances, of heat and of water, from the temperature and the dryness of a moment ago.
std::optional<Dried> by_newton(const Surface& side, double air, double humidity, const SurfaceCell& cell,
                               const WaterSource& from, double share) {
  const double around = side.held_at.value_or(air);
  const double held = held_humidity(air, humidity);
  double surface = cell.guess;
  double dryness = from.dryness + share * (1.0 - from.dryness);
  for (int i = 0; i < kMostSteps; ++i) {
    const OuterExchange outer = outer_exchange(side, around, surface);
    const Substance::ByDryness activity = from.substance.activity_by_dryness(dryness);
    Drying leaving = drying(surface, activity.value, held, side.drying);
    if (leaving.rate > cell.most_drying) leaving = {cell.most_drying, 0.0, 0.0};
    const double latent = latent_heat_of_evaporation(surface);
    const Coming comes = coming(from, surface, dryness);
    const double heat =
        cell.inner * (cell.temperature - surface) + outer.conductance * (around - surface) - latent * leaving.rate;
    const double water = leaving.rate - comes.rate;
    // heat and water after a move of both: heat - h_t dt - h_d dd = 0, water + w_t dt + w_d dd = 0.
    const double leaving_by_dryness = leaving.by_activity * activity.slope;
    const double h_t = cell.inner + outer.tangent + latent * leaving.slope;
    const double h_d = latent * leaving_by_dryness;
    const double w_t = leaving.slope - comes.by_kelvin;
    const double w_d = leaving_by_dryness - comes.by_dryness;
    const double pivot = h_t * w_d - h_d * w_t;
    if (!(pivot < 0.0)) return std::nullopt;
    const double move = std::clamp((heat * w_d + water * h_d) / pivot, -kLongestSurfaceMove, kLongestSurfaceMove);
    const double drier = -(h_t * water + w_t * heat) / pivot;
    const double next = dryness + drier;
    const bool is_within = next > from.dryness && next < 1.0;
    surface += move;
    if (is_within && std::abs(move) < kSettledSurface && std::abs(water) < kSameFlow * leaving.rate) {
      leaving.rate += leaving.slope * move + leaving_by_dryness * drier;
      return Dried{settled_flow(cell, outer.conductance, latent, leaving, surface), next};
    }
    dryness = is_within ? next : 0.5 * (dryness + (next < 1.0 ? from.dryness : 1.0));
  }
  return std::nullopt;
}

/// False position (Illinois) on the dryness, each time with the temperature that goes with it: more leaves than comes
/// at `wetter`, less at `drier`. `wet` is the flow of a surface no drier than its cell.
Dried by_false_position(const Surface& side, double air, double humidity, SurfaceCell cell, const WaterSource& from,
                        const SurfaceFlow& wet) {
  Dried found{wet, from.dryness};
  double wetter = from.dryness;
  double drier = 1.0;
  double over = wet.drying;
  double under = -coming(from, wet.surface, drier).rate;
  for (int i = 0; i < kDrynessTries && drier - wetter > kSameDryness; ++i) {
    found.dryness = wetter + (drier - wetter) * std::clamp(over / (over - under), 0.05, 0.95);
    cell.activity = from.substance.activity(found.dryness);
    cell.guess = found.flow.surface;
    found.flow = surface_flow(side, air, humidity, cell);
    const double now = found.flow.drying - coming(from, found.flow.surface, found.dryness).rate;
    if (std::abs(now) < kSameFlow * found.flow.drying) break;
    if (now > 0.0) {
      wetter = found.dryness;
      over = now;
      under *= 0.5;
    } else {
      drier = found.dryness;
      under = now;
      over *= 0.5;
    }
  }
  return found;
}

}  // namespace

SurfaceFlow drying_surface_flow(const Surface& side, double air, double humidity, SurfaceCell cell,
                                const WaterSource& from, double& share) {
  const double was = share;
  share = 0.0;
  const auto share_of = [&](const Dried& at) { return (at.dryness - from.dryness) / (1.0 - from.dryness); };
  if (from.dryness < 1.0 && was > 0.0) {
    if (const auto found = by_newton(side, air, humidity, cell, from, was)) {
      share = share_of(*found);
      return found->flow;
    }
  }
  cell.activity = from.substance.activity(from.dryness);
  const SurfaceFlow wet = surface_flow(side, air, humidity, cell);
  if (!(wet.drying > 0.0) || from.dryness >= 1.0) return wet;
  const Dried near = by_false_position(side, air, humidity, cell, from, wet);
  cell.guess = near.flow.surface;
  const Dried found = by_newton(side, air, humidity, cell, from, share_of(near)).value_or(near);
  share = share_of(found);
  return found.flow;
}

}  // namespace tinwright
