// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See words.h. Food safety figures: FDA Food Code 3-501.14 (57 to 21 °C within 2 h, to 5 °C within 4 h more), USDA FSIS
// (egg dishes 71 °C at the centre), FDA advice on raw flour and egg (from memory); local rules come first.
#include "app/plan/words.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace tinwright {

ReportLine figure(Said label, Said value, Said detail) {
  return {ReportLine::Kind::kFigure, std::move(label).text(), std::move(value).text(), std::move(detail).text()};
}

ReportLine remark(Said sentence) {
  return {ReportLine::Kind::kRemark, "", std::move(sentence).text(), ""};
}

ReportLine caution(Said sentence) {
  return {ReportLine::Kind::kCaution, "", std::move(sentence).text(), ""};
}

bool is_said(const Report& report, const ReportLine& line) {
  return std::any_of(report.begin(), report.end(), [&](const ReportLine& said) { return said.value == line.value; });
}

std::string counted(int count, const std::string& name) {
  return (count > 1 ? std::to_string(count) + " × " : "") + name;
}

std::string format_both_areas(double square_metres, UnitChoice choice) {
  constexpr double kSquareInch = 0.0254 * 0.0254;  // [m²]
  const std::string metric = format_number(square_metres * 1e4, 0) + " cm²";
  const std::string us = format_number(square_metres / kSquareInch, 1) + " sq in";
  return choice == UnitChoice::kMetric ? metric + " (" + us + ")" : us + " (" + metric + ")";
}

std::string format_about(double seconds) {
  const double minutes = seconds / 60.0;
  const double rounded = minutes < 5.0 ? std::round(2.0 * minutes) / 2.0 : std::round(minutes);
  return format_duration(60.0 * std::max(rounded, 0.5));
}

void add_pan_cautions(Report& report, const Pan& pan) {
  if (pan.bottomless) {
    report.push_back(remark("This ring has no bottom: stand it on a flat tray lined with baking paper."));
  }
  switch (pan.material) {
    case Material::kGlass:
    case Material::kCeramic:
      report.push_back(
          caution("Glass and ceramic can crack with a sudden change of heat: never from the freezer into a hot "
                  "oven, never from the oven onto a cold or wet surface."));
      break;
    case Material::kSilicone:
      report.push_back(caution("Silicone is soft: stand it on a rigid tray before filling, and lift it by the tray."));
      break;
    case Material::kBrightAluminium:
    case Material::kDarkSteel:
    case Material::kTinnedSteel:
      report.push_back(caution("A metal tin stays hot long after it looks it: dry oven gloves, never a damp cloth."));
      break;
  }
}

void add_raw_dough_caution(Report& report) {
  report.push_back(caution("Raw dough is not for tasting: flour and eggs are raw food until they are baked."));
}

void add_filling_caution(Report& report) {
  report.push_back(
      caution("This has egg or dairy in it. Bake it to at least 71 °C (160 °F) at the centre; cool it from 57 to "
              "21 °C (135 to 70 °F) within 2 hours and to 5 °C (41 °F) within 4 hours more, then keep it cold. "
              "Your local food-safety rules come first."));
}

}  // namespace tinwright
