// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What the program was asked on its command line.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "app/quantity/print.h"

namespace tinwright {

struct Request {
  std::string command, file;
  bool as_json = false;
  UnitChoice units = UnitChoice::kMetric;
  std::map<std::string, std::string> options;  // "-o" -> "card.html"

  std::string option(const std::string& name) const {
    const auto found = options.find(name);
    return found == options.end() ? "" : found->second;
  }
};

/// Nothing, with the reason on standard error, where the arguments make no sense.
std::optional<Request> read_arguments(const std::vector<std::string>& arguments);

/// The whole help.
extern const char* const kUsage;

/// A command's word and the options with a value it takes.
struct CommandWords {
  const char* name;
  std::vector<std::string> options;
};
const std::vector<CommandWords>& command_words();

}  // namespace tinwright
