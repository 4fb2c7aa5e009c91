// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The temperatures of the air and of the food against time, with the band in which it comes out of the oven.
#include <algorithm>
#include <array>
#include <cmath>

#include "app/plan/axis.h"
#include "app/plan/drawing_words.h"
#include "app/view/drawing.h"
#include "app/view/views.h"

namespace tinwright::view {
namespace {

constexpr float kHeight = 14.0f;                                            // [em]
constexpr float kLeft = 2.4f, kRight = 4.4f, kAbove = 2.6f, kBelow = 1.9f;  // [em] round the lines
constexpr float kMarkHeight = 1.5f, kMarkWidth = 4.3f;                      // [em] that a mark's text needs
constexpr float kLabelHeight = 1.2f;                                        // [em]

/// A line of the curve: what it is called at its end, and its dashes [em].
struct Line {
  const char* name;
  double CurvePoint::*temperature;
  float dash, gap, thickness;
};
constexpr std::array kLines{Line{"air", &CurvePoint::air, 0.12f, 0.3f, 0.12f},
                            Line{"average", &CurvePoint::mean, 0.6f, 0.35f, 0.12f},
                            Line{"core", &CurvePoint::core, 1.0f, 0.0f, 0.16f}};

Colour ink_of(const Line& line) {
  const Palette& p = surface().palette();
  return line.temperature == &CurvePoint::air ? p.soft_ink : line.temperature == &CurvePoint::mean ? p.ink : p.accent;
}

struct Axes {
  Rect area;         // window px
  double end = 0.0;  // [s]
  std::vector<Mark> degrees, times;

  float x(double time) const { return area.x + static_cast<float>(time / end) * area.width; }
  float y(double temperature) const {
    const double low = degrees.front().at, high = degrees.back().at;
    return area.bottom() - static_cast<float>((temperature - low) / (high - low)) * area.height;
  }
};

Axes axes_for(const Rect& rect, const OvenAnswer& answer, bool with_cooling, UnitChoice units) {
  const Surface& s = surface();
  Axes axes;
  axes.area = {rect.x + s.px(kLeft), rect.y + s.px(kAbove), rect.width - s.px(kLeft + kRight),
               rect.height - s.px(kAbove + kBelow)};
  axes.end = curve_end(answer, with_cooling);
  const auto [low, high] = curve_range(answer, axes.end);
  axes.degrees = temperature_marks(low, high, units, static_cast<int>(axes.area.height / s.px(kMarkHeight)));
  axes.times = time_marks(axes.end, 1 + static_cast<int>(axes.area.width / s.px(kMarkWidth)));
  return axes;
}

/// Text that ends (or with `on_left` begins) at x, its middle at y.
void text_beside(float x, float y, bool on_left, Colour colour, std::string_view text) {
  Surface& s = surface();
  const Rect size = s.text_size(s.faces().small, text);
  s.text(s.faces().small, on_left ? x : x - size.width, y - 0.5f * size.height + s.viewport().scroll, colour, text);
}

/// A caption as near to `x` as the rectangle lets it.
void caption_within(const Rect& rect, float x, float y, std::string_view text) {
  const Surface& s = surface();
  const float half = 0.5f * s.text_size(s.faces().small, text).width;
  caption({std::clamp(x, rect.x + half, std::max(rect.x + half, rect.right() - half)), y}, text);
}

void draw_axes(ImDrawList& draw, const Rect& rect, const Axes& axes, UnitChoice units) {
  const Surface& s = surface();
  const Palette& p = s.palette();
  for (const Mark& mark : axes.degrees) {
    const float y = std::round(axes.y(mark.at));
    draw.AddLine({axes.area.x, y}, {axes.area.right(), y}, packed(p.rule), s.hairline());
    text_beside(axes.area.x - s.px(0.4f), y, false, p.ink, mark.text);
  }
  text_beside(axes.area.x - s.px(0.4f), axes.area.y - s.px(1.2f), false, p.soft_ink, degree_name(units));
  for (const Mark& mark : axes.times) {
    const float x = std::round(axes.x(mark.at));
    draw.AddLine({x, axes.area.bottom()}, {x, axes.area.bottom() + s.px(0.25f)}, packed(p.line), s.hairline());
    caption_within(rect, x, axes.area.bottom() + s.px(1.1f), mark.text);
  }
  draw.AddLine({axes.area.x, axes.area.bottom()}, {axes.area.right(), axes.area.bottom()}, packed(p.line),
               s.hairline());
}

/// When it comes out: the band from early to late, and the likeliest time.
void draw_band(ImDrawList& draw, const Axes& axes, const OvenAnswer& answer) {
  const Surface& s = surface();
  const Palette& p = s.palette();
  const float top = axes.area.y, bottom = axes.area.bottom();
  if (answer.late > answer.early) {
    const float from = axes.x(answer.early), to = axes.x(answer.late);
    draw.AddRectFilled({from, top}, {to, bottom}, packed(p.caution, 0.16f));
    for (const float x : {from, to}) {
      draw.AddLine({std::round(x), top}, {std::round(x), bottom}, packed(p.caution, 0.6f), s.hairline());
    }
  }
  const float x = std::round(axes.x(answer.oven_ends));
  draw.AddLine({x, top - s.px(0.3f)}, {x, bottom}, packed(p.caution), 2.0f * s.hairline());
  caption_within({axes.area.x, 0.0f, axes.area.width + s.px(kRight), 0.0f}, x, top - s.px(1.2f), "comes out");
}

/// The names at the right end of the lines, moved apart where they would overlap.
void draw_names(const Axes& axes, std::array<float, kLines.size()> heights) {
  const Surface& s = surface();
  std::array<std::size_t, kLines.size()> order{0, 1, 2};
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return heights[a] < heights[b]; });
  const float apart = s.px(kLabelHeight);
  for (std::size_t i = order.size(); i-- > 0;) {  // from the lowest up, and so never below the axis
    const float most = i + 1 == order.size() ? axes.area.bottom() : heights[order[i + 1]] - apart;
    heights[order[i]] = std::min(heights[order[i]], most);
  }
  for (std::size_t i = 0; i < kLines.size(); ++i) {
    text_beside(axes.area.right() + s.px(0.4f), heights[i], true, ink_of(kLines[i]), kLines[i].name);
  }
}

void draw_lines(ImDrawList& draw, const Axes& axes, const OvenAnswer& answer) {
  const Surface& s = surface();
  std::array<float, kLines.size()> ends{};
  draw.PushClipRect({axes.area.x, axes.area.y - s.px(0.2f)}, {axes.area.right(), axes.area.bottom() + s.px(0.2f)},
                    true);
  for (std::size_t i = 0; i < kLines.size(); ++i) {
    const Line& line = kLines[i];
    std::vector<ImVec2> points;
    for (const CurvePoint& point : answer.curve) {
      points.emplace_back(axes.x(point.time), axes.y(point.*line.temperature));
      if (point.time >= axes.end) break;
    }
    // The last stretch may go on beyond the edge; the line's name stands where it crosses.
    ends[i] = points.back().y;
    if (points.size() > 1 && points.back().x > axes.area.right()) {
      const ImVec2 before = points[points.size() - 2], after = points.back();
      const float along = (axes.area.right() - before.x) / (after.x - before.x);
      ends[i] = std::lerp(before.y, after.y, along);
    }
    dashed_path(draw, points, s.px(line.dash), s.px(line.gap), ink_of(line), s.px(line.thickness));
  }
  draw.PopClipRect();
  draw_names(axes, ends);
}

void draw_moment(ImDrawList& draw, const Axes& axes, double moment) {
  const Surface& s = surface();
  if (moment < 0.0 || moment > axes.end) return;
  const float x = std::round(axes.x(moment)), bottom = axes.area.bottom(), side = s.px(0.28f);
  const ImU32 ink = packed(s.palette().ink);
  draw.AddLine({x, axes.area.y}, {x, bottom}, ink, s.hairline());
  draw.AddTriangleFilled({x, bottom}, {x - side, bottom + 1.4f * side}, {x + side, bottom + 1.4f * side}, ink);
}

}  // namespace

void show_curve(const OvenAnswer& answer, OvenLook& look, double moment, UnitChoice units) {
  const bool has_cooling = goes_on_cooling(answer);
  const bool with_cooling = has_cooling && look.shows_cooling;
  heading("curve/title", "Temperatures", 3);
  if (has_cooling) {
    int span = look.shows_cooling ? 1 : 0;
    if (segments("curve/span", "Time shown", span, {"In the oven", "With cooling"})) look.shows_cooling = span == 1;
  }
  picture("curve", curve_words(answer, with_cooling, units), 0.0f, kHeight, [&](ImDrawList& draw, const Rect& rect) {
    const Axes axes = axes_for(rect, answer, with_cooling, units);
    draw_axes(draw, rect, axes, units);
    draw_band(draw, axes, answer);
    draw_moment(draw, axes, moment);
    draw_lines(draw, axes, answer);
  });
  std::string legend = "Plain line: the core, which warms last. Dashes: the food on average. Dots: the air.";
  if (answer.late > answer.early) legend += " Shaded: when it may be ready.";
  remark("curve/legend", legend);
}

}  // namespace tinwright::view
