// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A pen for small drawings in SVG. Coordinates are user units; widths of lines and letters are millimetres of paper,
// of which one is `scale` units.
#pragma once

#include <string>
#include <string_view>

#include <glm/vec2.hpp>

namespace tinwright {

/// To a hundredth, without an exponent.
std::string svg_number(double value);

/// The definition of slanting lines to fill with, as url(#id).
std::string svg_hatch(const std::string& id, double scale);

class SvgPen {
 public:
  enum class Anchor { kStart, kMiddle, kEnd };

  explicit SvgPen(double scale) : scale_(scale) {}

  /// `attributes` go into the element as they are.
  void path(const std::string& data, const std::string& fill, double width, const std::string& attributes = "");
  void line(glm::dvec2 from, glm::dvec2 to, double width, const std::string& attributes = "");
  void box(glm::dvec2 corner, glm::dvec2 size, const std::string& fill, double width);
  void dot(glm::dvec2 at);
  /// `words` may be anyone's.
  void text(double x, double y, double letters, Anchor anchor, const std::string& words, bool is_bold = false);
  /// Dimension lines with arrowheads, from outside where there is no room between.
  void measure_down(double x, double top, double bottom);
  void measure_across(double left, double right, double y);

  /// What was drawn.
  std::string take() { return std::move(drawn_); }

 private:
  double scale_;
  std::string drawn_;
};

}  // namespace tinwright
