// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What each command answers to a JSON question.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "app/command/answers.h"
#include "app/command/request.h"

namespace tinwright {

/// What a command found out: the answer as JSON and in words, as a report or, where that is empty, as text.
struct Answer {
  Json json;
  Report report;
  std::string text;
  bool is_file = false;                                         // `text` is what goes into the file named by -o
  std::vector<std::pair<std::string, std::string>> files = {};  // instead: names and texts
};

/// Nothing beside the reader's faults where the question cannot be answered.
using Command = std::optional<Answer> (*)(FieldReader&, const Request&);

/// The command that answers JSON questions of that name; `read` takes any text and is not among them.
Command find_command(const std::string& name);

}  // namespace tinwright
