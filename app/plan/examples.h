// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Worked examples to start from, in kitchens of our own making.
#pragma once

#include <string>
#include <vector>

#include "app/plan/bench.h"

namespace tinwright {

struct Example {
  std::string key;    // stable, for tests and links
  std::string title;  // what the cook is up to
  std::string story;  // one or two sentences
  Bench bench;
};

/// The first is what a first visit shows.
const std::vector<Example>& worked_examples();

}  // namespace tinwright
