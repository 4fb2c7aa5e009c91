// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Each sentence is walked from left to right: a verb or a place says where the food is, a temperature sets the oven,
// and a time makes a stage there. Everything else is passed over.
#include "app/recipe/read_oven.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "app/recipe/oven_words.h"
#include "app/recipe/plain_text.h"

namespace tinwright {
namespace {

using Tokens = std::vector<Token>;

constexpr std::size_t kMostStages = 50;
constexpr std::size_t kLongestSentence = 600;  // tokens; keeps the work linear whatever the text
constexpr double kSurelyFahrenheit = 290.0;    // common practice: no home oven goes so high in C

enum class Where { kNowhere, kOven, kSwitchedOff, kRack, kRefrigerator, kFreezer };

bool word_is(const Tokens& tokens, std::size_t at, std::string_view words) {
  return at < tokens.size() && tokens[at].is_word() && is_one_of(tokens[at].text, words);
}

/// Whether one of `words` stands at most `reach` tokens before token `at`.
bool follows(const Tokens& tokens, std::size_t at, std::size_t reach, std::string_view words) {
  for (std::size_t i = 1; i <= reach && i <= at; ++i) {
    if (tokens[at - i].is_word() && is_one_of(tokens[at - i].text, words)) return true;
  }
  return false;
}

bool holds(const Tokens& tokens, std::string_view words) {
  return std::any_of(tokens.begin(), tokens.end(),
                     [words](const Token& t) { return t.is_word() && is_one_of(t.text, words); });
}

std::string heat_text(double value, char unit) {
  const double shown = unit == 'G' ? gas_mark_fahrenheit(value) : value;
  return number_text(shown) + (unit == 'C' ? " C" : " F");
}

class Walker {
 public:
  OvenReading read(const std::vector<std::string>& steps) {
    std::vector<Sentence> sentences;
    for (const std::string& step : steps) {
      for (Sentence& sentence : sentences_of(step)) sentences.push_back(std::move(sentence));
    }
    for (const Sentence& sentence : sentences) note_scales(sentence.tokens);
    for (const Sentence& sentence : sentences) walk(sentence);
    drop_early_rests();
    return std::move(reading_);
  }

 private:
  /// Which scale the recipe uses, for where it says degrees alone.
  void note_scales(const Tokens& tokens) {
    for (std::size_t i = 0; i < tokens.size(); ++i) {
      const auto heat = tokens[i].is_number() ? read_heat(tokens, i, false) : std::nullopt;
      if (heat && heat->unit == 'C') uses_celsius_ = true;
      if (heat && heat->unit == 'F') uses_fahrenheit_ = true;
    }
  }

  void walk(const Sentence& sentence) {
    const Tokens& tokens = sentence.tokens;
    if (tokens.size() > kLongestSentence) return;
    said_ = &sentence.text;
    where_ = Where::kNowhere;
    in_clause_ = in_sentence_ = changes_ = false;
    pending_.reset();
    behind_last_time_ = 0;
    // How long something keeps, and what is toasted or thawed, is no part of the bake.
    is_aside_ = holds(tokens,
                      "keep|keeps|store|stored|stores|storing|leftovers|leftover|reheat|toast|toasted|toasting|thaw|"
                      "defrost|lasts|ahead|"
                      "broil|broiler|grill|microwave");
    const bool is_preheating = holds(tokens, "preheat|pre|preheated");
    const bool speaks_of_oven = is_preheating || holds(tokens, "oven|bake|bakes|baked|baking|roast|gas|cook");
    const bool turns_heat = holds(tokens, "reduce|lower|increase|raise|drop|turn|decrease|reducing|lowering") &&
                            (is_in_oven_ || holds(tokens, "temperature|heat|oven|bake"));
    for (std::size_t i = 0; i < tokens.size();) {
      const bool may_be_heat = tokens[i].is_number() || word_is(tokens, i, "gas|mark");
      if (may_be_heat && (speaks_of_oven || turns_heat)) {
        const auto heats = read_heats(tokens, i, speaks_of_oven || turns_heat);
        if (!heats.empty()) {
          if (!follows(
                  tokens, i, 8,
                  "thermometer|registers|reads|internal|core|syrup|reaches|reach|registering|inside|center|centre"))
            take_heat(heats);
          i = heats.back().next;
          continue;
        }
      }
      if (const auto time = read_time(tokens, i)) {
        take_time(tokens, i, *time);
        i = time->next;
        continue;
      }
      take_word(tokens, i);
      ++i;
    }
    if (where_ == Where::kOven) is_in_oven_ = true;
    if (where_ == Where::kRack || where_ == Where::kRefrigerator || where_ == Where::kFreezer)
      is_in_oven_ = is_awaiting_ = false;
  }

  void take_heat(const std::vector<OvenHeat>& heats) {
    const auto best = std::min_element(heats.begin(), heats.end(), [](const OvenHeat& a, const OvenHeat& b) {
      const auto rank = [](const OvenHeat& h) {
        return (h.is_fan ? 4 : 0) + (h.unit == 'G' ? 2 : h.unit == ' ' ? 1 : 0);
      };
      return rank(a) < rank(b);
    });
    char unit = best->unit;
    if (unit == ' ') unit = scale_of_bare(best->value);
    std::string air;
    if (unit != ' ') air = heat_text(best->value, unit);
    if (unit == ' ') doubt("it is not clear whether these degrees are C or F: " + *said_);
    if (unit == 'G') doubt("gas mark " + number_text(best->value) + " was read as " + air + ", as is usual: " + *said_);
    if (best->is_range) doubt("of a range of temperatures the lower was read: " + *said_);
    place_ = best->is_fan ? "fan oven" : "oven";
    air_ = air;
    const bool belongs_to_last = in_sentence_ && !changes_ && !reading_.stages.empty() &&
                                 (reading_.stages.back().place == "oven" || reading_.stages.back().place == "fan oven");
    if (belongs_to_last) {
      reading_.stages.back().air = air_;
      reading_.stages.back().place = place_;
    }
    changes_ = false;
  }

  char scale_of_bare(double value) const {
    if (value >= kSurelyFahrenheit) return 'F';
    if (uses_celsius_ != uses_fahrenheit_) return uses_celsius_ ? 'C' : 'F';
    return ' ';
  }

  void take_time(const Tokens& tokens, std::size_t at, const SaidTime& time) {
    const bool follows_after = follows(tokens, at, 2, "after");
    const bool starts_stage = follows_after && is_awaiting_ && is_in_oven_;
    const bool is_moment = (follows_after && !starts_stage) || follows(tokens, at, 3, "every|within|last|final") ||
                           follows(tokens, at, 1, "before") ||
                           (word_is(tokens, time.next, "before") && word_is(tokens, time.next + 2, "end"));
    if (is_aside_ || is_moment || reading_.stages.size() >= kMostStages) return;
    const bool goes_on =
        where_ == Where::kNowhere && is_in_oven_ && at == 0 && word_is(tokens, time.next, "more|longer");
    if (starts_stage || goes_on) where_ = Where::kOven;  // "...; 5 mins more."
    if (merges_with_last(tokens, at, time)) return;
    pending_ = time;
    behind_last_time_ = time.next;
    in_clause_ = true;
    if (where_ != Where::kNowhere) add_stage(time);
  }

  /// "for 4 hours or overnight", "overnight, or at least 6 hours": one stage with two ends.
  bool merges_with_last(const Tokens& tokens, std::size_t at, const SaidTime& time) {
    if (!in_sentence_ || behind_last_time_ == 0 || reading_.stages.empty() || !reading_.stages.back().up_to.empty())
      return false;
    bool has_or = false;
    for (std::size_t i = behind_last_time_; i < at; ++i) {
      const bool is_between =
          tokens[i].is_word()
              ? is_one_of(tokens[i].text,
                          "or|and|up|to|for|at|least|preferably|ideally|even|better|about|a|minimum|of|as|long")
              : is_one_of(tokens[i].text, ",|(|)|-");
      if (!is_between) return false;
      has_or = has_or || word_is(tokens, i, "or|preferably|ideally|up|better");
    }
    if (!has_or || !last_seconds_) return false;
    StageDraft& last = reading_.stages.back();
    if (time.seconds > *last_seconds_) {
      last.up_to = time.text;
    } else {
      last.up_to = last.time;
      last.time = time.text;
    }
    behind_last_time_ = time.next;
    return true;
  }

  void add_stage(const SaidTime& time) {
    StageDraft stage;
    stage.place = where_ == Where::kRack           ? "rack"
                  : where_ == Where::kRefrigerator ? "refrigerator"
                  : where_ == Where::kFreezer      ? "freezer"
                                                   : place_;
    if (where_ == Where::kOven) stage.air = air_;
    if (where_ == Where::kSwitchedOff) {
      stage.place = "oven";
      stage.off =
          contains(lower_case(*said_), "ajar") || has_any_word(lower_case(*said_), "open|opened") ? "open" : "shut";
    }
    stage.time = time.text;
    stage.up_to = time.up_to;
    stage.said = shortened(*said_, 500);
    reading_.stages.push_back(std::move(stage));
    last_seconds_ = time.seconds;
    in_sentence_ = true;
    is_awaiting_ = false;
    if (where_ == Where::kOven) is_in_oven_ = true;
  }

  void take_word(const Tokens& tokens, std::size_t i) {
    if (!tokens[i].is_word()) {
      if (tokens[i].is_sign(',') || tokens[i].is_sign(':')) in_clause_ = false;
      return;
    }
    if (word_is(tokens, i, "then|and|but|while")) in_clause_ = false;
    if (word_is(tokens, i, "reduce|lower|increase|raise|drop|turn|decrease|reducing|lowering")) changes_ = true;
    if (word_is(tokens, i, "bake|bakes|baking|roast|roasting")) {
      const bool is_object =
          word_is(tokens, i + 1, "beans|powder|sheet|soda|tray|tin|dish|parchment|paper|pan|weights");
      if (!is_object) go(Where::kOven);
    } else if (word_is(tokens, i, "cook|cooking")) {
      go(holds(tokens, "oven") || (is_in_oven_ && !holds(tokens, "stirring|stir|saucepan|pan|hob")) ? Where::kOven
                                                                                                    : Where::kNowhere);
    } else if (word_is(tokens, i, "oven")) {
      take_oven(tokens, i);
    } else if (word_is(tokens, i, "cool|cooling|rack")) {
      go_to_place(Where::kRack, tokens[i].text == "rack");
    } else if (word_is(tokens, i, "stand|rest|sit|settle") && (is_in_oven_ || !reading_.stages.empty())) {
      if (where_ != Where::kSwitchedOff) go(Where::kRack);
    } else if (word_is(tokens, i, "refrigerate|chill|refrigerating|chilling")) {
      go(Where::kRefrigerator);
    } else if (word_is(tokens, i, "fridge|refrigerator")) {
      go_to_place(follows(tokens, i, 3, "from|out") ? Where::kNowhere : Where::kRefrigerator, true);
    } else if (word_is(tokens, i, "freeze|freezing")) {
      go(Where::kFreezer);
    } else if (word_is(tokens, i, "freezer")) {
      go_to_place(follows(tokens, i, 3, "from|out") ? Where::kNowhere : Where::kFreezer, true);
    } else if (
        word_is(
            tokens, i,
            "whisk|beat|mix|stir|knead|simmer|boil|melt|fry|saute|blend|process|heat|warm|prove|proof|rise|soak|steep|"
            "whip|fold|bring|poach|steam|infuse|marinate|macerate|preheat|pulse|rub|stirring|whisking|beating")) {
      go(Where::kNowhere);
    }
  }

  void take_oven(const Tokens& tokens, std::size_t i) {
    const bool is_off = word_is(tokens, i + 1, "off") || follows(tokens, i, 3, "off");
    if (is_off) {
      go(Where::kSwitchedOff);
    } else if (follows(tokens, i, 3, "from|out")) {
      go(Where::kRack);
    } else if (follows(tokens, i, 4, "in|into|to|inside") && !follows(tokens, i, 4, "preheat|heat|turn")) {
      // What cools in the oven, or stands there with its door open, is not baked any more.
      if (where_ == Where::kSwitchedOff || where_ == Where::kRack || holds(tokens, "off|ajar|door")) {
        go(Where::kSwitchedOff);
      } else {
        go_to_place(Where::kOven, true);
      }
    }
  }

  void go(Where where) {
    if (where == Where::kOven && where_ != Where::kOven) is_awaiting_ = true;
    where_ = where;
    in_clause_ = false;
  }

  /// A place named behind its time, "leave overnight in the fridge", takes that time.
  void go_to_place(Where where, bool is_place) {
    const bool takes_time = is_place && in_clause_ && pending_.has_value();
    const Where before = where_;
    if (where == Where::kOven && where_ != Where::kOven) is_awaiting_ = true;
    where_ = where;
    if (!takes_time || where == Where::kNowhere || where == before) return;
    if (before != Where::kNowhere && !reading_.stages.empty()) reading_.stages.pop_back();
    add_stage(*pending_);
    in_clause_ = false;
  }

  void doubt(const std::string& words) {
    const std::string text = shortened(words, 300);
    if (std::find(reading_.doubts.begin(), reading_.doubts.end(), text) == reading_.doubts.end())
      reading_.doubts.push_back(text);
  }

  void drop_early_rests() {
    auto& stages = reading_.stages;
    const auto is_oven = [](const StageDraft& stage) { return stage.place == "oven" || stage.place == "fan oven"; };
    const auto first = std::find_if(stages.begin(), stages.end(), is_oven);
    const auto last = std::find_if(stages.rbegin(), stages.rend(), is_oven).base();
    if (first == stages.end()) return;
    const auto between = std::remove_if(first, last, [&](const StageDraft& stage) { return !is_oven(stage); });
    stages.erase(between, last);
    const auto before = std::find_if(stages.begin(), stages.end(), is_oven);
    stages.erase(std::remove_if(stages.begin(), before, [](const StageDraft& stage) { return stage.place == "rack"; }),
                 before);
  }

  OvenReading reading_;
  std::string air_, place_ = "oven";
  const std::string* said_ = nullptr;
  std::optional<SaidTime> pending_;  // the last time of the sentence
  std::optional<double> last_seconds_;
  std::size_t behind_last_time_ = 0;
  Where where_ = Where::kNowhere;
  bool in_clause_ = false;    // no comma, "and" or "then" since the last time
  bool in_sentence_ = false;  // a stage was made in this sentence
  bool changes_ = false;      // "reduce", "turn": the next temperature is for what follows
  bool is_aside_ = false;
  bool is_in_oven_ = false, is_awaiting_ = false;  // put in, and no time said yet
  bool uses_celsius_ = false, uses_fahrenheit_ = false;
};

}  // namespace

OvenReading read_oven(const std::vector<std::string>& steps) {
  return Walker().read(steps);
}

}  // namespace tinwright
