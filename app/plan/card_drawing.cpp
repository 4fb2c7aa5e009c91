// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The pan of card_drawing.h. Sizes of letters, arrows and margins are millimetres of paper times the scale.
#include "app/plan/card_drawing.h"

#include <algorithm>
#include <cmath>

#include "app/plan/html_text.h"
#include "app/plan/picture.h"
#include "app/plan/svg_pen.h"
#include "geometry/section.h"

namespace tinwright {
namespace {

// [mm] of paper
constexpr double kTallest = 30.0;
constexpr double kLeft = 22.0, kRight = 46.0, kTop = 11.0, kBottom = 9.0;
constexpr double kWall = 0.9;
constexpr double kLetters = 4.0, kBigLetters = 6.0;
constexpr double kLevelWithRim = 5e-4;  // [m] as plan_words.cpp says it

/// The round scale at which a pan fits: 1 is life size.
double scale_for(double length, double depth, double widest) {
  const double needed = std::max(length / widest, depth / kTallest);
  for (const double scale : {1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0}) {
    if (needed <= scale) return scale;
  }
  return std::ceil(needed);
}

/// Both halves of a section as loops about the middle: one, or two beside a core.
Loops whole(const Loop& half, bool has_core) {
  if (half.empty()) return {};
  Loop right = has_core ? half : Loop(half.begin() + 1, half.end() - 1);
  Loop left(right.rbegin(), right.rend());
  for (glm::dvec2& p : left) p.x = -p.x;
  if (has_core) return {right, left};
  right.insert(right.end(), left.begin(), left.end());
  return {right};
}

/// What of a pan's section the dough takes, and the cavity's floor and top above the pan's [mm].
struct DoughSection {
  Loops loops;
  double floor = 0.0, top = 0.0;
  double reach = 0.0;  // half the floor, or as far out as the dough goes
};

class Section {
 public:
  Section(const OwnPan& own, const PanPlan& plan, UnitChoice units, double widest, std::size_t number)
      : own_(own),
        pan_(own.pan),
        plan_(plan),
        units_(units),
        id_("d" + std::to_string(number)),
        picture_(draw_picture(own.pan, nullptr, nullptr, nullptr, nullptr)),
        half_(0.5e3 * picture_.length),
        depth_(1e3 * picture_.depth),
        scale_(scale_for(2.0 * half_, depth_, widest)),
        pen_(scale_),
        core_(pan_.core ? 1e3 * (0.5 * pan_.core->outline.length + pan_.core->wall.floor_inset()) : 0.0) {
    find_dough();
  }

  std::string svg() {
    draw_pan();
    draw_food();
    measure_pan();
    if (plan_.filling > 0.0) measure_filling();
    if (plan_.shell.is_there()) name_dough();
    pen_.text(half_ + kRight * scale_, depth_ + 7.5 * scale_, 3.2, SvgPen::Anchor::kEnd, scale_words());
    return head() + pen_.take() + "</svg>";
  }

 private:
  void find_dough() {
    dough_.top = depth_;
    dough_.reach = half_ - 1e3 * pan_.wall.floor_inset();
    if (!plan_.shell.is_there()) return;
    const Lining lining = lining_of(plan_.shell, pan_);
    dough_.top = 1e3 * lining.height;
    dough_.floor = 1e3 * (lining.height - depth(plan_.cavity));
    if (plan_.coverage < 1.0 && !pan_.core) {
      dough_.reach *= std::sqrt(plan_.coverage);
      const double reach = 1e-3 * dough_.reach, thick = plan_.shell.base;
      dough_.loops = {{{-reach, 0.0}, {reach, 0.0}, {reach, thick}, {-reach, thick}}};
      return;
    }
    const double crust = plan_.shell.lining > 0.0 ? lining.height : lining.floor;
    dough_.loops = whole(section_half(pan_, crust), pan_.core.has_value());
    if (plan_.shell.lining <= 0.0) return;
    for (Loop loop : whole(section_half(plan_.cavity, depth(plan_.cavity)), pan_.core.has_value())) {
      for (glm::dvec2& p : loop) p.y += 1e-3 * dough_.floor;
      dough_.loops.push_back(std::move(loop));
    }
  }

  std::string head() const {
    const double k = scale_;
    const double width = 2.0 * half_ + (kLeft + kRight) * k, height = depth_ + (kTop + kBottom) * k;
    std::string said = "Cut through the middle, " + scale_words() + ": " + length_words() + ", " +
                       format_length(1e-3 * depth_, units_) + " deep";
    if (plan_.shell.is_there()) said += "; " + dough_words();
    if (plan_.filling > 0.0) said += "; " + filling_words() + ", " + stop_words();
    return "<svg role=\"img\" aria-labelledby=\"" + id_ + "t " + id_ + "s\" width=\"" + plain_number(width / k, 1) +
           "mm\" height=\"" + plain_number(height / k, 1) + "mm\" viewBox=\"" + svg_number(-half_ - kLeft * k) + " " +
           svg_number(-kTop * k) + " " + svg_number(width) + " " + svg_number(height) + "\"><title id=\"" + id_ +
           "t\">" + html_text(own_.name) + "</title><desc id=\"" + id_ + "s\">" + html_text(said) + "</desc>" +
           svg_hatch(id_ + "h", scale_);
  }

  std::string path_of(const Loops& loops, double floor) const {
    std::string path;
    for (const Loop& loop : loops) {
      path += line_of(loop, 1.0, floor) + "Z";
    }
    return path;
  }

  /// `side` -1 mirrors it.
  std::string line_of(const Loop& loop, double side, double floor) const {
    std::string path;
    for (const glm::dvec2 p : loop) {
      path += (path.empty() ? "M" : "L") + svg_number(side * 1e3 * p.x) + " " + svg_number(depth_ - floor - 1e3 * p.y);
    }
    return path;
  }

  void draw_pan() {
    std::string edge;
    for (const Loop& line : picture_.pan_edge) edge += line_of(line, 1.0, 0.0) + line_of(line, -1.0, 0.0);
    if (picture_.tray > 0.0) {
      const std::string tray = svg_number(1e3 * picture_.tray), floor = svg_number(depth_);
      edge += "M-" + tray + " " + floor + "H" + tray;
    }
    pen_.path(edge, "none", 2.0 * kWall, "stroke-linejoin=\"round\"");
    pen_.path(path_of(whole(section_half(pan_, 1e-3 * depth_), pan_.core.has_value()), 0.0), "#fff", 0.0);
  }

  void draw_food() {
    if (plan_.filling > 0.0) {
      pen_.path(path_of(whole(section_half(plan_.cavity, plan_.fill_height), pan_.core.has_value()), dough_.floor),
                "#ddd", 0.0);
    }
    if (!dough_.loops.empty()) {
      pen_.path(path_of(dough_.loops, 0.0), "url(#" + id_ + "h)", 0.3, "fill-rule=\"evenodd\"");
    }
    if (plan_.filling <= 0.0) return;
    const double y = depth_ - dough_.floor - 1e3 * plan_.fill_height;
    const double outer = half_wide(plan_.cavity, plan_.fill_height);
    if (!plan_.cavity.core) {
      pen_.line({-outer, y}, {outer, y}, 0.9, "class=\"fill-line\"");
      return;
    }
    const Core& core = *plan_.cavity.core;
    const double inner = 1e3 * (0.5 * core.outline.length + core.wall.inset(plan_.fill_height));
    pen_.line({inner, y}, {outer, y}, 0.9, "class=\"fill-line\"");
    pen_.line({-inner, y}, {-outer, y}, 0.9, "class=\"fill-line\"");
  }

  static double half_wide(const Pan& pan, double height) {
    return 1e3 * (0.5 * pan.outline.length - pan.wall.inset(height));
  }

  void measure_pan() {
    const double k = scale_;
    pen_.measure_across(-half_, half_, -4.0 * k);
    pen_.text(0.0, -5.5 * k, kLetters, SvgPen::Anchor::kMiddle, length_words());
    const double x = -half_ - 4.0 * k;
    pen_.line({-half_ - 1.5 * k, 0.0}, {x - 1.5 * k, 0.0}, 0.2);
    pen_.line({-half_ - 1.5 * k, depth_}, {x - 1.5 * k, depth_}, 0.2);
    pen_.measure_down(x, 0.0, depth_);
    pen_.text(x - 2.0 * k, 0.5 * depth_ - 0.5 * k, kLetters, SvgPen::Anchor::kEnd,
              format_length(1e-3 * depth_, units_));
    pen_.text(x - 2.0 * k, 0.5 * depth_ + 3.7 * k, kLetters, SvgPen::Anchor::kEnd, "deep");
  }

  void measure_filling() {
    const double k = scale_;
    const double top = depth_ - dough_.top, level = depth_ - dough_.floor - 1e3 * plan_.fill_height;
    const double x = half_ + 5.0 * k, middle = 0.5 * (top + level);
    pen_.line({half_wide(plan_.cavity, plan_.fill_height), level}, {x + 1.5 * k, level}, 0.2);
    pen_.line({half_ + kWall * k, top}, {x + 1.5 * k, top}, 0.2);
    const std::string where = rim_words();
    if (plan_.below_rim < kLevelWithRim) {
      pen_.text(x + 3.0 * k, middle + 1.0 * k, kBigLetters, SvgPen::Anchor::kStart, "level with", true);
    } else {
      pen_.measure_down(x, top, level);
      pen_.text(x + 3.0 * k, middle + 1.0 * k, kBigLetters, SvgPen::Anchor::kStart,
                format_length(plan_.below_rim, units_), true);
    }
    pen_.text(x + 3.0 * k, middle + 5.5 * k, kLetters, SvgPen::Anchor::kStart,
              plan_.below_rim < kLevelWithRim ? where : "below " + where);
    const double at = 0.5 * (core_ + dough_.reach);
    point_at({at, level + 0.5e3 * plan_.fill_height}, SvgPen::Anchor::kStart, filling_words());
  }

  void name_dough() {
    const double at = 0.5 * (core_ + dough_.reach);
    point_at({-at, depth_ - 0.5e3 * (plan_.shell.base + plan_.shell.lining)}, SvgPen::Anchor::kEnd, dough_words());
  }

  void point_at(glm::dvec2 p, SvgPen::Anchor anchor, const std::string& words) {
    const double k = scale_;
    pen_.line(p, {p.x, depth_ + 3.5 * k}, 0.25);
    pen_.dot(p);
    const double aside = anchor == SvgPen::Anchor::kEnd ? 2.0 : -2.0;
    pen_.text(p.x + aside * k, depth_ + 7.5 * k, kLetters, anchor, words);
  }

  std::string length_words() const {
    const std::string length = format_length(picture_.length, units_);
    if (std::abs(picture_.length - picture_.width) < 1e-3) return length + " across";
    return length + " long, " + format_length(picture_.width, units_) + " wide";
  }
  std::string dough_words() const {
    const auto& [base, lining, height] = plan_.shell;
    const std::string lined = lining > 0.0 ? "dough " + format_length(lining, units_) : "";
    if (base <= 0.0) return lined;
    return "base " + format_length(base, units_) + (lined.empty() ? "" : ", " + lined);
  }
  std::string filling_words() const { return "filling " + format_length(plan_.fill_height, units_) + " deep"; }
  std::string stop_words() const {
    const std::string where = rim_words();
    return plan_.below_rim < kLevelWithRim ? "level with " + where
                                           : "up to " + format_length(plan_.below_rim, units_) + " below " + where;
  }
  /// A base leaves the pan's own rim to measure from.
  std::string rim_words() const { return plan_.shell.lining > 0.0 ? "the crust's top" : "the rim"; }
  std::string scale_words() const { return scale_ == 1.0 ? "life size" : "1 : " + format_number(scale_, 1); }

  const OwnPan& own_;
  const Pan& pan_;
  const PanPlan& plan_;
  UnitChoice units_;
  std::string id_;
  Picture picture_;
  double half_, depth_;  // [mm]
  double scale_;
  SvgPen pen_;
  double core_;  // [mm] radius of a ring's core at the floor
  DoughSection dough_;
};

}  // namespace

std::string pan_drawing(const OwnPan& own, const PanPlan& pan, UnitChoice units, double widest, std::size_t number) {
  return Section(own, pan, units, widest, number).svg();
}

}  // namespace tinwright
