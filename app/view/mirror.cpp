// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Ids and the test for "has anything changed" are FNV-1a hashes (Fowler, Noll and Vo; RFC 9923).
#include "app/view/mirror.h"

#include <algorithm>
#include <cstddef>
#include <cstring>

namespace tinwright::view {
namespace {

constexpr std::uint32_t kFnvOffset32 = 2166136261u, kFnvPrime32 = 16777619u;
constexpr std::uint64_t kFnvOffset64 = 14695981039346656037u, kFnvPrime64 = 1099511628211u;

std::uint64_t mix(std::uint64_t hash, const void* data, std::size_t size) {
  const auto* bytes = static_cast<const unsigned char*>(data);
  for (std::size_t i = 0; i < size; ++i) hash = (hash ^ bytes[i]) * kFnvPrime64;
  return hash;
}

/// Of whatever the node says; its strings by their letters, for their places change with the nodes before it.
std::uint32_t content_hash(const Node& node, const char* strings) {
  std::uint64_t hash = kFnvOffset64;
  const std::uint32_t words[] = {node.parent, static_cast<std::uint32_t>(node.role), node.flags, node.level, node.help,
                                 node.problem};
  hash = mix(hash, words, sizeof words);
  for (const std::uint32_t place : {node.key, node.label, node.value, node.extra}) {
    const char* text = strings + place;
    hash = mix(hash, text, std::strlen(text) + 1);
  }
  return static_cast<std::uint32_t>(hash ^ (hash >> 32));
}

}  // namespace

void Mirror::begin_frame() {
  nodes_.clear();
  strings_.assign(1, '\0');
  parents_.clear();
  scopes_.clear();
  taken_.clear();
}

std::uint32_t Mirror::id_of(std::string_view key) const {
  std::uint32_t hash = scopes_.empty() ? kFnvOffset32 : scopes_.back() * kFnvPrime32;
  for (char c : key) hash = (hash ^ static_cast<unsigned char>(c)) * kFnvPrime32;
  return hash == 0 ? 1 : hash;
}

std::size_t Mirror::add(std::string_view key, Role role, std::string_view label, std::string_view value) {
  Node node;
  node.id = id_of(key);
  node.parent = parents_.empty() ? 0 : parents_.back();
  node.role = role;
  node.key = put(key);
  node.label = put(label);
  node.value = put(value);
  nodes_.push_back(node);
  return nodes_.size() - 1;
}

std::uint32_t Mirror::put(std::string_view text) {
  if (text.empty()) return 0;
  const auto place = static_cast<std::uint32_t>(strings_.size());
  strings_.append(text);
  strings_.push_back('\0');
  return place;
}

void Mirror::post(std::uint32_t id, ActionKind kind, std::string_view text) {
  posted_ = true;
  if (kind == ActionKind::kFocus) {
    focused_ = id;
    focus_visible_ = text == "visible";
    return;
  }
  if (kind == ActionKind::kBlur) {
    if (focused_ == id) focused_ = 0;
    return;
  }
  if (kind == ActionKind::kEdit || kind == ActionKind::kDrag) {
    for (Action& waiting : actions_) {
      if (waiting.id == id && waiting.kind == kind) {
        waiting.text = text;
        return;
      }
    }
  }
  actions_.push_back({id, kind, std::string(text)});
}

bool Mirror::take(std::uint32_t id, ActionKind kind, std::string* text) {
  const auto found = std::find_if(actions_.begin(), actions_.end(),
                                  [&](const Action& action) { return action.id == id && action.kind == kind; });
  if (found == actions_.end()) return false;
  if (text != nullptr) *text = found->text;
  actions_.erase(found);
  taken_.push_back(id);
  return true;
}

std::size_t Mirror::turn_of(std::uint32_t id, ActionKind kind) const {
  const auto found = std::find_if(actions_.rbegin(), actions_.rend(),
                                  [&](const Action& action) { return action.id == id && action.kind == kind; });
  return static_cast<std::size_t>(actions_.rend() - found);
}

bool Mirror::end_frame() {
  std::erase_if(actions_, [&](const Action& action) {
    return std::find(taken_.begin(), taken_.end(), action.id) == taken_.end();
  });
  for (Node& node : nodes_) node.hash = content_hash(node, strings_.c_str());
  std::uint64_t hash = kFnvOffset64;
  for (const Node& node : nodes_) hash = mix(hash, &node, offsetof(Node, key));
  for (const Node& node : nodes_) hash = mix(hash, &node.hash, sizeof node.hash);
  // After an action the host always looks, so that an element the cook changed never disagrees with the application.
  const bool changed = hash != shown_hash_ || posted_;
  shown_hash_ = hash;
  posted_ = false;
  return changed;
}

std::size_t Mirror::duplicate_count() const {
  std::vector<std::uint32_t> ids;
  for (const Node& node : nodes_) ids.push_back(node.id);
  std::sort(ids.begin(), ids.end());
  const auto last = std::unique(ids.begin(), ids.end());
  return static_cast<std::size_t>(ids.end() - last);
}

}  // namespace tinwright::view
