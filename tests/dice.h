// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Random numbers that are the same on every target, which those of the library's distributions are not. Draw in
// statements of their own: the order of a call's arguments is the compiler's.
#pragma once

#include <cmath>
#include <cstddef>
#include <numbers>
#include <random>

namespace tinwright {

class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}

  /// 0 to below 1.
  double uniform() { return static_cast<double>(engine_()) / 4294967296.0; }
  double between(double low, double high) { return low + (high - low) * uniform(); }
  /// 0 to count − 1.
  std::size_t below(std::size_t count) { return engine_() % count; }
  int up_to(int most) { return static_cast<int>(engine_() % static_cast<unsigned>(most + 1)); }
  /// Of mean 0 and deviation 1 (Box and Muller 1958).
  double normal() {
    const double radius = std::sqrt(-2.0 * std::log(1.0 - uniform()));
    return radius * std::cos(2.0 * std::numbers::pi * uniform());
  }

 private:
  std::mt19937 engine_;
};

}  // namespace tinwright
