// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Whole jobs to start from, in kitchens of our own making (assets/jobs), compiled in.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tinwright {

struct Demo {
  std::string key;        // stable, for tests and links
  std::string name;       // the job's own
  std::string title;      // what the cook is up to
  std::string story;      // one or two sentences
  std::string_view text;  // a job file
};

/// The first is what a first visit shows.
const std::vector<Demo>& demo_jobs();

}  // namespace tinwright
