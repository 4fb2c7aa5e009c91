// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See json_tree.h.
#include "app/files/json_tree.h"

#include <cstdint>
#include <iterator>
#include <set>

#include <nlohmann/json.hpp>

namespace tinwright {
namespace {

/// The line the parser has come to, and the one before its last character.
struct Place {
  int line = 1;
  int before = 1;
};

/// Walks the text for the parser and counts the lines it has taken.
class CountingIterator {
 public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  CountingIterator(const char* at, Place* place) : at_(at), place_(place) {}
  const char& operator*() const { return *at_; }
  CountingIterator& operator++() {
    place_->before = place_->line;
    if (*at_ == '\n') ++place_->line;
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
  Place* place_;
};

/// Builds the tree from parse events; returning false stops the parser.
class TreeBuilder : public nlohmann::json_sax<nlohmann::json> {
 public:
  explicit TreeBuilder(const Place* place) : place_(place) {}

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
    if (!known_.back().insert(name).second) {
      fault_ = "the field \"" + readable_name(name) + "\" is given twice; keep one";
      return false;
    }
    open_.back().keys.push_back(name);
    key_line_ = place_->line;
    return true;
  }

  bool parse_error(std::size_t, const std::string&, const nlohmann::json::exception&) override { return false; }

  JsonNode root;
  const std::string& fault() const { return fault_; }

 private:
  bool leaf(JsonNode::Kind kind, std::string text) {
    add({.kind = kind, .text = std::move(text), .items = {}, .keys = {}, .line = line(kind)});
    return true;
  }

  bool open(JsonNode::Kind kind) {
    if (open_.size() >= kDeepestJson) {
      fault_ = "the text is nested too deeply";
      return false;
    }
    open_.push_back({.kind = kind, .text = {}, .items = {}, .keys = {}, .line = line(kind)});
    known_.emplace_back();
    return true;
  }

  bool close() {
    JsonNode done = std::move(open_.back());
    open_.pop_back();
    known_.pop_back();
    add(std::move(done));
    return true;
  }

  void add(JsonNode node) {
    if (open_.empty()) {
      root = std::move(node);
    } else {
      open_.back().items.push_back(std::move(node));
    }
  }

  /// A field's value counts as standing where its name does: the parser may have read past a number's line end.
  int line(JsonNode::Kind kind) const {
    if (!open_.empty() && open_.back().kind == JsonNode::Kind::kObject) return key_line_;
    return kind == JsonNode::Kind::kNumber ? place_->before : place_->line;
  }

  std::vector<JsonNode> open_;
  std::vector<std::set<std::string>> known_;  // the keys of each open object
  const Place* place_;
  int key_line_ = 1;
  std::string fault_;
};

}  // namespace

std::string readable_name(std::string_view name) {
  // Shown as they are: printable ASCII but for the dot, and whatever is beyond it but direction marks.
  std::string readable;
  for (std::size_t i = 0; i < name.size(); ++i) {
    const auto byte = static_cast<unsigned char>(name[i]);
    const bool is_mark = name.substr(i, 2) == "\xe2\x80" || name.substr(i, 2) == "\xe2\x81";
    readable += byte < 0x20 || byte == 0x7f || byte == '.' || is_mark ? '?' : name[i];
    if (is_mark) i += 2;
  }
  constexpr std::size_t kLongestName = 60;
  if (readable.size() > kLongestName) {
    std::size_t end = kLongestName;
    while (end > 0 && (static_cast<unsigned char>(readable[end]) & 0xc0) == 0x80) --end;  // not within a character
    readable = readable.substr(0, end) + "...";
  }
  return readable.empty() ? "(no name)" : readable;
}

Result<JsonNode> read_json(std::string_view text) {
  if (text.size() > kLongestJson) return Problem{ProblemCode::kUnreadable, "the text is longer than 16 MB", "line 1"};
  if (text.find('\0') != std::string_view::npos) {
    return Problem{ProblemCode::kUnreadable, "this is not a text file", "line 1"};
  }
  Place place;
  TreeBuilder builder(&place);
  const bool read = nlohmann::json::sax_parse(CountingIterator(text.data(), &place),
                                              CountingIterator(text.data() + text.size(), &place), &builder);
  if (read) return std::move(builder.root);
  const std::string why = builder.fault().empty() ? "this is not JSON from here on; look for a missing comma, quote or "
                                                    "bracket just before"
                                                  : builder.fault();
  return Problem{ProblemCode::kUnreadable, why, "line " + std::to_string(place.line)};
}

}  // namespace tinwright
