// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Letters are folded first (UTF-8, leniently: what is not a letter parts words), then marks and small words part the
// clauses, then each word gets its usual spelling. English only.
#include "app/files/food_words.h"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <unordered_set>
#include <utility>

#include "app/quantity/utf8.h"

namespace tinwright {
namespace {

// What folded text holds besides letters, digits, '%' and spaces.
constexpr char kClauseMark = ',';
constexpr char kChoiceMark = '/';
constexpr char kPlusMark = '+';

/// Plain letters for an accented one; nothing for what is left out, a space for what parts words.
std::string_view fold(char32_t c) {
  // Latin-1 from U+00C0 on; '*' for the signs among the letters.
  static constexpr std::string_view kLatin = "aaaaaaaceeeeiiiidnooooo*ouuuuytsaaaaaaaceeeeiiiidnooooo*ouuuuyty";
  if (c >= 0xC0 && c <= 0xFF && c != 0xD7 && c != 0xF7) return kLatin.substr(c - 0xC0, 1);
  if (c == 0x152 || c == 0x153) return "oe";
  if ((c >= 0x300 && c <= 0x36F) || c == 0x2018 || c == 0x2019 || c == 0xAD) return "";  // accents, apostrophes
  if (c == 0x2013 || c == 0x2014) return ",";                                            // dashes
  return " ";
}

char fold_ascii(char c, bool between_spaces) {
  if (c >= 'A' && c <= 'Z') return static_cast<char>(c - 'A' + 'a');
  if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '%' || c == kPlusMark || c == kChoiceMark) return c;
  constexpr std::string_view kParting = ",;:()[]{}|\n";
  if (kParting.find(c) != std::string_view::npos || (c == '-' && between_spaces)) return kClauseMark;
  return ' ';
}

std::string folded(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t from = at;
    const auto [c, bytes] = first_character(text.substr(at));
    at += std::max<std::size_t>(bytes, 1);
    if (bytes == 0) {
      out += ' ';
      continue;
    }
    if (c == U'\'') continue;
    if (c == U'&') {
      out += " and ";
    } else if (c < 0x80) {
      const bool alone = from > 0 && text[from - 1] == ' ' && at < text.size() && text[at] == ' ';
      out += fold_ascii(static_cast<char>(c), alone);
    } else {
      out += fold(c);
    }
  }
  return out;
}

bool ends_with(std::string_view word, std::string_view end) {
  return word.size() > end.size() && word.substr(word.size() - end.size()) == end;
}

/// The same for singular and plural; not always a word ("cooky").
std::string singular(std::string word) {
  if (word == "leaves") return "leaf";
  if (word == "halves") return "half";
  if (word.size() <= 3) return word;
  const auto cut = [&](std::size_t count) { return word.substr(0, word.size() - count); };
  if (ends_with(word, "ies")) return cut(3) + "y";
  if (ends_with(word, "ie")) return cut(2) + "y";
  for (const std::string_view end : {"oes", "ches", "shes", "sses", "xes"}) {
    if (ends_with(word, end)) return cut(2);
  }
  if (ends_with(word, "s") && !ends_with(word, "ss") && !ends_with(word, "us") && !ends_with(word, "is")) return cut(1);
  return word;
}

struct Spelling {
  std::string_view seen, usual;
};
constexpr Spelling kSpellings[] = {
    {"castor", "caster"},      {"crystallized", "crystallised"},
    {"flavored", "flavoured"}, {"gelatin", "gelatine"},
    {"juiced", "juice"},       {"moscovado", "muscovado"},
    {"rising", "raising"},     {"soy", "soya"},
    {"tinned", "canned"},      {"unflavored", "unflavoured"},
    {"yoghourt", "yogurt"},    {"yoghurt", "yogurt"},
    {"zested", "zest"},        {"whiskey", "whisky"},
    {"colored", "coloured"},   {"dutched", "dutch"},
    {"processed", "process"},
};

std::string usual_spelling(std::string word) {
  word = singular(std::move(word));
  for (const Spelling& spelling : kSpellings) {
    if (spelling.seen == word) return std::string(spelling.usual);
  }
  return word;
}

// In the singular. "ice" is here for "ice water"; "ice cream" is a food not catalogued.
constexpr std::string_view kSilent =
    "a about additional an and any approx approximately around as at bag bar beaten best big bit blanched block "
    "boiled boiling bottle bottled box broken brushing bunch can canned carton chilled chopped chunk cl cm coarse "
    "coarsely cold container cooking cool cooled cored cracked crumbled crushed cube cubed cup cut dash "
    "decoration defrosted desired dessertspoon diced discarded divided dl dozen drained drop dusting each "
    "envelope extra fat few fine finely firm firmly fl fluid fresh freshly frozen full g garnish generous good "
    "gram gramme grated greasing ground half halved handful heaped heaping high hot hulled ice iced if inch into "
    "jar jumbo just kg knob l large lb leaf least level levelled lightly liter litre loosely lukewarm mashed "
    "medium melted minimum ml more natural needed of one only optional organic ounce overripe oz pack package "
    "packed packet pat peeled piece pinch pint pitted pkt pot pound premium pressed pure pureed quality quart "
    "quarter quartered raw real refrigerated remaining removed required rinsed ripe roasted rolling room roughly "
    "rounded sachet scant scraped separated serving sheet shelled shredded sieved sifted size skin skinned slice "
    "sliced slightly small soft softened some splash split spooned square squeezed stalk stemmed stick stoned "
    "strained strip tablespoon taste tbs tbsp teaspoon temp temperature tepid thawed the thinly third three "
    "tightly tin toasted trimmed tsp tub two unsalted unsweetened untreated unwaxed up very warm warmed washed wedge "
    "weighed well whisked whole xl your";
constexpr std::string_view kChanging[] = {
    "black", "dark",    "free", "golden", "green",     "homemade", "leftover", "light", "lite",
    "low",   "reduced", "red",  "salted", "sweetened", "strong",   "thick",    "white",
};
constexpr std::string_view kForeign[] = {"alternative", "dairy", "flavour",    "flavoured", "gluten", "imitation",
                                         "mock",        "not",   "substitute", "plant",     "vegan"};
/// What is done to a measured food afterwards: a cup of "cream, whipped" is a cup of cream.
constexpr std::string_view kDoneLater[] = {"flaked", "ground", "sliced", "slivered", "whipped"};
/// Before these a new clause begins; what follows those is no part of the food, up to the next comma or bracket.
constexpr std::string_view kClauseWords[] = {"ideally", "like", "preferably", "such"};
constexpr std::string_view kAsideWords[] = {"for", "in", "including", "plus", "to", "with", "without"};

std::unordered_set<std::string_view> words_of(std::string_view list) {
  std::unordered_set<std::string_view> words;
  for (std::size_t from = 0; from < list.size();) {
    const std::size_t to = std::min(list.find(' ', from), list.size());
    words.insert(list.substr(from, to - from));
    from = to + 1;
  }
  return words;
}

template <std::size_t kCount>
bool holds(const std::string_view (&list)[kCount], std::string_view word) {
  return std::find(std::begin(list), std::end(list), word) != std::end(list);
}

/// Puts the clauses together word by word.
class ClauseBuilder {
 public:
  ClauseBuilder() : choices_(1), words_() {}

  void add(const std::string& word) {
    if (word == "or") return next_choice();
    if (holds(kClauseWords, word)) return next_clause();
    if (holds(kAsideWords, word)) return begin_aside(word);
    const bool is_remark = !choices_.back().empty();
    if (word.empty() || is_aside_ || (is_remark && holds(kDoneLater, word))) return;
    words_.push_back(word);
  }
  void next_clause() {
    is_aside_ = false;
    if (!words_.empty()) choices_.back().push_back(std::exchange(words_, {}));
  }
  void next_choice() {
    const bool is_state = choices_.back().empty() && std::all_of(words_.begin(), words_.end(), is_silent);
    if (is_state && !is_aside_) return;  // "fresh or frozen cranberries"
    next_clause();
    if (!choices_.back().empty()) choices_.emplace_back();
  }
  void begin_aside(const std::string& word) {
    const bool is_range = word == "to" && std::all_of(words_.begin(), words_.end(), is_silent);  // "2 to 3 eggs"
    if (!is_range) is_aside_ = true;
  }
  std::vector<FoodClauses> finish() {
    next_clause();
    if (choices_.back().empty()) choices_.pop_back();
    return std::move(choices_);
  }

 private:
  std::vector<FoodClauses> choices_;
  std::vector<std::string> words_;
  bool is_aside_ = false;
};

bool is_word_letter(char c) {
  return c >= 'a' && c <= 'z';
}
bool is_figure(char c) {
  return c >= '0' && c <= '9';
}

/// The word at `at`, which moves behind it; empty for a number.
std::string next_word(const std::string& text, std::size_t& at) {
  const std::size_t from = at;
  if (is_word_letter(text[at])) {
    while (at < text.size() && is_word_letter(text[at])) ++at;
    return usual_spelling(text.substr(from, at - from));
  }
  while (at < text.size() && is_figure(text[at])) ++at;
  const std::size_t to = at;
  while (at < text.size() && text[at] == ' ') ++at;
  if (at < text.size() && text[at] == '%') return ++at, text.substr(from, to - from) + "%";
  at = to;
  return "";
}

}  // namespace

std::string plain_letters(std::string_view text) {
  std::string out;
  for (const char c : folded(text)) {
    if (is_word_letter(c) || is_figure(c)) {
      out += c;
    } else if (!out.empty() && out.back() != ' ') {
      out += ' ';
    }
  }
  if (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

std::vector<std::string> plain_words(std::string_view text) {
  std::vector<std::string> words;
  const std::string letters = folded(text);
  for (std::size_t at = 0; at < letters.size();) {
    if (!is_word_letter(letters[at]) && !is_figure(letters[at])) {
      ++at;
      continue;
    }
    std::string word = next_word(letters, at);
    if (!word.empty()) words.push_back(std::move(word));
  }
  return words;
}

std::vector<FoodClauses> food_choices(std::string_view text) {
  ClauseBuilder clauses;
  const std::string letters = folded(text);
  for (std::size_t at = 0; at < letters.size();) {
    const char c = letters[at];
    if (is_word_letter(c) || is_figure(c)) {
      const std::string word = next_word(letters, at);
      constexpr std::string_view kFreeRange = " range";
      if (word == "free" && letters.compare(at, kFreeRange.size(), kFreeRange) == 0) {
        at += kFreeRange.size();
      } else {
        clauses.add(word);
      }
      continue;
    }
    const bool is_fraction = c == kChoiceMark && at > 0 && is_figure(letters[at - 1]);
    if (c == kClauseMark) clauses.next_clause();
    if (c == kPlusMark) clauses.begin_aside("plus");
    if (c == kChoiceMark && !is_fraction) clauses.next_choice();
    ++at;
  }
  return clauses.finish();
}

bool is_silent(std::string_view word) {
  static const std::unordered_set<std::string_view> silent = words_of(kSilent);
  return silent.count(word) > 0;
}
bool is_changing(std::string_view word) {
  return holds(kChanging, word);
}
bool is_foreign(std::string_view word) {
  return holds(kForeign, word);
}

}  // namespace tinwright
