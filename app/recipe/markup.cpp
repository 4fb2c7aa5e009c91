// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A reader of marks as browsers read them (WHATWG HTML, 13.2.5, from memory), as far as needed to leave them out:
// quoted attributes, comments, CDATA, and elements whose inside is no text. Every scan moves on, so the whole is
// linear.
#include "app/recipe/markup.h"

#include <algorithm>
#include <cstddef>
#include <optional>

#include "app/recipe/plain_text.h"

namespace tinwright {
namespace {

constexpr std::size_t kNowhere = std::string_view::npos;

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

bool is_gap(char c) {
  return c == ' ' || c == '\n' || c == '\t' || c == '\r' || c == '/';
}

/// Whether a browser would take the '<' before `next` for the beginning of a mark.
bool begins_mark(char next) {
  return is_letter(next) || next == '/' || next == '!' || next == '?';
}

bool equal_ignoring_case(std::string_view a, std::string_view b) {
  return a.size() == b.size() && lower_case(a) == lower_case(b);
}

struct Mark {
  std::string name;  // small letters; with '/' in front when it closes; "!" for comments and declarations
  std::string_view attributes;
  std::size_t end = 0;  // just behind it
};

/// Reads marks one after the other. A quote that never closes is met once only: from then on quotes count for nothing.
class MarkReader {
 public:
  explicit MarkReader(std::string_view html) : html_(html) {}

  /// The mark whose '<' stands at `at`.
  Mark read(std::size_t at) {
    const std::string_view rest = html_.substr(at);
    if (starts_with(rest, "<!--")) return {"!", {}, behind("-->", at + 2, comments_open_)};
    if (starts_with(rest, "<![CDATA[")) return {"!", {}, at + 9};
    if (rest[1] == '!' || rest[1] == '?') return {"!", {}, behind(">", at + 2, marks_open_)};
    std::size_t name_end = at + 1;
    if (html_[name_end] == '/') ++name_end;
    while (name_end < html_.size() && !is_gap(html_[name_end]) && html_[name_end] != '>' && html_[name_end] != '<') {
      ++name_end;
    }
    const std::size_t end = end_of_mark(name_end);
    const std::size_t inside = std::min(end, html_.size());
    return {lower_case(shortened(html_.substr(at + 1, name_end - at - 1), kLongestName)),
            html_.substr(name_end, inside - name_end), end};
  }

  /// Where the element `name`, whose inside is no text, is closed: the '<' of its end mark, or the end of the page.
  std::size_t close_of(std::string_view name, std::size_t from) const {
    for (std::size_t at = html_.find("</", from); at != kNowhere; at = html_.find("</", at + 2)) {
      const std::size_t behind = at + 2 + name.size();
      if (!equal_ignoring_case(html_.substr(at + 2, name.size()), name)) continue;
      if (behind >= html_.size() || is_gap(html_[behind]) || html_[behind] == '>') return at;
    }
    return html_.size();
  }

 private:
  static constexpr std::size_t kLongestName = 30;

  std::size_t behind(std::string_view sign, std::size_t from, bool& is_open) {
    if (is_open) return from;
    const std::size_t at = html_.find(sign, std::min(from, html_.size()));
    is_open = at == kNowhere;
    return is_open ? from : at + sign.size();
  }

  std::size_t end_of_mark(std::size_t from) {
    if (!quotes_open_) {
      bool is_value = false;
      for (std::size_t at = from; at < html_.size(); ++at) {
        const char c = html_[at];
        if (c == '>') return at + 1;
        if (is_value && (c == '"' || c == '\'')) {
          at = html_.find(c, at + 1);
          if (at == kNowhere) break;
        }
        is_value = c == '=' || (is_value && is_gap(c));
      }
      quotes_open_ = true;
    }
    return behind(">", from, marks_open_);
  }

  std::string_view html_;
  bool quotes_open_ = false, comments_open_ = false, marks_open_ = false;
};

/// The value of an attribute; nothing if it is not there.
std::optional<std::string> attribute(std::string_view attributes, std::string_view name) {
  for (std::size_t at = 0; at < attributes.size();) {
    while (at < attributes.size() && is_gap(attributes[at])) ++at;
    const std::size_t begin = at;
    while (at < attributes.size() && !is_gap(attributes[at]) && attributes[at] != '=' && attributes[at] != '>') ++at;
    const std::string_view found = attributes.substr(begin, at - begin);
    while (at < attributes.size() && is_gap(attributes[at])) ++at;
    std::string_view value;
    if (at < attributes.size() && attributes[at] == '=') {
      ++at;
      while (at < attributes.size() && is_gap(attributes[at]) && attributes[at] != '/') ++at;
      const char quote = at < attributes.size() ? attributes[at] : ' ';
      const bool is_quoted = quote == '"' || quote == '\'';
      if (is_quoted) ++at;
      const std::size_t from = at;
      while (at < attributes.size() &&
             (is_quoted ? attributes[at] != quote : attributes[at] > ' ' && attributes[at] != '>'))
        ++at;
      value = attributes.substr(from, at - from);
      if (is_quoted && at < attributes.size()) ++at;
    } else if (begin == at) {
      ++at;
    }
    if (equal_ignoring_case(found, name)) return one_line(decode_entities(value));
  }
  return std::nullopt;
}

constexpr std::string_view kRaw = "script|style|noscript|template|svg|math|select|textarea|iframe|object|canvas|title";
constexpr std::string_view kBlocks =
    "p|div|br|hr|ul|ol|li|dl|dt|dd|table|tr|section|article|header|main|aside|blockquote|pre|h1|h2|h3|h4|h5|h6|figure|"
    "figcaption|address|fieldset|legend|label|details|summary|center";

/// The last guard: takes away every '<' that would begin a mark, from the end, so that none can form anew.
std::string without_openings(const std::string& text) {
  std::string reversed;
  reversed.reserve(text.size());
  for (std::size_t i = text.size(); i-- > 0;) {
    if (text[i] != '<' || reversed.empty() || !begins_mark(reversed.back())) reversed += text[i];
  }
  std::reverse(reversed.begin(), reversed.end());
  return reversed;
}

/// Takes a page apart, mark by mark.
class PageReader {
 public:
  explicit PageReader(std::string_view html) : html_(html), marks_(html) {}

  SavedPage read() {
    std::size_t at = 0;
    while (at < html_.size()) {
      const std::size_t open = html_.find('<', at);
      if (!is_silent_) text_.append(html_.substr(at, open == kNowhere ? kNowhere : open - at));
      if (open == kNowhere) break;
      if (open + 1 >= html_.size() || !begins_mark(html_[open + 1])) {
        text_ += '<';
        at = open + 1;
        continue;
      }
      const Mark mark = marks_.read(open);
      at = std::max(mark.end, open + 1);
      if (is_one_of(mark.name, kRaw)) {
        at = pass_over(mark, at);
      } else {
        take(mark);
      }
    }
    page_.text = without_openings(clean_text(decode_entities(text_)));
    return std::move(page_);
  }

 private:
  /// An element whose inside is no text; remembers what is of use in it.
  std::size_t pass_over(const Mark& mark, std::size_t from) {
    const std::size_t close = marks_.close_of(mark.name, from);
    const std::string_view inside = html_.substr(from, close - from);
    if (mark.name == "title" && page_.title.empty()) page_.title = one_line(without_markup(inside));
    if (mark.name == "script") {
      const std::string type = lower_case(attribute(mark.attributes, "type").value_or(""));
      if (starts_with(type, "application/ld+json")) page_.linked_data.emplace_back(inside);
    }
    return close;
  }

  void take(const Mark& mark) {
    const bool is_end = !mark.name.empty() && mark.name.front() == '/';
    const std::string name = is_end ? mark.name.substr(1) : mark.name;
    if (name == "html" && !is_end) page_.language = attribute(mark.attributes, "lang").value_or("");
    if (name == "ol" || name == "ul") is_numbered_ = name == "ol" && !is_end;
    if (is_one_of(name, "nav|footer|button")) is_silent_ = !is_end;
    if (is_one_of(name, "main|article|h1")) is_silent_ = false;  // one that was never closed does not take all away
    if (name == "td" || name == "th") text_ += ' ';
    if (!is_one_of(name, kBlocks)) return;
    text_ += '\n';
    if (is_end) return;
    if (name == "li") text_ += is_numbered_ ? "1. " : "- ";
    if (name.size() == 2 && name[0] == 'h' && name[1] >= '1' && name[1] <= '6') text_ += "# ";
  }

  std::string_view html_;
  MarkReader marks_;
  SavedPage page_;
  std::string text_;
  bool is_numbered_ = false, is_silent_ = false;
};

/// Marks left out, block marks as line ends; entities stay.
std::string stripped(std::string_view html) {
  MarkReader marks(html);
  std::string out;
  for (std::size_t at = 0; at < html.size();) {
    const std::size_t open = html.find('<', at);
    out.append(html.substr(at, open == kNowhere ? kNowhere : open - at));
    if (open == kNowhere) break;
    if (open + 1 >= html.size() || !begins_mark(html[open + 1])) {
      out += '<';
      at = open + 1;
      continue;
    }
    const Mark mark = marks.read(open);
    at = std::max(mark.end, open + 1);
    const bool is_end = !mark.name.empty() && mark.name.front() == '/';
    if (mark.name == "script" || mark.name == "style") at = marks.close_of(mark.name, at);
    if (is_one_of(is_end ? std::string_view(mark.name).substr(1) : std::string_view(mark.name), kBlocks)) out += '\n';
  }
  return out;
}

}  // namespace

bool looks_like_markup(std::string_view text) {
  constexpr std::string_view kTelling =
      "html|head|body|script|div|p|br|ul|ol|li|h1|h2|h3|h4|span|table|tr|td|meta|a|b|i|em|strong|section|article|!"
      "doctype|"
      "main|header|img|link|title|/p|/li|/div|/span|br/";
  for (std::size_t at = text.find('<'); at != kNowhere; at = text.find('<', at + 1)) {
    const std::size_t end = text.substr(at + 1, 12).find_first_of(" >\n\t");
    if (end != kNowhere && is_one_of(lower_case(text.substr(at + 1, end)), kTelling)) return true;
  }
  return false;
}

std::string without_markup(std::string_view text) {
  std::string plain = decode_entities(contains(text, "<") ? stripped(text) : std::string(text));
  if (contains(plain, "<")) plain = without_openings(stripped(plain));
  return clean_text(plain);
}

SavedPage read_page(std::string_view html) {
  return PageReader(html).read();
}

}  // namespace tinwright
