// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Volumes are counted in eighths of a teaspoon, in which every cup and spoon of a US set is a whole number
// (NIST Handbook 44, appendix C: 3 tsp = 1 tbsp, 16 tbsp = 1 cup).
#include "app/quantity/kitchen_measure.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <string_view>
#include <vector>

#include "app/quantity/print.h"
#include "app/quantity/units.h"
#include "geometry/checks.h"

namespace tinwright {
namespace {

// Whole numbers of parts stay exact in a double up to here; a kitchen needs none so large.
constexpr double kMostParts = 1e15;

// In eighths of a teaspoon.
constexpr std::int64_t kTeaspoon = 8;
constexpr std::int64_t kTablespoon = 3 * kTeaspoon;
constexpr std::int64_t kCup = 16 * kTablespoon;

constexpr double kCloseEnough = 0.02;  // share of the volume within which one measure is preferred to two

struct Glyph {
  std::int64_t numerator, denominator;
  std::string_view text;
};

constexpr std::array<Glyph, 9> kGlyphs{{{1, 2, "½"},
                                        {1, 4, "¼"},
                                        {3, 4, "¾"},
                                        {1, 3, "⅓"},
                                        {2, 3, "⅔"},
                                        {1, 8, "⅛"},
                                        {3, 8, "⅜"},
                                        {5, 8, "⅝"},
                                        {7, 8, "⅞"}}};

std::string_view glyph_for(std::int64_t numerator, std::int64_t denominator) {
  for (const Glyph& glyph : kGlyphs) {
    if (glyph.numerator == numerator && glyph.denominator == denominator) return glyph.text;
  }
  return {};
}

/// Whether a count can be rounded at all; false only when the caller broke the precondition. A negative that rounds
/// to nothing is the rest of a subtraction, and passes.
bool is_countable(double parts) {
  const bool countable = std::isfinite(parts) && parts > -0.5 && parts < kMostParts;
  GEOMETRY_ASSERT(countable);
  return countable;
}

double unit_size(Dimension dimension, std::string_view name) {
  return to_si(1, *find_unit(dimension, name));
}

/// One choice of measures: `first` of cups or spoons and a `second` beside it, in eighths of a teaspoon.
struct Measures {
  std::int64_t first = 0;
  std::int64_t second = 0;
  std::int64_t total() const { return first + second; }
};

/// What a drawer offers for one range of sizes, all in eighths of a teaspoon.
struct Drawer {
  std::vector<std::int64_t> singles;  // measures that stand alone
  std::vector<std::int64_t> firsts;   // measures that may have another beside them
  std::vector<std::int64_t> seconds;  // those others
};

bool is_close(std::int64_t count, double wanted) {
  return std::fabs(static_cast<double>(count) - wanted) <= kCloseEnough * wanted;
}

/// The nearest single measure if it is close enough, else the nearest of all choices. A pair that is itself close to
/// a single measure is no choice, so that text read back and printed again stays what it was.
Measures choose(const Drawer& drawer, double wanted) {
  Measures best{drawer.singles.front(), 0};
  const auto offer = [&best, wanted](Measures measures) {
    const double error = std::fabs(static_cast<double>(measures.total()) - wanted);
    if (error < std::fabs(static_cast<double>(best.total()) - wanted)) best = measures;
  };
  for (const std::int64_t single : drawer.singles) offer({single, 0});
  if (is_close(best.total(), wanted)) return best;
  for (const std::int64_t first : drawer.firsts) {
    for (const std::int64_t second : drawer.seconds) {
      const double total = static_cast<double>(first + second);
      const bool is_idle = std::any_of(drawer.singles.begin(), drawer.singles.end(),
                                       [total](std::int64_t single) { return is_close(single, total); });
      if (!is_idle) offer({first, second});
    }
  }
  return best;
}

/// start, start + step, ... up to and with last.
std::vector<std::int64_t> steps_from(std::int64_t start, std::int64_t last, std::int64_t step) {
  std::vector<std::int64_t> counts;
  for (std::int64_t count = start; count <= last; count += step) counts.push_back(count);
  return counts;
}

Drawer teaspoon_drawer() {
  Drawer drawer{steps_from(kTeaspoon / 4, kTablespoon, kTeaspoon / 4), {}, {}};
  drawer.singles.push_back(kTeaspoon / 8);
  return drawer;
}

Drawer tablespoon_drawer() {
  return {steps_from(kTablespoon, kCup / 4, kTablespoon / 2), steps_from(kTablespoon, kCup / 4 - 1, kTablespoon),
          steps_from(kTeaspoon / 4, kTablespoon - 1, kTeaspoon / 4)};
}

/// Only the cups about the volume wanted; farther ones can never be nearest.
Drawer cup_drawer(double wanted) {
  Drawer drawer;
  const std::int64_t whole = static_cast<std::int64_t>(wanted) / kCup;
  for (std::int64_t cups = std::max<std::int64_t>(whole - 1, 0); cups <= whole + 1; ++cups) {
    for (const std::int64_t part : {kCup * 0, kCup / 4, kCup / 3, kCup / 2, 2 * kCup / 3, 3 * kCup / 4}) {
      if (cups + part > 0) drawer.singles.push_back(cups * kCup + part);
    }
  }
  drawer.firsts = drawer.singles;
  drawer.seconds = steps_from(kTablespoon, 7 * kTablespoon / 2, kTablespoon / 2);
  for (const std::int64_t halves : steps_from(1, 5, 1)) drawer.seconds.push_back(halves * kTeaspoon / 2);
  return drawer;
}

/// A count of eighth teaspoons in the one measure that suits it.
std::string measure_text(std::int64_t eighths) {
  if (eighths >= kCup / 4) {
    // Twelfths of a cup hold quarters and thirds alike.
    return format_parts(eighths * 12 / kCup, 12) + (eighths > kCup ? " cups" : " cup");
  }
  if (eighths >= kTablespoon && eighths % (kTablespoon / 2) == 0) return format_parts(eighths, kTablespoon) + " tbsp";
  return format_parts(eighths, kTeaspoon) + " tsp";
}

}  // namespace

std::string format_parts(std::int64_t parts, std::int64_t denominator) {
  GEOMETRY_ASSERT(denominator > 0 && parts >= 0);
  const std::int64_t whole = parts / denominator;
  const std::int64_t divisor = std::gcd(parts % denominator, denominator);
  const std::int64_t above = parts % denominator / divisor, below = denominator / divisor;
  if (above == 0) return std::to_string(whole);
  const std::string front = whole == 0 ? std::string() : std::to_string(whole);
  const std::string_view glyph = glyph_for(above, below);
  if (!glyph.empty()) return front + std::string(glyph);
  return front + (front.empty() ? "" : " ") + std::to_string(above) + "/" + std::to_string(below);
}

RoundedText inch_measure(double metres) {
  const double sixteenth = unit_size(Dimension::kLength, "in") / 16;
  if (!is_countable(metres / sixteenth)) return {std::string(kUnprintable), 0};
  const std::int64_t parts = std::llround(metres / sixteenth);
  if (parts == 0 && metres > 0) return {"under 1/16 in", 0};
  return {format_parts(parts, 16) + " in", static_cast<double>(parts) * sixteenth};
}

bool is_whole_sixteenths(double metres) {
  return std::fabs(inch_measure(metres).value - metres) <= kExactLength;
}

RoundedText kitchen_measure(double cubic_metres) {
  const double eighth = unit_size(Dimension::kVolume, "tsp") / static_cast<double>(kTeaspoon);
  const double wanted = cubic_metres / eighth;
  if (!is_countable(wanted)) return {std::string(kUnprintable), 0};
  if (wanted <= 0) return {"0 tsp", 0};
  if (wanted < 0.5) return {"under ⅛ tsp", 0};
  const Drawer drawer = wanted < static_cast<double>(kTablespoon) ? teaspoon_drawer()
                        : wanted < static_cast<double>(kCup / 4)  ? tablespoon_drawer()
                                                                  : cup_drawer(wanted);
  const Measures chosen = choose(drawer, wanted);
  std::string text = measure_text(chosen.first);
  if (chosen.second > 0) text += " + " + measure_text(chosen.second);
  return {text, static_cast<double>(chosen.total()) * eighth};
}

RoundedText ounce_measure(double kilograms) {
  const double ounce = unit_size(Dimension::kMass, "oz");
  const double ounces = kilograms / ounce;
  if (!is_countable(ounces * 8)) return {std::string(kUnprintable), 0};
  const std::int64_t steps_an_ounce = ounces < 1 ? 8 : ounces < 16 ? 4 : 2;
  const std::int64_t steps = std::llround(ounces * static_cast<double>(steps_an_ounce));
  if (steps == 0) return ounces > 0 ? RoundedText{"under ⅛ oz", 0} : RoundedText{"0 oz", 0};
  const double value = static_cast<double>(steps) / static_cast<double>(steps_an_ounce) * ounce;
  const std::int64_t pounds = steps / (16 * steps_an_ounce), rest = steps % (16 * steps_an_ounce);
  std::string text = pounds > 0 ? std::to_string(pounds) + " lb" : std::string();
  if (rest > 0) text += (text.empty() ? "" : " ") + format_parts(rest, steps_an_ounce) + " oz";
  return {text, value};
}

}  // namespace tinwright
