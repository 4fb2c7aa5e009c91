// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What the choice of pans needs to know of one pan, as a small table by depth of filling: how much it holds, and how
// long it would bake compared with another. A table is made once for each pan and asked thousands of times.
//
// The bake scale stands in for the bake time when sets of pans are compared; it is a ranking, never a time to bake by
// (the heat solver gives that). It is the time constant, times the diffusivity, of the slowest mode of a body of
// height h, mean floor area A = V/h and mean girth P = W/h whose surface is held at the oven's temperature:
//
//     1 / scale = (π / h)² + (j₀ P / (2 A))²        j₀ = 2.404826, the first zero of the Bessel function J₀
//
// by the product of the slab's and the cylinder's solutions (Carslaw and Jaeger 1959, ch. III and VII). It is exact for
// a slab and for a round upright pan; the second term is 17 % too large for a square pan, 41 % too small for a long
// narrow one, and wall heat flows in through a tube's core as through its rim. So a layer twice as thick takes four
// times as long where it is wide, and less than that where the wall is near.
#pragma once

#include <functional>
#include <span>
#include <vector>

#include "geometry/problem.h"

namespace tinwright {

/// The scale above [m²]: of a filling `depth` [m] deep, of `volume` [m³], that wets `wall_area` [m²] of wall; all > 0.
double bake_scale(double depth, double volume, double wall_area);

struct DepthSample {
  double depth = 0.0;       // [m] above the floor
  double volume = 0.0;      // [m³] up to there
  double bake_scale = 0.0;  // [m²]
};

/// Samples by growing depth; the last one is the depth limit. Between them the volume is linear in the depth, and so
/// is shape. Below the first the pan is an upright one of the first sample's mean area.
struct DepthTable {
  std::vector<double> depth;   // [m], the first is 0
  std::vector<double> volume;  // [m³], the first is 0
  std::vector<double> shape;   // [1] ln(bake_scale / depth²): how much a layer that deep is helped by the wall
};

/// Depths a table is made with when it is made of functions. Straight and tapered pans are then within 3e-5 of
/// their volume anywhere above a quarter of the limit, bowls within 2e-3 (a parabola's chord).
inline constexpr int kDepthSamples = 48;

/// A table of samples taken elsewhere, with or without one at depth 0.
/// Refused (kOutOfRange, place "pan"): no sample above 0, depths or volumes that do not grow, a scale that is not > 0,
/// anything not finite.
Result<DepthTable> make_depth_table(std::span<const DepthSample> samples);

/// A table of a pan's own functions of the depth [m]: volume [m³] and wetted wall [m²], asked at kDepthSamples depths.
///  depth_limit  [m] how high the pan may be filled before baking, > 0
Result<DepthTable> make_depth_table(const std::function<double(double)>& volume,
                                    const std::function<double(double)>& wall_area, double depth_limit);

/// [m] how high the pan may be filled.
double depth_limit(const DepthTable& table);

/// [m³] held up to `depth` [m]; no more than at the limit.
double volume_at(const DepthTable& table, double depth);

/// ln(bake_scale / depth²) at `depth` [m]; that of the limit above it.
double shape_at(const DepthTable& table, double depth);

/// [m²] of the layer up to `depth` [m] or the limit.
double bake_scale_at(const DepthTable& table, double depth);

}  // namespace tinwright
