// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See fields.h.
#include "app/files/fields.h"

#include "app/quantity/parse.h"

namespace tinwright {
namespace {

constexpr std::size_t kLongestWholeNumber = 7;  // digits

void add_fields(Fields& fields, const JsonNode& node, const std::string& path) {
  fields[path] = {node.text, node.kind, node.line};
  const bool is_object = node.kind == JsonNode::Kind::kObject;
  for (std::size_t i = 0; i < node.items.size(); ++i) {
    if (is_object && node.items[i].kind == JsonNode::Kind::kNull) continue;
    const std::string name = is_object ? readable_name(node.keys[i]) : std::to_string(i);
    add_fields(fields, node.items[i], path.empty() ? name : path + "." + name);
  }
}

bool is_leaf(const Field& field) {
  return field.kind != JsonNode::Kind::kArray && field.kind != JsonNode::Kind::kObject;
}

std::string list_of(const std::vector<std::string_view>& choices) {
  std::string list;
  for (std::size_t i = 0; i < choices.size(); ++i) {
    list += (i == 0 ? "" : i + 1 == choices.size() ? " or " : ", ") + std::string(choices[i]);
  }
  return list;
}

std::string last_name(const std::string& path) {
  return path.substr(path.rfind('.') + 1);
}

}  // namespace

Fields fields_of(const JsonNode& root) {
  Fields fields;
  add_fields(fields, root, "");
  return fields;
}

const Field* FieldReader::find(const std::string& path) {
  read_.insert(path);
  const auto found = fields_.find(path);
  return found == fields_.end() || found->second.kind == JsonNode::Kind::kNull ? nullptr : &found->second;
}

int FieldReader::line_of(std::string path) const {
  while (true) {
    const auto found = fields_.find(path);
    if (found != fields_.end() && found->second.line > 0) return found->second.line;
    if (path.empty()) return fields_.empty() ? 0 : 1;
    const std::size_t dot = path.rfind('.');
    path = dot == std::string::npos ? "" : path.substr(0, dot);
  }
}

void FieldReader::fault(ProblemCode code, const std::string& path, const std::string& message) {
  faults_.push_back({code, path, message, line_of(path)});
}

void FieldReader::fault(const Problem& problem, const std::string& prefix) {
  // A Problem without a place is about the whole of what the prefix leads to.
  const bool is_whole = problem.place.empty() && !prefix.empty();
  fault(problem.code, is_whole ? prefix.substr(0, prefix.size() - 1) : prefix + problem.place, problem.message);
}

std::optional<double> FieldReader::quantity(const std::string& path, Dimension dimension) {
  const Field* field = find(path);
  if (field == nullptr) return std::nullopt;
  if (field->kind != JsonNode::Kind::kString) {
    const DimensionWords& words = words_for(dimension);
    const bool bare = field->kind == JsonNode::Kind::kNumber;
    fault(bare ? ProblemCode::kMissingUnit : ProblemCode::kNotANumber, path,
          (bare ? "a bare number says too little" : "this has to be " + std::string(words.kind)) +
              "; write it in quotes" + (dimension == Dimension::kRatio ? "" : " with its unit") + ", like \"" +
              std::string(words.example.substr(0, words.example.find(" or "))) + "\"");
    return std::nullopt;
  }
  const auto value = parse_quantity(field->text, dimension);
  if (!value) {
    fault(value.problem().code, path, value.problem().message);
    return std::nullopt;
  }
  return *value;
}

std::optional<double> FieldReader::required(const std::string& path, Dimension dimension, const std::string& what,
                                            const std::string& example) {
  if (find(path) == nullptr) {
    const std::string_view usual = words_for(dimension).example;
    fault(ProblemCode::kMissing, path,
          "the " + what + " is missing; give it like \"" +
              (example.empty() ? std::string(usual.substr(0, usual.find(" or "))) : example) + "\"");
    return std::nullopt;
  }
  return quantity(path, dimension);
}

std::optional<int> FieldReader::whole_number(const std::string& path) {
  const Field* field = find(path);
  if (field == nullptr) return std::nullopt;
  const std::string& text = field->text;
  const bool digits = !text.empty() && text.find_first_not_of("0123456789") == std::string::npos;
  if (!is_leaf(*field) || !digits || text.size() > kLongestWholeNumber) {
    fault(ProblemCode::kNotANumber, path, "this has to be a whole number, like 12");
    return std::nullopt;
  }
  int value = 0;
  for (const char c : text) value = 10 * value + (c - '0');
  return value;
}

std::optional<bool> FieldReader::flag(const std::string& path) {
  const Field* field = find(path);
  if (field == nullptr) return std::nullopt;
  if (!is_leaf(*field) || (field->text != "true" && field->text != "false")) {
    fault(ProblemCode::kUnknown, path, "this has to be true or false");
    return std::nullopt;
  }
  return field->text == "true";
}

std::optional<std::size_t> FieldReader::choice(const std::string& path, const std::vector<std::string_view>& choices) {
  const Field* field = find(path);
  if (field == nullptr) return std::nullopt;
  for (std::size_t i = 0; i < choices.size(); ++i) {
    if (field->kind == JsonNode::Kind::kString && field->text == choices[i]) return i;
  }
  fault(ProblemCode::kUnknown, path, "this has to be " + list_of(choices));
  return std::nullopt;
}

std::optional<std::string> FieldReader::text(const std::string& path) {
  const Field* field = find(path);
  if (field == nullptr) return std::nullopt;
  if (!is_leaf(*field)) {
    fault(ProblemCode::kUnknown, path, "this has to be a text");
    return std::nullopt;
  }
  return field->text;
}

Fields FieldReader::below(const std::string& prefix) const {
  Fields fields;
  for (auto field = fields_.lower_bound(prefix); field != fields_.end() && field->first.rfind(prefix, 0) == 0;
       ++field) {
    fields[field->first.substr(prefix.size())] = field->second;
  }
  return fields;
}

std::optional<std::size_t> FieldReader::length(const std::string& path) {
  const Field* field = find(path);
  if (field == nullptr) return std::nullopt;
  if (field->kind != JsonNode::Kind::kArray) {
    fault(ProblemCode::kUnknown, path, "this has to be a list in square brackets");
    return std::nullopt;
  }
  std::size_t count = 0;
  while (fields_.count(path + "." + std::to_string(count)) > 0) ++count;
  return count;
}

void FieldReader::skip(const std::string& prefix) {
  for (auto field = fields_.lower_bound(prefix); field != fields_.end() && field->first.rfind(prefix, 0) == 0;
       ++field) {
    read_.insert(field->first);
  }
}

void FieldReader::refuse_unread() {
  constexpr std::size_t kMostRefused = 20;  // beyond that it is another kind of file
  std::set<std::string> refused;
  for (const auto& [path, field] : fields_) {
    if (path.empty() || read_.count(path) > 0) continue;
    // A container is known when something below it was asked for; below an unknown one, say so once.
    const auto below = read_.lower_bound(path + ".");
    const bool leads_somewhere = below != read_.end() && below->compare(0, path.size() + 1, path + ".") == 0;
    const std::size_t dot = path.rfind('.');
    const bool is_below_refused = dot != std::string::npos && refused.count(path.substr(0, dot)) > 0;
    if (leads_somewhere) continue;
    refused.insert(path);
    if (is_below_refused) continue;
    fault(ProblemCode::kUnknown, path,
          "the field \"" + last_name(path) + "\" does not belong here; leave it out, or check its spelling");
    if (refused.size() > kMostRefused) return;
  }
}

}  // namespace tinwright
