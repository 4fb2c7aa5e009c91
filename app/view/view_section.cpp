// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// My pan cut through its middle, to scale, and its right-hand edge enlarged, where the thicknesses can be read.
#include <algorithm>

#include "app/plan/drawing_words.h"
#include "app/view/drawing.h"
#include "app/view/view_grips.h"
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
constexpr float kNarrow = 15.0f;        // [em] where that would leave too little of the edge, it goes without
constexpr float kBesideNarrow = 1.0f;   // [em]
constexpr double kLeastShown = 0.03;    // [m] of the floor at the enlarged edge
// Where the grips stand on the enlarged edge, as shares of its width: apart, so that no finger covers both.
constexpr float kLevelGrip = 0.25f, kDepthGrip = 0.72f;

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

double whole_scale(const Picture& picture, float width) {
  const Surface& s = surface();
  return std::min((width - 2.0f * s.px(kSideMargin)) / picture.length,
                  (s.px(kTallestWhole) - s.px(kUnderWhole)) / picture.depth);
}

Scale whole_in(const Rect& rect, double px_per_m) {
  return {{rect.x + 0.5f * rect.width, rect.bottom() - surface().px(1.9f)}, px_per_m};
}

void draw_whole(ImDrawList& draw, const Scale& scale, const Picture& picture, UnitChoice units) {
  const Surface& s = surface();
  draw_layers(draw, scale, picture, true);
  const double below = -s.px(0.5f) / scale.px_per_m;
  dimension(draw, scale.at(-0.5 * picture.length, below), scale.at(0.5 * picture.length, below),
            format_both_lengths(picture.length, units), true);
}

/// The scale at which the edge is enlarged in `width` device px, and how much of its half is shown [m].
struct EdgeScale {
  double px_per_m, shown;
};

bool has_figures(float width) {
  return width >= surface().px(kNarrow);
}

EdgeScale edge_scale(const Picture& picture, float width) {
  const Surface& s = surface();
  const double shown = std::min(0.5 * picture.length, std::max(0.8 * picture.depth, kLeastShown) + picture.wall_run);
  const double by_height = (s.px(kTallestEdge) - s.px(kRoundEdge)) / picture.depth;
  const float beside = has_figures(width) ? kLeftOfEdge + kRightOfEdge : 2.0f * kBesideNarrow;
  return {std::min(by_height, (width - s.px(beside)) / shown), shown};
}

/// The figures left of the enlarged edge: from the filling up to the top, and the dough on the floor.
void draw_gauges(ImDrawList& draw, const Scale& scale, float left, float right, const BenchAnswer& answer,
                 UnitChoice units, bool with_figures) {
  const Surface& s = surface();
  const Palette& palette = s.palette();
  const Picture& picture = *answer.picture;
  const auto height = [&](double y) { return scale.at(0.0, y).y; };
  const float gauge = left - s.px(0.5f);
  if (answer.fill) {
    dashes(draw, {left, height(picture.level)}, {right, height(picture.level)}, palette.caution, 2.0f * s.hairline());
    draw.AddLine({left, height(picture.top)}, {right, height(picture.top)}, packed(palette.rule), s.hairline());
    if (with_figures) {
      dimension(draw, {gauge, height(picture.level)}, {gauge, height(picture.top)},
                format_length(answer.fill->below_rim, units), false);
    }
    if (picture.risen_level > picture.level) {
      dashes(draw, {left, height(picture.risen_level)}, {right, height(picture.risen_level)}, palette.soft_ink,
             s.hairline());
    }
  }
  if (answer.press && with_figures) {
    dimension(draw, {gauge, height(0.0)}, {gauge, height(picture.floor_thickness)},
              format_length(picture.floor_thickness, units), false);
  }
}

/// Where the edge lies within its picture: from `left` to `right` [px].
struct EdgePlace {
  float left, right;
  Scale scale;
};

EdgePlace edge_in(const Rect& rect, const Picture& picture, const EdgeScale& edge) {
  const Surface& s = surface();
  const float left = rect.x + s.px(has_figures(rect.width) ? kLeftOfEdge : kBesideNarrow);
  const float right = left + static_cast<float>(edge.shown * edge.px_per_m);
  const float middle = right - static_cast<float>(0.5 * picture.length * edge.px_per_m);
  return {left, right, {{middle, rect.bottom() - s.px(2.2f)}, edge.px_per_m}};
}

void draw_edge(ImDrawList& draw, const Rect& rect, const BenchAnswer& answer, const EdgeScale& edge, UnitChoice units) {
  const Surface& s = surface();
  const Picture& picture = *answer.picture;
  const auto [left, right, scale] = edge_in(rect, picture, edge);
  draw.PushClipRect({left, rect.y}, {rect.right(), rect.bottom()}, true);
  draw_layers(draw, scale, picture, false);
  draw.PopClipRect();
  draw_gauges(draw, scale, left, right, answer, units, has_figures(rect.width));
  const float floor = scale.at(0.0, 0.0).y;
  const float beside = right + s.px(0.8f);
  if (has_figures(rect.width)) {
    dimension(draw, {beside, floor}, {beside, scale.at(0.0, picture.depth).y}, format_length(picture.depth, units),
              true);
  }
  caption({0.5f * (left + right), floor + s.px(1.45f)}, "the edge, enlarged");
}

}  // namespace

void show_section(const BenchAnswer& answer, UnitChoice units, Grips* grips) {
  const Surface& s = surface();
  const Picture& drawn = *answer.picture;
  double whole = whole_scale(drawn, s.width());
  EdgeScale edge = edge_scale(drawn, s.width());
  if (grips != nullptr) {
    whole = grips->scale(Drawn::kCut, whole);
    edge = {grips->scale(Drawn::kEdge, edge.px_per_m), grips->shown(edge.shown)};
  }
  const auto em = [&](double px) { return static_cast<float>(px) / s.px(1.0f); };
  const std::string words = section_words(answer, units);
  heading("section/title", "Cut through", 3);
  const Rect cut =
      picture("section", words, 0.0f, em(whole * drawn.depth) + kUnderWhole,
              [&](ImDrawList& draw, const Rect& rect) { draw_whole(draw, whole_in(rect, whole), drawn, units); });
  if (grips != nullptr) {
    const ImVec2 rim = whole_in(cut, whole).at(0.5 * drawn.length, drawn.depth);
    grips->put("grip/length", Grip::kLength, "", rim.x, rim.y, Grips::Way::kRight, whole);
  }
  const Rect enlarged =
      picture("edge", "The edge of the cut, enlarged. " + words, 0.0f, em(edge.px_per_m * drawn.depth) + kRoundEdge,
              [&](ImDrawList& draw, const Rect& rect) { draw_edge(draw, rect, answer, edge, units); });
  if (grips != nullptr) {
    const auto [left, right, scale] = edge_in(enlarged, drawn, edge);
    const auto across = [&, from = left, to = right](float share) { return from + share * (to - from); };
    const float level = scale.at(0.0, drawn.level).y, floor = scale.at(0.0, 0.0).y;
    grips->put("grip/level", Grip::kLevel, "", across(kLevelGrip), level, Grips::Way::kUp, edge.px_per_m);
    grips->put("grip/depth", Grip::kDepth, "", across(kDepthGrip), floor, Grips::Way::kDown, edge.px_per_m);
  }
  std::string legend;
  if (answer.press) legend = "Hatched: dough. ";
  if (answer.fill) legend += "Plain: filling, up to the dashed line. ";
  if (drawn.risen_level > drawn.level) legend += "Thin dashes: once risen. ";
  if (grips != nullptr) legend += "Discs with arrows: drag them to change that size.";
  if (!legend.empty()) remark("section/legend", legend);
}

}  // namespace tinwright::view
