// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// One pass over the signs of the text, with a stack of what is open. What comes out is well formed by construction: a
// sign is written only where the grammar of RFC 8259 has a place for it.
#include "app/recipe/mend_json.h"

#include <algorithm>
#include <cstddef>
#include <map>
#include <set>

#include "app/recipe/plain_text.h"

namespace tinwright {
namespace {

constexpr std::size_t kDeepest = 200;  // the strict reader refuses far less; this bounds the stack

bool is_hex(char c) {
  return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f') || (c >= 'A' && c <= 'F');
}

bool is_number(std::string_view word) {
  std::size_t at = 0;
  const auto digits = [&] {
    const std::size_t begin = at;
    while (at < word.size() && word[at] >= '0' && word[at] <= '9') ++at;
    return at - begin;
  };
  if (at < word.size() && word[at] == '-') ++at;
  const bool leads_with_zero = at < word.size() && word[at] == '0';
  const std::size_t whole = digits();
  if (whole == 0 || whole > 15 || (leads_with_zero && whole > 1)) return false;
  if (at < word.size() && word[at] == '.') {
    ++at;
    if (digits() == 0) return false;
  }
  return at == word.size();
}

class Mender {
 public:
  explicit Mender(std::string_view text) : text_(text) {}

  MendedJson mend() {
    while (at_ < text_.size() && !is_done_) step();
    if (!is_done_ && !out_.empty()) {
      note("the page's recipe data breaks off; what stood before that was read");
      while (!open_.empty()) close(open_.back().is_object);
    }
    return {std::move(out_), std::move(notes_)};
  }

 private:
  enum class Expect { kKey, kColon, kValue, kNext };
  struct Member {
    std::string key;
    std::size_t begin = 0, end = 0;  // where it stands in out_
  };
  struct Open {
    bool is_object = false;
    Expect expect = Expect::kValue;
    std::size_t begin = 0;  // of its bracket in out_
    std::vector<Member> members = {};
    std::set<std::string> keys = {};
    bool has_twice = false;
  };

  void note(const char* words) {
    if (std::find(notes_.begin(), notes_.end(), words) == notes_.end()) notes_.emplace_back(words);
  }

  void step() {
    const char c = text_[at_];
    if (c == '"') return take_string();
    if (c == '{' || c == '[') return open(c == '{');
    if (c == '}' || c == ']') {
      ++at_;
      return close(c == '}');
    }
    if (skip_comment()) return;
    if (c == ',' || c == ':') {
      ++at_;
      if (!open_.empty() && c == ':' && open_.back().expect == Expect::kColon) {
        out_ += ':';
        open_.back().expect = Expect::kValue;
      } else if (!open_.empty() && c == ',' && open_.back().is_object &&
                 (open_.back().expect == Expect::kValue || open_.back().expect == Expect::kColon)) {
        put_value("null");
      }
      return;  // commas are written when the next item comes
    }
    const std::size_t end = text_.find_first_of(",:{}[]\" \n\t\r/", at_);
    const std::string_view word = text_.substr(at_, std::max<std::size_t>(1, std::min(end, text_.size()) - at_));
    at_ += word.size();
    if (!open_.empty() && word.front() > ' ') take_word(word);
  }

  bool skip_comment() {
    const std::string_view rest = text_.substr(at_);
    const bool is_block = starts_with(rest, "/*");
    if (is_block || (starts_with(rest, "//") && !open_.empty())) {
      const std::size_t end = text_.find(is_block ? "*/" : "\n", at_ + 2);
      at_ = end == std::string_view::npos ? text_.size() : end + (is_block ? 2 : 1);
      return true;
    }
    for (const std::string_view sign : {"<!--", "-->", "<![CDATA[", "]]>"}) {
      if (!starts_with(rest, sign)) continue;
      at_ += sign.size();
      return true;
    }
    return false;
  }

  void take_word(std::string_view word) {
    const bool is_known = word == "true" || word == "false" || word == "null" || is_number(word);
    const bool is_key =
        open_.back().is_object && (open_.back().expect == Expect::kKey || open_.back().expect == Expect::kNext);
    if (is_known && !is_key) return put_value(word);
    std::string quoted = "\"";
    for (const char c : word) {
      if (c != '\\' && static_cast<unsigned char>(c) >= 0x20) quoted += c;
    }
    put_text(quoted + "\"");
  }

  void take_string() {
    std::string out = "\"";
    for (++at_; at_ < text_.size() && text_[at_] != '"'; ++at_) {
      const char c = text_[at_];
      if (c == '\\') {
        take_escape(out);
      } else if (c == '\n') {
        out += "\\n";
        note("the page's recipe data has line ends where JSON allows none");
      } else {
        out += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
      }
    }
    ++at_;
    put_text(out + '"');
  }

  /// At a backslash; leaves at_ on the last letter of the escape.
  void take_escape(std::string& out) {
    const char c = at_ + 1 < text_.size() ? text_[++at_] : ' ';
    if (c != 'u') {
      if (std::string_view("\"\\/bfnrt").find(c) != std::string_view::npos) out += '\\';
      out += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
      return;
    }
    const std::string_view code = hex_at(at_ + 1);
    if (code.empty()) return;
    at_ += 4;
    const bool is_high = is_surrogate(code, "89abAB");
    if (!is_high && !is_surrogate(code, "cdefCDEF")) {
      out.append("\\u").append(code);
      return;
    }
    const std::string_view low = text_.substr(at_ + 1, 2) == "\\u" ? hex_at(at_ + 3) : std::string_view();
    if (!is_high || low.empty() || !is_surrogate(low, "cdefCDEF")) return;  // half a letter
    out.append("\\u").append(code).append("\\u").append(low);
    at_ += 6;
  }

  std::string_view hex_at(std::size_t at) const {
    const std::string_view code = at <= text_.size() ? text_.substr(at, 4) : std::string_view();
    return code.size() == 4 && std::all_of(code.begin(), code.end(), is_hex) ? code : std::string_view();
  }

  static bool is_surrogate(std::string_view code, std::string_view second) {
    return (code[0] == 'd' || code[0] == 'D') && second.find(code[1]) != std::string_view::npos;
  }

  void open(bool is_object) {
    ++at_;
    if (open_.size() >= kDeepest) {
      out_.clear();  // nothing that a kitchen wrote
      is_done_ = true;
      return;
    }
    begin_value();
    open_.push_back(
        {.is_object = is_object, .expect = is_object ? Expect::kKey : Expect::kValue, .begin = out_.size()});
    out_ += is_object ? '{' : '[';
  }

  void close(bool is_object) {
    if (open_.empty()) return;
    if (open_.back().is_object != is_object) {
      // A bracket of the other kind: close down to its own, if there is one.
      const bool has_own =
          std::any_of(open_.begin(), open_.end(), [is_object](const Open& o) { return o.is_object == is_object; });
      if (!has_own) return;
      while (open_.back().is_object != is_object) close(!is_object);
    }
    const bool lacks_value =
        is_object && (open_.back().expect == Expect::kColon || open_.back().expect == Expect::kValue);
    if (lacks_value) put_value("null");
    if (open_.back().has_twice) keep_last(open_.back());
    out_ += is_object ? '}' : ']';
    open_.pop_back();
    end_item();
  }

  /// Writes the object anew with the last of the members of each name.
  void keep_last(const Open& object) {
    std::map<std::string_view, std::size_t> last;
    for (std::size_t i = 0; i < object.members.size(); ++i) last[object.members[i].key] = i;
    std::string kept = "{";
    for (std::size_t i = 0; i < object.members.size(); ++i) {
      const Member& member = object.members[i];
      if (last[member.key] != i) continue;
      if (kept.size() > 1) kept += ',';
      kept.append(out_, member.begin, member.end - member.begin);
    }
    out_.replace(object.begin, std::string::npos, kept);
  }

  /// Writes what stands before a value: the comma in an array, the colon or a name in an object.
  void begin_value() {
    if (open_.empty()) return;
    const Open& inside = open_.back();
    if (!inside.is_object) {
      if (inside.expect == Expect::kNext) out_ += ',';
      return;
    }
    if (inside.expect == Expect::kKey || inside.expect == Expect::kNext) {
      note("the page's recipe data has a value without a name");
      put_key("\"\"");
    }
    if (open_.back().expect == Expect::kColon) out_ += ':';
  }

  void end_item() {
    if (open_.empty()) {
      is_done_ = true;
      return;
    }
    open_.back().expect = Expect::kNext;
    if (open_.back().is_object) open_.back().members.back().end = out_.size();
  }

  void put_value(std::string_view value) {
    begin_value();
    out_ += value;
    end_item();
  }

  /// A string, as a key or as a value, whichever is due.
  void put_text(const std::string& quoted) {
    if (open_.empty()) return;
    const Open& inside = open_.back();
    const bool is_key = inside.is_object && (inside.expect == Expect::kKey || inside.expect == Expect::kNext);
    if (is_key) {
      put_key(quoted);
    } else {
      put_value(quoted);
    }
  }

  void put_key(const std::string& quoted) {
    Open& inside = open_.back();
    if (inside.expect == Expect::kNext) out_ += ',';
    if (!inside.keys.insert(quoted).second) {
      inside.has_twice = true;
      note("the page's recipe data gives a field twice; the last one was read");
    }
    inside.members.push_back({quoted, out_.size(), out_.size()});
    out_ += quoted;
    inside.expect = Expect::kColon;
  }

  std::string_view text_;
  std::size_t at_ = 0;
  std::string out_;
  std::vector<Open> open_;
  std::vector<std::string> notes_;
  bool is_done_ = false;
};

}  // namespace

MendedJson mend_json(std::string_view text) {
  return Mender(text).mend();
}

}  // namespace tinwright
