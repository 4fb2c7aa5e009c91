// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// My pan cut through its middle, to scale, and its right-hand edge enlarged, where the thicknesses can be read.
#include <algorithm>

#include "app/view/drawing.h"
#include "app/view/views.h"

namespace tinwright::view {
namespace {

constexpr float kTallestWhole = 24.0f;  // [em] of the whole cut
constexpr float kUnderWhole = 2.8f;     // [em] for the dimension under it
constexpr float kTallestEdge = 13.0f;   // [em] of the enlarged edge
constexpr float kRoundEdge = 3.4f;      // [em] above and below it
constexpr float kSideMargin = 1.0f;     // [em]
constexpr float kLeftOfEdge = 5.0f;     // [em] room for the figures beside the enlarged edge
constexpr float kRightOfEdge = 5.5f;    // [em]
constexpr double kLeastShown = 0.03;    // [m] of the floor at the enlarged edge

Loops mirrored(const Loops& loops) {
  Loops both = loops;
  for (const Loop& loop : loops) {
    Loop& copy = both.emplace_back(loop);
    for (glm::dvec2& p : copy) p.x = -p.x;
  }
  return both;
}

void draw_layers(ImDrawList& draw, const Scale& scale, const Picture& picture, bool both_halves) {
  const Surface& s = surface();
  const Palette& palette = s.palette();
  const auto sides = [&](const Loops& loops) { return both_halves ? mirrored(loops) : loops; };
  fill_loops(draw, scale, sides(picture.filling), palette.caution, 0.30f);
  fill_loops(draw, scale, sides(picture.dough), palette.accent, 0.22f);
  hatch_loops(draw, scale, sides(picture.dough), palette.accent, s.px(0.35f));
  if (picture.tray > 0.0) {
    const double from = both_halves ? -picture.tray : 0.0;
    draw.AddLine(scale.at(from, 0.0), scale.at(picture.tray, 0.0), packed(palette.line), s.hairline());
  }
  for (const Loop& line : sides(picture.pan_edge)) stroke_line(draw, scale, line, palette.ink, 3.0f * s.hairline());
}

std::string description(const BenchAnswer& answer, UnitChoice units) {
  std::string text = "My pan cut through the middle, to scale: " + format_both_lengths(answer.picture->length, units) +
                     " across, " + format_both_lengths(answer.picture->depth, units) + " deep";
  if (answer.press)
    text += "; dough " + format_both_lengths(answer.press->floor_thickness, units) + " thick on the floor";
  if (answer.press && answer.press->wall_thickness > 0.0) {
    text += " and " + format_both_lengths(answer.press->wall_thickness, units) + " up the wall";
  }
  if (answer.fill) text += "; filled to " + format_both_lengths(answer.fill->below_rim, units) + " below the top";
  return text;
}

double whole_scale(const Picture& picture, float width) {
  const Surface& s = surface();
  return std::min((width - 2.0f * s.px(kSideMargin)) / picture.length,
                  (s.px(kTallestWhole) - s.px(kUnderWhole)) / picture.depth);
}

void draw_whole(ImDrawList& draw, const Rect& rect, const Picture& picture, UnitChoice units) {
  const Surface& s = surface();
  const double px_per_m = whole_scale(picture, rect.width);
  const Scale scale{{rect.x + 0.5f * rect.width, rect.y + rect.height - s.px(1.9f)}, px_per_m};
  draw_layers(draw, scale, picture, true);
  const double below = -s.px(0.5f) / px_per_m;
  dimension(draw, scale.at(-0.5 * picture.length, below), scale.at(0.5 * picture.length, below),
            format_both_lengths(picture.length, units), true);
}

/// The scale at which the edge is enlarged in `width` device px, and how much of its half is shown [m].
struct EdgeScale {
  double px_per_m, shown;
};

EdgeScale edge_scale(const Picture& picture, float width) {
  const Surface& s = surface();
  const double shown = std::min(0.5 * picture.length, std::max(0.8 * picture.depth, kLeastShown) + picture.wall_run);
  const double by_height = (s.px(kTallestEdge) - s.px(kRoundEdge)) / picture.depth;
  return {std::min(by_height, (width - s.px(kLeftOfEdge + kRightOfEdge)) / shown), shown};
}

/// The figures left of the enlarged edge: from the filling up to the top, and the dough on the floor.
void draw_gauges(ImDrawList& draw, const Scale& scale, float left, float right, const BenchAnswer& answer,
                 UnitChoice units) {
  const Surface& s = surface();
  const Palette& palette = s.palette();
  const Picture& picture = *answer.picture;
  const auto height = [&](double y) { return scale.at(0.0, y).y; };
  const float gauge = left - s.px(0.5f);
  if (answer.fill) {
    dashes(draw, {left, height(picture.level)}, {right, height(picture.level)}, palette.caution, 2.0f * s.hairline());
    draw.AddLine({left, height(picture.top)}, {right, height(picture.top)}, packed(palette.rule), s.hairline());
    dimension(draw, {gauge, height(picture.level)}, {gauge, height(picture.top)},
              format_length(answer.fill->below_rim, units), false);
    if (picture.risen_level > picture.level) {
      dashes(draw, {left, height(picture.risen_level)}, {right, height(picture.risen_level)}, palette.soft_ink,
             s.hairline());
    }
  }
  if (answer.press) {
    dimension(draw, {gauge, height(0.0)}, {gauge, height(picture.floor_thickness)},
              format_length(picture.floor_thickness, units), false);
  }
}

void draw_edge(ImDrawList& draw, const Rect& rect, const BenchAnswer& answer, UnitChoice units) {
  const Surface& s = surface();
  const Picture& picture = *answer.picture;
  const auto [px_per_m, shown] = edge_scale(picture, rect.width);
  const double half = 0.5 * picture.length;
  const float left = rect.x + s.px(kLeftOfEdge);
  const float right = left + static_cast<float>(shown * px_per_m);
  const Scale scale{{right - static_cast<float>(half * px_per_m), rect.y + rect.height - s.px(2.2f)}, px_per_m};
  draw.PushClipRect({left, rect.y}, {rect.right(), rect.bottom()}, true);
  draw_layers(draw, scale, picture, false);
  draw.PopClipRect();
  draw_gauges(draw, scale, left, right, answer, units);
  const float floor = scale.at(0.0, 0.0).y;
  const float beside = right + s.px(0.8f);
  dimension(draw, {beside, floor}, {beside, scale.at(0.0, picture.depth).y}, format_length(picture.depth, units), true);
  caption({0.5f * (left + right), floor + s.px(1.0f)}, "the edge, enlarged");
}

}  // namespace

void show_section(const BenchAnswer& answer, UnitChoice units) {
  const Surface& s = surface();
  const Picture& drawn = *answer.picture;
  const double whole = whole_scale(drawn, s.width()) * drawn.depth;
  const double edge = edge_scale(drawn, s.width()).px_per_m * drawn.depth;
  const auto em = [&](double px) { return static_cast<float>(px) / s.px(1.0f); };
  const std::string words = description(answer, units);
  heading("section/title", "Cut through", 3);
  picture("section", words, 0.0f, em(whole) + kUnderWhole,
          [&](ImDrawList& draw, const Rect& rect) { draw_whole(draw, rect, drawn, units); });
  picture("edge", "The edge of the cut, enlarged. " + words, 0.0f, em(edge) + kRoundEdge,
          [&](ImDrawList& draw, const Rect& rect) { draw_edge(draw, rect, answer, units); });
  std::string legend;
  if (answer.press) legend = "Hatched: dough. ";
  if (answer.fill) legend += "Plain: filling, up to the dashed line. ";
  if (drawn.risen_level > drawn.level) legend += "Thin dashes: once risen.";
  if (!legend.empty()) remark("section/legend", legend);
}

}  // namespace tinwright::view
