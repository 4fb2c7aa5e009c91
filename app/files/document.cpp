// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See document.h.
#include "app/files/document.h"

#include <algorithm>
#include <utility>

#include "app/quantity/utf8.h"

namespace tinwright {
namespace {

constexpr std::size_t kLongestIndex = 6;  // digits

/// The first name of a path, and the rest behind its dot.
std::pair<std::string_view, std::string_view> split_first(std::string_view path) {
  const std::size_t dot = path.find('.');
  if (dot == std::string_view::npos) return {path, {}};
  return {path.substr(0, dot), path.substr(dot + 1)};
}

/// The place among `node.items` of what is called `name`.
std::optional<std::size_t> place_of(const JsonNode& node, std::string_view name) {
  if (node.kind == JsonNode::Kind::kArray) {
    const auto index = index_of(name);
    return index && *index < node.items.size() ? index : std::nullopt;
  }
  if (node.kind != JsonNode::Kind::kObject) return std::nullopt;
  const auto key = std::find_if(node.keys.begin(), node.keys.end(),
                                [&](const std::string& each) { return readable_name(each) == name; });
  if (key == node.keys.end()) return std::nullopt;
  return static_cast<std::size_t>(key - node.keys.begin());
}

std::pair<std::string_view, std::string_view> split_last(std::string_view path) {
  const std::size_t dot = path.rfind('.');
  if (dot == std::string_view::npos) return {{}, path};
  return {path.substr(0, dot), path.substr(dot + 1)};
}

/// The node at `path`, made as objects where there is nothing; nullptr where something else is in the way. That shows
/// before anything is made: below a new object nothing can be in the way.
JsonNode* reach(JsonNode& root, std::string_view path) {
  JsonNode* node = &root;
  while (!path.empty()) {
    const auto [name, rest] = split_first(path);
    path = rest;
    if (const auto place = place_of(*node, name)) {
      node = &node->items[*place];
      continue;
    }
    const bool is_next_item = node->kind == JsonNode::Kind::kArray && index_of(name) == node->items.size();
    if (node->kind != JsonNode::Kind::kObject && !is_next_item) return nullptr;
    if (node->kind == JsonNode::Kind::kObject) node->keys.emplace_back(name);
    node->items.push_back(make_object());
    node = &node->items.back();
  }
  return node;
}

void write_string(std::string& out, std::string_view text) {
  static constexpr char kHex[] = "0123456789abcdef";
  out += '"';
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = first_character(text.substr(i)).bytes;
    const auto first = static_cast<unsigned char>(text[i]);
    if (length == 0) {
      out += kReplacementCharacter;
    } else if (first == '"' || first == '\\') {
      out += {'\\', text[i]};
    } else if (first == '\n') {
      out += "\\n";
    } else if (first < 0x20 || first == 0x7f) {
      out += std::string("\\u00") + kHex[first >> 4U] + kHex[first & 0xfU];
    } else {
      out += text.substr(i, length);
    }
    i += std::max<std::size_t>(length, 1);
  }
  out += '"';
}

void write_node(std::string& out, const JsonNode& node, bool is_spaced, std::size_t level) {
  const bool is_object = node.kind == JsonNode::Kind::kObject;
  if (node.kind == JsonNode::Kind::kString) return write_string(out, node.text);
  if (!is_object && node.kind != JsonNode::Kind::kArray) {
    out += node.text;
    return;
  }
  const auto new_line = [&](std::size_t indent) {
    if (is_spaced) out += '\n' + std::string(2 * indent, ' ');
  };
  out += is_object ? '{' : '[';
  for (std::size_t i = 0; i < node.items.size(); ++i) {
    if (i > 0) out += ',';
    new_line(level + 1);
    if (is_object) {
      write_string(out, node.keys[i]);
      out += is_spaced ? ": " : ":";
    }
    write_node(out, node.items[i], is_spaced, level + 1);
  }
  if (!node.items.empty()) new_line(level);
  out += is_object ? '}' : ']';
}

}  // namespace

std::optional<std::size_t> index_of(std::string_view name) {
  if (name.empty() || name.size() > kLongestIndex) return std::nullopt;
  std::size_t index = 0;
  for (const char c : name) {
    if (c < '0' || c > '9') return std::nullopt;
    index = 10 * index + static_cast<std::size_t>(c - '0');
  }
  return index;
}

JsonNode make_object() {
  return {.kind = JsonNode::Kind::kObject, .text = {}, .items = {}, .keys = {}, .line = 0};
}

JsonNode make_array() {
  return {.kind = JsonNode::Kind::kArray, .text = {}, .items = {}, .keys = {}, .line = 0};
}

JsonNode make_leaf(JsonNode::Kind kind, std::string text) {
  return {.kind = kind, .text = std::move(text), .items = {}, .keys = {}, .line = 0};
}

JsonNode make_string(std::string text) {
  return make_leaf(JsonNode::Kind::kString, std::move(text));
}

const JsonNode* node_at(const JsonNode& root, std::string_view path) {
  const JsonNode* node = &root;
  while (!path.empty()) {
    const auto [name, rest] = split_first(path);
    const auto place = place_of(*node, name);
    if (!place) return nullptr;
    node = &node->items[*place];
    path = rest;
  }
  return node;
}

JsonNode* node_at(JsonNode& root, std::string_view path) {
  return const_cast<JsonNode*>(node_at(std::as_const(root), path));
}

std::string text_at(const JsonNode& root, std::string_view path) {
  const JsonNode* node = node_at(root, path);
  return node == nullptr || node->kind == JsonNode::Kind::kNull ? "" : node->text;
}

std::size_t count_at(const JsonNode& root, std::string_view path) {
  const JsonNode* node = node_at(root, path);
  return node == nullptr || node->kind != JsonNode::Kind::kArray ? 0 : node->items.size();
}

bool put(JsonNode& root, std::string_view path, JsonNode value) {
  JsonNode* node = reach(root, path);
  if (node == nullptr) return false;
  *node = std::move(value);
  return true;
}

bool put_text(JsonNode& root, std::string_view path, const std::string& text) {
  if (!text.empty()) return put(root, path, make_string(text));
  take_away(root, path);
  return true;
}

void take_away(JsonNode& root, std::string_view path) {
  const auto [above, name] = split_last(path);
  JsonNode* node = node_at(root, above);
  const auto place = node == nullptr ? std::nullopt : place_of(*node, name);
  if (!place) return;
  const auto offset = static_cast<std::ptrdiff_t>(*place);
  node->items.erase(node->items.begin() + offset);
  if (node->kind == JsonNode::Kind::kObject) node->keys.erase(node->keys.begin() + offset);
}

JsonNode document_from(const Fields& fields) {
  JsonNode root = make_object();
  for (const auto& [path, field] : fields) {
    JsonNode* node = &root;
    for (std::string_view rest = path; !rest.empty();) {
      const auto [name, after] = split_first(rest);
      rest = after;
      const auto index = node->kind == JsonNode::Kind::kArray ? index_of(name) : std::nullopt;
      if (index) {
        while (node->items.size() <= *index) node->items.push_back(make_object());  // items do not come in order
        node = &node->items[*index];
      } else if (const auto place = place_of(*node, name)) {
        node = &node->items[*place];
      } else {
        node->keys.emplace_back(name);
        node->items.push_back(make_object());
        node = &node->items.back();
      }
    }
    if (path.empty()) continue;
    node->kind = field.kind;
    node->text = field.text;
  }
  return root;
}

std::string write_json(const JsonNode& root) {
  std::string text;
  write_node(text, root, true, 0);
  return text + "\n";
}

std::string write_compact_json(const JsonNode& root) {
  std::string text;
  write_node(text, root, false, 0);
  return text;
}

}  // namespace tinwright
