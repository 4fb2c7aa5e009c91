// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See pan_sizes.h. A pan's words end with its noun ("tin", "dish"), or with what follows it in brackets or behind
// "measuring"; they begin behind the last word that cannot belong to them.
#include "app/recipe/pan_sizes.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "app/quantity/parse.h"
#include "app/recipe/measure_words.h"
#include "app/recipe/plain_text.h"
#include "app/recipe/read_amount.h"

namespace tinwright {
namespace {

using Tokens = std::vector<Token>;

constexpr std::size_t kMostWordsBefore = 26, kMostWordsBehind = 16;
constexpr double kPoundsPerKilogram = 1.0 / 0.45359237;

constexpr std::string_view kNouns =
    "tin|tins|pan|pans|dish|dishes|plate|plates|mould|moulds|mold|molds|springform|springforms|ramekin|ramekins|ring|"
    "rings|"
    "tray|trays|basin|basins|cocotte|cocottes|terrine|sheet|sheets";

bool word_is(const Tokens& tokens, std::size_t at, std::string_view words) {
  return at < tokens.size() && tokens[at].is_word() && is_one_of(tokens[at].text, words);
}

bool is_noun(const Tokens& tokens, std::size_t at) {
  if (!word_is(tokens, at, kNouns)) return false;
  const bool is_deep_dish =
      at > 0 && tokens[at].text == "dish" && at + 1 < tokens.size() && tokens[at + 1].is_word() &&
      (word_is(tokens, at - 1, "deep") || (at > 1 && tokens[at - 1].is_sign('-') && word_is(tokens, at - 2, "deep")));
  if (is_deep_dish && (is_one_of(tokens[at + 1].text, kNouns) || word_is(tokens, at + 2, kNouns))) return false;
  const bool is_of_paper =
      word_is(tokens, at, "sheet|sheets") && (at == 0 || !word_is(tokens, at - 1, "baking|cookie"));
  if (is_of_paper && !word_is(tokens, at + 1, "pan|pans|tray|trays")) return false;
  // "springform tin", "ring mould", "sheet pan": the second word is the noun.
  return !word_is(tokens, at + 1, "tin|tins|pan|pans|mould|moulds|mold|molds|dish|tray|trays|form|plate");
}

/// Words that cannot stand within a pan's description.
bool ends_description(const Token& token) {
  if (!token.is_word()) return token.is_sign(';') || token.is_sign(':') || token.is_sign('.') || token.is_sign('!');
  return is_one_of(
      token.text,
      "grease|butter|line|lined|oil|flour|into|in|the|your|of|to|over|spray|prepare|prepared|pour|press|use|with|and|"
      "then|between|divide|among|put|place|set|using|onto|on|you|need|have|bottom|sides|base|spoon|tip|scrape|"
      "transfer|spread|turn|fit|bake|from|dust|get|take|ready|lightly|generously|well|greased|buttered|oiled|"
      "floured|for|ungreased|foil|paper|parchment|each|that|this|is|are|fill|up|a|an|one|two|three|four|five|six|"
      "eight|ten|twelve|both|any|another|other");
}

bool is_count_word(const Token& token) {
  return token.is_word() && is_one_of(token.text, "a|an|one|two|three|four|five|six|eight|ten|twelve");
}

/// Where the description of the pan whose noun stands at `noun` begins.
std::size_t begin_of(const Tokens& tokens, std::size_t noun, std::size_t from) {
  std::size_t begin = noun;
  while (begin > from && noun - begin < kMostWordsBefore) {
    const Token& before = tokens[begin - 1];
    if (is_count_word(before)) return begin - 1;
    const bool is_bracketed = begin > 1 && tokens[begin - 2].is_sign('(') && tokens[begin].is_sign(')');  // "(base)"
    const bool is_inches = before.is_word("in") && begin > 1 && tokens[begin - 2].is_number();
    const bool is_greased =
        before.is_word() &&
        is_one_of(before.text, "greased|buttered|oiled|lined|prepared|floured|ungreased|lightly|well");
    if (ends_description(before) && !is_greased && !is_inches && !is_bracketed) break;
    --begin;
  }
  while (begin < noun && (tokens[begin].is_sign(',') || tokens[begin].is_sign(')') || tokens[begin].is_sign('-')))
    ++begin;
  return begin;
}

/// What follows the noun and still belongs to the pan: a bracket, "measuring 20 x 30 cm", ", 5 cm deep", "900g/2lb".
std::size_t end_of(const Tokens& tokens, std::size_t noun) {
  std::size_t end = noun + 1;
  const std::size_t last = std::min(tokens.size(), noun + kMostWordsBehind);
  for (std::size_t at = end; at < last; ++at) {
    const Token& token = tokens[at];
    if (is_noun(tokens, at)) break;
    if (token.is_number() || word_is(tokens, at, "deep|high|tall|diameter|across|wide|long|sides") ||
        token.is_sign(')')) {
      end = at + 1;
    } else if (token.is_word()) {
      const bool may_stand =
          is_one_of(token.text,
                    "measuring|measures|about|approx|approximately|of|with|that|is|are|which|at|least|by|x|or|inside|"
                    "each|in|base|a|loose|bottomed|based|round|square|size|sized|litre|liter|quart|cup|capacity|"
                    "deep|sides|high|the") ||
          length_unit_at(tokens, at).has_value() || unit_at(tokens, at).has_value();
      if (!may_stand) break;
      if (length_unit_at(tokens, at) && at > 0 && tokens[at - 1].is_number() && end == at) end = at + 1;
      if (unit_at(tokens, at) && at > 0 && tokens[at - 1].is_number() && end == at) end = at + 1;
    } else if (token.is_sign('.') || token.is_sign(';') || token.is_sign('!')) {
      break;
    }
  }
  // A time or a temperature behind the pan is not its size.
  for (std::size_t at = noun + 1; at < end; ++at) {
    if (!tokens[at].is_number()) continue;
    const bool is_size = length_unit_at(tokens, at + 1).has_value() || unit_at(tokens, at + 1).has_value() ||
                         word_is(tokens, at + 1, "x|by") ||
                         (at + 1 < tokens.size() && (tokens[at + 1].is_sign('-') || tokens[at + 1].is_sign('/')));
    const bool is_heat = word_is(tokens, at + 1, "c|f");
    if (!is_size || is_heat) {
      end = noun + 1;
      break;
    }
  }
  return end;
}

/// Reads the sizes among the tokens of one description.
class SizeReader {
 public:
  SizeReader(const Tokens& tokens, NamedPan& pan) : tokens_(tokens), pan_(pan) {}

  void read() {
    for (std::size_t at = 0; at < tokens_.size();) at = step(at);
    settle_units();
  }

 private:
  struct Raw {
    std::string number;
    double value = 0.0;
    std::string unit;  // empty: as the next one of its group
  };

  std::size_t step(std::size_t at) {
    const Token& token = tokens_[at];
    if (!token.is_number()) {
      if (is_count_word(token) && pan_.count == 1)
        pan_.count = static_cast<int>(std::max(1.0, number_word(token.text)));
      return at + 1;
    }
    std::size_t next = at + 1;
    if (next < tokens_.size() && tokens_[next].is_sign('-')) ++next;
    if (word_is(tokens_, next, "hole|holes|cup|cups|hollow|hollows|cavity|cavities|well|count")) {
      const bool is_whole =
          std::fabs(token.value - std::round(token.value)) < 1e-9 && token.value >= 1.0 && token.value <= 100.0;
      if (is_whole) pan_.holes = static_cast<int>(std::lround(token.value));
      return next + 1;
    }
    if (const auto unit = length_unit_at(tokens_, at + 1)) return take_length(at, unit->name, at + 1 + unit->tokens);
    if (const auto unit = unit_at(tokens_, at + 1)) {
      const auto mass = parse_quantity(token.text + " " + unit->name, Dimension::kMass);
      if (mass && pan_.pounds <= 0.0) pan_.pounds = *mass * kPoundsPerKilogram;
      return at + 1 + unit->tokens;
    }
    // "2 x 20cm": a count, or a length whose unit stands behind the next one: told apart by what follows.
    const bool is_times = word_is(tokens_, at + 1, "x|by");
    const bool is_hyphened =
        at + 2 < tokens_.size() && tokens_[at + 1].is_sign('-') && word_is(tokens_, at + 2, "by|x");
    if (is_times || is_hyphened) return take_length(at, "", at + 1 + (is_hyphened ? 1 : 0));
    if (pan_.groups.empty() && raw_.empty() && token.value >= 2.0 && token.value <= 24.0 && at == 0) {
      pan_.count = static_cast<int>(std::lround(token.value));  // "2 round 20cm tins"
    } else if (joined_) {
      return take_length(at, "", at + 1);
    }
    return at + 1;
  }

  std::size_t take_length(std::size_t at, const std::string& unit, std::size_t next) {
    if (!joined_) close_group();
    raw_.push_back({tokens_[at].text, tokens_[at].value, unit});
    std::size_t behind = next;
    while (behind < tokens_.size() && (tokens_[behind].is_sign('-') || tokens_[behind].is_sign('.'))) ++behind;
    joined_ = word_is(tokens_, behind, "x|by");
    if (joined_) {
      ++behind;
      while (behind < tokens_.size() && tokens_[behind].is_sign('-')) ++behind;
      joined_ = behind < tokens_.size() && tokens_[behind].is_number();
      return behind;
    }
    if (word_is(tokens_, behind, "deep|high|tall|depth") || (word_is(tokens_, behind, "sides") && raw_.size() == 1)) {
      const bool is_dish = word_is(tokens_, behind, "deep") && (word_is(tokens_, behind + 1, "dish|filled|pan"));
      if (!is_dish) {  // "a 9-inch deep-dish plate" is not 9 in deep
        const std::size_t dash = behind + 1;
        const bool is_deep_dish =
            dash + 1 < tokens_.size() && tokens_[dash].is_sign('-') && word_is(tokens_, dash + 1, "dish");
        if (!is_deep_dish && may_be_depth(unit)) take_depth(unit);
      }
    }
    return std::max(next, at + 1);
  }

  /// "deep 9-inch pie plate" and "9-inch deep pie plate" say a width; a depth is the smaller one of two.
  bool may_be_depth(const std::string& unit) const {
    const auto metres = parse_quantity(raw_.back().number + " " + unit, Dimension::kLength);
    return !unit.empty() && metres && *metres <= 0.125 && (raw_.size() > 1 || !pan_.groups.empty() || *metres <= 0.11);
  }

  void take_depth(const std::string& unit) {
    pan_.depth = raw_.back().number + " " + unit;
    raw_.pop_back();
  }

  void close_group() {
    if (raw_.empty()) return;
    for (std::size_t i = raw_.size(); i-- > 1;) {
      if (raw_[i - 1].unit.empty()) raw_[i - 1].unit = raw_[i].unit;
    }
    for (std::size_t i = 1; i < raw_.size(); ++i) {
      if (raw_[i].unit.empty()) raw_[i].unit = raw_[i - 1].unit;
    }
    std::vector<SaidLength> group;
    // "2 x 20cm tins": the first is how many, unless both make a rectangle of kitchen size.
    if (raw_.size() == 2 && raw_[0].value <= 6.0 && raw_[0].value >= 2.0 && raw_[1].value >= 2.5 * raw_[0].value &&
        raw_[1].unit != "") {
      pan_.count = static_cast<int>(std::lround(raw_[0].value));
      raw_.erase(raw_.begin());
    }
    for (const Raw& raw : raw_) {
      const std::string text = raw.number + " " + raw.unit;
      const auto metres =
          raw.unit.empty() ? parse_quantity(raw.number, Dimension::kLength) : parse_quantity(text, Dimension::kLength);
      if (raw.unit.empty()) {
        unsettled_ = true;
        group.push_back({raw.number, raw.value});
      } else if (metres && *metres > 0.01 && *metres < 1.0) {
        group.push_back({text, *metres});
      }
    }
    raw_.clear();
    if (!group.empty()) pan_.groups.push_back(std::move(group));
  }

  /// "a 9x13 dish" is in inches, "a 20 x 30 dish" in cm: no pan of either size exists in the other unit.
  void settle_units() {
    close_group();
    if (!unsettled_) return;
    for (auto& group : pan_.groups) {
      double largest = 0.0;
      for (const SaidLength& length : group) {
        if (!contains(length.text, " ")) largest = std::max(largest, length.metres);
      }
      if (largest <= 0.0) continue;
      const std::string unit = largest <= 18.0 ? " in" : largest >= 20.0 ? " cm" : "";
      for (SaidLength& length : group) {
        const auto metres = parse_quantity(length.text + unit, Dimension::kLength);
        length = metres ? SaidLength{length.text + unit, *metres} : SaidLength{"", 0.0};
      }
      group.erase(std::remove_if(group.begin(), group.end(), [](const SaidLength& l) { return l.text.empty(); }),
                  group.end());
    }
    pan_.groups.erase(
        std::remove_if(pan_.groups.begin(), pan_.groups.end(), [](const auto& group) { return group.empty(); }),
        pan_.groups.end());
  }

  const Tokens& tokens_;
  NamedPan& pan_;
  std::vector<Raw> raw_;
  bool joined_ = false, unsettled_ = false;
};

}  // namespace

std::vector<NamedPan> find_pans(const std::string& text, const std::vector<Token>& tokens) {
  std::vector<NamedPan> pans;
  std::size_t from = 0;
  for (std::size_t noun = 0; noun < tokens.size(); ++noun) {
    if (!is_noun(tokens, noun)) continue;
    const std::size_t begin = begin_of(tokens, noun, from), end = end_of(tokens, noun);
    NamedPan pan;
    pan.said = std::string(
        trimmed(std::string_view(text).substr(tokens[begin].begin, tokens[end - 1].end - tokens[begin].begin)));
    // A closing bracket belongs to what it opens.
    if (contains(pan.said, "(") && !contains(pan.said, ")")) pan.said += ")";
    pan.words = lower_case(pan.said);
    const Tokens inside(tokens.begin() + static_cast<std::ptrdiff_t>(begin),
                        tokens.begin() + static_cast<std::ptrdiff_t>(end));
    SizeReader(inside, pan).read();
    pans.push_back(std::move(pan));
    from = end;
    noun = end - 1;
  }
  return pans;
}

}  // namespace tinwright
