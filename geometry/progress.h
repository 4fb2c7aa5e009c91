// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// How far a long calculation has come.
#pragma once

#include <functional>

namespace tinwright {

/// Called now and then with the share that is done, 0 to 1, never falling. Empty: nobody wants to know.
using Progress = std::function<void(double done)>;

/// Says it where somebody wants to know.
inline void tell(const Progress& progress, double done) {
  if (progress) progress(done);
}

}  // namespace tinwright
