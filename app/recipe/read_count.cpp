// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See read_amount.h: numbers, in digits and in words, and ranges of them.
#include "app/recipe/measure_words.h"
#include "app/recipe/plain_text.h"
#include "app/recipe/read_amount.h"

namespace tinwright {
namespace {

bool word_is(const std::vector<Token>& tokens, std::size_t at, std::string_view words) {
  return at < tokens.size() && tokens[at].is_word() && is_one_of(tokens[at].text, words);
}

bool sign_is(const std::vector<Token>& tokens, std::size_t at, char sign) {
  return at < tokens.size() && tokens[at].is_sign(sign);
}

bool number_is(const std::vector<Token>& tokens, std::size_t at) {
  return at < tokens.size() && tokens[at].is_number();
}

/// "half a", "quarter of an", "three quarters of a", behind the number word.
std::size_t skip_article(const std::vector<Token>& tokens, std::size_t at) {
  std::size_t next = at;
  if (word_is(tokens, next, "of") && word_is(tokens, next + 1, "a|an|one")) ++next;
  return word_is(tokens, next, "a|an") ? next + 1 : at;
}

std::optional<SaidCount> count_of_words(const std::vector<Token>& tokens, std::size_t at) {
  if (at >= tokens.size() || !tokens[at].is_word()) return std::nullopt;
  const std::string& word = tokens[at].text;
  const double value = number_word(word);
  if (value <= 0.0) return std::nullopt;
  SaidCount count{.text = number_text(value), .value = value, .next = at + 1};
  const bool is_article = word == "a" || word == "an";
  if (is_article && word_is(tokens, at + 1, "half|quarter|third|dozen|couple")) {
    const std::string& part = tokens[at + 1].text;
    const bool is_fraction = part != "dozen" && part != "couple";
    count.text = part == "half"      ? "1/2"
                 : part == "quarter" ? "1/4"
                 : part == "third"   ? "1/3"
                 : part == "dozen"   ? "12"
                                     : "2";
    count.value = part == "half"      ? 0.5
                  : part == "quarter" ? 0.25
                  : part == "third"   ? 1.0 / 3.0
                  : part == "dozen"   ? 12
                                      : 2;
    count.next = is_fraction ? skip_article(tokens, at + 2) : at + 2;
    return count;
  }
  // Not "a few", "a little", nor the "a" of "a generous handful", whose number the handful gives.
  if (is_article && word_is(tokens, at + 1, "few|little|bit|lot|touch|tad|good|nice")) return std::nullopt;
  if (word == "half" || word == "quarter") {
    count.text = word == "half" ? "1/2" : "1/4";
    if (word_is(tokens, at + 1, "a|an") && word_is(tokens, at + 2, "dozen")) {
      return SaidCount{.text = word == "half" ? "6" : "3", .value = 12.0 * value, .next = at + 3};
    }
    count.next = skip_article(tokens, at + 1);
  }
  if (word_is(tokens, at + 1, "half|halves|quarters|quarter|thirds|third")) {  // "one half", "three quarters of a"
    const char below = tokens[at + 1].text[0] == 'h' ? '2' : tokens[at + 1].text[0] == 'q' ? '4' : '3';
    const double whole = below - '0';
    if (value < whole && value >= 1.0) {
      return SaidCount{
          .text = number_text(value) + "/" + below, .value = value / whole, .next = skip_article(tokens, at + 2)};
    }
  }
  if (word_is(tokens, at + 1, "and") && word_is(tokens, at + 2, "a") && word_is(tokens, at + 3, "half|quarter")) {
    const bool is_half = tokens[at + 3].text == "half";
    return SaidCount{.text = number_text(value) + (is_half ? " 1/2" : " 1/4"),
                     .value = value + (is_half ? 0.5 : 0.25),
                     .next = at + 4};
  }
  return count;
}

/// "two-tin cobbler", "2-minute noodles": a name, unless what follows is a unit ("14-ounce", "9-inch").
bool is_part_of_name(const std::vector<Token>& tokens, std::size_t at) {
  if (!sign_is(tokens, at + 1, '-') || at + 2 >= tokens.size() || !tokens[at + 2].is_word()) return false;
  const bool is_glued = tokens[at].end == tokens[at + 1].begin && tokens[at + 1].end == tokens[at + 2].begin;
  return is_glued && !unit_at(tokens, at + 1) && !length_unit_at(tokens, at + 1) &&
         find_unit(Dimension::kDuration, tokens[at + 2].text) == nullptr;
}

std::optional<SaidCount> single_count(const std::vector<Token>& tokens, std::size_t at) {
  if (is_part_of_name(tokens, at)) return std::nullopt;
  std::optional<SaidCount> count;
  if (number_is(tokens, at)) {
    count = SaidCount{.text = tokens[at].text, .value = tokens[at].value, .is_bad = tokens[at].is_bad, .next = at + 1};
    if (word_is(tokens, at + 1, "and") && word_is(tokens, at + 2, "a") && word_is(tokens, at + 3, "half|quarter")) {
      const bool is_half = tokens[at + 3].text == "half";
      count->text += is_half ? " 1/2" : " 1/4";
      count->value += is_half ? 0.5 : 0.25;
      count->next = at + 4;
    }
  } else {
    count = count_of_words(tokens, at);
  }
  if (count && word_is(tokens, count->next, "dozen")) {
    count->value *= 12.0;
    count->text = number_text(count->value);
    ++count->next;
  }
  return count;
}

}  // namespace

std::optional<SaidCount> read_count(const std::vector<Token>& tokens, std::size_t at) {
  std::optional<SaidCount> count = single_count(tokens, at);
  if (!count) return count;
  const bool is_dash = sign_is(tokens, count->next, '-');
  if (!is_dash && !word_is(tokens, count->next, "to|or|bis")) return count;
  const auto second = single_count(tokens, count->next + 1);
  // "1 or a lemon" and "2 - a note" are no ranges.
  if (!second || second->value <= count->value || word_is(tokens, count->next + 1, "a|an")) return count;
  count->up_to = second->text;
  count->up_to_value = second->value;
  count->is_bad = count->is_bad || second->is_bad;
  count->next = second->next;
  return count;
}

}  // namespace tinwright
