// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Exact transient conduction with convection at the surface, as Fourier series: the reference for the heat solver.
// Uniform start, constant properties, constant air. theta = (T - T_air) / (T_start - T_air) throughout.
// Source: H. S. Carslaw & J. C. Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, chapter III (slab with
// radiation into a medium) and VII (cylinder), products in chapter I; Incropera & DeWitt, chapter 5.
//
// Series are summed until the next term is below 1e-16, so Fourier numbers from 1e-4 up keep 1e-10 or better; at 0
// theta is 1. Biot and Fourier numbers must be finite and not negative.
#pragma once

#include <span>

namespace tinwright::exact {

/// Term n = 1, 2, … of a series: theta at the centre is the sum of coefficient · exp(-eigenvalue² Fo).
struct SeriesTerm {
  double eigenvalue = 0.0;
  double coefficient = 0.0;
};

/// Plane wall of half thickness L, both faces alike: Bi = h L / k, Fo = diffusivity · t / L². Bi > 0 for a term.
SeriesTerm wall_term(int n, double biot);
/// place = distance from the middle / L, in [0, 1].
double wall_theta(double place, double biot, double fourier);
double wall_mean_theta(double biot, double fourier);

/// Long cylinder of radius R: Bi = h R / k, Fo = diffusivity · t / R². Bi > 0 for a term.
SeriesTerm cylinder_term(int n, double biot);
/// place = distance from the axis / R, in [0, 1].
double cylinder_theta(double place, double biot, double fourier);
double cylinder_mean_theta(double biot, double fourier);

/// Plane wall of FULL thickness L, each face with its own Biot number h L / k (0 = insulated), Fo = diffusivity · t /
/// L². place = distance from the face of `biot0` / L, in [0, 1].
double two_sided_wall_theta(double place, double biot0, double biot1, double fourier);
double two_sided_wall_mean_theta(double biot0, double biot1, double fourier);
/// Where |theta| is largest (the coldest place of food in an oven). 0.5 when both faces are insulated. At so early
/// a time that the middle has not felt the air, any place of the level part.
double two_sided_wall_coldest(double biot0, double biot1, double fourier);

/// [W/mK], [m²/s]
struct Substance {
  double conductivity = 0.0;
  double diffusivity = 0.0;
};

/// A cylinder or box on its base; heat transfer [W/m²K] of top, side and base, sizes [m].
struct ShortCylinder {
  double radius = 0.0;
  double height = 0.0;
  double top = 0.0;
  double side = 0.0;
  double base = 0.0;
};
struct Box {
  double length = 0.0;
  double width = 0.0;
  double height = 0.0;
  double top = 0.0;
  double side = 0.0;
  double base = 0.0;
};

/// Products of the series above after `seconds`. from_axis, from_middle_*, above_base [m].
double short_cylinder_theta(const ShortCylinder& food, const Substance& made_of, double from_axis, double above_base,
                            double seconds);
double short_cylinder_mean_theta(const ShortCylinder& food, const Substance& made_of, double seconds);
double box_theta(const Box& food, const Substance& made_of, double from_middle_length, double from_middle_width,
                 double above_base, double seconds);
double box_mean_theta(const Box& food, const Substance& made_of, double seconds);

/// Air of one temperature [any scale] from a moment on [s]; the first from 0.
struct AirFrom {
  double seconds = 0.0;
  double temperature = 0.0;
};

/// Temperature after `seconds` in air that steps, by superposition of the answers to each step (Duhamel):
/// T = T_start + Σ (change of air) · (1 - theta(time since)). theta_after is theta as a function of seconds.
template <class ThetaAfter>
double stepped_temperature(const ThetaAfter& theta_after, double start, std::span<const AirFrom> air, double seconds) {
  double temperature = start;
  double before = start;
  for (const AirFrom& step : air) {
    if (step.seconds >= seconds) break;
    temperature += (step.temperature - before) * (1.0 - theta_after(seconds - step.seconds));
    before = step.temperature;
  }
  return temperature;
}

}  // namespace tinwright::exact
