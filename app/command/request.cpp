// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See request.h.
#include "app/command/request.h"

#include <algorithm>
#include <iostream>

namespace tinwright {
namespace {

const CommandWords* find_words(const std::string& name) {
  for (const CommandWords& words : command_words()) {
    if (name == words.name) return &words;
  }
  return nullptr;
}

std::optional<Request> refuse(const std::string& why) {
  std::cerr << "tinwright: " << why << "\n";
  return std::nullopt;
}

}  // namespace

const char* const kUsage =
    "tinwright pan FILE      what a pan holds; with \"instead_of\", how much of a recipe it takes\n"
    "tinwright press FILE    how thick dough presses out, and whether it reaches the edges\n"
    "tinwright fill FILE     how far below the rim to stop pouring, and what is left\n"
    "tinwright paper FILE -o paper.html    life-size liners, dough shape and depth stick for a pan; .svg gives a file "
    "a sheet\n"
    "tinwright bake FILE     how warm it gets inside, and when; and the time in my pan for a recipe's\n"
    "\n"
    "tinwright read RECIPE   a recipe (saved page, schema.org JSON-LD or pasted text) as a job file\n"
    "tinwright match JOB     which of my pans take this batch\n"
    "tinwright plan JOB      how much of everything, how thick, how high, how long, what is left\n"
    "tinwright card JOB -o card.html    the plan for print; .csv and .md give the ingredients, .ics the clock\n"
    "tinwright weigh JOB --after STEP --reads \"541 g\"    what was probably left out; STEP is a number or a food\n"
    "\n"
    "FILE and JOB are JSON; - reads standard input. Options: --json prints one JSON object; --us puts US measures "
    "first; --part NAME names the bowl that is weighed;\n"
    "--paper A4 or Letter; --pieces liner, dough, stick or all.\n";

const std::vector<CommandWords>& command_words() {
  static const std::vector<CommandWords> words{{"pan", {}},
                                               {"press", {}},
                                               {"fill", {}},
                                               {"bake", {}},
                                               {"read", {}},
                                               {"match", {}},
                                               {"plan", {}},
                                               {"card", {"-o"}},
                                               {"weigh", {"--after", "--reads", "--part"}},
                                               {"paper", {"-o", "--paper", "--pieces"}}};
  return words;
}

std::optional<Request> read_arguments(const std::vector<std::string>& arguments) {
  Request request;
  for (std::size_t i = 0; i < arguments.size(); ++i) {
    const std::string& argument = arguments[i];
    const CommandWords* words = find_words(request.command);
    const bool takes_value =
        words != nullptr && std::find(words->options.begin(), words->options.end(), argument) != words->options.end();
    if (argument == "--json") {
      request.as_json = true;
    } else if (argument == "--us") {
      request.units = UnitChoice::kUs;
    } else if (takes_value) {
      if (i + 1 == arguments.size()) return refuse("something has to follow " + argument);
      request.options[argument] = arguments[++i];
    } else if (argument.size() > 1 && argument[0] == '-') {
      return refuse("there is no option " + argument + (words == nullptr ? "" : " for " + request.command));
    } else if (request.command.empty()) {
      request.command = argument;
      if (find_words(argument) == nullptr) {
        std::cerr << "tinwright: there is no command " << argument << "\n\n" << kUsage;
        return std::nullopt;
      }
    } else if (request.file.empty()) {
      request.file = argument;
    } else {
      return refuse("one file at a time; " + argument + " is one too many");
    }
  }
  if (request.command.empty()) {
    std::cerr << kUsage;
    return std::nullopt;
  }
  if (request.file.empty()) return refuse("which file? Give its name, or - for standard input");
  return request;
}

}  // namespace tinwright
