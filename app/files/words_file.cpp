// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See words_file.h.
#include "app/files/words_file.h"

#include "app/files/json_tree.h"

namespace tinwright {

Result<WordTable> read_words(std::string_view text) {
  auto tree = read_json(text);
  if (!tree) return tree.problem();
  if (tree->kind != JsonNode::Kind::kObject) {
    return Problem{ProblemCode::kUnreadable, "a table of words is one JSON object in { }", ""};
  }
  WordTable words;
  for (std::size_t i = 0; i < tree->items.size(); ++i) {
    if (tree->items[i].kind != JsonNode::Kind::kString) {
      return Problem{ProblemCode::kUnreadable, "a table of words holds texts only", tree->keys[i]};
    }
    words.emplace(std::move(tree->keys[i]), std::move(tree->items[i].text));
  }
  return words;
}

}  // namespace tinwright
