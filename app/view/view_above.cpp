// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// My pan from above: rim, floor, core, and how far the dough reaches.
#include <algorithm>

#include "app/view/drawing.h"
#include "app/view/views.h"

namespace tinwright::view {
namespace {

constexpr float kHeight = 15.0f;  // [em]
constexpr float kMargin = 2.2f;   // [em] for the dimension

std::string description(const BenchAnswer& answer, UnitChoice units) {
  const Picture& picture = *answer.picture;
  std::string text = "My pan from above, " + format_both_lengths(picture.length, units);
  if (picture.width != picture.length) text += " by " + format_both_lengths(picture.width, units);
  if (answer.press) {
    text += answer.press->reaches_edges
                ? "; the dough reaches the edge all round"
                : "; the dough covers " + format_percent(answer.press->coverage) + " of the floor";
  }
  return text;
}

void draw_above(ImDrawList& draw, const Rect& rect, const BenchAnswer& answer, UnitChoice units) {
  const Surface& s = surface();
  const Palette& palette = s.palette();
  const Picture& picture = *answer.picture;
  const double wide = rect.width - 2.0f * s.px(kMargin);
  const double high = rect.height - s.px(kMargin) - s.px(0.5f);
  const Scale scale{{rect.x + 0.5f * rect.width, rect.y + s.px(0.3f) + static_cast<float>(0.5 * high)},
                    std::min(wide / picture.length, high / picture.width)};
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

void show_from_above(const BenchAnswer& answer, UnitChoice units) {
  heading("above/title", "From above", 3);
  picture("above", description(answer, units), 0.0f, kHeight,
          [&](ImDrawList& draw, const Rect& rect) { draw_above(draw, rect, answer, units); });
  if (answer.press) remark("above/legend", "Hatched: dough. Outer line: rim. Inner line: edge of the flat floor.");
}

}  // namespace tinwright::view
