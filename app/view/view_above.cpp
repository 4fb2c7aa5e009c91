// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// My pan from above: rim, floor, core, and how far the dough reaches.
#include <algorithm>

#include "app/plan/drawing_words.h"
#include "app/view/drawing.h"
#include "app/view/view_grips.h"
#include "app/view/views.h"

namespace tinwright::view {
namespace {

constexpr float kHigh = 12.0f;   // [em] that the pan may take
constexpr float kAbove = 0.9f;   // [em] over it
constexpr float kMargin = 2.2f;  // [em] beside it, and beneath it for the dimension

double scale_in(const Picture& picture, float width) {
  const Surface& s = surface();
  return std::min((width - 2.0f * s.px(kMargin)) / picture.length, s.px(kHigh) / picture.width);
}

Scale place_in(const Rect& rect, double px_per_m) {
  const Surface& s = surface();
  return {{rect.x + 0.5f * rect.width, rect.y + s.px(kAbove + 0.5f * kHigh)}, px_per_m};
}

void draw_above(ImDrawList& draw, const Scale& scale, const BenchAnswer& answer, UnitChoice units) {
  const Surface& s = surface();
  const Palette& palette = s.palette();
  const Picture& picture = *answer.picture;
  fill_loops(draw, scale, picture.rim, palette.well, 1.0f);
  fill_loops(draw, scale, picture.dough_above, palette.accent, 0.22f);
  hatch_loops(draw, scale, picture.dough_above, palette.accent, s.px(0.55f));
  if (answer.press && !answer.press->reaches_edges) {
    stroke_loops(draw, scale, picture.dough_above, palette.accent, 2.0f * s.hairline());
  }
  stroke_loops(draw, scale, picture.floor, palette.line, s.hairline());
  stroke_loops(draw, scale, picture.rim, palette.ink, 2.5f * s.hairline());
  stroke_loops(draw, scale, picture.core, palette.ink, 2.5f * s.hairline());

  const double x = 0.5 * picture.length;
  const double below = -0.5 * picture.width - s.px(0.6f) / scale.px_per_m;
  dimension(draw, scale.at(-x, below), scale.at(x, below), format_both_lengths(picture.length, units), true);
}

}  // namespace

void show_from_above(const BenchAnswer& answer, UnitChoice units, Grips* grips) {
  const Picture& drawn = *answer.picture;
  double px_per_m = scale_in(drawn, surface().width());
  if (grips != nullptr) px_per_m = grips->scale(Drawn::kAbove, px_per_m);
  heading("above/title", "From above", 3);
  const Rect place =
      picture("above", above_words(answer, units), 0.0f, kAbove + kHigh + kMargin,
              [&](ImDrawList& draw, const Rect& rect) { draw_above(draw, place_in(rect, px_per_m), answer, units); });
  if (grips != nullptr) {
    const Scale scale = place_in(place, px_per_m);
    const ImVec2 side = scale.at(0.5 * drawn.length, 0.0), far = scale.at(0.0, 0.5 * drawn.width);
    grips->put("grip/length-above", Grip::kLength, ", from above", side.x, side.y, Grips::Way::kRight, px_per_m);
    grips->put("grip/width", Grip::kWidth, "", far.x, far.y, Grips::Way::kUp, px_per_m);
  }
  if (answer.press) remark("above/legend", "Hatched: dough. Outer line: rim. Inner line: edge of the flat floor.");
}

}  // namespace tinwright::view
