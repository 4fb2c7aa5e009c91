// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See exact_conduction.h.
#include "tests/exact_conduction.h"

#include <cmath>
#include <numbers>

#include <boost/math/special_functions/bessel.hpp>

#include "geometry/numerics.h"

namespace tinwright::exact {
namespace {

using std::numbers::pi;

constexpr int kMostTerms = 1000;     // reached below Fo = 4e-6 only
constexpr double kLastDecay = 37.0;  // exp(-37) is below 1e-16

/// Sums part(n, eigenvalue of n) · exp(-eigenvalue² Fo) until the decay alone makes the next term vanish.
template <class Eigenvalue, class Part>
double sum_series(double fourier, const Eigenvalue& eigenvalue, const Part& part) {
  double sum = 0.0;
  for (int n = 1; n <= kMostTerms; ++n) {
    const double zeta = eigenvalue(n);
    const double decay = zeta * zeta * fourier;
    if (n > 1 && decay > kLastDecay) break;
    sum += part(zeta) * std::exp(-decay);
  }
  return sum;
}

/// Promotion to long double gains nothing here, and in wasm, where that is emulated, it costs much time and its
/// Bessel zeros come out as NaN.
using BesselPolicy =
    boost::math::policies::normalise<numerics_detail::QuietPolicy, boost::math::policies::promote_double<false>>::type;

double j0(double x) {
  return boost::math::cyl_bessel_j(0, x, BesselPolicy());
}

double j1(double x) {
  return boost::math::cyl_bessel_j(1, x, BesselPolicy());
}

/// Zero n = 1, 2, … of J0 and of J1, from bounds on them (Watson, Theory of Bessel Functions, ch. XV; from memory).
double j0_zero(int n) {
  return find_root(j0, (n - 0.25) * pi, (n - 0.125) * pi);
}

double j1_zero(int n) {
  return find_root(j1, (n + 0.125) * pi, (n + 0.25) * pi);
}

/// Root n of ζ tan ζ = Bi, in [(n-1)π, (n-½)π].
double wall_eigenvalue(int n, double biot) {
  return find_root([=](double z) { return z * std::sin(z) - biot * std::cos(z); }, (n - 1) * pi, (n - 0.5) * pi);
}

double wall_coefficient(double zeta) {
  return 4.0 * std::sin(zeta) / (2.0 * zeta + std::sin(2.0 * zeta));
}

/// Root n of ζ J1(ζ) = Bi J0(ζ): between zero n-1 of J1 (0 for the first) and zero n of J0.
double cylinder_eigenvalue(int n, double biot) {
  const double low = n == 1 ? 0.0 : j1_zero(n - 1);
  const double high = j0_zero(n);
  return find_root([=](double z) { return z * j1(z) - biot * j0(z); }, low, high);
}

double cylinder_coefficient(double zeta) {
  return 2.0 / zeta * j1(zeta) / (j0(zeta) * j0(zeta) + j1(zeta) * j1(zeta));
}

/// The two-sided wall's functions are cos(μx - φ), tan φ = Bi0 / μ; the far face then asks for
/// μ = (n-1)π + atan(Bi0/μ) + atan(Bi1/μ), whose right side falls while the left rises: one root in [(n-1)π, nπ].
double two_sided_eigenvalue(int n, double biot0, double biot1) {
  const auto excess = [=](double mu) { return mu - (n - 1) * pi - std::atan2(biot0, mu) - std::atan2(biot1, mu); };
  return find_root(excess, (n - 1) * pi, n * pi);
}

struct TwoSidedMode {
  double mu, phase;
  double area;  // ∫ cos(μx - φ) dx over 0..1
  double norm;  // ∫ cos²(μx - φ) dx
};

TwoSidedMode two_sided_mode(double mu, double biot0) {
  const double phase = std::atan2(biot0, mu);
  return {mu, phase, (std::sin(mu - phase) + std::sin(phase)) / mu,
          0.5 + (std::sin(2.0 * (mu - phase)) + std::sin(2.0 * phase)) / (4.0 * mu)};
}

/// Σ value(mode) · area / norm · exp(-μ² Fo)
template <class Value>
double two_sided_sum(double biot0, double biot1, double fourier, const Value& value) {
  return sum_series(
      fourier, [=](int n) { return two_sided_eigenvalue(n, biot0, biot1); },
      [&](double mu) {
        const TwoSidedMode mode = two_sided_mode(mu, biot0);
        return value(mode) * mode.area / mode.norm;
      });
}

/// The factor of the height in a product. spread = diffusivity · time [m²].
template <class Food>
double upright_theta(const Food& food, double k, double spread, double above_base) {
  return two_sided_wall_theta(above_base / food.height, food.base * food.height / k, food.top * food.height / k,
                              spread / (food.height * food.height));
}

template <class Food>
double upright_mean_theta(const Food& food, double k, double spread) {
  return two_sided_wall_mean_theta(food.base * food.height / k, food.top * food.height / k,
                                   spread / (food.height * food.height));
}

/// No heat passes, or no time has passed.
bool is_unchanged(double biot_sum, double fourier) {
  return biot_sum <= 0.0 || fourier <= 0.0;
}

}  // namespace

SeriesTerm wall_term(int n, double biot) {
  const double zeta = wall_eigenvalue(n, biot);
  return {zeta, wall_coefficient(zeta)};
}

double wall_theta(double place, double biot, double fourier) {
  if (is_unchanged(biot, fourier)) return 1.0;
  return sum_series(
      fourier, [=](int n) { return wall_eigenvalue(n, biot); },
      [=](double zeta) { return wall_coefficient(zeta) * std::cos(zeta * place); });
}

double wall_mean_theta(double biot, double fourier) {
  if (is_unchanged(biot, fourier)) return 1.0;
  return sum_series(
      fourier, [=](int n) { return wall_eigenvalue(n, biot); },
      [](double zeta) { return wall_coefficient(zeta) * std::sin(zeta) / zeta; });
}

SeriesTerm cylinder_term(int n, double biot) {
  const double zeta = cylinder_eigenvalue(n, biot);
  return {zeta, cylinder_coefficient(zeta)};
}

double cylinder_theta(double place, double biot, double fourier) {
  if (is_unchanged(biot, fourier)) return 1.0;
  return sum_series(
      fourier, [=](int n) { return cylinder_eigenvalue(n, biot); },
      [=](double zeta) { return cylinder_coefficient(zeta) * j0(zeta * place); });
}

double cylinder_mean_theta(double biot, double fourier) {
  if (is_unchanged(biot, fourier)) return 1.0;
  return sum_series(
      fourier, [=](int n) { return cylinder_eigenvalue(n, biot); },
      [](double zeta) { return cylinder_coefficient(zeta) * 2.0 * j1(zeta) / zeta; });
}

double two_sided_wall_theta(double place, double biot0, double biot1, double fourier) {
  if (is_unchanged(biot0 + biot1, fourier)) return 1.0;
  return two_sided_sum(biot0, biot1, fourier,
                       [=](const TwoSidedMode& mode) { return std::cos(mode.mu * place - mode.phase); });
}

double two_sided_wall_mean_theta(double biot0, double biot1, double fourier) {
  if (is_unchanged(biot0 + biot1, fourier)) return 1.0;
  return two_sided_sum(biot0, biot1, fourier, [](const TwoSidedMode& mode) { return mode.area; });
}

double two_sided_wall_coldest(double biot0, double biot1, double fourier) {
  if (is_unchanged(biot0 + biot1, fourier)) return 0.5;
  // At an insulated face the slope is zero only up to rounding, which would hide the change of sign.
  if (biot0 <= 0.0) return 0.0;
  if (biot1 <= 0.0) return 1.0;
  const auto slope = [=](double place) {
    return two_sided_sum(biot0, biot1, fourier,
                         [=](const TwoSidedMode& mode) { return -mode.mu * std::sin(mode.mu * place - mode.phase); });
  };
  return find_root(slope, 0.0, 1.0);
}

double short_cylinder_theta(const ShortCylinder& food, const Substance& made_of, double from_axis, double above_base,
                            double seconds) {
  const double k = made_of.conductivity;
  const double spread = made_of.diffusivity * seconds;
  return cylinder_theta(from_axis / food.radius, food.side * food.radius / k, spread / (food.radius * food.radius)) *
         upright_theta(food, k, spread, above_base);
}

double short_cylinder_mean_theta(const ShortCylinder& food, const Substance& made_of, double seconds) {
  const double k = made_of.conductivity;
  const double spread = made_of.diffusivity * seconds;
  return cylinder_mean_theta(food.side * food.radius / k, spread / (food.radius * food.radius)) *
         upright_mean_theta(food, k, spread);
}

double box_theta(const Box& food, const Substance& made_of, double from_middle_length, double from_middle_width,
                 double above_base, double seconds) {
  const double k = made_of.conductivity;
  const double spread = made_of.diffusivity * seconds;
  const auto level = [&](double from_middle, double half) {
    return wall_theta(from_middle / half, food.side * half / k, spread / (half * half));
  };
  return level(from_middle_length, 0.5 * food.length) * level(from_middle_width, 0.5 * food.width) *
         upright_theta(food, k, spread, above_base);
}

double box_mean_theta(const Box& food, const Substance& made_of, double seconds) {
  const double k = made_of.conductivity;
  const double spread = made_of.diffusivity * seconds;
  const auto level = [&](double half) { return wall_mean_theta(food.side * half / k, spread / (half * half)); };
  return level(0.5 * food.length) * level(0.5 * food.width) * upright_mean_theta(food, k, spread);
}

}  // namespace tinwright::exact
