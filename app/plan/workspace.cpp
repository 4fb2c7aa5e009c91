// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See workspace.h.
#include "app/plan/workspace.h"

#include "app/recipe/job.h"

namespace tinwright {
namespace {

void keep_within_bounds(std::deque<std::string>& steps) {
  std::size_t bytes = 0;
  for (const std::string& step : steps) bytes += step.size();
  while (steps.size() > kMostSteps || (steps.size() > 1 && bytes > kMostStepBytes)) {
    bytes -= steps.front().size();
    steps.pop_front();
  }
}

/// Goes to the nearest of `to`, so that `from` leads back.
bool step(Workspace& workspace, std::deque<std::string>& to, std::deque<std::string>& from) {
  if (to.empty()) return false;
  auto document = read_json(to.back());
  if (!document) return false;
  from.push_back(workspace.text);
  workspace.text = to.back();
  to.pop_back();
  workspace.document = std::move(*document);
  workspace.last_edit.clear();
  ++workspace.edition;
  return true;
}

Problem refusal(const JsonNode& at, const std::string& message) {
  return {ProblemCode::kUnreadable, message, "line " + std::to_string(at.line)};
}

}  // namespace

Result<bool> open_document(Workspace& workspace, std::string_view text) {
  auto document = read_json(text);
  if (!document) return document.problem();
  if (document->kind != JsonNode::Kind::kObject) return refusal(*document, "a job file is one JSON object in { }");
  const JsonNode* version = node_at(*document, "version");
  const std::string number = version == nullptr ? "" : version->text;
  if (version == nullptr) return refusal(*document, "this is no job file: it has no \"version\"");
  if (version->kind != JsonNode::Kind::kNumber || number.find_first_not_of("0123456789") != std::string::npos) {
    return refusal(*version, "the job's version has to be a whole number");
  }
  if (number != std::to_string(kJobVersion)) {
    return refusal(*version, number == "0"
                                 ? "there is no version 0 of a job file"
                                 : "this job was made by a newer version of the program; get that one to open it");
  }
  for (const char* part : {"recipe", "plan", "scale", "page"}) {
    const JsonNode* node = node_at(*document, part);
    if (node != nullptr && node->kind != JsonNode::Kind::kObject) {
      return refusal(*node, std::string("\"") + part + "\" has to be an object in { }");
    }
  }
  for (const char* part : {"recipe.parts", "recipe.oven", "recipe.rests", "recipe.steps", "cupboard", "plan.pans"}) {
    const JsonNode* node = node_at(*document, part);
    if (node != nullptr && node->kind != JsonNode::Kind::kArray) {
      return refusal(*node, std::string("\"") + part + "\" has to be a list in [ ]");
    }
  }
  workspace.document = std::move(*document);
  note_edit(workspace, "");
  return true;
}

bool note_edit(Workspace& workspace, std::string_view key) {
  std::string text = write_compact_json(workspace.document);
  if (text == workspace.text) return false;
  const bool joins = !key.empty() && key == workspace.last_edit && workspace.future.empty();
  if (!joins && !workspace.text.empty()) {
    workspace.past.push_back(std::move(workspace.text));
    keep_within_bounds(workspace.past);
  }
  workspace.future.clear();
  workspace.text = std::move(text);
  workspace.last_edit = key;
  ++workspace.edition;
  return true;
}

bool undo(Workspace& workspace) {
  return step(workspace, workspace.past, workspace.future);
}

bool redo(Workspace& workspace) {
  return step(workspace, workspace.future, workspace.past);
}

std::string job_file(const Workspace& workspace) {
  return write_json(workspace.document);
}

}  // namespace tinwright
