// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// My pan cut through its middle, to scale, and its right-hand edge enlarged, where the thicknesses can be read.
#include <algorithm>
#include <cmath>

#include "app/view/drawing.h"
#include "app/view/views.h"
#include "geometry/section.h"

namespace tinwright::view {
namespace {

constexpr float kEdgeHeight = 13.0f;  // [em] at most
constexpr float kRoundEdge = 3.4f;    // [em] above and below the enlarged edge
constexpr float kSideMargin = 1.0f;   // [em]
constexpr float kLeftOfEdge = 5.0f;   // [em] room for the figures beside the enlarged edge
constexpr float kRightOfEdge = 5.5f;  // [em]

/// What fills the pan, as closed loops of the right-hand half, y from the pan's floor.
struct Layers {
  Loops pan_edge;  // open lines: wall (and core)
  Loops dough, filling;
  double top = 0.0;         // of the crust, or the pan
  double cavity_floor = 0.0;
  double fill_level = 0.0;  // above the pan's floor; 0 without filling
  double risen_level = 0.0;
  double tray = 0.0;        // half the width of the tray a bottomless ring stands on; 0 without
};

std::vector<glm::dvec2> raised(std::vector<glm::dvec2> loop, double by) {
  for (glm::dvec2& p : loop) p.y += by;
  return loop;
}

Layers layers_of(const BenchAnswer& answer) {
  const Pan& pan = *answer.my_pan;
  Layers layers;
  layers.top = depth(pan);
  const double half = 0.5 * pan.outline.length;
  std::vector<glm::dvec2> wall{{pan.core ? 0.5 * pan.core->outline.length + pan.core->wall.floor_inset() : 0.0, 0.0}};
  if (pan.bottomless) {
    wall.clear();
    layers.tray = 1.03 * half;
  }
  for (const glm::dvec2 p : wall_line(pan.wall, depth(pan))) wall.emplace_back(half - p.x, p.y);
  layers.pan_edge.push_back(wall);
  if (pan.core) {
    std::vector<glm::dvec2> core;
    for (const glm::dvec2 p : wall_line(pan.core->wall, depth(pan))) core.emplace_back(0.5 * pan.core->outline.length + p.x, p.y);
    layers.pan_edge.push_back(core);
  }

  if (answer.press) {
    const auto crust = crust_of(*answer.press_job, *answer.press);
    if (crust) {
      layers.dough.push_back(section_half(pan, crust->height));
      const auto cavity = line_pan(pan, *crust);
      if (cavity) {
        layers.cavity_floor = crust->height - depth(*cavity);
        layers.dough.push_back(raised(section_half(*cavity, depth(*cavity)), layers.cavity_floor));
      }
      if (answer.press_job->question.cover == Cover::kFloorAndWall) layers.top = crust->height;
    } else if (answer.press->coverage > 0.0) {
      const double reach = (half - pan.wall.floor_inset()) * std::sqrt(answer.press->coverage);
      const double thick = answer.press->floor_thickness;
      layers.dough.push_back({{0.0, 0.0}, {reach, 0.0}, {reach, thick}, {0.0, thick}});
    }
  }
  if (answer.fill) {
    const Pan& cavity = answer.fill_job->cavity;
    layers.fill_level = layers.cavity_floor + answer.fill->height;
    layers.risen_level = layers.cavity_floor + answer.fill->risen_height;
    layers.filling.push_back(raised(section_half(cavity, answer.fill->height), layers.cavity_floor));
  }
  return layers;
}

Loops mirrored(const Loops& loops) {
  Loops both = loops;
  for (const auto& loop : loops) {
    auto& copy = both.emplace_back(loop);
    for (glm::dvec2& p : copy) p.x = -p.x;
  }
  return both;
}

void draw_layers(ImDrawList& draw, const Scale& scale, const Layers& layers, bool both_halves) {
  const Surface& s = surface();
  const Palette& palette = s.palette();
  const auto sides = [&](const Loops& loops) { return both_halves ? mirrored(loops) : loops; };
  fill_loops(draw, scale, sides(layers.filling), palette.caution, 0.30f);
  fill_loops(draw, scale, sides(layers.dough), palette.accent, 0.22f);
  hatch_loops(draw, scale, sides(layers.dough), palette.accent, s.px(0.35f));
  if (layers.tray > 0.0) {
    const ImVec2 end = scale.at(layers.tray, 0.0);
    draw.AddLine(scale.at(both_halves ? -layers.tray : 0.0, 0.0), end, packed(palette.line), s.hairline());
  }
  for (const auto& line : sides(layers.pan_edge)) stroke_line(draw, scale, line, palette.ink, 3.0f * s.hairline());
}

std::string description(const BenchAnswer& answer, UnitChoice units) {
  std::string text = "My pan cut through the middle, to scale: " + format_both_lengths(answer.my_pan->outline.length, units) +
                     " across, " + format_both_lengths(depth(*answer.my_pan), units) + " deep";
  if (answer.press) text += "; dough " + format_both_lengths(answer.press->floor_thickness, units) + " thick on the floor";
  if (answer.press && answer.press->wall_thickness > 0.0) {
    text += " and " + format_both_lengths(answer.press->wall_thickness, units) + " up the wall";
  }
  if (answer.fill) text += "; filled to " + format_both_lengths(answer.fill->below_rim, units) + " below the top";
  return text;
}

void draw_whole(ImDrawList& draw, const Rect& rect, const Pan& pan, const Layers& layers, UnitChoice units) {
  const Surface& s = surface();
  const double scale_px = (rect.width - 2.0f * s.px(kSideMargin)) / pan.outline.length;
  const Scale scale{{rect.x + 0.5f * rect.width, rect.y + rect.height - s.px(1.9f)}, scale_px};
  draw_layers(draw, scale, layers, true);
  const double below = -s.px(0.5f) / scale_px;
  dimension(draw, scale.at(-0.5 * pan.outline.length, below), scale.at(0.5 * pan.outline.length, below),
            format_both_lengths(pan.outline.length, units), true);
}

/// [px/m] at which `pan`'s edge is enlarged in `width` device px, and how much of its half is shown [m].
struct EdgeScale {
  double px_per_m, shown;
};

EdgeScale edge_scale(const Pan& pan, float width) {
  const Surface& s = surface();
  const double shown = std::min(0.5 * pan.outline.length, 1.6 * depth(pan));
  const double by_height = (s.px(kEdgeHeight) - s.px(kRoundEdge)) / depth(pan);
  return {std::min(by_height, (width - s.px(kLeftOfEdge + kRightOfEdge)) / shown), shown};
}

/// The fill line and what is written beside the enlarged edge.
void draw_edge(ImDrawList& draw, const Rect& rect, const BenchAnswer& answer, const Layers& layers, UnitChoice units) {
  const Surface& s = surface();
  const Palette& palette = s.palette();
  const Pan& pan = *answer.my_pan;
  const double half = 0.5 * pan.outline.length;
  const auto [scale_px, shown] = edge_scale(pan, rect.width);
  const float right = rect.x + s.px(kLeftOfEdge) + static_cast<float>(shown * scale_px);
  const Scale scale{{right - static_cast<float>(half * scale_px), rect.y + rect.height - s.px(2.2f)}, scale_px};
  const float left = right - static_cast<float>(shown * scale_px);
  draw.PushClipRect({left, rect.y}, {rect.right(), rect.bottom()}, true);
  draw_layers(draw, scale, layers, false);
  draw.PopClipRect();

  const ImVec2 floor = scale.at(half, 0.0);
  dimension(draw, {right + s.px(0.8f), floor.y}, {right + s.px(0.8f), scale.at(0, depth(pan)).y},
            format_length(depth(pan), units), true);
  const float gauge = left - s.px(0.5f);
  if (answer.fill) {
    const float level = scale.at(0, layers.fill_level).y;
    const float top = scale.at(0, layers.top).y;
    dashes(draw, {left, level}, {right, level}, palette.caution, 2.0f * s.hairline());
    draw.AddLine({left, top}, {right, top}, packed(palette.rule), s.hairline());
    dimension(draw, {gauge, level}, {gauge, top}, format_length(answer.fill->below_rim, units), false);
    if (layers.risen_level > layers.fill_level) {
      const float risen = scale.at(0, layers.risen_level).y;
      dashes(draw, {left, risen}, {right, risen}, palette.soft_ink, s.hairline());
    }
  }
  if (answer.press && answer.press->reaches_edges) {
    const float dough = scale.at(0, answer.press->floor_thickness).y;
    dimension(draw, {gauge, floor.y}, {gauge, dough}, format_length(answer.press->floor_thickness, units), false);
  }
  caption({0.5f * (left + right), floor.y + s.px(1.0f)}, "the edge, enlarged");
}

}  // namespace

void show_section(const BenchAnswer& answer, UnitChoice units) {
  const Surface& s = surface();
  const Pan& pan = *answer.my_pan;
  const Layers layers = layers_of(answer);
  const double drawn = (s.width() - 2.0f * s.px(kSideMargin)) * depth(pan) / pan.outline.length;
  const float height = std::min(24.0f, static_cast<float>(drawn) / s.px(1.0f) + 2.8f);
  const float edge_height = static_cast<float>(edge_scale(pan, s.width()).px_per_m * depth(pan)) / s.px(1.0f) + kRoundEdge;
  heading("section/title", "Cut through", 3);
  picture("section", description(answer, units), 0.0f, height,
          [&](ImDrawList& draw, const Rect& rect) { draw_whole(draw, rect, pan, layers, units); });
  picture("edge", "The edge of the cut, enlarged. " + description(answer, units), 0.0f, edge_height,
          [&](ImDrawList& draw, const Rect& rect) { draw_edge(draw, rect, answer, layers, units); });
  remark("section/legend", answer.fill && answer.fill->risen_height > answer.fill->height
                               ? "Hatched: dough. Plain: filling, up to the thick dashed line; thin dashes: once risen."
                               : "Hatched: dough. Plain: filling, up to the dashed line.");
}

}  // namespace tinwright::view
