// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The pan's part of drawing_file.h.
#include "app/plan/drawing_file.h"

#include <algorithm>

#include "app/plan/drawing_sheet.h"
#include "app/plan/drawing_words.h"

namespace tinwright {
namespace {

// [mm] of paper
constexpr double kWidest = 80.0, kTallestCut = 60.0, kTallestAbove = 90.0;
constexpr double kMiddle = 64.0;        // of the pan: the figures on its right are the longer ones
constexpr double kLevelWithRim = 5e-4;  // [m] as fill_job.cpp says it
constexpr const char* kEvenOdd = "fill-rule=\"evenodd\"";
constexpr const char* kDashes = "stroke-dasharray=\"2 1.4\"";

/// `outline` [mm] of the dough; a cut has none, for its two halves would meet in a line.
void draw_food(SvgPen& pen, const SheetScale& scale, const Loops& dough, const Loops& filling, double outline) {
  if (!filling.empty()) pen.path(scale.path(filling), kPaperFilling, 0.0, kEvenOdd);
  if (dough.empty()) return;
  const std::string path = scale.path(dough);
  pen.path(path, kPaperDough, 0.0, kEvenOdd);
  pen.path(path, "url(#h)", outline, kEvenOdd);
}

void draw_across(SvgPen& pen, const SheetScale& scale, double half, double y, const std::string& words) {
  pen.measure_across(scale.at(-half, 0.0).x, scale.at(half, 0.0).x, y);
  pen.text(scale.origin.x, y + 5.0, kSheetLetters, SvgPen::Anchor::kMiddle, words);
}

/// The depth on the left, how far up the filling goes on the right.
void draw_heights(SvgPen& pen, const SheetScale& scale, const BenchAnswer& answer, UnitChoice units) {
  const Picture& picture = *answer.picture;
  const double half = 0.5 * picture.length;
  const double left = scale.at(-half, 0.0).x - 5.0, right = scale.at(half, 0.0).x + 5.0;
  const double rim = scale.at(0.0, picture.depth).y, floor = scale.origin.y;
  pen.measure_down(left, rim, floor);
  pen.text(left - 2.0, 0.5 * (rim + floor) + 1.3, kSheetLetters, SvgPen::Anchor::kEnd,
           format_length(picture.depth, units));
  if (!answer.fill) return;
  const double top = scale.at(0.0, picture.top).y, level = scale.at(0.0, picture.level).y;
  const glm::dvec2 from = scale.at(-half, picture.level), to = scale.at(half, picture.level);
  pen.line(from, {right + 1.5, to.y}, 0.5, kDashes);
  const bool is_full = answer.fill->below_rim < kLevelWithRim;
  if (!is_full) pen.measure_down(right, top, level);
  const std::string rim_words = answer.fill_job->lining ? "the crust's top" : "the rim";
  const double x = right + 3.0, y = std::max(0.5 * (top + level), top + 2.0);
  pen.text(x, y, kSheetLetters, SvgPen::Anchor::kStart,
           is_full ? "level with" : format_length(answer.fill->below_rim, units), true);
  pen.text(x, y + 1.3 * kSheetLetters, kSheetLetters, SvgPen::Anchor::kStart,
           is_full ? rim_words : "below " + rim_words);
}

}  // namespace

std::string section_file(const BenchAnswer& answer, UnitChoice units) {
  const Picture& picture = *answer.picture;
  SheetScale scale;
  scale.mm_per_m = std::min(kWidest / picture.length, kTallestCut / picture.depth);
  scale.origin = {kMiddle, kSheetTop + picture.depth * scale.mm_per_m};
  SvgPen pen(1.0);
  draw_food(pen, scale, mirrored(picture.dough), mirrored(picture.filling), 0.0);
  if (picture.tray > 0.0) pen.line(scale.at(-picture.tray, 0.0), scale.at(picture.tray, 0.0), 0.25);
  pen.path(scale.path(mirrored(picture.pan_edge), false), "none", 0.9);
  draw_heights(pen, scale, answer, units);
  const double below = scale.origin.y + 5.0;
  draw_across(pen, scale, 0.5 * picture.length, below, format_both_lengths(picture.length, units));
  return sheet(pen, "My pan, cut through the middle", section_words(answer, units) + ".", below + 10.0);
}

std::string above_file(const BenchAnswer& answer, UnitChoice units) {
  const Picture& picture = *answer.picture;
  SheetScale scale;
  scale.mm_per_m = std::min(kWidest / picture.length, kTallestAbove / picture.width);
  scale.origin = {kMiddle, kSheetTop + 0.5 * picture.width * scale.mm_per_m};
  SvgPen pen(1.0);
  draw_food(pen, scale, picture.dough_above, {}, 0.25);
  pen.path(scale.path(picture.floor), "none", 0.25);
  pen.path(scale.path(picture.rim) + scale.path(picture.core), "none", 0.9);
  const double far = kSheetTop, near = kSheetTop + picture.width * scale.mm_per_m;
  if (picture.width != picture.length) {
    const double left = scale.at(-0.5 * picture.length, 0.0).x - 5.0;
    pen.measure_down(left, far, near);
    pen.text(left - 2.0, 0.5 * (far + near) + 1.3, kSheetLetters, SvgPen::Anchor::kEnd,
             format_length(picture.width, units));
  }
  draw_across(pen, scale, 0.5 * picture.length, near + 5.0, format_both_lengths(picture.length, units));
  return sheet(pen, "My pan from above", above_words(answer, units) + ".", near + 15.0);
}

}  // namespace tinwright
