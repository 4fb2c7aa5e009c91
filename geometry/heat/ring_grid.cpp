// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Cells between parallel curves of the outline (s, z). See grid.h.
#include <algorithm>
#include <cmath>

#include "geometry/heat/grid_detail.h"
#include "geometry/sweep.h"

namespace tinwright {
namespace {

struct RingLayer {
  const Layer* layer;
  std::vector<Ring> rings;
  int first = 0;  // index of its first cell
};

/// [m²] between two insets of the outline.
double band(const AreaCurve& curve, double from, double to) {
  return curve.area(from) - curve.area(to);
}

bool touches_core(const Pan& pan, const Layer& layer) {
  return pan.core && (layer.reaches_middle || layer.stretches.size() > 1);
}

/// The rings with the first and last bound where the walls really are at height z: for the food's top and bottom.
std::vector<Ring> rings_at(const RingLayer& layer, const Pan& pan, double z) {
  std::vector<Ring> rings = layer.rings;
  rings.front().from = std::min(pan.wall.inset(z), rings.front().to);
  if (touches_core(pan, *layer.layer)) {
    rings.back().to = std::max(ring_gap(pan) - pan.core->wall.inset(z), rings.back().from);
  }
  return rings;
}

void add_cells(HeatGrid& grid, const AreaCurve& curve, const RingLayer& layer) {
  const double height = layer.layer->height();
  for (std::size_t i = 0; i < layer.rings.size(); ++i) {
    const Ring& ring = layer.rings[i];
    const double closes_at = curve.closes_at();
    grid.cells.push_back(
        {.volume = band(curve, ring.from, ring.to) * height,
         .part = ring.part,
         .middle = {closes_at - 0.5 * (ring.from + ring.to), 0.0, 0.5 * (layer.layer->z0 + layer.layer->z1)},
         .size = {ring.width(), 0.0, height}});
    if (i > 0 && layer.rings[i - 1].to == ring.from) {
      const int index = layer.first + static_cast<int>(i);
      grid.faces.push_back({index - 1, index, curve.perimeter(ring.from) * height * (1.0 + ring.lean * ring.lean),
                            0.5 * layer.rings[i - 1].width(), 0.5 * ring.width()});
    }
  }
}

/// Cells of two layers that are continued in each other: as many from the wall inwards, and as many from the core
/// outwards.
struct Continued {
  std::size_t from_wall = 0, from_core = 0;
};

Continued continued(const Layer& below, const Layer& above) {
  const auto alike = [](const Stretch& a, const Stretch& b) { return a.part == b.part && a.cells == b.cells; };
  Continued same;
  std::size_t matched = 0;
  const std::size_t shorter = std::min(below.stretches.size(), above.stretches.size());
  while (matched < shorter && alike(below.stretches[matched], above.stretches[matched])) {
    same.from_wall += static_cast<std::size_t>(below.stretches[matched++].cells);
  }
  for (std::size_t i = 1; i + matched <= shorter; ++i) {
    const Stretch& a = below.stretches[below.stretches.size() - i];
    if (!alike(a, above.stretches[above.stretches.size() - i])) break;
    same.from_core += static_cast<std::size_t>(a.cells);
  }
  return same;
}

/// Joins cells that continue each other through a slanted wall. The grid leans with the wall, so besides the links up
/// and across there are links across the corners: of the lean times half the perimeter, one way positive, the other
/// negative. Together they are the energy of the true gradient, k (T_s² + T_z²), on the leaning grid, exact for linear
/// temperatures.
void join_leaning(HeatGrid& grid, const AreaCurve& curve, const RingLayer& below, const RingLayer& above,
                  std::size_t lower, std::size_t upper, std::size_t count) {
  const double rise = 0.5 * (below.layer->height() + above.layer->height());
  for (std::size_t n = 0; n < count; ++n) {
    const Ring& a = below.rings[lower + n];
    const Ring& b = above.rings[upper + n];
    const int cell_a = below.first + static_cast<int>(lower + n);
    const int cell_b = above.first + static_cast<int>(upper + n);
    const double area = band(curve, 0.5 * (a.from + b.from), 0.5 * (a.to + b.to));
    grid.faces.push_back({cell_a, cell_b, area, 0.5 * below.layer->height(), 0.5 * above.layer->height()});
    if (n + 1 == count) break;
    const double lean = std::clamp((a.to - b.to) / rise, -kFurthestLean, kFurthestLean);
    const Ring& a_next = below.rings[lower + n + 1];
    const Ring& b_next = above.rings[upper + n + 1];
    const double next = band(curve, 0.5 * (a_next.from + b_next.from), 0.5 * (a_next.to + b_next.to));
    const auto across = [&](const RingLayer& layer, const Ring& outer, const Ring& inner) {
      return curve.perimeter(outer.to) * layer.layer->height() * (1.0 + inner.lean * inner.lean) /
             (0.5 * (outer.width() + inner.width()));
    };
    const double corner =
        bounded_corner(0.5 * lean * curve.perimeter(0.5 * (a.to + b.to)), {.across_below = across(below, a, a_next),
                                                                           .across_above = across(above, b, b_next),
                                                                           .up_outer = area / rise,
                                                                           .up_inner = next / rise});
    if (corner == 0.0) continue;
    grid.faces.push_back({cell_a, cell_b + 1, corner, 0.5, 0.5, 1});
    grid.faces.push_back({cell_a + 1, cell_b, -corner, 0.5, 0.5, -1});
  }
}

/// Joins the cells [low, high) of two layers that do not continue each other, where they overlap.
void join_overlapping(HeatGrid& grid, const AreaCurve& curve, const RingLayer& below, const RingLayer& above,
                      std::size_t from_wall, std::size_t from_core) {
  for (std::size_t i = from_wall; i + from_core < below.rings.size(); ++i) {
    for (std::size_t j = from_wall; j + from_core < above.rings.size(); ++j) {
      const double from = std::max(below.rings[i].from, above.rings[j].from);
      const double to = std::min(below.rings[i].to, above.rings[j].to);
      const double area = to > from ? band(curve, from, to) : 0.0;
      if (area <= 0.0) continue;
      grid.faces.push_back({below.first + static_cast<int>(i), above.first + static_cast<int>(j), area,
                            0.5 * below.layer->height(), 0.5 * above.layer->height()});
    }
  }
}

void join(HeatGrid& grid, const AreaCurve& curve, const RingLayer& below, const RingLayer& above) {
  const Continued same = continued(*below.layer, *above.layer);
  join_leaning(grid, curve, below, above, 0, 0, same.from_wall);
  join_leaning(grid, curve, below, above, below.rings.size() - same.from_core, above.rings.size() - same.from_core,
               same.from_core);
  join_overlapping(grid, curve, below, above, same.from_wall, same.from_core);
}

/// What of a layer lies open to the oven's air above: all of the topmost, and the filling beneath a standing crust.
void add_top(HeatGrid& grid, const Pan& pan, const RingLayer& layer, const RingLayer* above) {
  if (above != nullptr && above->layer->reaches_middle == layer.layer->reaches_middle) return;
  const std::vector<Ring> rings = rings_at(layer, pan, layer.layer->z1);
  for (std::size_t i = 0; i < rings.size(); ++i) {
    if (above != nullptr && rings[i].part == Part::kDough) continue;
    grid.outer.push_back({layer.first + static_cast<int>(i), Side::kTop,
                          band(pan.outline.curve, rings[i].from, rings[i].to), 0.5 * layer.layer->height()});
  }
}

/// The last cell of a layer along a wall, whose surface between the layer's floor and ceiling is `surface` [m²] and
/// which runs `run` [m] sideways there.
void add_wall(HeatGrid& grid, const RingLayer& layer, std::size_t ring, double surface, double run) {
  const double height = layer.layer->height();
  const double cosine = height / std::hypot(height, run);
  grid.outer.push_back(
      {layer.first + static_cast<int>(ring), Side::kWall, surface, 0.5 * cosine * layer.rings[ring].width()});
}

void add_walls(HeatGrid& grid, const Pan& pan, const RingLayer& layer) {
  const double z0 = layer.layer->z0;
  const double z1 = layer.layer->z1;
  add_wall(grid, layer, 0, surface_between(pan.outline.curve, pan.wall, Lean::kInwards, z0, z1),
           pan.wall.inset(z0) - pan.wall.inset(z1));
  if (!touches_core(pan, *layer.layer)) return;
  const Core& core = *pan.core;
  add_wall(grid, layer, layer.rings.size() - 1, surface_between(core.outline.curve, core.wall, Lean::kOutwards, z0, z1),
           core.wall.inset(z0) - core.wall.inset(z1));
}

/// The inner side of a crust that stands above the filling.
void add_collar(HeatGrid& grid, const LayerPlan& plan, const RingLayer& layer) {
  const Pan& cavity = plan.cavity;
  const double z0 = layer.layer->z0 - plan.cavity_floor;
  const double z1 = layer.layer->z1 - plan.cavity_floor;
  const int outermost = layer.layer->stretches.front().cells;
  const Ring& last = layer.rings[static_cast<std::size_t>(outermost) - 1];
  grid.outer.push_back({layer.first + outermost - 1, Side::kTop,
                        surface_between(cavity.outline.curve, cavity.wall, Lean::kInwards, z0, z1),
                        0.5 * last.width()});
  if (!cavity.core || layer.layer->stretches.size() < 2) return;
  grid.outer.push_back({layer.first + outermost, Side::kTop,
                        surface_between(cavity.core->outline.curve, cavity.core->wall, Lean::kOutwards, z0, z1),
                        0.5 * layer.rings[static_cast<std::size_t>(outermost)].width()});
}

void add_base(HeatGrid& grid, const Pan& pan, const RingLayer& lowest) {
  const std::vector<Ring> rings = rings_at(lowest, pan, 0.0);
  for (std::size_t i = 0; i < rings.size(); ++i) {
    // The wall's foot may lie beyond the first rings.
    const double from = std::max(rings[i].from, pan.wall.floor_inset());
    const double area = rings[i].to > from ? band(pan.outline.curve, from, rings[i].to) : 0.0;
    if (area > 0.0) {
      grid.outer.push_back({lowest.first + static_cast<int>(i), Side::kBase, area, 0.5 * lowest.layer->height()});
    }
  }
}

}  // namespace

HeatGrid make_ring_grid(const Pan& pan, const LayerPlan& plan) {
  HeatGrid grid;
  std::vector<RingLayer> layers;
  for (const Layer& layer : plan.layers) {
    layers.push_back({&layer, rings_of(layer), static_cast<int>(grid.cells.size())});
    add_cells(grid, pan.outline.curve, layers.back());
  }
  for (std::size_t i = 0; i < layers.size(); ++i) {
    const RingLayer* above = i + 1 < layers.size() ? &layers[i + 1] : nullptr;
    if (above != nullptr) join(grid, pan.outline.curve, layers[i], *above);
    add_top(grid, pan, layers[i], above);
    add_walls(grid, pan, layers[i]);
    if (!layers[i].layer->reaches_middle) add_collar(grid, plan, layers[i]);
  }
  add_base(grid, pan, layers.front());
  grid.is_round = !pan.core;
  return grid;
}

}  // namespace tinwright
