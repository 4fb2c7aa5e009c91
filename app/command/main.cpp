// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The program tinwright: one question in a JSON file, the answer on standard output.
// Exit status 0: answered. 2: the input was refused, one line a fault on standard error. 1: our own fault.
#include <algorithm>
#include <array>
#include <cstdio>
#include <iostream>
#include <optional>
#include <string>
#include <vector>

#include "app/command/answers.h"
#include "app/files/pan_reader.h"

namespace tinwright {
namespace {

constexpr int kAnswered = 0;
constexpr int kOurFault = 1;
constexpr int kRefused = 2;

constexpr const char* kUsage =
    "tinwright pan FILE      what a pan holds; with \"instead_of\", how much of a recipe it takes\n"
    "tinwright press FILE    how thick dough presses out, and whether it reaches the edges\n"
    "tinwright bake FILE     how warm it gets inside, and when; and the time in my pan for a recipe's\n"
    "tinwright fill FILE     how far below the rim to stop pouring, and what is left\n"
    "\n"
    "FILE is JSON; - reads standard input. Options: --json prints one JSON object; --us puts US measures first.\n";

struct Request {
  std::string command, file;
  bool as_json = false;
  UnitChoice units = UnitChoice::kMetric;
};

/// What a command found out: either an answer both ways, or nothing beside the reader's faults.
struct Answer {
  Json json;
  Report report;
};

using Command = std::optional<Answer> (*)(FieldReader&, UnitChoice);

std::optional<Answer> answer_pan(FieldReader& reader, UnitChoice units) {
  const auto job = read_pan_job(reader);
  reader.refuse_unread();
  if (!job || !reader.faults().empty()) return std::nullopt;
  Report report = describe_pan(job->pan, units);
  if (job->recipe_pan) {
    const Report swap = describe_swap(*job->recipe_pan, job->pan, units);
    report.insert(report.begin(), swap.begin(), swap.end());
  }
  return Answer{json_of(*job), report};
}

std::optional<Answer> answer_press(FieldReader& reader, UnitChoice units) {
  const auto job = read_press_job(reader, "", read_pan(reader, "pan."));
  reader.refuse_unread();
  if (!job || !reader.faults().empty()) return std::nullopt;
  const auto answer = solve_press(reader, *job, "");
  if (!answer) return std::nullopt;
  return Answer{json_of(*job, *answer), describe_press(*job, *answer, units)};
}

std::optional<Answer> answer_fill(FieldReader& reader, UnitChoice units) {
  const auto job = read_fill_job(reader, "", read_pan(reader, "pan."));
  reader.refuse_unread();
  if (!job || !reader.faults().empty()) return std::nullopt;
  const auto answer = solve_fill(reader, *job, "");
  if (!answer) return std::nullopt;
  return Answer{json_of(*job, *answer), describe_fill(*job, *answer, units)};
}

std::optional<Answer> answer_bake(FieldReader& reader, UnitChoice units) {
  const auto job = read_bake_job(reader);
  reader.refuse_unread();
  if (!job || !reader.faults().empty()) return std::nullopt;
  const auto answer = solve_bake(reader, *job);
  if (!answer) return std::nullopt;
  return Answer{json_of(*job, *answer), describe_bake(*job, *answer, units)};
}

Command find_command(const std::string& name) {
  if (name == "pan") return answer_pan;
  if (name == "press") return answer_press;
  if (name == "fill") return answer_fill;
  if (name == "bake") return answer_bake;
  return nullptr;
}

std::optional<Request> read_arguments(const std::vector<std::string>& arguments) {
  Request request;
  for (const std::string& argument : arguments) {
    if (argument == "--json") {
      request.as_json = true;
    } else if (argument == "--us") {
      request.units = UnitChoice::kUs;
    } else if (argument.size() > 1 && argument[0] == '-') {
      std::cerr << "tinwright: there is no option " << argument << "\n";
      return std::nullopt;
    } else if (request.command.empty()) {
      request.command = argument;
    } else if (request.file.empty()) {
      request.file = argument;
    } else {
      std::cerr << "tinwright: one file at a time; " << argument << " is one too many\n";
      return std::nullopt;
    }
  }
  if (find_command(request.command) == nullptr) {
    std::cerr << (request.command.empty() ? "" : "tinwright: there is no command " + request.command + "\n\n")
              << kUsage;
    return std::nullopt;
  }
  if (request.file.empty()) {
    std::cerr << "tinwright: which file? Give its name, or - for standard input\n";
    return std::nullopt;
  }
  return request;
}

std::optional<std::string> read_file(const std::string& name) {
  std::FILE* file = name == "-" ? stdin : std::fopen(name.c_str(), "rb");
  if (file == nullptr) return std::nullopt;
  std::string text;
  std::array<char, 65536> block;
  // One block beyond what read_json takes is enough to be refused for its length.
  while (text.size() <= kLongestJson) {
    const std::size_t count = std::fread(block.data(), 1, block.size(), file);
    if (count == 0) break;
    text.append(block.data(), count);
  }
  const bool failed = std::ferror(file) != 0;
  if (file != stdin) std::fclose(file);
  if (failed) return std::nullopt;
  return text;
}

void print_faults(const std::string& file, const std::vector<Fault>& faults) {
  for (const Fault& fault : faults) {
    std::cerr << file << ":" << (fault.line > 0 ? fault.line : 1) << ": "
              << (fault.place.empty() ? "" : fault.place + ": ") << fault.message << "\n";
  }
}

void print_report(const Report& report) {
  for (const ReportLine& line : report) {
    if (line.kind == ReportLine::Kind::kFigure) {
      std::cout << line.label << ": " << line.value << (line.detail.empty() ? "" : "; " + line.detail) << "\n";
    } else {
      std::cout << (line.kind == ReportLine::Kind::kCaution ? "! " : "") << line.value << "\n";
    }
  }
}

int run(const Request& request) {
  const auto text = read_file(request.file);
  if (!text) {
    std::cerr << request.file << ":1: this file cannot be read; check its name\n";
    return kRefused;
  }
  const auto tree = read_json(*text);
  if (!tree) {
    const std::string line = tree.problem().place.substr(tree.problem().place.find(' ') + 1);
    std::cerr << request.file << ":" << line << ": " << tree.problem().message << "\n";
    return kRefused;
  }
  const Fields fields = fields_of(*tree);
  FieldReader reader(fields);
  std::optional<Answer> answer;
  if (tree->kind == JsonNode::Kind::kObject) {
    answer = find_command(request.command)(reader, request.units);
  } else {
    reader.fault(ProblemCode::kUnknown, "", "the question has to be one JSON object in { }");
  }
  if (!answer || !reader.faults().empty()) {
    print_faults(request.file, reader.faults());
    return reader.faults().empty() ? kOurFault : kRefused;
  }
  if (request.as_json) {
    std::cout << answer->json.dump() << "\n";
  } else {
    print_report(answer->report);
  }
  std::cout.flush();
  return std::cout ? kAnswered : kOurFault;
}

}  // namespace
}  // namespace tinwright

int main(int count, char** values) {
  const std::vector<std::string> arguments(values + 1, values + count);
  if (std::find(arguments.begin(), arguments.end(), "--help") != arguments.end()) {
    std::cout << tinwright::kUsage;
    return 0;
  }
  const auto request = tinwright::read_arguments(arguments);
  return request ? tinwright::run(*request) : tinwright::kRefused;
}
