// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See say.h.
#include "app/quantity/say.h"

#include <vector>

namespace tinwright {
namespace {

WordTable& table() {
  static WordTable words;
  return words;
}

/// Puts the values into the places; a place without a value stays as it is written.
std::string filled(std::string_view words, const std::vector<std::string_view>& values) {
  std::string text;
  for (std::size_t at = 0; at < words.size(); ++at) {
    const bool is_place = words[at] == '{' && at + 2 < words.size() && words[at + 2] == '}' && words[at + 1] >= '0' &&
                          words[at + 1] <= '9';
    const auto number = is_place ? static_cast<std::size_t>(words[at + 1] - '0') : values.size();
    if (number >= values.size()) {
      text += words[at];
      continue;
    }
    text += values[number];
    at += 2;
  }
  return text;
}

}  // namespace

void speak(WordTable words) {
  table() = std::move(words);
}

std::string_view say(std::string_view english) {
  if (table().empty()) return english;
  const auto found = table().find(english);
  return found == table().end() ? english : std::string_view(found->second);
}

std::string say(std::string_view english, std::initializer_list<std::string_view> values) {
  return filled(say(english), values);
}

std::string say_count(long count, std::string_view one, std::string_view many,
                      std::initializer_list<std::string_view> values) {
  const std::string number = std::to_string(count);
  std::vector<std::string_view> all{number};
  all.insert(all.end(), values.begin(), values.end());
  return filled(say(count == 1 ? one : many), all);
}

char decimal_sign() {
  const std::string_view sign = say(".");
  return sign == "," ? ',' : '.';
}

}  // namespace tinwright
