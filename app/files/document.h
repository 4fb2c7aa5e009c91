// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A JSON tree that is edited by path and written out again: what the page keeps of a job. Paths are dotted, items of
// an array numbered from 0 ("recipe.parts.1.name"), as in Fields. Members nobody here knows stay as they are.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "app/files/fields.h"

namespace tinwright {

/// A tree of these kinds, empty.
JsonNode make_object();
JsonNode make_array();
/// A string, or a number or boolean as it is written.
JsonNode make_leaf(JsonNode::Kind kind, std::string text);
JsonNode make_string(std::string text);

/// A number of at most six digits and nothing else, as items of an array are called.
std::optional<std::size_t> index_of(std::string_view name);

/// What stands at `path` ("" is the root), or nullptr.
const JsonNode* node_at(const JsonNode& root, std::string_view path);
JsonNode* node_at(JsonNode& root, std::string_view path);

/// The text of the leaf at `path`; empty where there is none.
std::string text_at(const JsonNode& root, std::string_view path);

/// The number of items of the array at `path`; 0 where there is none.
std::size_t count_at(const JsonNode& root, std::string_view path);

/// Puts `value` at `path`, making objects on the way; a number as the last but one name needs its array to be there. An
/// item numbered one past the end of an array is added. False, and nothing changed, where the path leads through
/// something that is neither object nor array, or beyond an array's end.
bool put(JsonNode& root, std::string_view path, JsonNode value);

/// Puts a string; an empty one takes the member away.
bool put_text(JsonNode& root, std::string_view path, const std::string& text);

/// Takes away what stands at `path`: a member of an object, or an item of an array, whose later ones move up.
void take_away(JsonNode& root, std::string_view path);

/// The tree whose fields_of these are. Containers need no field of their own, but for an array, which is told from an
/// object by it. Text that stands for a number or flag keeps its kind.
JsonNode document_from(const Fields& fields);

/// The tree as text, two blanks a level, a newline at its end; read_json gives the same tree back but for the lines.
/// Not UTF-8 in a text becomes U+FFFD.
std::string write_json(const JsonNode& root);

/// The same without blanks between.
std::string write_compact_json(const JsonNode& root);

}  // namespace tinwright
