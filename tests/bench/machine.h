// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What one core of this machine can do at best with the instructions of this build, for a benchmark to say how much of
// it the solver reaches.
#pragma once

#include <cstddef>

namespace tinwright {

/// [1/s] multiplications and additions of doubles, counted singly, in chains that wait for nothing.
double peak_operations();

/// [B/s] read and written by a[i] = b[i] + s c[i] over three arrays that together take `bytes`.
double triad_bandwidth(std::size_t bytes);

}  // namespace tinwright
