// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Words in the cook's language. The code says everything in English; a table (assets/words.json) has it in others.
// Without one, and for what it has not, English stays.
#pragma once

#include <functional>
#include <initializer_list>
#include <map>
#include <string>
#include <string_view>
#include <utility>

namespace tinwright {

/// English texts and what they are in another language.
using WordTable = std::map<std::string, std::string, std::less<>>;

/// From now on the words of this table are used; an empty one is English. Call it between questions, not while one is
/// being answered: views into the table before it end.
void speak(WordTable table);

/// That text in the cook's language: a view into the table, or of `english` itself.
std::string_view say(std::string_view english);

/// The same with places: "{0} below {1}" with each {n} replaced by the n-th value, which is not looked up.
std::string say(std::string_view english, std::initializer_list<std::string_view> values);

/// One of two wordings by the number, which stands for {0}: "{0} tin", "{0} tins". The values follow as {1} and so on.
std::string say_count(long count, std::string_view one, std::string_view many,
                      std::initializer_list<std::string_view> values = {});

/// The sign before the decimals, "." or ",": the table's word for ".".
char decimal_sign();

/// A text for a cook. A literal is English and is looked up; whatever else it is made of was said already, or is the
/// cook's own.
class Said {
 public:
  Said(const char* english) : text_(say(english)) {}
  Said(std::string text) : text_(std::move(text)) {}
  Said(std::string_view text) : text_(text) {}
  const std::string& text() const& { return text_; }
  std::string text() && { return std::move(text_); }

 private:
  std::string text_;
};

}  // namespace tinwright
