// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See drawing_words.h.
#include "app/plan/drawing_words.h"

#include <algorithm>

namespace tinwright {
namespace {

constexpr double kBeyond = 1.12;  // of the oven's time: how far on the curve goes without the cooling

double last_of_oven(const OvenAnswer& answer) {
  return std::max(answer.oven_ends, answer.late);
}

std::string at_the_end(const OvenAnswer& answer, UnitChoice units) {
  const auto end = std::lower_bound(answer.curve.begin(), answer.curve.end(), answer.oven_ends,
                                    [](const CurvePoint& point, double time) { return point.time < time; });
  const CurvePoint& point = end == answer.curve.end() ? answer.curve.back() : *end;
  return "the core is at " + format_temperature(point.core, units) + " and the food at " +
         format_temperature(point.mean, units) + " on average";
}

}  // namespace

std::string section_words(const BenchAnswer& answer, UnitChoice units) {
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

std::string above_words(const BenchAnswer& answer, UnitChoice units) {
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

std::string curve_words(const OvenAnswer& answer, bool with_cooling, UnitChoice units) {
  const CurvePoint& first = answer.curve.front();
  std::string text = "Temperatures against time. The food goes in at " + format_temperature(first.core, units) +
                     ". When it comes out, " + at_the_end(answer, units);
  if (with_cooling) {
    const CurvePoint& last = answer.curve.back();
    text +=
        ". After " + format_duration(last.time) + " it is at " + format_temperature(last.mean, units) + " on average";
  }
  return text + ".";
}

bool goes_on_cooling(const OvenAnswer& answer) {
  return answer.curve.back().time > kBeyond * last_of_oven(answer);
}

double curve_end(const OvenAnswer& answer, bool with_cooling) {
  const double end = answer.curve.back().time;
  return with_cooling ? end : std::min(end, kBeyond * last_of_oven(answer));
}

std::pair<double, double> curve_range(const OvenAnswer& answer, double end) {
  double low = answer.curve.front().core, high = low;
  for (const CurvePoint& point : answer.curve) {
    if (point.time > end) break;
    low = std::min({low, point.core, point.mean, point.air});
    high = std::max({high, point.core, point.mean, point.air});
  }
  return {low, high};
}

}  // namespace tinwright
