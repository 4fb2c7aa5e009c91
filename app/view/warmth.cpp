// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The stops lie on a smooth curve through CIELAB, 13.5 apart each (colour difference of 1976; CIE 15), from a lightness
// of 22 to 93: equal steps of temperature look equally large, by lightness alone too.
#include "app/view/warmth.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tinwright::view {
namespace {

constexpr std::array<Colour, 13> kStops{{{0x22, 0x31, 0x69},
                                         {0x4E, 0x36, 0x77},
                                         {0x73, 0x3A, 0x7B},
                                         {0x93, 0x3E, 0x79},
                                         {0xAE, 0x45, 0x74},
                                         {0xC4, 0x51, 0x6D},
                                         {0xD7, 0x60, 0x66},
                                         {0xE5, 0x73, 0x60},
                                         {0xEF, 0x88, 0x5C},
                                         {0xF5, 0xA0, 0x5C},
                                         {0xF8, 0xB9, 0x63},
                                         {0xF9, 0xD2, 0x75},
                                         {0xFC, 0xEC, 0x96}}};

std::uint8_t between(std::uint8_t a, std::uint8_t b, double along) {
  return static_cast<std::uint8_t>(std::lround(std::lerp(static_cast<double>(a), static_cast<double>(b), along)));
}

}  // namespace

Colour warmth(double share) {
  const double place = std::clamp(share, 0.0, 1.0) * static_cast<double>(kStops.size() - 1);
  const std::size_t stop = std::min(static_cast<std::size_t>(place), kStops.size() - 2);
  const double along = place - static_cast<double>(stop);
  const Colour& a = kStops[stop];
  const Colour& b = kStops[stop + 1];
  return {between(a.red, b.red, along), between(a.green, b.green, along), between(a.blue, b.blue, along)};
}

}  // namespace tinwright::view
