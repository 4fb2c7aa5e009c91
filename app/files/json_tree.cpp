// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See json_tree.h.
#include "app/files/json_tree.h"

#include <algorithm>
#include <cstdint>
#include <iterator>

#include <nlohmann/json.hpp>

namespace tinwright {
namespace {

/// Walks the text for the parser and counts the lines it has taken.
class CountingIterator {
 public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  CountingIterator(const char* at, int* line) : at_(at), line_(line) {}
  const char& operator*() const { return *at_; }
  CountingIterator& operator++() {
    if (*at_ == '\n') ++*line_;
    ++at_;
    return *this;
  }
  CountingIterator operator++(int) {
    CountingIterator before = *this;
    ++*this;
    return before;
  }
  bool operator==(const CountingIterator& other) const { return at_ == other.at_; }
  bool operator!=(const CountingIterator& other) const { return at_ != other.at_; }

 private:
  const char* at_;
  int* line_;
};

/// Builds the tree from parse events; returning false stops the parser.
class TreeBuilder : public nlohmann::json_sax<nlohmann::json> {
 public:
  explicit TreeBuilder(const int* line) : line_(line) {}

  bool null() override { return leaf(JsonNode::Kind::kNull, "null"); }
  bool boolean(bool value) override { return leaf(JsonNode::Kind::kBoolean, value ? "true" : "false"); }
  bool number_integer(std::int64_t value) override { return leaf(JsonNode::Kind::kNumber, std::to_string(value)); }
  bool number_unsigned(std::uint64_t value) override { return leaf(JsonNode::Kind::kNumber, std::to_string(value)); }
  bool number_float(double, const std::string& written) override { return leaf(JsonNode::Kind::kNumber, written); }
  bool string(std::string& value) override { return leaf(JsonNode::Kind::kString, value); }
  bool binary(nlohmann::json::binary_t&) override { return false; }
  bool start_object(std::size_t) override { return open(JsonNode::Kind::kObject); }
  bool start_array(std::size_t) override { return open(JsonNode::Kind::kArray); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool key(std::string& name) override {
    std::vector<std::string>& keys = open_.back().keys;
    if (std::find(keys.begin(), keys.end(), name) != keys.end()) {
      fault_ = "the field \"" + name + "\" is given twice; keep one";
      return false;
    }
    keys.push_back(name);
    key_line_ = *line_;
    return true;
  }

  bool parse_error(std::size_t, const std::string&, const nlohmann::json::exception&) override { return false; }

  JsonNode root;
  const std::string& fault() const { return fault_; }

 private:
  bool leaf(JsonNode::Kind kind, std::string text) {
    place({.kind = kind, .text = std::move(text), .items = {}, .keys = {}, .line = line()});
    return true;
  }

  bool open(JsonNode::Kind kind) {
    if (open_.size() >= kDeepestJson) {
      fault_ = "the text is nested too deeply";
      return false;
    }
    open_.push_back({.kind = kind, .text = {}, .items = {}, .keys = {}, .line = line()});
    return true;
  }

  bool close() {
    JsonNode done = std::move(open_.back());
    open_.pop_back();
    place(std::move(done));
    return true;
  }

  void place(JsonNode node) {
    if (open_.empty()) {
      root = std::move(node);
    } else {
      open_.back().items.push_back(std::move(node));
    }
  }

  /// A field's value counts as standing where its name does: the parser may have read past a number's line end.
  int line() const { return !open_.empty() && open_.back().kind == JsonNode::Kind::kObject ? key_line_ : *line_; }

  std::vector<JsonNode> open_;
  const int* line_;
  int key_line_ = 1;
  std::string fault_;
};

}  // namespace

Result<JsonNode> read_json(std::string_view text) {
  if (text.size() > kLongestJson) return Problem{ProblemCode::kUnreadable, "the text is longer than 16 MB", "line 1"};
  int line = 1;
  TreeBuilder builder(&line);
  const bool read = nlohmann::json::sax_parse(CountingIterator(text.data(), &line),
                                              CountingIterator(text.data() + text.size(), &line), &builder);
  if (read) return std::move(builder.root);
  const std::string why = builder.fault().empty() ? "this is not JSON from here on; look for a missing comma, quote or "
                                                    "bracket just before"
                                                  : builder.fault();
  return Problem{ProblemCode::kUnreadable, why, "line " + std::to_string(line)};
}

}  // namespace tinwright
