// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What all of the geometry rests on: how the area inside an outline shrinks as the outline is moved inwards.
// Kept as cubic pieces in the inset d, so that round, rectangular, polygonal and shallow smooth outlines are
// exact (their area is quadratic in d: Steiner's formula for parallel curves) and only deep insets of curved
// or freeform outlines are interpolated. The perimeter is minus the derivative of the area.
#pragma once

#include <vector>

namespace tinwright {

class AreaCurve {
 public:
  /// A(d) = c0 + c1 u + c2 u² + c3 u³ with u = d - start [m], A in m².
  struct Piece {
    double start = 0.0;
    double c0 = 0.0, c1 = 0.0, c2 = 0.0, c3 = 0.0;
  };

  /// A sample of an area that has no closed form.
  struct Sample {
    double inset = 0.0;      // [m]
    double area = 0.0;       // [m²]
    double perimeter = 0.0;  // [m]
  };

  AreaCurve() = default;

  /// `pieces` in order of start, the first at 0, each valid up to the next one's start, the last up to
  /// `closes_at` [m], where nothing is left.
  AreaCurve(std::vector<Piece> pieces, double closes_at);

  /// Adds cubic Hermite pieces through `samples`, which start where the pieces so far end.
  void append(const std::vector<Sample>& samples);

  /// [m²] Area left after moving the outline inwards by `inset` [m]; 0 beyond closes_at(). A negative inset
  /// moves the outline outwards, which is exact for a round outline only (the core of a ring).
  double area(double inset) const;

  /// [m] Length of the moved outline: -dA/dd; 0 beyond closes_at().
  double perimeter(double inset) const;

  /// [m] The inset at which nothing is left: the radius of the largest circle that fits inside.
  double closes_at() const { return closes_at_; }

  /// The pieces; quadrature splits at their starts.
  const std::vector<Piece>& pieces() const { return pieces_; }

 private:
  const Piece& piece_at(double inset) const;

  std::vector<Piece> pieces_;
  double closes_at_ = 0.0;
};

}  // namespace tinwright
