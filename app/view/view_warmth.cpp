// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The temperatures within the food at one moment, on the cut through its middle.
#include <algorithm>
#include <cmath>

#include "app/plan/axis.h"
#include "app/view/drawing.h"
#include "app/view/views.h"
#include "app/view/warmth.h"

namespace tinwright::view {
namespace {

constexpr float kTallest = 20.0f;     // [em] of the cut
constexpr float kSideMargin = 1.0f;   // [em]
constexpr float kRound = 0.6f;        // [em] above and below a cut, for its outline and the ring
constexpr float kUnderEdge = 1.8f;    // [em] for the words under the enlarged edge
constexpr double kEdgeHeights = 3.0;  // how many times its height of shallow food is shown enlarged
constexpr float kShallow = 5.0f;      // [em] a cut as high as this can be read without its edge enlarged
constexpr double kWorthwhile = 1.5;   // an edge enlarged by less is left out
constexpr float kLegend = 0.9f;       // [em] high
constexpr float kUnderLegend = 1.6f;  // [em] for its figures
constexpr float kMarkWidth = 4.0f;    // [em] that a figure needs
constexpr double kAlike = 0.02;       // of the ramp: with less between them, no place is marked as the coldest

struct Extremes {
  std::size_t coldest = 0, warmest = 0;  // patches
};

Extremes extremes_of(const std::vector<double>& frame) {
  const auto [low, high] = std::minmax_element(frame.begin(), frame.end());
  return {static_cast<std::size_t>(low - frame.begin()), static_cast<std::size_t>(high - frame.begin())};
}

double share_of(const OvenAnswer& answer, double temperature) {
  const double span = answer.warmest_shown - answer.coldest_shown;
  return span > 0.0 ? (temperature - answer.coldest_shown) / span : 0.0;
}

/// The food's half that the patches make up [m].
struct Extent {
  double half = 0.0, height = 0.0;
};

Extent extent_of(const std::vector<Patch>& patches) {
  Extent extent;
  for (const Patch& patch : patches) {
    extent.half = std::max(extent.half, patch.x + patch.width);
    extent.height = std::max(extent.height, patch.y + patch.height);
  }
  return extent;
}

/// How the cut is drawn: whole, or only the part next to the wall [m], enlarged.
struct Zoom {
  double px_per_m = 1.0, shown = 0.0;
};

Zoom zoom_to(const Extent& food, double shown, float width) {
  const Surface& s = surface();
  return {std::min((width - 2.0f * s.px(kSideMargin)) / shown, s.px(kTallest) / food.height), shown};
}

Zoom whole_zoom(const Extent& food, float width) {
  return zoom_to(food, 2.0 * food.half, width);
}

Zoom edge_zoom(const Extent& food, float width) {
  return zoom_to(food, std::min(food.half, kEdgeHeights * food.height), width);
}

/// Both halves of a patch, on whole pixels so that neighbours leave no seam, and larger by `out` on every side.
void fill_patch(ImDrawList& draw, const Scale& scale, const Patch& patch, ImU32 colour, float out) {
  for (const double side : {-1.0, 1.0}) {
    const ImVec2 a = scale.at(side * patch.x, patch.y);
    const ImVec2 b = scale.at(side * (patch.x + patch.width), patch.y + patch.height);
    draw.AddRectFilled({std::round(std::min(a.x, b.x)) - out, std::round(b.y) - out},
                       {std::round(std::max(a.x, b.x)) + out, std::round(a.y) + out}, colour);
  }
}

/// First all of it in ink and a little larger, then the colours: that leaves an outline. The dough comes after the
/// filling and so has one of its own.
void draw_patches(ImDrawList& draw, const Scale& scale, const OvenAnswer& answer, const std::vector<double>& frame) {
  const std::size_t count = std::min(answer.patches.size(), frame.size());
  const float line = surface().hairline();
  const ImU32 ink = packed(surface().palette().ink);
  for (const bool is_dough : {false, true}) {
    for (std::size_t i = 0; i < count; ++i) {
      if (answer.patches[i].is_dough == is_dough) fill_patch(draw, scale, answer.patches[i], ink, line);
    }
    for (std::size_t i = 0; i < count; ++i) {
      if (answer.patches[i].is_dough != is_dough) continue;
      fill_patch(draw, scale, answer.patches[i], packed(warmth(share_of(answer, frame[i]))), 0.0f);
    }
  }
}

/// A ring round the coldest place; in both halves, unless it lies in the middle. Left out where it would be cut off at
/// `left`.
void draw_coldest(ImDrawList& draw, const Scale& scale, const Patch& patch, float left) {
  const Surface& s = surface();
  const float radius = s.px(0.36f);
  const bool is_middle = patch.x <= 0.5 * patch.width;
  const double x = is_middle ? 0.0 : patch.x + 0.5 * patch.width;
  for (const double side : {-1.0, 1.0}) {
    const ImVec2 centre = scale.at(side * x, patch.y + 0.5 * patch.height);
    if (centre.x - radius < left) continue;
    draw.AddCircle(centre, radius, packed({0, 0, 0}), 32, s.px(0.22f));
    draw.AddCircle(centre, radius, packed({255, 255, 255}), 32, s.px(0.1f));
    if (is_middle) break;
  }
}

void draw_cut(ImDrawList& draw, const Scale& scale, const OvenAnswer& answer, const std::vector<double>& frame,
              float left) {
  draw_patches(draw, scale, answer, frame);
  const Extremes extremes = extremes_of(frame);
  const double spread = share_of(answer, frame[extremes.warmest]) - share_of(answer, frame[extremes.coldest]);
  if (spread > kAlike) draw_coldest(draw, scale, answer.patches[extremes.coldest], left);
}

void draw_whole(ImDrawList& draw, const Rect& rect, const OvenAnswer& answer, const Extent& food,
                const std::vector<double>& frame) {
  const float floor = rect.bottom() - surface().px(kRound);
  draw_cut(draw, {{rect.x + 0.5f * rect.width, floor}, whole_zoom(food, rect.width).px_per_m}, answer, frame, rect.x);
}

void draw_edge(ImDrawList& draw, const Rect& rect, const OvenAnswer& answer, const Extent& food,
               const std::vector<double>& frame) {
  const Surface& s = surface();
  const Zoom zoom = edge_zoom(food, rect.width);
  const float right = rect.right() - s.px(kSideMargin), floor = rect.bottom() - s.px(kUnderEdge);
  const float left = right - static_cast<float>(zoom.shown * zoom.px_per_m);
  draw.PushClipRect({left, rect.y}, {rect.right(), rect.bottom()}, true);
  draw_cut(draw, {{right - static_cast<float>(food.half * zoom.px_per_m), floor}, zoom.px_per_m}, answer, frame, left);
  draw.PopClipRect();
  caption({0.5f * (left + right), floor + s.px(1.0f)}, "the edge, enlarged");
}

void draw_legend(ImDrawList& draw, const Rect& rect, const OvenAnswer& answer, UnitChoice units) {
  const Surface& s = surface();
  const float margin = s.px(kSideMargin);
  const Rect bar{rect.x + margin, rect.y, rect.width - 2.0f * margin, s.px(kLegend)};
  const float end = std::round(bar.right());
  for (float x = std::round(bar.x); x < end; x += 1.0f) {
    const Colour colour = warmth((x - bar.x) / bar.width);
    draw.AddRectFilled({x, bar.y}, {x + 1.0f, bar.bottom()}, packed(colour));
  }
  draw.AddRect({bar.x, bar.y}, {bar.right(), bar.bottom()}, packed(s.palette().line), 0.0f, 0, s.hairline());
  const auto most = static_cast<int>(bar.width / s.px(kMarkWidth));
  for (const Mark& mark : temperature_marks_within(answer.coldest_shown, answer.warmest_shown, units, most)) {
    const float x = std::round(bar.x + static_cast<float>(share_of(answer, mark.at)) * bar.width);
    draw.AddLine({x, bar.bottom()}, {x, bar.bottom() + s.px(0.3f)}, packed(s.palette().line), s.hairline());
    const float half = 0.5f * s.text_size(s.faces().small, mark.text).width;
    caption({std::clamp(x, rect.x + half, rect.right() - half), bar.bottom() + s.px(1.0f)}, mark.text);
  }
}

std::string description(const OvenAnswer& answer, std::size_t frame, const Extremes& extremes, UnitChoice units) {
  const std::vector<double>& temperatures = answer.frames[frame];
  return "The food cut through, coloured by temperature, after " + format_duration(answer.frame_times[frame]) +
         ": from " + format_temperature(temperatures[extremes.coldest], units) + " at the coldest place to " +
         format_temperature(temperatures[extremes.warmest], units) + " at the warmest.";
}

std::string legend_description(const OvenAnswer& answer, UnitChoice units) {
  return "The colours, from dark blue at " + format_temperature(answer.coldest_shown, units) + " to light yellow at " +
         format_temperature(answer.warmest_shown, units) + ".";
}

}  // namespace

void show_warmth(const OvenAnswer& answer, bool is_ring, std::size_t frame, UnitChoice units) {
  const Surface& s = surface();
  const std::vector<double>& temperatures = answer.frames[frame];
  if (temperatures.empty() || answer.patches.empty()) return;
  const Extremes extremes = extremes_of(temperatures);
  const Extent food = extent_of(answer.patches);
  const Zoom whole = whole_zoom(food, s.width()), edge = edge_zoom(food, s.width());
  const auto em = [&](const Zoom& zoom) { return static_cast<float>(zoom.px_per_m * food.height) / s.px(1.0f); };
  heading("warmth/title", "Through the food", 3);
  picture("warmth", description(answer, frame, extremes, units), 0.0f, em(whole) + 2.0f * kRound,
          [&](ImDrawList& draw, const Rect& rect) { draw_whole(draw, rect, answer, food, temperatures); });
  if (em(whole) < kShallow && edge.px_per_m > kWorthwhile * whole.px_per_m) {
    picture("warmth/edge", "The edge of that cut, enlarged.", 0.0f, em(edge) + kRound + kUnderEdge,
            [&](ImDrawList& draw, const Rect& rect) { draw_edge(draw, rect, answer, food, temperatures); });
  }
  picture("warmth/legend", legend_description(answer, units), 0.0f, kLegend + kUnderLegend,
          [&](ImDrawList& draw, const Rect& rect) { draw_legend(draw, rect, answer, units); });
  if (is_ring) remark("warmth/ring", "One side of the ring, from the wall to the core.");
  fact("warmth/coldest", "Coldest place (ringed)", format_temperature(temperatures[extremes.coldest], units));
  fact("warmth/warmest", "Warmest place", format_temperature(temperatures[extremes.warmest], units));
}

}  // namespace tinwright::view
