// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See svg_pen.h.
#include "app/plan/svg_pen.h"

#include "app/plan/html_text.h"
#include "app/quantity/print.h"

namespace tinwright {
namespace {

// [mm] of paper
constexpr double kRoomForArrows = 6.0, kTail = 5.0, kHead = 2.0, kHalfHead = 0.8, kThin = 0.25;

}  // namespace

std::string svg_number(double value) {
  return plain_number(value, 2);
}

std::string svg_hatch(const std::string& id, double scale) {
  const std::string step = svg_number(1.5 * scale);
  return "<defs><pattern id=\"" + id + "\" width=\"" + step + "\" height=\"" + step +
         "\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><path d=\"M0 0V" + step +
         "\" stroke=\"#000\" stroke-width=\"" + svg_number(0.7 * scale) + "\"/></pattern></defs>";
}

void SvgPen::path(const std::string& data, const std::string& fill, double width, const std::string& attributes) {
  drawn_ += "<path d=\"" + data + "\" fill=\"" + fill + "\"";
  if (width > 0.0) drawn_ += " stroke=\"#000\" stroke-width=\"" + svg_number(width * scale_) + "\"";
  drawn_ += (attributes.empty() ? "" : " " + attributes) + "/>";
}

void SvgPen::line(glm::dvec2 from, glm::dvec2 to, double width, const std::string& attributes) {
  path("M" + svg_number(from.x) + " " + svg_number(from.y) + "L" + svg_number(to.x) + " " + svg_number(to.y), "none",
       width, attributes);
}

void SvgPen::box(glm::dvec2 corner, glm::dvec2 size, const std::string& fill, double width) {
  path("M" + svg_number(corner.x) + " " + svg_number(corner.y) + "h" + svg_number(size.x) + "v" + svg_number(size.y) +
           "h" + svg_number(-size.x) + "z",
       fill, width);
}

void SvgPen::dot(glm::dvec2 at) {
  drawn_ += "<circle cx=\"" + svg_number(at.x) + "\" cy=\"" + svg_number(at.y) + "\" r=\"" + svg_number(0.6 * scale_) +
            "\"/>";
}

void SvgPen::text(double x, double y, double letters, Anchor anchor, const std::string& words, bool is_bold) {
  static constexpr std::string_view kAnchors[] = {"start", "middle", "end"};
  drawn_ += "<text x=\"" + svg_number(x) + "\" y=\"" + svg_number(y) + "\" font-size=\"" +
            svg_number(letters * scale_) + "\" text-anchor=\"" +
            std::string(kAnchors[static_cast<std::size_t>(anchor)]) + "\"" + (is_bold ? " font-weight=\"700\"" : "") +
            ">" + html_text(words) + "</text>";
}

void SvgPen::measure_down(double x, double top, double bottom) {
  const double outside = bottom - top < kRoomForArrows * scale_ ? 1.0 : -1.0;
  const std::string across = svg_number(2.0 * kHalfHead * scale_), back = svg_number(-kHalfHead * scale_);
  const auto head = [&](double y, double way) {
    path("M" + svg_number(x) + " " + svg_number(y) + "l" + back + " " + svg_number(way * kHead * scale_) + "h" +
             across + "z",
         "#000", 0.0);
  };
  head(top, -outside);
  head(bottom, outside);
  if (outside < 0.0) {
    line({x, top}, {x, bottom}, kThin);
    return;
  }
  line({x, top - kTail * scale_}, {x, top}, kThin);
  line({x, bottom}, {x, bottom + kTail * scale_}, kThin);
}

void SvgPen::measure_across(double left, double right, double y) {
  const std::string tall = svg_number(2.0 * kHalfHead * scale_), back = svg_number(-kHalfHead * scale_);
  for (const double way : {1.0, -1.0}) {
    path("M" + svg_number(way > 0.0 ? left : right) + " " + svg_number(y) + "l" + svg_number(way * kHead * scale_) +
             " " + back + "v" + tall + "z",
         "#000", 0.0);
  }
  line({left, y}, {right, y}, kThin);
}

}  // namespace tinwright
