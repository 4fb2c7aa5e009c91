// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The two numerical tools geometry borrows from Boost.Math, wrapped so that nothing throws: a bracketing root
// finder (Alefeld, Potra and Shi 1995, algorithm 748) and Gauss-Legendre quadrature.
#pragma once

#include <algorithm>
#include <cstdint>
#include <utility>

#include <boost/math/policies/policy.hpp>
#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/tools/roots.hpp>

#include "geometry/checks.h"

namespace tinwright {

namespace numerics_detail {
using boost::math::policies::errno_on_error;
using QuietPolicy = boost::math::policies::policy<
    boost::math::policies::domain_error<errno_on_error>, boost::math::policies::pole_error<errno_on_error>,
    boost::math::policies::overflow_error<errno_on_error>, boost::math::policies::evaluation_error<errno_on_error>>;
}  // namespace numerics_detail

/// The x in [low, high] where f(x) = 0, to the last bits of x. f must be continuous and not have the same
/// strict sign at both ends; an end that is a root is returned as it is.
template <class Function>
double find_root(const Function& f, double low, double high) {
  const double at_low = f(low);
  const double at_high = f(high);
  if (at_low == 0.0) return low;
  if (at_high == 0.0) return high;
  GEOMETRY_ASSERT((at_low < 0.0) != (at_high < 0.0));
  std::uintmax_t iterations = 200;
  const auto [a, b] =
      boost::math::tools::toms748_solve(f, low, high, at_low, at_high, boost::math::tools::eps_tolerance<double>(52),
                                        iterations, numerics_detail::QuietPolicy());
  return 0.5 * (a + b);
}

/// The integral of f over [low, high] by the 15-point rule: exact for polynomials up to degree 29.
template <class Function>
double integrate(const Function& f, double low, double high) {
  return boost::math::quadrature::gauss<double, 15, numerics_detail::QuietPolicy>::integrate(f, low, high);
}

}  // namespace tinwright
