// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See picture.h.
#include "app/plan/picture.h"

#include <cmath>

#include "geometry/section.h"

namespace tinwright {
namespace {

/// [-] How far a ring's tray is drawn beyond the ring.
constexpr double kTrayMargin = 1.03;

Loop raised(Loop loop, double by) {
  for (glm::dvec2& p : loop) p.y += by;
  return loop;
}

Loops shrunk(Loops loops, double by) {
  for (Loop& loop : loops) {
    for (glm::dvec2& p : loop) p *= by;
  }
  return loops;
}

void draw_pan(Picture& picture, const Pan& pan) {
  const double half = 0.5 * pan.outline.length;
  picture.rim = outline_loops(pan.outline, 0.0);
  picture.floor = outline_loops(pan.outline, pan.wall.floor_inset());
  Loop wall;
  if (pan.bottomless) {
    picture.tray = kTrayMargin * half;
  } else {
    wall.emplace_back(pan.core ? 0.5 * pan.core->outline.length + pan.core->wall.floor_inset() : 0.0, 0.0);
  }
  for (const glm::dvec2 p : wall_line(pan.wall, depth(pan))) wall.emplace_back(half - p.x, p.y);
  picture.pan_edge.push_back(wall);
  if (!pan.core) return;
  picture.core = outline_loops(pan.core->outline, 0.0);
  Loop core;
  for (const glm::dvec2 p : wall_line(pan.core->wall, depth(pan))) {
    core.emplace_back(0.5 * pan.core->outline.length + p.x, p.y);
  }
  picture.pan_edge.push_back(core);
}

/// Returns the height of the cavity's floor above the pan's.
double draw_dough(Picture& picture, const Pan& pan, const PressJob& job, const PressAnswer& press) {
  picture.floor_thickness = press.floor_thickness;
  const double share = std::sqrt(press.coverage);
  const SlabExtent band = slab_extent(pan, press.coverage);
  if (pan.core && press.coverage < 1.0) {  // a band round the core
    picture.dough_above = shrunk(picture.floor, band.length / (pan.outline.length - 2.0 * pan.wall.floor_inset()));
  } else {
    picture.dough_above = shrunk(picture.floor, share);
  }
  picture.dough_above.insert(picture.dough_above.end(), picture.core.begin(), picture.core.end());
  const auto crust = crust_of(job, press);
  if (!crust) {
    const double reach = pan.core ? 0.5 * band.length : (0.5 * pan.outline.length - pan.wall.floor_inset()) * share;
    const double core = pan.core ? 0.5 * pan.core->outline.length + pan.core->wall.floor_inset() : 0.0;
    if (reach > core) {
      picture.dough.push_back(
          {{core, 0.0}, {reach, 0.0}, {reach, press.floor_thickness}, {core, press.floor_thickness}});
    }
    return 0.0;
  }
  picture.dough.push_back(section_half(pan, crust->height));
  if (job.question.cover == Cover::kFloorAndWall) picture.top = crust->height;
  const auto cavity = line_pan(pan, *crust);
  if (!cavity) return 0.0;
  const double cavity_floor = crust->height - depth(*cavity);
  picture.dough.push_back(raised(section_half(*cavity, depth(*cavity)), cavity_floor));
  return cavity_floor;
}

}  // namespace

Loops mirrored(const Loops& loops) {
  Loops both = loops;
  for (const Loop& loop : loops) {
    Loop& copy = both.emplace_back(loop);
    for (glm::dvec2& p : copy) p.x = -p.x;
  }
  return both;
}

Picture draw_picture(const Pan& pan, const PressJob* press_job, const PressAnswer* press, const FillJob* fill_job,
                     const FillAnswer* fill) {
  Picture picture;
  picture.length = pan.outline.length;
  picture.width = pan.outline.width;
  picture.depth = depth(pan);
  picture.wall_run = pan.wall.floor_inset();
  picture.top = picture.depth;
  draw_pan(picture, pan);
  const double cavity_floor = press != nullptr ? draw_dough(picture, pan, *press_job, *press) : 0.0;
  if (fill != nullptr) {
    picture.level = cavity_floor + fill->height;
    picture.risen_level = cavity_floor + fill->risen_height;
    picture.filling.push_back(raised(section_half(fill_job->cavity, fill->height), cavity_floor));
  }
  return picture;
}

}  // namespace tinwright
