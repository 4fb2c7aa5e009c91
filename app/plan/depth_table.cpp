// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See depth_table.h.
#include "app/plan/depth_table.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "geometry/checks.h"

namespace tinwright {
namespace {

constexpr double kFirstBesselZero = 2.404825557695773;  // of J0; DLMF table 10.21

/// Value of `column` at `depth`, linear between the table's depths, held at both ends.
double between(const DepthTable& table, const std::vector<double>& column, double depth) {
  if (depth >= table.depth.back()) return column.back();
  if (depth <= 0.0) return column.front();
  const auto after = std::upper_bound(table.depth.begin(), table.depth.end(), depth);
  const auto i = static_cast<std::size_t>(after - table.depth.begin());
  const double share = (depth - table.depth[i - 1]) / (table.depth[i] - table.depth[i - 1]);
  return std::lerp(column[i - 1], column[i], share);
}

bool follows(const DepthSample& sample, double depth, double volume) {
  return std::isfinite(sample.depth) && std::isfinite(sample.volume) && std::isfinite(sample.bake_scale) &&
         sample.depth > depth && sample.volume > volume && sample.bake_scale > 0.0;
}

}  // namespace

double bake_scale(double depth, double volume, double wall_area) {
  GEOMETRY_ASSERT(depth > 0.0 && volume > 0.0 && wall_area > 0.0);
  const double through = std::numbers::pi / depth;
  const double across = 0.5 * kFirstBesselZero * wall_area / volume;  // P/A = W/V
  return 1.0 / (through * through + across * across);
}

Result<DepthTable> make_depth_table(std::span<const DepthSample> samples) {
  if (!samples.empty() && samples.front().depth == 0.0) samples = samples.subspan(1);
  const Problem problem{ProblemCode::kOutOfRange,
                        "A pan's volumes have to grow with the depth they are given for, from more than nothing.",
                        "pan"};
  if (samples.empty()) return problem;
  DepthTable table{{0.0}, {0.0}, {0.0}};
  for (const DepthSample& sample : samples) {
    if (!follows(sample, table.depth.back(), table.volume.back())) return problem;
    table.depth.push_back(sample.depth);
    table.volume.push_back(sample.volume);
    table.shape.push_back(std::log(sample.bake_scale / (sample.depth * sample.depth)));
  }
  table.shape.front() = table.shape[1];
  return table;
}

Result<DepthTable> make_depth_table(const std::function<double(double)>& volume,
                                    const std::function<double(double)>& wall_area, double depth_limit) {
  std::vector<DepthSample> samples;
  for (int i = 1; i <= kDepthSamples; ++i) {
    const double depth = depth_limit * i / kDepthSamples;
    const double held = volume(depth);
    const double wall = wall_area(depth);
    const bool is_sound = depth > 0.0 && held > 0.0 && wall > 0.0;
    samples.push_back({depth, held, is_sound ? bake_scale(depth, held, wall) : 0.0});
  }
  return make_depth_table(samples);
}

double depth_limit(const DepthTable& table) {
  return table.depth.back();
}

double volume_at(const DepthTable& table, double depth) {
  return between(table, table.volume, depth);
}

double shape_at(const DepthTable& table, double depth) {
  return between(table, table.shape, depth);
}

double bake_scale_at(const DepthTable& table, double depth) {
  const double filled = std::min(depth, depth_limit(table));
  return std::exp(shape_at(table, filled)) * filled * filled;
}

}  // namespace tinwright
