// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See job_form.h.
#include "app/view/job_form.h"

#include <algorithm>

namespace tinwright::view {
namespace {

/// Readings of the scale go by the order of things in a bowl: where that changes they mean nothing any more.
void forget_readings(JsonNode& document, const std::string& path) {
  if (path.rfind("recipe.parts", 0) == 0) take_away(document, "page.readings");
}

}  // namespace

std::string JobForm::problem(const std::string& path) const {
  const auto found = problems_.find(path);
  return found == problems_.end() ? "" : found->second;
}

void JobForm::note(const std::string& key) {
  changed_ |= note_edit(workspace_, key);
}

void JobForm::put(const std::string& path, const std::string& text) {
  put_text(workspace_.document, path, text);
  note(path);
}

void JobForm::put_node(const std::string& path, JsonNode node) {
  tinwright::put(workspace_.document, path, std::move(node));
  note(path);
}

void JobForm::remove(const std::string& path) {
  take_away(workspace_.document, path);
  forget_readings(workspace_.document, path);
  note("");
}

void JobForm::append(const std::string& path, JsonNode node) {
  const JsonNode* list = node_at(workspace_.document, path);
  if (list == nullptr || list->kind != JsonNode::Kind::kArray) {
    tinwright::put(workspace_.document, path, make_array());
  }
  const std::size_t end = count_at(workspace_.document, path);
  tinwright::put(workspace_.document, path + "." + std::to_string(end), std::move(node));
  forget_readings(workspace_.document, path);
  note("");
}

void JobForm::edit(const std::string& path, Text label, Text hint, Text help) {
  std::string typed = text(path);
  const std::string wrong = problem(path);
  if (field(path, label, typed, {.hint = hint, .help = help, .problem = wrong})) put(path, typed);
}

void JobForm::choose(const std::string& path, Text label, const std::vector<std::string>& words,
                     const std::vector<std::string>& labels, std::size_t usual) {
  const std::string now = text(path);
  const auto found = std::find(words.begin(), words.end(), now);
  int index =
      static_cast<int>(now.empty() || found == words.end() ? usual : static_cast<std::size_t>(found - words.begin()));
  if (choice(path, label, index, labels)) put(path, words[static_cast<std::size_t>(index)]);
}

void JobForm::edit_number(const std::string& path, Text label, Text hint) {
  std::string typed = text(path);
  const std::string wrong = problem(path);
  if (!field(path, label, typed, {.hint = hint, .problem = wrong, .keyboard = Keyboard::kDecimal})) return;
  const bool is_number = !typed.empty() && typed.size() < 7 &&
                         typed.find_first_not_of("0123456789") == std::string::npos &&
                         (typed[0] != '0' || typed.size() == 1);
  if (is_number) {
    put_node(path, make_leaf(JsonNode::Kind::kNumber, typed));
  } else {
    put(path, typed);
  }
}

void JobForm::show_problem(const std::string& path) const {
  const std::string wrong = problem(path);
  if (!wrong.empty()) view::note(path + "/problem", NoteKind::kError, wrong);
}

}  // namespace tinwright::view
