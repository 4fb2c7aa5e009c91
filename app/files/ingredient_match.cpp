// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// match_ingredient of ingredients.h. Every name and alias is a phrase. A phrase fits a wording when its words stand
// there in order and every other word is one that does not change what food it is; of those that fit, the one with most
// words wins, so that "coconut milk" is not milk and "peanut oil" is nothing. Remarks are tried before and behind the
// food ("sugar, caster"; "egg, yolk only"), and "zest of a lemon" as "lemon zest".
#include <algorithm>
#include <unordered_map>
#include <utility>

#include "app/files/food_words.h"
#include "app/files/ingredients.h"

namespace tinwright {
namespace {

using Words = std::vector<std::string>;

struct Phrase {
  std::vector<int> words;                  // as numbered by the lexicon
  const Ingredient* ingredient = nullptr;  // none: a food that is not catalogued
  bool is_loose = false;
};

class Lexicon {
 public:
  Lexicon() {
    for (const Ingredient& one : catalogue_ingredients()) {
      add(one.name, &one, false);
      for (const std::string& alias : one.aliases) add(alias, &one, false);
      for (const std::string& alias : one.loosely) add(alias, &one, true);
    }
    for (const std::string& other : foods_not_catalogued()) add(other, nullptr, false);
  }

  /// The number of a word, -1 for one that no phrase has.
  int number_of(const std::string& word) const {
    const auto found = numbers_.find(word);
    return found == numbers_.end() ? -1 : found->second;
  }
  /// The phrases whose last word has that number (>= 0).
  const std::vector<Phrase>& ending_in(int number) const { return by_last_word_[static_cast<std::size_t>(number)]; }

 private:
  void add(std::string_view text, const Ingredient* ingredient, bool is_loose) {
    Phrase phrase{{}, ingredient, is_loose};
    for (const std::string& word : plain_words(text)) {
      phrase.words.push_back(numbers_.emplace(word, static_cast<int>(numbers_.size())).first->second);
    }
    by_last_word_.resize(numbers_.size());
    if (!phrase.words.empty()) by_last_word_[static_cast<std::size_t>(phrase.words.back())].push_back(phrase);
  }

  std::unordered_map<std::string, int> numbers_;
  std::vector<std::vector<Phrase>> by_last_word_;
};

/// What a wording's word may be besides part of a phrase.
enum class Role { kSilent, kChanging, kForeign, kOther };

struct Word {
  int number = -1;
  Role role = Role::kOther;
};

Role role_of(const std::string& word) {
  if (word.back() == '%' || is_silent(word)) return Role::kSilent;
  if (is_changing(word)) return Role::kChanging;
  return is_foreign(word) ? Role::kForeign : Role::kOther;
}

struct Fit {
  const Phrase* phrase = nullptr;
  double confidence = 0.0;
};

/// How sure it is that `words` mean the phrase; nothing where they do not.
std::optional<double> fit(const Phrase& phrase, const std::vector<Word>& words) {
  std::size_t next = 0;
  double confidence = phrase.is_loose ? kUsuallyMeant : kSameWords;
  for (const Word& word : words) {
    if (next < phrase.words.size() && word.number == phrase.words[next]) {
      ++next;
      continue;
    }
    // An unknown word in front of two known ones is a place or a kind; in front of one it could be anything.
    const bool is_kind = word.number < 0 && next == 0 && phrase.words.size() > 1;
    if (word.role == Role::kForeign || (word.role == Role::kOther && !is_kind)) return std::nullopt;
    confidence = std::min(confidence, word.role == Role::kSilent ? kPlainlyDescribed : kVaguelyDescribed);
  }
  return next == phrase.words.size() ? std::optional<double>(confidence) : std::nullopt;
}

/// Keeps the phrase with most words, then the surest.
void keep_better(Fit& best, const Fit& found) {
  const std::size_t had = best.phrase == nullptr ? 0 : best.phrase->words.size();
  const std::size_t has = found.phrase->words.size();
  if (has > had || (has == had && found.confidence > best.confidence)) best = found;
}

Fit best_fit(const Lexicon& lexicon, const Words& text) {
  std::vector<Word> words;
  for (const std::string& word : text) words.push_back({lexicon.number_of(word), role_of(word)});
  Fit best;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const auto is_same = [&](const Word& earlier) { return earlier.number == words[i].number; };
    const auto here = words.begin() + static_cast<std::ptrdiff_t>(i);
    if (words[i].number < 0 || std::any_of(words.begin(), here, is_same)) continue;
    for (const Phrase& phrase : lexicon.ending_in(words[i].number)) {
      const auto confidence = fit(phrase, words);
      if (confidence) keep_better(best, {&phrase, *confidence});
    }
  }
  return best;
}

Words joined(const Words& front, const Words& back) {
  Words both = front;
  both.insert(both.end(), back.begin(), back.end());
  return both;
}

/// "grated zest of one lemon" -> "one lemon grated zest"; nothing for other words with an "of".
Words part_last(const Words& words) {
  static constexpr std::string_view kParts[] = {"flesh", "juice", "peel", "rind", "seed", "white", "yolk", "zest"};
  const auto is_between = [](const std::string& word) { return word == "of" || word == "from"; };
  const auto of = std::find_if(words.begin(), words.end(), is_between);
  if (of == words.end()) return {};
  const auto is_part = [&](const std::string& word) {
    return std::find(std::begin(kParts), std::end(kParts), word) != std::end(kParts);
  };
  if (std::none_of(words.begin(), of, is_part)) return {};
  Words turned;
  for (auto word = of + 1; word != words.end(); ++word) {
    if (std::find(words.begin(), of, *word) == of) turned.push_back(*word);  // "egg whites from 3 eggs"
  }
  return joined(turned, Words(words.begin(), of));
}

Fit fit_clauses(const Lexicon& lexicon, const FoodClauses& clauses) {
  const Words& food = clauses.front();
  Fit best = best_fit(lexicon, food);
  const auto attempt = [&](const Words& words) {
    const Fit found = best_fit(lexicon, words);
    const bool says_more =
        found.phrase != nullptr && (best.phrase == nullptr || found.phrase->words.size() > best.phrase->words.size());
    if (says_more) best = found;
  };
  attempt(part_last(food));
  Words all = food;
  for (std::size_t i = 1; i < clauses.size(); ++i) {
    attempt(joined(clauses[i], food));
    attempt(joined(food, clauses[i]));
    all = joined(all, clauses[i]);
  }
  if (clauses.size() > 2) attempt(all);
  return best;
}

/// "lemon" of "lemon or lime juice" -> "lemon juice"; nothing where the second choice names the first again.
Words shared_ending(const Words& first, const Words& second) {
  const auto is_food = [](const std::string& word) { return !is_silent(word); };
  const auto last = std::find_if(second.rbegin(), second.rend(), is_food);
  const auto is_repeated = [&](const std::string& word) {
    return is_food(word) && std::find(second.begin(), second.end(), word) != second.end();
  };
  if (last == second.rend() || std::any_of(first.begin(), first.end(), is_repeated)) return {};
  return joined(first, {*last});
}

/// The first choice, with the end that it may share with the second.
Fit fit_first(const Lexicon& lexicon, const std::vector<FoodClauses>& choices) {
  const Fit alone = fit_clauses(lexicon, choices.front());
  if (choices.size() < 2) return alone;
  const Fit longer = best_fit(lexicon, shared_ending(choices[0].front(), choices[1].front()));
  const std::size_t had = alone.phrase == nullptr ? 1 : alone.phrase->words.size();
  return longer.phrase != nullptr && longer.phrase->words.size() > had ? longer : alone;
}

}  // namespace

std::optional<IngredientMatch> match_ingredient(std::string_view words) {
  static const Lexicon lexicon;
  const std::vector<FoodClauses> choices = food_choices(words.substr(0, kLongestWording));
  for (std::size_t i = 0; i < choices.size(); ++i) {
    const Fit found = i == 0 ? fit_first(lexicon, choices) : fit_clauses(lexicon, choices[i]);
    if (found.phrase == nullptr) continue;
    if (found.phrase->ingredient == nullptr) return std::nullopt;
    return IngredientMatch{found.phrase->ingredient, i == 0 ? found.confidence : kSecondChoice * found.confidence};
  }
  return std::nullopt;
}

}  // namespace tinwright
