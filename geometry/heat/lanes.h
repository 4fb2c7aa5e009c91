// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Two doubles at once, by an extension that gcc and clang share: compilers do not find them by themselves in loops as
// short as the heat solver's. Where there are no vector instructions they become two doubles again; each lane does what
// a double would, to the last bit.
#pragma once

#include <cstring>

namespace tinwright {

using Pair = double __attribute__((vector_size(16)));

inline Pair load_pair(const double* from) {
  Pair pair;
  std::memcpy(&pair, from, sizeof pair);
  return pair;
}

inline void store_pair(double* to, Pair pair) {
  std::memcpy(to, &pair, sizeof pair);
}

/// What comparing two Pairs gives: all bits set where it holds, else none.
using PairTest = decltype(Pair{} < Pair{});

inline bool holds_for_both(PairTest test) {
  return (test[0] & test[1]) != 0;
}

}  // namespace tinwright
