// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Cells of a quarter of a rectangle (x, y, z), counted four times. See grid.h.
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include "geometry/heat/grid_detail.h"
#include "geometry/numerics.h"
#include "geometry/sweep.h"

namespace tinwright {
namespace {

/// [-] A cell of which the rounded corner leaves less than this is not a cell.
constexpr double kLeastShare = 0.05;
constexpr double kQuarters = 4.0;

struct BoxLayer {
  const Layer* layer = nullptr;
  std::vector<Ring> x, y;    // along each half side, from the wall to the middle
  std::vector<int> index;    // of the cell at (i, j), j fastest; -1 where there is none
  std::vector<double> area;  // [m²] seen from above, of one quarter; same order
  int at(std::size_t i, std::size_t j) const { return index[i * y.size() + j]; }
  double area_at(std::size_t i, std::size_t j) const { return area[i * y.size() + j]; }
};

/// Rings along one half side: those of the crust, then the filling (or the gap inside a crust) up to the middle.
std::vector<Ring> along(const Layer& layer, double half_side) {
  Layer side = layer;
  side.stretches.back().to = half_side;
  if (layer.reaches_middle) return rings_of(side);
  std::vector<Ring> rings = rings_of(layer);
  rings.push_back({rings.back().to, half_side, Part::kFill, layer.stretches.front().to_lean});
  return rings;
}

/// [m²] of a cell that lies within the rounded corner: insets [x.from, x.to] × [y.from, y.to].
double area_in_corner(const Ring& x, const Ring& y, double inset, double corner) {
  const double radius = corner - inset;
  if (radius <= 0.0 || x.from >= corner || y.from >= corner) return x.width() * y.width();
  const auto open = [&](double at) {
    const double off = corner - at;
    const double edge = off <= 0.0 ? inset : corner - std::sqrt(std::max(0.0, radius * radius - off * off));
    return std::clamp(y.to - std::max(y.from, edge), 0.0, y.width());
  };
  const double bend = std::clamp(corner, x.from, x.to);
  return (bend > x.from ? integrate(open, x.from, bend) : 0.0) + (x.to - bend) * open(x.to);
}

BoxLayer make_box_layer(HeatGrid& grid, const Rectangle& shape, const Pan& pan, const Layer& layer) {
  BoxLayer box{&layer, along(layer, 0.5 * shape.length), along(layer, 0.5 * shape.width), {}, {}};
  const double inset = layer.stretches.front().from;
  const std::size_t open_from_x = layer.reaches_middle ? box.x.size() : box.x.size() - 1;
  const std::size_t open_from_y = layer.reaches_middle ? box.y.size() : box.y.size() - 1;
  double total = 0.0;
  double rounded = 0.0;  // of cells that the corner cuts
  std::vector<bool> is_cut;
  for (std::size_t i = 0; i < box.x.size(); ++i) {
    for (std::size_t j = 0; j < box.y.size(); ++j) {
      const bool in_gap = i >= open_from_x && j >= open_from_y;
      const double whole = box.x[i].width() * box.y[j].width();
      double area = in_gap ? 0.0 : area_in_corner(box.x[i], box.y[j], inset, shape.corner_radius);
      if (area < kLeastShare * whole) area = 0.0;
      is_cut.push_back(area > 0.0 && area < whole * (1.0 - 1e-12));
      box.area.push_back(area);
      total += area;
      if (is_cut.back()) rounded += area;
    }
  }
  // What the smallest cells would have held goes to the other cells of the corner; the rest is exact.
  const double gap = layer.reaches_middle ? 0.0 : pan.outline.curve.area(layer.stretches.front().to);
  const double exact = (pan.outline.curve.area(inset) - gap) / kQuarters;
  if (rounded > 0.0) {
    for (std::size_t c = 0; c < box.area.size(); ++c) {
      if (is_cut[c]) box.area[c] *= 1.0 + (exact - total) / rounded;
    }
  }
  for (std::size_t i = 0; i < box.x.size(); ++i) {
    for (std::size_t j = 0; j < box.y.size(); ++j) {
      const double area = box.area_at(i, j);
      box.index.push_back(area > 0.0 ? static_cast<int>(grid.cells.size()) : -1);
      if (area <= 0.0) continue;
      const bool is_dough = box.x[i].part == Part::kDough || box.y[j].part == Part::kDough;
      const auto from_middle = [](const Ring& ring, double half) { return half - 0.5 * (ring.from + ring.to); };
      grid.cells.push_back({.volume = kQuarters * area * layer.height(),
                            .part = is_dough ? Part::kDough : Part::kFill,
                            .middle = {from_middle(box.x[i], 0.5 * shape.length),
                                       from_middle(box.y[j], 0.5 * shape.width), 0.5 * (layer.z0 + layer.z1)},
                            .size = {box.x[i].width(), box.y[j].width(), layer.height()}});
    }
  }
  return box;
}

void add_sideways(HeatGrid& grid, const BoxLayer& box) {
  const double high = kQuarters * box.layer->height();
  for (std::size_t i = 0; i < box.x.size(); ++i) {
    for (std::size_t j = 0; j < box.y.size(); ++j) {
      const int cell = box.at(i, j);
      if (cell < 0) continue;
      const auto join = [&](std::size_t k, std::size_t l, const Ring& a, const Ring& b, double width) {
        const int other = box.at(k, l);
        const double slanted = 1.0 + b.lean * b.lean;
        if (other >= 0) grid.faces.push_back({cell, other, width * high * slanted, 0.5 * a.width(), 0.5 * b.width()});
      };
      // Between a whole cell and one the corner cuts, the passage is as wide as the narrower.
      const auto wide = [&](std::size_t k, std::size_t l) { return box.area_at(k, l) / box.x[k].width(); };
      const auto deep = [&](std::size_t k, std::size_t l) { return box.area_at(k, l) / box.y[l].width(); };
      if (i + 1 < box.x.size()) join(i + 1, j, box.x[i], box.x[i + 1], std::min(wide(i, j), wide(i + 1, j)));
      if (j + 1 < box.y.size()) join(i, j + 1, box.y[j], box.y[j + 1], std::min(deep(i, j), deep(i, j + 1)));
    }
  }
}

double overlap(const Ring& a, const Ring& b) {
  return std::max(0.0, std::min(a.to, b.to) - std::max(a.from, b.from));
}

/// Joins two layers cut alike. The grid leans with the walls, so links across the corners go with those straight up, as
/// for rings: see ring_grid.cpp.
void join_leaning(HeatGrid& grid, const BoxLayer& below, const BoxLayer& above) {
  const double rise = 0.5 * (below.layer->height() + above.layer->height());
  // What a rounded corner leaves of a cell, along y for a link in x and the other way round.
  const auto narrowest = [&](std::size_t i, std::size_t j, std::size_t k, std::size_t l, bool along_y) {
    double width = std::numeric_limits<double>::infinity();
    for (const BoxLayer* layer : {&below, &above}) {
      for (const auto& [m, n] : {std::pair{i, j}, std::pair{k, l}}) {
        width = std::min(width, layer->area_at(m, n) / (along_y ? layer->x[m].width() : layer->y[n].width()));
      }
    }
    return width;
  };
  const auto up = [&](std::size_t i, std::size_t j) {
    return kQuarters * 0.5 * (below.area_at(i, j) + above.area_at(i, j)) / rise;
  };
  // `outer` is the first of the two columns along the side that leans.
  const auto both_ways = [&](std::size_t i, std::size_t j, std::size_t k, std::size_t l,
                             const std::vector<Ring>& below_rings, const std::vector<Ring>& above_rings,
                             std::size_t outer, double width) {
    const double run = below_rings[outer].to - above_rings[outer].to;
    const double lean = std::clamp(run / rise, -kFurthestLean, kFurthestLean);
    const auto across = [&](const BoxLayer& layer, const std::vector<Ring>& rings) {
      const double slanted = 1.0 + rings[outer + 1].lean * rings[outer + 1].lean;
      return kQuarters * width * layer.layer->height() * slanted /
             (0.5 * (rings[outer].width() + rings[outer + 1].width()));
    };
    const double corner = bounded_corner(0.5 * kQuarters * lean * width, {.across_below = across(below, below_rings),
                                                                          .across_above = across(above, above_rings),
                                                                          .up_outer = up(i, j),
                                                                          .up_inner = up(k, l)});
    if (corner == 0.0) return;
    grid.faces.push_back({below.at(i, j), above.at(k, l), corner, 0.5, 0.5, 1});
    grid.faces.push_back({below.at(k, l), above.at(i, j), -corner, 0.5, 0.5, -1});
  };
  for (std::size_t i = 0; i < below.x.size(); ++i) {
    for (std::size_t j = 0; j < below.y.size(); ++j) {
      if (below.at(i, j) < 0 || above.at(i, j) < 0) continue;
      const double area = kQuarters * 0.5 * (below.area_at(i, j) + above.area_at(i, j));
      grid.faces.push_back(
          {below.at(i, j), above.at(i, j), area, 0.5 * below.layer->height(), 0.5 * above.layer->height()});
      if (i + 1 < below.x.size() && below.at(i + 1, j) >= 0 && above.at(i + 1, j) >= 0) {
        both_ways(i, j, i + 1, j, below.x, above.x, i, narrowest(i, j, i + 1, j, true));
      }
      if (j + 1 < below.y.size() && below.at(i, j + 1) >= 0 && above.at(i, j + 1) >= 0) {
        both_ways(i, j, i, j + 1, below.y, above.y, j, narrowest(i, j, i, j + 1, false));
      }
    }
  }
}

/// Joins layers that are cut differently, where they overlap.
void join_overlapping(HeatGrid& grid, const BoxLayer& below, const BoxLayer& above) {
  for (std::size_t i = 0; i < below.x.size(); ++i) {
    for (std::size_t j = 0; j < below.y.size(); ++j) {
      const double share = below.area_at(i, j) / (below.x[i].width() * below.y[j].width());
      for (std::size_t k = 0; below.at(i, j) >= 0 && k < above.x.size(); ++k) {
        const double wide = overlap(below.x[i], above.x[k]);
        for (std::size_t l = 0; wide > 0.0 && l < above.y.size(); ++l) {
          const double area = kQuarters * wide * overlap(below.y[j], above.y[l]) * share;
          if (area <= 0.0 || above.at(k, l) < 0) continue;
          grid.faces.push_back(
              {below.at(i, j), above.at(k, l), area, 0.5 * below.layer->height(), 0.5 * above.layer->height()});
        }
      }
    }
  }
}

bool cut_alike(const BoxLayer& a, const BoxLayer& b) {
  const auto same = [](const std::vector<Ring>& p, const std::vector<Ring>& q) {
    return std::equal(p.begin(), p.end(), q.begin(), q.end(),
                      [](const Ring& m, const Ring& n) { return m.part == n.part; });
  };
  return same(a.x, b.x) && same(a.y, b.y);
}

/// What of a layer lies open to the oven's air above; `surface` [m²] in all.
void add_top(HeatGrid& grid, const BoxLayer& layer, const BoxLayer* above, double surface) {
  if (above != nullptr && above->layer->reaches_middle == layer.layer->reaches_middle) return;
  std::vector<std::size_t> open;
  double total = 0.0;
  for (std::size_t c = 0; c < layer.index.size(); ++c) {
    if (layer.index[c] < 0) continue;
    const bool is_dough = grid.cells[static_cast<std::size_t>(layer.index[c])].part == Part::kDough;
    if (above != nullptr && is_dough) continue;
    open.push_back(c);
    total += layer.area[c];
  }
  for (const std::size_t c : open) {
    grid.outer.push_back({layer.index[c], Side::kTop, surface * layer.area[c] / total, 0.5 * layer.layer->height()});
  }
}

/// Shares `surface` [m²] of a whole layer among the outermost (or, for a collar, innermost) cells of each row.
void add_side_faces(HeatGrid& grid, const BoxLayer& box, double surface, double slope, Side side, bool innermost) {
  struct Touch {
    int cell;
    double width, half;
  };
  std::vector<Touch> touches;
  double length = 0.0;
  const auto find = [&](std::size_t count, const auto& at) {
    for (std::size_t k = 0; k < count; ++k) {
      if (at(k) >= 0) return k;
    }
    return count;
  };
  const std::size_t crust = static_cast<std::size_t>(box.layer->stretches.front().cells);
  for (std::size_t j = innermost ? crust : 0; j < box.y.size(); ++j) {
    const std::size_t i = innermost ? crust - 1 : find(box.x.size(), [&](std::size_t k) { return box.at(k, j); });
    if (i < box.x.size() && box.at(i, j) >= 0)
      touches.push_back({box.at(i, j), box.y[j].width(), 0.5 * box.x[i].width()});
  }
  for (std::size_t i = innermost ? crust : 0; i < box.x.size(); ++i) {
    const std::size_t j = innermost ? crust - 1 : find(box.y.size(), [&](std::size_t k) { return box.at(i, k); });
    if (j < box.y.size() && box.at(i, j) >= 0)
      touches.push_back({box.at(i, j), box.x[i].width(), 0.5 * box.y[j].width()});
  }
  for (const Touch& touch : touches) length += touch.width;
  const double cosine = 1.0 / std::sqrt(1.0 + slope * slope);
  for (const Touch& touch : touches) {
    grid.outer.push_back({touch.cell, side, surface * touch.width / length, cosine * touch.half});
  }
}

void add_base(HeatGrid& grid, const BoxLayer& lowest, const Pan& pan) {
  double total = 0.0;
  for (const double area : lowest.area) total += area;
  for (std::size_t c = 0; c < lowest.index.size(); ++c) {
    if (lowest.index[c] < 0) continue;
    grid.outer.push_back(
        {lowest.index[c], Side::kBase, floor_area(pan) * lowest.area[c] / total, 0.5 * lowest.layer->height()});
  }
}

}  // namespace

HeatGrid make_box_grid(const Pan& pan, const LayerPlan& plan) {
  const Rectangle& shape = *std::get_if<Rectangle>(&pan.outline.shape);
  HeatGrid grid;
  std::vector<BoxLayer> layers;
  for (const Layer& layer : plan.layers) {
    layers.push_back(make_box_layer(grid, shape, pan, layer));
    add_sideways(grid, layers.back());
  }
  const auto wall_surface = [](const Pan& p, double z0, double z1) {
    return surface_between(p.outline.curve, p.wall, Lean::kInwards, z0, z1);
  };
  for (std::size_t i = 0; i < layers.size(); ++i) {
    const Layer& layer = *layers[i].layer;
    const BoxLayer* above = i + 1 < layers.size() ? &layers[i + 1] : nullptr;
    if (above != nullptr && cut_alike(layers[i], *above)) {
      join_leaning(grid, layers[i], *above);
    } else if (above != nullptr) {
      join_overlapping(grid, layers[i], *above);
    }
    // A crust that stands above the filling leaves the cavity open; its own top is what is left of the pan.
    const bool is_crust_top = above == nullptr && !layer.reaches_middle;
    const double opening = is_crust_top
                               ? surface_area(pan, layer.z1) - surface_area(plan.cavity, layer.z1 - plan.cavity_floor)
                           : above == nullptr ? surface_area(pan, layer.z1)
                                              : surface_area(plan.cavity, layer.z1 - plan.cavity_floor);
    add_top(grid, layers[i], above, opening);
    const double slope = (pan.wall.inset(layer.z0) - pan.wall.inset(layer.z1)) / layer.height();
    add_side_faces(grid, layers[i], wall_surface(pan, layer.z0, layer.z1), slope, Side::kWall, false);
    if (!layer.reaches_middle) {
      const double inside = wall_surface(plan.cavity, layer.z0 - plan.cavity_floor, layer.z1 - plan.cavity_floor);
      add_side_faces(grid, layers[i], inside, slope, Side::kTop, true);
    }
  }
  add_base(grid, layers.front(), pan);
  return grid;
}

}  // namespace tinwright
