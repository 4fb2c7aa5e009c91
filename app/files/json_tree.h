// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A JSON text as a tree that remembers on which line everything stood, so that a fault can be shown where it is.
// Parsed by nlohmann/json's event interface, which does not throw.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "geometry/problem.h"

namespace tinwright {

struct JsonNode {
  enum class Kind { kNull, kBoolean, kNumber, kString, kArray, kObject };

  Kind kind = Kind::kNull;
  std::string text;               // of a string, or a number or boolean as it was written
  std::vector<JsonNode> items;    // of an array or object
  std::vector<std::string> keys;  // of an object, as many as items
  int line = 0;                   // 1-based
};

/// Nesting and size beyond which a text is refused: nothing a kitchen writes comes near.
inline constexpr int kDeepestJson = 64;
inline constexpr std::size_t kLongestJson = 16U << 20U;  // [bytes]

/// A field's name as it may be shown on one line of a terminal, and as part of a dotted path: never empty, without
/// dots, control characters and marks of writing direction.
std::string readable_name(std::string_view name);

/// The tree, or a kUnreadable Problem whose place is "line N". A field given twice in one object is refused.
Result<JsonNode> read_json(std::string_view text);

}  // namespace tinwright
