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

#include "app/command/commands.h"
#include "app/recipe/draft_job.h"
#include "app/recipe/read_recipe.h"

namespace tinwright {
namespace {

constexpr int kAnswered = 0;
constexpr int kOurFault = 1;
constexpr int kRefused = 2;

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

int read_recipe_file(const Request& request, const std::string& text) {
  const auto draft = read_recipe(text);
  if (!draft) {
    std::cerr << request.file << ":1: " << draft.problem().message << "\n";
    return kRefused;
  }
  std::cout << write_json(job_of(*draft));
  std::cout.flush();
  return std::cout ? kAnswered : kOurFault;
}

/// Writes what -o asks for into the file it names.
int write_file(const std::string& name, const std::string& text) {
  std::FILE* file = std::fopen(name.c_str(), "wb");
  const bool is_written = file != nullptr && std::fwrite(text.data(), 1, text.size(), file) == text.size();
  const bool is_closed = file != nullptr && std::fclose(file) == 0;
  if (is_written && is_closed) return kAnswered;
  std::cerr << name << ":1: this file cannot be written; check its folder\n";
  return kRefused;
}

int run(const Request& request) {
  const auto text = read_file(request.file);
  if (!text) {
    std::cerr << request.file << ":1: this file cannot be read; check its name\n";
    return kRefused;
  }
  if (request.command == "read") return read_recipe_file(request, *text);
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
    const Command command = find_command(request.command);
    if (command != nullptr) answer = command(reader, request);
  } else {
    reader.fault(ProblemCode::kUnknown, "", "the question has to be one JSON object in { }");
  }
  if (!answer || !reader.faults().empty()) {
    print_faults(request.file, reader.faults());
    return reader.faults().empty() ? kOurFault : kRefused;
  }
  if (answer->is_file && !request.option("-o").empty()) return write_file(request.option("-o"), answer->text);
  for (const auto& [name, content] : answer->files) {
    const int written = write_file(name, content);
    if (written != kAnswered) return written;
  }
  if (request.as_json && !answer->is_file) {
    std::cout << answer->json.dump() << "\n";
  } else {
    print_report(answer->report);
    std::cout << answer->text;
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
