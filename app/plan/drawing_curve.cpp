// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The curve of drawing_file.h.
#include <algorithm>
#include <array>
#include <cmath>

#include "app/plan/axis.h"
#include "app/plan/drawing_file.h"
#include "app/plan/drawing_sheet.h"
#include "app/plan/drawing_words.h"

namespace tinwright {
namespace {

// [mm] of paper
constexpr double kLeft = 22.0, kRight = 132.0, kTop = kSheetTop + 4.0, kBottom = kTop + 70.0;
constexpr int kMostDegrees = 8, kMostTimes = 7;
constexpr double kApart = 5.0;  // names of lines, one above the other

struct Line {
  const char* name;
  double CurvePoint::*temperature;
  const char* dashes;
  double width;
};
constexpr std::array kLines{Line{"air", &CurvePoint::air, "stroke-dasharray=\"0.4 1.2\"", 0.5},
                            Line{"average", &CurvePoint::mean, "stroke-dasharray=\"2 1.2\"", 0.5},
                            Line{"core", &CurvePoint::core, "", 0.7}};

struct Axes {
  double end;  // [s]
  std::vector<Mark> degrees;

  double x(double time) const { return std::lerp(kLeft, kRight, time / end); }
  double y(double kelvin) const {
    const double low = degrees.front().at, high = degrees.back().at;
    return std::lerp(kBottom, kTop, (kelvin - low) / (high - low));
  }
};

void draw_axes(SvgPen& pen, const Axes& axes, UnitChoice units) {
  const std::string rule = std::string("stroke=\"") + kPaperRule + "\" stroke-width=\"0.25\"";
  for (const Mark& mark : axes.degrees) {
    const std::string y = svg_number(axes.y(mark.at));
    pen.path("M" + svg_number(kLeft) + " " + y + "H" + svg_number(kRight), "none", 0.0, rule);
    pen.text(kLeft - 2.0, axes.y(mark.at) + 1.3, kSheetLetters, SvgPen::Anchor::kEnd, mark.text);
  }
  pen.text(kLeft - 2.0, kTop - 5.0, kSheetLetters, SvgPen::Anchor::kEnd, degree_name(units));
  for (const Mark& mark : time_marks(axes.end, kMostTimes)) {
    pen.line({axes.x(mark.at), kBottom}, {axes.x(mark.at), kBottom + 1.5}, 0.25);
    pen.text(axes.x(mark.at), kBottom + 6.0, kSheetLetters, SvgPen::Anchor::kMiddle, mark.text);
  }
  pen.line({kLeft, kBottom}, {kRight, kBottom}, 0.25);
}

void draw_band(SvgPen& pen, const Axes& axes, const OvenAnswer& answer) {
  if (answer.late > answer.early) {
    pen.path("M" + svg_number(axes.x(answer.early)) + " " + svg_number(kTop) + "H" + svg_number(axes.x(answer.late)) +
                 "V" + svg_number(kBottom) + "H" + svg_number(axes.x(answer.early)) + "Z",
             kPaperFilling, 0.0);
  }
}

void draw_end(SvgPen& pen, const Axes& axes, const OvenAnswer& answer) {
  const double x = axes.x(answer.oven_ends);
  pen.line({x, kTop - 2.0}, {x, kBottom}, 0.4);
  pen.text(x, kTop - 3.5, kSheetLetters, SvgPen::Anchor::kMiddle, "comes out");
}

void draw_line(SvgPen& pen, const Axes& axes, const OvenAnswer& answer, const Line& line, double& free_above) {
  std::string data;
  double last = 0.0;
  for (const CurvePoint& point : answer.curve) {
    if (point.time > axes.end) break;
    last = axes.y(point.*line.temperature);
    data += (data.empty() ? "M" : "L") + svg_number(axes.x(point.time)) + " " + svg_number(last);
  }
  pen.path(data, "none", line.width, line.dashes);
  const double y = std::min(last + 1.3, free_above);
  free_above = y - kApart;
  pen.text(kRight + 2.0, y, kSheetLetters, SvgPen::Anchor::kStart, line.name);
}

}  // namespace

std::string curve_file(const OvenAnswer& answer, bool with_cooling, UnitChoice units) {
  Axes axes{curve_end(answer, with_cooling), {}};
  const auto [low, high] = curve_range(answer, axes.end);
  axes.degrees = temperature_marks(low, high, units, kMostDegrees);
  SvgPen pen(1.0);
  draw_band(pen, axes, answer);
  draw_axes(pen, axes, units);
  draw_end(pen, axes, answer);
  std::array<const Line*, kLines.size()> order{};
  std::transform(kLines.begin(), kLines.end(), order.begin(), [](const Line& line) { return &line; });
  const auto last = [&](const Line* line) {
    double at = 0.0;
    for (const CurvePoint& point : answer.curve) {
      if (point.time <= axes.end) at = point.*(line->temperature);
    }
    return at;
  };
  std::sort(order.begin(), order.end(), [&](const Line* a, const Line* b) { return last(a) < last(b); });
  double free_above = kBottom;  // from the coldest up, so that no name lies on another
  for (const Line* line : order) draw_line(pen, axes, answer, *line, free_above);
  std::string words = curve_words(answer, with_cooling, units);
  words += " Plain line: the core. Dashes: the food on average. Dots: the air.";
  return sheet(pen, "Temperatures", words, kBottom + 12.0);
}

}  // namespace tinwright
