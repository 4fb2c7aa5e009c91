// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Fields bound to a job's document by path: each shows what stands there and puts back what the cook types.
#pragma once

#include <string>
#include <vector>

#include "app/plan/bench.h"
#include "app/plan/workspace.h"
#include "app/view/controls.h"

namespace tinwright::view {

/// A document being edited, with what is wrong with it. Edits are noted one field at a time, so that each can be taken
/// back.
class JobForm {
 public:
  JobForm(Workspace& workspace, const Texts& problems) : workspace_(workspace), problems_(problems) {}

  const JsonNode& document() const { return workspace_.document; }
  std::string text(const std::string& path) const { return text_at(workspace_.document, path); }
  std::string problem(const std::string& path) const;
  bool changed() const { return changed_; }

  /// A text; an empty one takes the member away.
  void put(const std::string& path, const std::string& text);
  void put_node(const std::string& path, JsonNode node);
  void remove(const std::string& path);
  /// Adds `node` at the end of the list at `path`, which is made where there is none.
  void append(const std::string& path, JsonNode node);

  void edit(const std::string& path, Text label, Text hint = {}, Text help = {});
  /// One of `words`, as it is written in the document; `usual` where nothing is.
  void choose(const std::string& path, Text label, const std::vector<std::string>& words,
              const std::vector<std::string>& labels, std::size_t usual);
  /// A whole number, kept as one once it is.
  void edit_number(const std::string& path, Text label, Text hint);
  /// What is wrong at `path` itself, as a note; nothing where nothing is.
  void show_problem(const std::string& path) const;

 private:
  void note(const std::string& key);

  Workspace& workspace_;
  const Texts& problems_;
  bool changed_ = false;
};

}  // namespace tinwright::view
