// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// My pan from above: rim, floor, core, and how far a slab of dough reaches.
#include <algorithm>
#include <cmath>

#include "app/view/drawing.h"
#include "app/view/views.h"
#include "geometry/press.h"

namespace tinwright::view {
namespace {

constexpr float kHeight = 15.0f;  // [em]
constexpr float kMargin = 2.2f;   // [em] for the dimensions

Loops shrunk(const Loops& loops, double by) {
  Loops small = loops;
  for (auto& loop : small) {
    for (glm::dvec2& p : loop) p *= by;
  }
  return small;
}

std::string description(const BenchAnswer& answer, UnitChoice units) {
  const Pan& pan = *answer.my_pan;
  std::string text = "My pan from above, " + format_both_lengths(pan.outline.length, units);
  if (pan.outline.width != pan.outline.length) text += " by " + format_both_lengths(pan.outline.width, units);
  if (answer.press) {
    text += answer.press->reaches_edges ? "; the dough reaches the edge all round"
                                        : "; the dough covers " + format_percent(answer.press->coverage) + " of the floor";
  }
  return text;
}

void draw_above(ImDrawList& draw, const Rect& rect, const BenchAnswer& answer, UnitChoice units) {
  const Surface& s = surface();
  const Palette& palette = s.palette();
  const Pan& pan = *answer.my_pan;
  const double wide = rect.width - 2.0f * s.px(kMargin);
  const double high = rect.height - s.px(kMargin) - s.px(0.5f);
  const Scale scale{{rect.x + 0.5f * rect.width, rect.y + s.px(0.3f) + static_cast<float>(0.5 * high)},
                    std::min(wide / pan.outline.length, high / pan.outline.width)};
  const Loops rim = outline_loops(pan.outline, 0.0);
  const Loops floor = outline_loops(pan.outline, pan.wall.floor_inset());
  fill_loops(draw, scale, rim, palette.well, 1.0f);
  if (answer.press) {
    Loops dough = shrunk(floor, std::sqrt(answer.press->coverage));
    if (pan.core) dough.push_back(outline_loops(pan.core->outline, 0.0).front());
    fill_loops(draw, scale, dough, palette.accent, 0.22f);
    hatch_loops(draw, scale, dough, palette.accent, s.px(0.55f));
    if (!answer.press->reaches_edges) stroke_loops(draw, scale, dough, palette.accent, 2.0f * s.hairline());
  }
  stroke_loops(draw, scale, floor, palette.line, s.hairline());
  stroke_loops(draw, scale, rim, palette.ink, 2.5f * s.hairline());
  if (pan.core) stroke_loops(draw, scale, outline_loops(pan.core->outline, 0.0), palette.ink, 2.5f * s.hairline());

  const double x = 0.5 * pan.outline.length;
  const double below = -0.5 * pan.outline.width - s.px(0.6f) / scale.px_per_m;
  dimension(draw, scale.at(-x, below), scale.at(x, below), format_both_lengths(pan.outline.length, units), true);
}

}  // namespace

void show_from_above(const BenchAnswer& answer, UnitChoice units) {
  heading("above/title", "From above", 3);
  picture("above", description(answer, units), 0.0f, kHeight,
          [&](ImDrawList& draw, const Rect& rect) { draw_above(draw, rect, answer, units); });
  if (answer.press) remark("above/legend", "Hatched: dough. Outer line: rim. Inner line: edge of the flat floor.");
}

}  // namespace tinwright::view
