// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The amount stands in front ("250 g flour"), at the end ("flour 250 g"), or behind a part of the food ("juice of 1
// lemon"). What follows the food behind a comma, in brackets or behind "for", "plus" and the like is a remark.
#include "app/recipe/read_ingredient.h"

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

#include "app/recipe/measure_words.h"
#include "app/recipe/plain_text.h"
#include "app/recipe/read_amount.h"
#include "app/recipe/tokens.h"

namespace tinwright {
namespace {

constexpr std::size_t kLongestLine = 1000;  // bytes; no list of ingredients has longer lines

using Tokens = std::vector<Token>;

/// Where each of these begins, the food has ended.
constexpr std::array<std::string_view, 44> kRemarkWords{" plus ",         " + ",
                                                        " to taste",      " to serve",
                                                        " to finish",     " to decorate",
                                                        " to garnish",    " to dust",
                                                        " to grease",     " to glaze",
                                                        " to sprinkle",   " to brush",
                                                        " as needed",     " as required",
                                                        " as desired",    " if needed",
                                                        " if desired",    " if you",
                                                        " if necessary",  " at room temp",
                                                        " for greasing",  " for dusting",
                                                        " for brushing",  " for the ",
                                                        " for rolling",   " for sprinkling",
                                                        " for serving",   " for decor",
                                                        " for frying",    " for glazing",
                                                        " for garnish",   " for coating",
                                                        " for lining",    " for topping",
                                                        " for kneading",  " for your ",
                                                        " for finishing", " for buttering",
                                                        " for oiling",    " for flouring",
                                                        " such as ",      " each",
                                                        " (optional)",    " optional"};

struct Rest {
  std::string food;
  std::vector<std::string> remarks;
  std::vector<std::string> brackets;
  bool is_of_each = false;  // one amount for several foods
};

/// Takes what stands in brackets out of the text.
std::string outside_brackets(std::string_view text, std::vector<std::string>& inside) {
  std::string outside;
  int depth = 0;
  for (const char c : text) {
    const bool opens = c == '(' || c == '[', closes = c == ')' || c == ']';
    if (opens && depth++ == 0) {
      inside.emplace_back();
      outside += ' ';
    } else if (closes && depth > 0) {
      if (--depth > 0) inside.back() += c;
    } else if (!closes) {
      (depth > 0 ? inside.back() : outside) += c;
    }
  }
  return one_line(outside);
}

std::string without_edges(std::string_view text, std::string_view edges) {
  const std::size_t begin = text.find_first_not_of(edges);
  if (begin == std::string_view::npos) return "";
  return std::string(text.substr(begin, text.find_last_not_of(edges) - begin + 1));
}

Rest split_rest(std::string_view text) {
  Rest rest;
  std::string outside = outside_brackets(text, rest.brackets);
  outside = without_edges(outside, " .,;:-*");
  if (starts_with(lower_case(outside), "each ")) {  // "1/2 tsp each salt and pepper"
    outside.erase(0, 5);
    rest.remarks.emplace_back("each");
    rest.is_of_each = true;
  }
  const std::string small = " " + lower_case(outside);  // one longer: positions are one less in `outside`
  std::size_t end = outside.size();
  for (const std::string_view sign :
       {std::string_view(","), std::string_view(";"), std::string_view(" - "), std::string_view(" \u2013 "),
        std::string_view(" \u2014 "), std::string_view("\u2014"), std::string_view(" /"), std::string_view("*")}) {
    end = std::min(end, outside.find(sign));
  }
  for (const std::string_view words : kRemarkWords) {
    const std::size_t at = small.find(words);
    if (at != std::string::npos) end = std::min(end, at);
  }
  rest.food = without_edges(outside.substr(0, end), " .,;:-*/");
  if (end < outside.size()) rest.remarks.push_back(without_edges(outside.substr(end), " .,;:-*/\u2013\u2014"));
  for (const std::string_view article :
       {"of the ", "of a ", "of an ", "of ", "de ", "d'", "x ", "\u00D7 ", "a ", "an "}) {
    if (starts_with(lower_case(rest.food), article)) {
      rest.food.erase(0, article.size());
      break;
    }
  }
  return rest;
}

/// A number that belongs to the name of a food: "70% chocolate", "00 flour", "9-inch crust".
bool belongs_to_food(const Tokens& tokens, std::size_t at) {
  const std::string& digits = tokens[at].as_is;
  if (digits == "00" || digits == "0" || digits == "000") return true;
  if (at + 1 < tokens.size() && (tokens[at + 1].is_sign('%') || tokens[at + 1].is_word("percent"))) return true;
  if (at > 0 && tokens[at - 1].is_word() && is_one_of(tokens[at - 1].text, "type|typ|no|number|size|t")) return true;
  return length_unit_at(tokens, at + 1).has_value();
}

bool has_stray_number(const std::string& text) {
  const Tokens tokens = tokens_of(text);
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    if (tokens[i].is_number() && !belongs_to_food(tokens, i)) return true;
  }
  return false;
}

/// "plus 1 yolk": another ingredient that hides in a remark.
bool adds_a_number(const std::string& remark) {
  const Tokens tokens = tokens_of(remark);
  if (tokens.size() < 2) return false;
  const bool is_plus = tokens[0].is_word("plus") || tokens[0].is_sign('+');
  return is_plus && read_count(tokens, 1).has_value();
}

void add_remark(IngredientDraft& draft, std::string_view remark) {
  const std::string_view text = trimmed(remark);
  if (text.empty() || contains(draft.remark, text)) return;
  if (!draft.remark.empty()) draft.remark += ", ";
  draft.remark += text;
}

bool is_liquid(const std::string& food) {
  const std::string small = lower_case(food);
  return !has_any_word(small, "cheese|condensed|crackers|biscuits") &&
         has_any_word(small,
                      "milk|water|cream|buttermilk|juice|oil|stock|wine|beer|coffee|espresso|rum|brandy|vinegar|syrup|"
                      "yoghurt|yogurt");
}

/// Fills the draft from an amount and the words that are left.
void fill(IngredientLine& line, SaidAmount amount, std::string_view words, std::string_view before) {
  IngredientDraft& draft = line.draft;
  const Rest rest = split_rest(words);
  std::vector<std::string> said = rest.remarks;
  for (const std::string& bracket : rest.brackets) {
    const Tokens tokens = tokens_of(bracket);
    const bool has_or = !tokens.empty() && tokens[0].is_word("or");
    auto measure = amount.amount.empty() ? std::nullopt : read_measure(tokens, has_or ? 1 : 0);
    const bool is_measure = measure && measure->dimension != Dimension::kLength;
    // "(120 g)", "(about 120 g each)", "(4 oz/115 g)"; not "(1 cup melted, 2 tbsp for the tin)".
    const bool is_short = is_measure && tokens.size() - measure->next <= 3;
    if (!is_measure || !is_short) {
      said.push_back(bracket);
      continue;
    }
    std::vector<SaidMeasure> measures{*measure};
    if (measure->next < tokens.size() && tokens[measure->next].kind == Token::Kind::kSign) {
      const auto other = read_measure(tokens, measure->next + 1);
      if (other && other->dimension != Dimension::kLength) measures.push_back(*other);
    }
    const auto best =
        std::min_element(measures.begin(), measures.end(), [](const SaidMeasure& a, const SaidMeasure& b) {
          const auto rank = [](const SaidMeasure& m) {
            return (m.dimension == Dimension::kMass ? 0 : 2) + (m.is_metric ? 0 : 1);
          };
          return rank(a) < rank(b);
        });
    add_measure(amount, *best, bracket);
  }
  if (rest.food.empty() && !amount.size.empty() && !piece_word(amount.size).empty()) {  // "1 clove"
    draft.food = amount.size;
    amount.size.clear();
  } else {
    draft.food = rest.food;
  }
  draft.amount = amount.amount;
  draft.up_to = amount.up_to;
  draft.size = amount.size;
  draft.each = amount.each;
  add_remark(draft, before);
  for (const std::string& remark : amount.remarks) add_remark(draft, remark);
  for (const std::string& remark : said) add_remark(draft, remark);
  line.doubt = rest.is_of_each && amount.doubt.empty() ? "the amount is meant of each of these" : amount.doubt;
  const bool hides_another =
      std::any_of(rest.remarks.begin(), rest.remarks.end(), [](const std::string& r) { return adds_a_number(r); });
  line.is_understood = !amount.is_bad && !hides_another && !has_stray_number(draft.food);
  if (amount.is_bad) draft.amount = draft.up_to = draft.size = draft.each = "";
  if (amount.is_bad) draft.food = std::string(trimmed(line.draft.said));
  if (line.doubt.empty() && amount.is_ounce && is_liquid(draft.food)) {
    line.doubt = "an ounce of a liquid may be one of weight or a fluid ounce; it was read as weight";
  }
}

std::string_view from_token(std::string_view line, const Tokens& tokens, std::size_t at) {
  return at < tokens.size() ? line.substr(tokens[at].begin) : std::string_view();
}

bool only_signs_left(const Tokens& tokens, std::size_t at) {
  return std::all_of(
      tokens.begin() + static_cast<std::ptrdiff_t>(std::min(at, tokens.size())), tokens.end(), [](const Token& t) {
        return t.kind == Token::Kind::kSign || t.is_word("each") || t.is_word("approx") || t.is_word("about");
      });
}

/// "flour 250 g", "eggs: 2", "flour (250 g)".
bool read_trailing(std::string_view text, const Tokens& tokens, IngredientLine& line) {
  for (std::size_t i = 1; i < tokens.size(); ++i) {
    if (!tokens[i].is_number()) continue;
    std::size_t begin = i;
    const bool is_times = i > 1 && tokens[i - 1].is_word("x");
    const auto amount = read_amount(text, tokens, i);
    if (!amount || amount->is_bad || !only_signs_left(tokens, amount->next)) continue;
    if (amount->is_piece && belongs_to_food(tokens, i)) continue;
    if (is_times) --begin;
    std::string before = without_edges(text.substr(0, tokens[begin].begin), " .,;:-*/(=_\u2013\u2014\u2026");
    const Tokens words = tokens_of(before);
    if (!words.empty() && words.back().is_word() &&
        is_one_of(words.back().text, "about|approx|approximately|ca|circa")) {
      before = without_edges(std::string_view(before).substr(0, words.back().begin), " .,;:-(");
    }
    fill(line, *amount, before, "");
    if (amount->next < tokens.size() && tokens[amount->next].is_word("each")) add_remark(line.draft, "each");
    return true;
  }
  return false;
}

/// "juice of 1 lemon", "finely grated zest of half a lemon".
bool read_part_of(std::string_view text, const Tokens& tokens, IngredientLine& line) {
  for (std::size_t i = 1; i + 1 < tokens.size() && i < 12; ++i) {
    const bool is_joined = tokens[i].is_word() && is_one_of(tokens[i].text, "of|from");
    const bool is_next = tokens[i].is_word() && is_one_of(tokens[i].text, "juice|zest") && tokens[i + 1].is_number();
    const bool is_first =
        i == 1 && tokens[1].is_number() && tokens[0].is_word() && is_one_of(tokens[0].text, "juice|zest");
    if (!is_joined && !is_next && !is_first) continue;  // "zest of 1 lemon", "zest and juice 2 limes", "juice 1 lemon"
    const std::string part = lower_case(trimmed(text.substr(0, is_next ? tokens[i].end : tokens[i].begin)));
    if (!has_any_word(part,
                      "juice|zest|rind|peel|seeds|pulp|flesh|yolk|yolks|white|whites|skin|leaves|grated|segments"))
      continue;
    const auto amount = read_amount(text, tokens, is_first ? i : i + 1);
    if (!amount || amount->next >= tokens.size()) continue;
    fill(line, *amount, from_token(text, tokens, amount->next), part);
    return true;
  }
  return false;
}

/// "For greasing: butter", "Crust: 200 g biscuits".
bool read_labelled(std::string_view text, IngredientLine& line) {
  const std::size_t colon = text.find(':');
  if (colon == std::string_view::npos || colon + 1 >= text.size() || colon == 0) return false;
  const std::string_view label = trimmed(text.substr(0, colon)), rest = trimmed(text.substr(colon + 1));
  const Tokens tokens = tokens_of(rest);
  const auto amount = read_amount(rest, tokens, 0);
  const bool is_purpose = starts_with(lower_case(label), "for ") || starts_with(lower_case(label), "to ") ||
                          lower_case(label) == "optional";
  if (!amount && !is_purpose) return false;
  if (amount && amount->next >= tokens.size()) return false;
  fill(line, amount.value_or(SaidAmount{}), amount ? from_token(rest, tokens, amount->next) : rest, lower_case(label));
  return true;
}

void read_without_amount(std::string_view text, const Tokens& tokens, IngredientLine& line) {
  std::size_t begin = 0;
  std::string before;
  const std::string small = lower_case(text);
  for (const std::string_view vague :
       {"a few drops of ", "a few drops ", "a little bit of ", "a little ", "a few ", "a bit of ", "some ",
        "plenty of ", "a lot of ", "enough ", "a touch of ", "a tad of ", "extra ", "a handful or two of "}) {
    if (starts_with(small, vague) && text.size() > vague.size()) {
      begin = vague.size();
      before = std::string(trimmed(text.substr(0, begin)));
      if (ends_with(before, " of")) before.resize(before.size() - 3);
      break;
    }
  }
  fill(line, SaidAmount{}, text.substr(begin), before);
  const bool has_number = std::any_of(tokens.begin(), tokens.end(), [](const Token& t) { return t.is_number(); });
  line.is_understood = !has_number || !has_stray_number(std::string(text));
}

}  // namespace

std::string without_bullet(std::string_view line) {
  constexpr std::string_view kBullets[] = {
      "\u2022", "\u2023", "\u25CF", "\u25CB", "\u25E6", "\u25AA", "\u25AB", "\u25A0", "\u25A1", "\u2610", "\u2611",
      "\u2612", "\u2713", "\u2714", "\u25A2", "\u00B7", "\u2219", "\u2043", "\u2013", "\u2014", "[ ]",    "[x]",
      "[]",     "*",      "-",      "+",      "~",      "\u2666", "\u25C6", "\u27A4", "\u25B8", "\u25BA"};
  line = trimmed(line);
  for (bool found = true; found && !line.empty();) {
    found = false;
    for (const std::string_view bullet : kBullets) {
      if (!starts_with(line, bullet)) continue;
      line = trimmed(line.substr(bullet.size()));
      found = true;
      break;
    }
  }
  return std::string(line);
}

IngredientLine read_ingredient(std::string_view said) {
  IngredientLine line;
  line.draft.said = shortened(one_line(said), kLongestLine);
  if (trimmed(said).size() > kLongestLine) {
    line.draft.food = line.draft.said;
    line.is_understood = false;
    return line;
  }
  const std::string text = without_bullet(line.draft.said);
  line.draft.said = text;
  const Tokens tokens = tokens_of(text);
  const auto amount = read_amount(text, tokens, 0);
  if (amount) {
    // "70% chocolate 200 g": the number in front is part of the name.
    if (amount->is_bad && read_trailing(text, tokens, line)) return line;
    fill(line, *amount, from_token(text, tokens, amount->next), "");
    return line;
  }
  if (read_part_of(text, tokens, line) || read_labelled(text, line) || read_trailing(text, tokens, line)) return line;
  read_without_amount(text, tokens, line);
  return line;
}

}  // namespace tinwright
