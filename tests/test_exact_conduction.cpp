// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The exact conduction series against published coefficients and examples, other closed forms, limits, and an
// independent finite-element solution; so that the heat solver's tests may lean on them.
#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <numbers>
#include <string_view>

#include <doctest/doctest.h>

#include "geometry/numerics.h"
#include "tests/csv_rows.h"
#include "tests/exact_conduction.h"

namespace tinwright {

extern const std::string_view kHeatStraightRoundCsv;
extern const std::string_view kHeatStraightBoxCsv;

namespace {

using namespace exact;
using std::numbers::pi;

struct OneTermRow {
  double biot, wall_zeta, wall_c, cylinder_zeta, cylinder_c;
};

// Incropera & DeWitt, Table 5.1 (Cengel, Table 4-1): roots and coefficients to the four places those tables print.
// Bi 0.2 wall seen in Cengel's solution 11-44; the rest recomputed to four places, the printed table from memory.
constexpr OneTermRow kOneTerm[] = {
    {0.01, 0.0998, 1.0017, 0.1412, 1.0025}, {0.02, 0.1410, 1.0033, 0.1995, 1.0050},
    {0.04, 0.1987, 1.0066, 0.2814, 1.0099}, {0.06, 0.2425, 1.0098, 0.3438, 1.0148},
    {0.08, 0.2791, 1.0130, 0.3960, 1.0197}, {0.1, 0.3111, 1.0161, 0.4417, 1.0246},
    {0.15, 0.3779, 1.0237, 0.5376, 1.0365}, {0.2, 0.4328, 1.0311, 0.6170, 1.0483},
    {0.25, 0.4801, 1.0382, 0.6856, 1.0598}, {0.3, 0.5218, 1.0450, 0.7465, 1.0712},
    {0.4, 0.5932, 1.0580, 0.8516, 1.0931},  {0.5, 0.6533, 1.0701, 0.9408, 1.1143},
    {0.6, 0.7051, 1.0814, 1.0184, 1.1345},  {0.7, 0.7506, 1.0918, 1.0873, 1.1539},
    {0.8, 0.7910, 1.1016, 1.1490, 1.1724},  {0.9, 0.8274, 1.1107, 1.2048, 1.1902},
    {1, 0.8603, 1.1191, 1.2558, 1.2071},    {2, 1.0769, 1.1785, 1.5994, 1.3384},
    {3, 1.1925, 1.2102, 1.7887, 1.4191},    {4, 1.2646, 1.2287, 1.9081, 1.4698},
    {5, 1.3138, 1.2402, 1.9898, 1.5029},    {6, 1.3496, 1.2479, 2.0490, 1.5253},
    {7, 1.3766, 1.2532, 2.0937, 1.5411},    {8, 1.3978, 1.2570, 2.1286, 1.5526},
    {9, 1.4149, 1.2598, 2.1566, 1.5611},    {10, 1.4289, 1.2620, 2.1795, 1.5677},
    {20, 1.4961, 1.2699, 2.2880, 1.5919},   {30, 1.5202, 1.2717, 2.3261, 1.5973},
    {40, 1.5325, 1.2723, 2.3455, 1.5993},   {50, 1.5400, 1.2727, 2.3572, 1.6002},
    {100, 1.5552, 1.2731, 2.3809, 1.6015},  {1e9, 1.5708, 1.2732, 2.4048, 1.6020},  // printed as infinite
};
constexpr double kFourPlaces = 0.51e-4;
// Cengel, example 4-10: a cylinder at Bi 0.05, as printed. It is the even mix of the table's rows 0.04 and 0.06, and
// the root curves between them, so its last two places are not the root's.
constexpr double kCengelZeta = 0.3126;
constexpr double kCengelC = 1.0124;
constexpr double kMixedRows = 0.002;

constexpr double kFouriers[] = {1e-3, 1e-2, 0.1, 0.5, 2.0};
constexpr double kTenPlaces = 1e-10;

double temperature_of(double start, double air, double theta) {
  return air + (start - air) * theta;
}

/// ∫ f over [0, 1] in even panels.
double integral(const std::function<double(double)>& f) {
  constexpr int kPanels = 40;
  double sum = 0.0;
  for (int i = 0; i < kPanels; ++i) sum += integrate(f, double(i) / kPanels, double(i + 1) / kPanels);
  return sum;
}

/// θ at depth x of a half-space, ξ = x / (2 √(αt)), η = h √(αt) / k (Carslaw & Jaeger 1959, chapter II).
double half_space_theta(double xi, double eta) {
  return std::erf(xi) + std::exp(2.0 * xi * eta + eta * eta) * std::erfc(xi + eta);
}

}  // namespace

TEST_CASE("first roots and coefficients of wall and cylinder are the printed ones") {
  for (const OneTermRow& row : kOneTerm) {
    CAPTURE(row.biot);
    CHECK(std::abs(wall_term(1, row.biot).eigenvalue - row.wall_zeta) < kFourPlaces);
    CHECK(std::abs(wall_term(1, row.biot).coefficient - row.wall_c) < kFourPlaces);
    CHECK(std::abs(cylinder_term(1, row.biot).eigenvalue - row.cylinder_zeta) < kFourPlaces);
    CHECK(std::abs(cylinder_term(1, row.biot).coefficient - row.cylinder_c) < kFourPlaces);
  }
  CHECK(std::abs(cylinder_term(1, 0.05).eigenvalue - kCengelZeta) < kMixedRows);
  CHECK(std::abs(cylinder_term(1, 0.05).coefficient - kCengelC) < kMixedRows);
}

TEST_CASE("the cylinder's roots run from the zeros of J1 to those of J0") {
  // Abramowitz & Stegun 1964, table 9.5 (from memory).
  constexpr double kZerosOfJ0[] = {2.4048255577, 5.5200781103, 8.6537279129, 11.7915344391};
  constexpr double kZerosOfJ1[] = {3.8317059702, 7.0155866698, 10.1734681351};
  for (int n = 1; n <= 4; ++n) CHECK(std::abs(cylinder_term(n, 1e13).eigenvalue - kZerosOfJ0[n - 1]) < 1e-9);
  for (int n = 1; n <= 3; ++n) CHECK(std::abs(cylinder_term(n + 1, 1e-11).eigenvalue - kZerosOfJ1[n - 1]) < 1e-9);
}

TEST_CASE("late in the cooling the first term is the whole series") {
  const double expected = 1.0701 * std::exp(-0.6533 * 0.6533 * 1.2);  // Yovanovich's worksheet: Bi 0.5, Fo 1.2
  CHECK(std::abs(wall_theta(0.0, 0.5, 1.2) - expected) < 1e-4);
}

// Inputs from Cengel, Heat and Mass Transfer, ch. 4, and Geankoplis, Transport Processes, ch. 5. The books read
// charts or keep one term, so their printed answers get a wide tolerance; the narrow one is an independent
// evaluation of the exact series, to the decimal kept.
TEST_CASE("a brass plate in an oven warms as in the textbook") {  // Cengel, example 4-4
  const double biot = 120 * 0.02 / 110;
  const double fourier = 33.9e-6 * 420 / (0.02 * 0.02);
  const double surface = temperature_of(20, 500, wall_theta(1.0, biot, fourier));
  CHECK(std::abs(surface - 282) < 3);  // printed
  CHECK(std::abs(surface - 279.6) < 0.051);
  CHECK(std::abs(temperature_of(20, 500, wall_theta(0.0, biot, fourier)) - 277.2) < 0.051);
}

TEST_CASE("a steel shaft cools as in the textbook") {  // Cengel, example 4-5
  const double centre = temperature_of(600, 200, cylinder_theta(0.0, 80 * 0.1 / 14.9, 3.95e-6 * 2700 / 0.01));
  CHECK(std::abs(centre - 360) < 5);  // printed
  CHECK(std::abs(centre - 364.3) < 0.051);
}

TEST_CASE("a half-endless cylinder cools near its end as in the textbook") {  // Cengel, example 4-10
  const ShortCylinder rod{0.1, 3.0, 0.0, 120, 120};                           // 3 m is endless within 5 min
  const double theta = short_cylinder_theta(rod, {237, 97.1e-6}, 0.0, 0.15, 300);
  CHECK(std::abs(temperature_of(200, 15, theta) - 151) < 2);  // printed
  CHECK(std::abs(temperature_of(200, 15, theta) - 149.7) < 0.051);
}

TEST_CASE("a can of pea puree is sterilised as in the textbook") {  // Geankoplis, examples 5.3-3 and 5.3-5
  const double radius = 0.0681 / 2;
  const Substance puree{0.830, 2.007e-7};
  const double fourier = puree.diffusivity * 2700 / (radius * radius);
  const double endless = temperature_of(29.4, 115.6, cylinder_theta(0.0, 4542 * radius / 0.830, fourier));
  CHECK(std::abs(endless - 104) < 3);  // chart, from memory
  CHECK(std::abs(endless - 106.1) < 0.051);
  const ShortCylinder can{radius, 0.1016, 4542, 4542, 4542};
  const double whole = temperature_of(29.4, 115.6, short_cylinder_theta(can, puree, 0.0, 0.0508, 2700));
  CHECK(std::abs(whole - 106.6) < 3);  // chart, from memory
  CHECK(std::abs(whole - 108.4) < 0.051);
}

TEST_CASE("a wall with two like faces is the symmetric wall") {
  for (const double fourier : kFouriers) {
    for (const double biot : {0.05, 1.0, 30.0}) {
      for (const double place : {0.0, 0.3, 0.5, 0.9, 1.0}) {
        CAPTURE(fourier);
        CAPTURE(biot);
        CAPTURE(place);
        const double two = two_sided_wall_theta(place, 2 * biot, 2 * biot, fourier / 4);
        CHECK(std::abs(two - wall_theta(std::abs(2 * place - 1), biot, fourier)) < kTenPlaces);
      }
      const double two_mean = two_sided_wall_mean_theta(2 * biot, 2 * biot, fourier / 4);
      CHECK(std::abs(two_mean - wall_mean_theta(biot, fourier)) < kTenPlaces);
    }
  }
}

TEST_CASE("a wall with one insulated face is half of the symmetric wall") {
  for (const double fourier : kFouriers) {
    for (const double place : {0.0, 0.4, 1.0}) {
      CAPTURE(fourier);
      CAPTURE(place);
      CHECK(std::abs(two_sided_wall_theta(place, 0.0, 3.0, fourier) - wall_theta(place, 3.0, fourier)) < kTenPlaces);
      CHECK(std::abs(two_sided_wall_theta(1 - place, 3.0, 0.0, fourier) - wall_theta(place, 3.0, fourier)) <
            kTenPlaces);
    }
  }
}

TEST_CASE("turning a wall round changes nothing") {
  for (const double place : {0.0, 0.2, 0.7}) {
    const double here = two_sided_wall_theta(place, 0.4, 6.0, 0.05);
    CHECK(std::abs(here - two_sided_wall_theta(1 - place, 6.0, 0.4, 0.05)) < kTenPlaces);
  }
}

TEST_CASE("early on each face cools like a half-space") {
  const double fourier = 1e-3;  // the other face is 1e-10 away
  for (const double biot : {0.5, 5.0, 50.0}) {
    for (const double depth : {0.0, 0.01, 0.05, 0.1}) {
      CAPTURE(biot);
      CAPTURE(depth);
      const double expected = half_space_theta(depth / (2 * std::sqrt(fourier)), biot * std::sqrt(fourier));
      CHECK(std::abs(two_sided_wall_theta(depth, biot, 2.0, fourier) - expected) < kTenPlaces);
      CHECK(std::abs(two_sided_wall_theta(1 - depth, 2.0, biot, fourier) - expected) < kTenPlaces);
      CHECK(std::abs(wall_theta(1 - depth, biot, fourier) - expected) < kTenPlaces);
    }
  }
}

TEST_CASE("at first everything is at its start, at last at the air") {
  for (const double biot : {0.1, 10.0}) {
    CHECK(std::abs(wall_theta(0.0, biot, 1e-4) - 1) < kTenPlaces);
    CHECK(std::abs(cylinder_theta(0.0, biot, 1e-4) - 1) < kTenPlaces);
    CHECK(std::abs(two_sided_wall_theta(0.5, biot, 2.0, 1e-4) - 1) < kTenPlaces);
    CHECK(wall_theta(0.0, biot, 1e3) < kTenPlaces);
    CHECK(cylinder_theta(0.0, biot, 1e3) < kTenPlaces);
    CHECK(two_sided_wall_theta(0.5, biot, 2.0, 1e3) < kTenPlaces);
  }
  CHECK(wall_theta(0.5, 1.0, 0.0) == 1.0);
  CHECK(cylinder_mean_theta(0.0, 1.0) == 1.0);
  CHECK(two_sided_wall_theta(0.2, 0.0, 0.0, 5.0) == 1.0);
}

TEST_CASE("a very thin body cools as one lump") {
  const double biot = 1e-5;
  CHECK(std::abs(wall_mean_theta(biot, 1e5) - std::exp(-1.0)) < 1e-5);
  CHECK(std::abs(cylinder_mean_theta(biot, 0.5e5) - std::exp(-1.0)) < 1e-5);
  CHECK(std::abs(two_sided_wall_mean_theta(0.5 * biot, 1.5 * biot, 0.5e5) - std::exp(-1.0)) < 1e-5);
}

TEST_CASE("the mean is the integral of theta") {
  for (const double fourier : kFouriers) {
    CAPTURE(fourier);
    CHECK(std::abs(integral([=](double x) { return wall_theta(x, 4.0, fourier); }) - wall_mean_theta(4.0, fourier)) <
          kTenPlaces);
    CHECK(std::abs(integral([=](double x) { return 2 * x * cylinder_theta(x, 4.0, fourier); }) -
                   cylinder_mean_theta(4.0, fourier)) < kTenPlaces);
    CHECK(std::abs(integral([=](double x) { return two_sided_wall_theta(x, 0.7, 9.0, fourier); }) -
                   two_sided_wall_mean_theta(0.7, 9.0, fourier)) < kTenPlaces);
  }
}

TEST_CASE("what leaves through the faces is what the mean loses") {
  const double biot0 = 0.8, biot1 = 5.0;
  const auto rate = [=](double fourier) {
    return biot0 * two_sided_wall_theta(0.0, biot0, biot1, fourier) +
           biot1 * two_sided_wall_theta(1.0, biot0, biot1, fourier);
  };
  const double lost = two_sided_wall_mean_theta(biot0, biot1, 0.1) - two_sided_wall_mean_theta(biot0, biot1, 0.3);
  CHECK(std::abs(integrate(rate, 0.1, 0.3) - lost) < kTenPlaces);
  const auto cylinder_rate = [](double fourier) { return 2 * 5.0 * cylinder_theta(1.0, 5.0, fourier); };
  CHECK(std::abs(integrate(cylinder_rate, 0.1, 0.3) - (cylinder_mean_theta(5.0, 0.1) - cylinder_mean_theta(5.0, 0.3))) <
        kTenPlaces);
}

TEST_CASE("the coldest place is the largest theta, and lies nearer the better insulated face") {
  for (const double fourier : {0.05, 0.2, 1.0}) {
    CAPTURE(fourier);
    const double place = two_sided_wall_coldest(0.7, 9.0, fourier);
    const double most = two_sided_wall_theta(place, 0.7, 9.0, fourier);
    CHECK(place < 0.5);
    for (int i = 0; i <= 100; ++i) CHECK(two_sided_wall_theta(i / 100.0, 0.7, 9.0, fourier) <= most + 1e-14);
    CHECK(std::abs(two_sided_wall_coldest(9.0, 0.7, fourier) - (1 - place)) < 1e-7);
    CHECK(std::abs(two_sided_wall_coldest(3.0, 3.0, fourier) - 0.5) < 1e-7);
    CHECK(two_sided_wall_coldest(0.0, 3.0, fourier) == 0.0);
    CHECK(two_sided_wall_coldest(3.0, 0.0, fourier) == 1.0);
  }
}

TEST_CASE("a box of which two pairs of sides are far away is a wall") {
  const Box plate{9.0, 7.0, 0.04, 20, 30, 10};
  const Substance dough{0.3, 1.2e-7};
  const double wall = two_sided_wall_theta(0.25, 10 * 0.04 / 0.3, 20 * 0.04 / 0.3, 1.2e-7 * 900 / (0.04 * 0.04));
  CHECK(std::abs(box_theta(plate, dough, 0.0, 0.0, 0.01, 900) - wall) < kTenPlaces);
}

TEST_CASE("warming by steps of air that come to nothing leaves nothing behind") {
  const auto theta = [](double seconds) { return wall_theta(0.0, 2.0, 1e-3 * seconds); };
  const std::array<AirFrom, 3> split{{{0, 180}, {300, 180}, {600, 180}}};
  const std::array<AirFrom, 1> whole{{{0, 180}}};
  CHECK(std::abs(stepped_temperature(theta, 20, split, 900) - stepped_temperature(theta, 20, whole, 900)) < 1e-12);
  CHECK(stepped_temperature(theta, 20, whole, 0) == 20);
}

namespace {

// The programme of every finite-element case.
constexpr std::array<AirFrom, 2> kAir{{{0, 190}, {720, 165}}};
constexpr double kStart = 20;
// The heads of the tables estimate their errors as 0.0007 °C (round) and 0.0033 °C (box).
constexpr double kRoundTolerance_degC = 0.001;
constexpr double kBoxTolerance_degC = 0.004;

/// The lowest of a temperature over heights 0..height. It has one valley, so thirds without it can be cut off.
template <class At>
double lowest(const At& at, double height) {
  constexpr int kCuts = 30;  // leaves 5e-6 of the height
  double low = 0.0;
  double high = height;
  for (int i = 0; i < kCuts; ++i) {
    const double third = (high - low) / 3;
    if (at(low + third) > at(high - third)) {
      low += third;
    } else {
      high -= third;
    }
  }
  return at(0.5 * (low + high));
}

}  // namespace

TEST_CASE("an upright round cake agrees with finite elements") {
  const ShortCylinder cake{0.10, 0.04, 20, 24, 14};
  const Substance batter{0.35, 0.35 / (1000.0 * 3000.0)};
  for (const reference::Row& row : reference::rows(kHeatStraightRoundCsv)) {
    const double seconds = 60 * row.number("t_min");
    CAPTURE(seconds);
    if (seconds <= 0) continue;
    const auto at = [&](double z) {
      return stepped_temperature([&](double t) { return short_cylinder_theta(cake, batter, 0.0, z, t); }, kStart, kAir,
                                 seconds);
    };
    const double mean = stepped_temperature([&](double t) { return short_cylinder_mean_theta(cake, batter, t); },
                                            kStart, kAir, seconds);
    CHECK(std::abs(lowest(at, cake.height) - row.number("core_c")) < kRoundTolerance_degC);
    CHECK(std::abs(mean - row.number("mean_c")) < kRoundTolerance_degC);
  }
}

TEST_CASE("an upright loaf agrees with finite elements") {
  const Box loaf{0.16, 0.10, 0.06, 26, 18, 12};
  const Substance batter{0.32, 0.32 / (950.0 * 2900.0)};
  for (const reference::Row& row : reference::rows(kHeatStraightBoxCsv)) {
    const double seconds = 60 * row.number("t_min");
    CAPTURE(seconds);
    if (seconds <= 0) continue;
    const auto at = [&](double z) {
      return stepped_temperature([&](double t) { return box_theta(loaf, batter, 0.0, 0.0, z, t); }, kStart, kAir,
                                 seconds);
    };
    const double mean =
        stepped_temperature([&](double t) { return box_mean_theta(loaf, batter, t); }, kStart, kAir, seconds);
    CHECK(std::abs(lowest(at, loaf.height) - row.number("core_c")) < kBoxTolerance_degC);
    CHECK(std::abs(mean - row.number("mean_c")) < kBoxTolerance_degC);
  }
}

}  // namespace tinwright
