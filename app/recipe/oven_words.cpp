// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See oven_words.h.
#include "app/recipe/oven_words.h"

#include <algorithm>

#include "app/quantity/parse.h"
#include "app/recipe/plain_text.h"
#include "app/recipe/read_amount.h"

namespace tinwright {
namespace {

using Tokens = std::vector<Token>;

constexpr double kOvernight = 8.0;  // [h] common practice, no source
constexpr std::string_view kDegree = "\u00B0";

bool word_is(const Tokens& tokens, std::size_t at, std::string_view words) {
  return at < tokens.size() && tokens[at].is_word() && is_one_of(tokens[at].text, words);
}

bool sign_is(const Tokens& tokens, std::size_t at, std::string_view sign) {
  return at < tokens.size() && tokens[at].kind == Token::Kind::kSign && tokens[at].text == sign;
}

/// The scale behind a number: sets `next` behind it. ' ' for degrees alone, 0 where nothing says it is a temperature.
char scale_at(const Tokens& tokens, std::size_t& next) {
  std::size_t at = next;
  bool has_degree = false;
  if (sign_is(tokens, at, "'") && word_is(tokens, at + 1, "c|f")) ++at;  // an apostrophe typed for the sign
  while (sign_is(tokens, at, kDegree) || word_is(tokens, at, "deg|degs|degree|degrees")) {
    has_degree = true;
    ++at;
    if (sign_is(tokens, at, ".")) ++at;
  }
  if (sign_is(tokens, at, "-") && word_is(tokens, at + 1, "degree|degrees")) {
    has_degree = true;
    at += 2;
  }
  if (word_is(tokens, at, "c|celsius|centigrade|f|fahrenheit")) {
    next = at + 1;
    return tokens[at].text[0] == 'f' ? 'F' : 'C';
  }
  if (!has_degree) return '\0';
  next = at;
  return ' ';
}

bool is_fan_word(const Tokens& tokens, std::size_t at) {
  return word_is(tokens, at, "fan|convection|ventilated");
}

/// Whether the words around a temperature say that it is for a fan oven.
bool is_for_fan(const Tokens& tokens, std::size_t begin, std::size_t next) {
  std::size_t before = begin;
  while (before > 0 && (tokens[before - 1].kind == Token::Kind::kSign
                            ? !sign_is(tokens, before - 1, "/") && !sign_is(tokens, before - 1, ")")
                            : word_is(tokens, before - 1, "oven|ovens|assisted|forced|at|to|mode"))) {
    --before;
  }
  if (before > 0 && is_fan_word(tokens, before - 1)) {
    // "200C fan, 180C": the fan belongs to the number before it, if there is one just before.
    const bool has_own = before > 1 && (tokens[before - 2].is_number() || word_is(tokens, before - 2, "c|f"));
    if (!has_own) return true;
  }
  std::size_t behind = next;
  while (sign_is(tokens, behind, "(") || sign_is(tokens, behind, "-") || word_is(tokens, behind, "in|a|for|with|on"))
    ++behind;
  if (!is_fan_word(tokens, behind)) return false;
  ++behind;
  while (word_is(tokens, behind, "oven|ovens|assisted|forced") || sign_is(tokens, behind, "-") ||
         sign_is(tokens, behind, ":"))
    ++behind;
  return behind >= tokens.size() || !tokens[behind].is_number();
}

/// Between two ways of saying the same temperature.
bool joins_heats(const Token& token) {
  if (token.is_word()) {
    return is_one_of(
        token.text,
        "or|fan|gas|mark|conventional|oven|ovens|forced|assisted|convection|electric|static|for|in|a|on|standard|"
        "normal|regular|ventilated|mode|setting|approx|about|equals");
  }
  return token.kind == Token::Kind::kSign && is_one_of(token.text, "/|(|)|,|-|:|[|]|=|;|~");
}

}  // namespace

std::vector<Sentence> sentences_of(const std::string& step) {
  std::vector<Sentence> sentences(1);
  const Tokens tokens = tokens_of(step);
  std::size_t begin = 0;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    const bool is_stop = tokens[i].kind == Token::Kind::kSign && is_one_of(tokens[i].text, ".|!|?|;");
    const bool has_next = i + 1 < tokens.size();
    const char next = has_next ? tokens[i + 1].as_is[0] : 'A';
    const bool ends = is_stop && !(tokens[i].is_sign('.') && next >= 'a' && next <= 'z');
    if (!ends || !has_next) {
      sentences.back().tokens.push_back(tokens[i]);
      continue;
    }
    sentences.back().text = one_line(std::string_view(step).substr(begin, tokens[i].end - begin));
    begin = tokens[i].end;
    sentences.emplace_back();
  }
  sentences.back().text = one_line(std::string_view(step).substr(begin));
  return sentences;
}

std::optional<OvenHeat> read_heat(const std::vector<Token>& tokens, std::size_t at, bool may_be_bare) {
  if (word_is(tokens, at, "gas|mark")) {
    std::size_t next = at + 1;
    if (word_is(tokens, next, "mark|no|number")) ++next;
    if (sign_is(tokens, next, ".")) ++next;
    if (next >= tokens.size() || !tokens[next].is_number() || gas_mark_fahrenheit(tokens[next].value) <= 0.0)
      return std::nullopt;
    OvenHeat heat{.value = tokens[next].value, .unit = 'G', .next = next + 1};
    if (sign_is(tokens, heat.next, "-") && heat.next + 1 < tokens.size() && tokens[heat.next + 1].is_number() &&
        gas_mark_fahrenheit(tokens[heat.next + 1].value) > 0.0) {
      heat.is_range = true;
      heat.next += 2;
    }
    return heat;
  }
  if (at >= tokens.size() || !tokens[at].is_number() || tokens[at].is_bad) return std::nullopt;
  OvenHeat heat{.value = tokens[at].value, .next = at + 1};
  char unit = scale_at(tokens, heat.next);
  const bool has_other = sign_is(tokens, heat.next, "-") || word_is(tokens, heat.next, "to");
  if (has_other && heat.next + 1 < tokens.size() && tokens[heat.next + 1].is_number() && unit != 'C' && unit != 'F') {
    std::size_t next = heat.next + 2;
    const char other = scale_at(tokens, next);  // "160-180C"
    if (other != '\0' && tokens[heat.next + 1].value > heat.value) {
      unit = other;
      heat.next = next;
      heat.is_range = true;
    }
  }
  if (unit == '\0') {
    const bool is_oven_like = heat.value >= 100.0 && heat.value <= 550.0;
    const bool has_more =
        heat.next < tokens.size() && tokens[heat.next].is_word() && find_unit(tokens[heat.next].as_is) != nullptr;
    if (!may_be_bare || !is_oven_like || has_more || !word_is(tokens, at - (at > 0 ? 1 : 0), "to|at"))
      return std::nullopt;
    unit = ' ';
  }
  const bool is_plausible =
      unit == 'F' ? heat.value >= 100.0 && heat.value <= 600.0 : heat.value >= 50.0 && heat.value <= 600.0;
  if (!is_plausible) return std::nullopt;
  heat.unit = unit;
  heat.is_fan = is_for_fan(tokens, at, heat.next);
  return heat;
}

std::vector<OvenHeat> read_heats(const std::vector<Token>& tokens, std::size_t at, bool may_be_bare) {
  std::vector<OvenHeat> heats;
  while (const auto heat = read_heat(tokens, at, may_be_bare)) {
    heats.push_back(*heat);
    std::size_t next = heat->next;
    for (int gap = 0; gap < 7 && next < tokens.size() && joins_heats(tokens[next]) && !read_heat(tokens, next, false);
         ++gap)
      ++next;
    const bool is_apart = next == heat->next && !word_is(tokens, next, "gas|mark");
    if (is_apart) break;
    at = next;
    may_be_bare = false;
    // "to 180C for 20" is no second temperature: read_heat wants a scale.
  }
  return heats;
}

double gas_mark_fahrenheit(double mark) {
  if (mark >= 1.0 && mark <= 10.0) return 250.0 + 25.0 * mark;
  if (mark > 0.2 && mark < 0.3) return 225.0;
  return mark > 0.4 && mark < 0.6 ? 250.0 : 0.0;
}

namespace {

/// "1 hour 15 minutes" without ranges of whole times.
std::optional<SaidTime> single_time(const Tokens& tokens, std::size_t at) {
  if (word_is(tokens, at, "overnight")) {
    return SaidTime{.text = number_text(kOvernight) + " h", .seconds = kOvernight * 3600.0, .next = at + 1};
  }
  std::size_t begin = at;
  while (word_is(tokens, begin, "about|approx|approximately|around|roughly|another|further|additional|extra")) ++begin;
  const auto count = read_count(tokens, begin);
  if (!count || count->is_bad || count->value <= 0.0) return std::nullopt;
  std::size_t next = count->next;
  while (word_is(tokens, next, "more|further|additional|extra|full|good|of|whole|other|solid") ||
         sign_is(tokens, next, "-"))
    ++next;
  if (next >= tokens.size() || !tokens[next].is_word()) return std::nullopt;
  const Unit* unit = tokens[next].text == "m" ? nullptr : find_unit(Dimension::kDuration, tokens[next].text);
  if (unit == nullptr || (tokens[next].text == "d")) return std::nullopt;
  SaidTime time{
      .text = count->text + " " + std::string(unit->name), .seconds = to_si(count->value, *unit), .next = next + 1};
  if (!count->up_to.empty()) time.up_to = count->up_to + " " + std::string(unit->name);
  if (sign_is(tokens, time.next, ".")) ++time.next;
  if (word_is(tokens, time.next, "and") && word_is(tokens, time.next + 1, "a") &&
      word_is(tokens, time.next + 2, "half|quarter")) {
    const bool is_half = tokens[time.next + 2].text == "half";  // "an hour and a half"
    time.text = count->text + (is_half ? " 1/2 " : " 1/4 ") + std::string(unit->name);
    time.seconds += to_si(is_half ? 0.5 : 0.25, *unit);
    time.next += 3;
  }
  return time;
}

}  // namespace

std::optional<SaidTime> read_time(const std::vector<Token>& tokens, std::size_t at) {
  auto time = single_time(tokens, at);
  if (!time || !time->up_to.empty()) return time;
  std::size_t behind = time->next;
  if (word_is(tokens, behind, "and") || sign_is(tokens, behind, ",")) ++behind;
  const bool has_number = behind < tokens.size() && tokens[behind].is_number();
  if (const auto part = has_number ? single_time(tokens, behind) : std::nullopt) {
    const std::string sum = time->text + " " + part->text;  // "1 hour 15 minutes"
    const auto seconds = parse_quantity(sum, Dimension::kDuration);
    if (seconds && part->up_to.empty()) *time = SaidTime{.text = sum, .seconds = *seconds, .next = part->next};
    if (seconds && !part->up_to.empty()) {  // "1 hour 10-15 minutes"
      return SaidTime{.text = sum, .up_to = time->text + " " + part->up_to, .seconds = *seconds, .next = part->next};
    }
  }
  if (sign_is(tokens, time->next, "-") || word_is(tokens, time->next, "to|or")) {
    const auto second = single_time(tokens, time->next + 1);  // "45 minutes to 1 hour"
    if (second && second->up_to.empty() && second->seconds > time->seconds) {
      time->up_to = second->text;
      time->next = second->next;
      const bool has_minutes = time->next < tokens.size() && tokens[time->next].is_number();
      const auto part = has_minutes ? single_time(tokens, time->next) : std::nullopt;
      if (part && part->up_to.empty() && parse_quantity(time->up_to + " " + part->text, Dimension::kDuration)) {
        time->up_to += " " + part->text;
        time->next = part->next;
      }
    }
  }
  return time;
}

}  // namespace tinwright
