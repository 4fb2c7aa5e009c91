// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The oven's time as a strip, see card_drawing.h. User units are millimetres of paper.
#include <algorithm>

#include "app/plan/card_drawing.h"
#include "app/plan/html_text.h"
#include "app/plan/svg_pen.h"
#include "app/plan/words.h"

namespace tinwright {
namespace {

constexpr double kPage = 186.0, kHeight = 20.5, kTime = 132.0;  // the time's part leaves room for the late end's words
constexpr double kBandTop = 5.8, kBand = 4.6, kStageTop = 11.6, kStage = 8.4;
constexpr double kLetters = 4.2, kLetterWide = 2.25;

/// "200 °C": the first of both scales.
std::string one_scale(double kelvin, UnitChoice units) {
  const std::string both = format_temperature(kelvin, units);
  return both.substr(0, both.find(" ("));
}

void draw_stages(SvgPen& pen, const std::vector<Stage>& stages, double per_second, UnitChoice units) {
  double from = 0.0;
  for (const Stage& stage : stages) {
    const double wide = stage.duration * per_second;
    pen.box({from, kStageTop}, {wide, kStage}, "#fff", 0.4);
    const std::string air = (stage.air_before ? "to " : "") + one_scale(stage.air, units);
    for (const std::string& words : {air + ", " + format_about(stage.duration), air}) {
      if (static_cast<double>(words.size()) * kLetterWide > wide) continue;
      pen.text(from + 0.5 * wide, kStageTop + 6.0, kLetters, SvgPen::Anchor::kMiddle, words, true);
      break;
    }
    from += wide;
  }
}

void draw_band(SvgPen& pen, const BakeTime& timing, double per_second, const std::string& hatch) {
  const double early = timing.band.early * per_second, late = timing.band.late * per_second;
  const double likely = timing.time * per_second, words = kBandTop + 4.0;
  pen.box({early, kBandTop}, {late - early, kBand}, hatch, 0.4);
  pen.line({likely, kBandTop - 1.5}, {likely, kStageTop + kStage}, 1.0);
  pen.text(likely, 4.0, kLetters, SvgPen::Anchor::kMiddle, "likely " + format_about(timing.time), true);
  pen.text(early - 1.5, words, kLetters, SvgPen::Anchor::kEnd, "look from " + format_about(timing.band.early), true);
  pen.text(late + 1.5, words, kLetters, SvgPen::Anchor::kStart,
           "until " + format_about(timing.band.late) + (timing.band.is_open ? " or more" : ""), true);
}

}  // namespace

std::string oven_strip(const PanBake& baked, UnitChoice units, std::size_t number) {
  if (!baked.solved || baked.solved->my_stages.empty()) return "";
  const BakeJobAnswer& solved = *baked.solved;
  if (solved.timing && !solved.timing->reached) return "";
  double end = solved.timing ? solved.timing->band.late : 0.0, sum = 0.0;
  for (const Stage& stage : solved.my_stages) sum += stage.duration;
  end = std::max(end, sum);
  if (end <= 0.0) return "";
  const std::string id = "o" + std::to_string(number);
  SvgPen pen(1.0);
  draw_stages(pen, solved.my_stages, kTime / end, units);
  if (solved.timing) draw_band(pen, *solved.timing, kTime / end, "url(#" + id + "h)");
  return "<svg role=\"img\" aria-labelledby=\"" + id + "t " + id + "s\" width=\"" + plain_number(kPage, 0) +
         "mm\" height=\"" + plain_number(kHeight, 0) + "mm\" viewBox=\"0 0 " + plain_number(kPage, 0) + " " +
         plain_number(kHeight, 0) + "\"><title id=\"" + id + "t\">Time in the oven</title><desc id=\"" + id + "s\">" +
         html_text(bake_sentence(*baked.job, solved, units)) + "</desc>" + svg_hatch(id + "h", 1.0) + pen.take() +
         "</svg>";
}

}  // namespace tinwright
