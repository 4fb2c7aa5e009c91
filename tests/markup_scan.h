// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A strict reader of markup for tests: XML's rules (quoted attributes, every element closed, no bare < or &), so that
// anything that broke out of a text shows as a fault or as an element nobody meant.
#pragma once

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace tinwright::markup {

struct Element {
  std::string name;
  std::map<std::string, std::string> attributes;
  std::string text;  // within it and its children, entities as they stand
};

struct Page {
  std::vector<Element> elements;  // in the order they open
  std::string fault;              // the first thing that is no markup; empty: well formed
};

inline bool is_name_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
}

inline bool are_entities_closed(std::string_view text) {
  for (std::size_t at = text.find('&'); at != text.npos; at = text.find('&', at + 1)) {
    const std::string_view rest = text.substr(at);
    bool known = false;
    for (const std::string_view entity : {"&amp;", "&lt;", "&gt;", "&quot;", "&#39;"}) {
      known = known || rest.substr(0, entity.size()) == entity;
    }
    if (!known) return false;
  }
  return true;
}

class Scanner {
 public:
  explicit Scanner(std::string_view text) : text_(text) {}

  Page read() {
    constexpr std::string_view kDoctype = "<!DOCTYPE html>";
    if (text_.substr(0, kDoctype.size()) == kDoctype) at_ = kDoctype.size();
    while (at_ < text_.size() && page_.fault.empty()) text_[at_] == '<' ? read_tag() : read_text();
    if (page_.fault.empty() && !open_.empty()) fail("never closed: " + page_.elements[open_.back()].name);
    return std::move(page_);
  }

 private:
  void fail(const std::string& what) {
    page_.fault = what + " at \"" + std::string(text_.substr(at_ > 40 ? at_ - 40 : 0, 80)) + "\"";
  }
  std::string read_name() {
    const std::size_t from = at_;
    while (at_ < text_.size() && is_name_letter(text_[at_])) ++at_;
    return std::string(text_.substr(from, at_ - from));
  }
  bool take(char c) {
    if (at_ >= text_.size() || text_[at_] != c) return false;
    ++at_;
    return true;
  }
  void read_text() {
    const std::size_t end = std::min(text_.find('<', at_), text_.size());
    const std::string_view text = text_.substr(at_, end - at_);
    if (!are_entities_closed(text)) return fail("a bare &");
    for (const std::size_t i : open_) page_.elements[i].text += text;
    at_ = end;
  }
  void read_tag() {
    ++at_;
    const bool closes = take('/');
    const std::string name = read_name();
    if (name.empty()) return fail("a bare <");
    if (closes) {
      if (open_.empty() || page_.elements[open_.back()].name != name) return fail("closed out of order: " + name);
      open_.pop_back();
      if (!take('>')) fail("no end of " + name);
      return;
    }
    Element element{name, {}, ""};
    while (take(' ')) {
      const std::string key = read_name();
      if (key.empty() || !take('=') || !take('"')) return fail("a broken attribute of " + name);
      const std::size_t end = text_.find('"', at_);
      if (end == text_.npos) return fail("an open quote in " + name);
      const std::string_view value = text_.substr(at_, end - at_);
      if (value.find('<') != value.npos || !are_entities_closed(value)) return fail("a bare sign in " + key);
      if (!element.attributes.emplace(key, value).second) return fail("twice: " + key);
      at_ = end + 1;
    }
    const bool is_empty = take('/');
    if (!take('>')) return fail("no end of " + name);
    page_.elements.push_back(std::move(element));
    if (!is_empty) open_.push_back(page_.elements.size() - 1);
  }

  std::string_view text_;
  std::size_t at_ = 0;
  Page page_;
  std::vector<std::size_t> open_;
};

inline Page scan(std::string_view text) {
  return Scanner(text).read();
}

}  // namespace tinwright::markup
