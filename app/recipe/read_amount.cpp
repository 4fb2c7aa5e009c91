// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See read_amount.h. The first form that fits counts, in the order of read_amount.
#include "app/recipe/read_amount.h"

#include <algorithm>

#include "app/quantity/parse.h"
#include "app/recipe/measure_words.h"
#include "app/recipe/plain_text.h"

namespace tinwright {
namespace {

using Tokens = std::vector<Token>;

bool word_is(const Tokens& tokens, std::size_t at, std::string_view words) {
  return at < tokens.size() && tokens[at].is_word() && is_one_of(tokens[at].text, words);
}

bool sign_is(const Tokens& tokens, std::size_t at, char sign) {
  return at < tokens.size() && tokens[at].is_sign(sign);
}

std::size_t skip_hedges(const Tokens& tokens, std::size_t at) {
  std::size_t next = at;
  while (next < tokens.size() &&
         ((tokens[next].is_word() && is_hedge(tokens[next].text)) || tokens[next].is_sign('~'))) {
    ++next;
    if (sign_is(tokens, next, '.')) ++next;
  }
  return next;
}

/// The words from token `from` up to token `to` as they stand.
std::string words_of(std::string_view line, const Tokens& tokens, std::size_t from, std::size_t to) {
  if (from >= to || from >= tokens.size()) return "";
  return std::string(trimmed(line.substr(tokens[from].begin, tokens[to - 1].end - tokens[from].begin)));
}

bool may_be_thousands(const SaidCount& count, const Unit& unit) {
  const std::size_t point = count.text.find('.');
  return point != std::string::npos && count.text.size() - point == 4 && is_one_of(unit.name, "g|ml");
}

std::optional<SaidMeasure> measure_in(const Tokens& tokens, std::size_t begin, const SaidCount& count, bool is_length) {
  const std::size_t at = skip_hedges(tokens, count.next);
  auto unit = is_length ? length_unit_at(tokens, at) : unit_at(tokens, at);
  if (!unit || count.is_bad || count.value <= 0.0 || may_be_thousands(count, *unit->unit)) return std::nullopt;
  SaidMeasure measure{.text = count.text + " " + unit->name,
                      .up_to = count.up_to.empty() ? "" : count.up_to + " " + unit->name,
                      .dimension = unit->unit->dimension,
                      .is_metric = is_metric(*unit->unit),
                      .is_ounce = unit->name == "oz",
                      .hedge = count.next < at ? tokens[at - 1].as_is : "",
                      .begin = begin,
                      .next = at + unit->tokens};
  const auto si = parse_quantity(measure.text, measure.dimension);
  if (!si || *si <= 0.0) return std::nullopt;
  measure.si = *si;
  return measure;
}

std::optional<SaidMeasure> single_measure(const Tokens& tokens, std::size_t at) {
  const auto count = read_count(tokens, skip_hedges(tokens, at));
  if (!count) return std::nullopt;
  if (auto measure = measure_in(tokens, at, *count, false)) return measure;
  return measure_in(tokens, at, *count, true);
}

/// "1 cup plus 2 tbsp", "1 lb 4 oz": the larger unit first, as parse_quantity wants it.
void add_part(const Tokens& tokens, SaidMeasure& measure) {
  if (!measure.up_to.empty() || measure.dimension == Dimension::kLength) return;
  const bool is_joined = word_is(tokens, measure.next, "plus|and") || sign_is(tokens, measure.next, '+') ||
                         sign_is(tokens, measure.next, '&');
  const std::size_t at = measure.next + (is_joined ? 1 : 0);
  if (at >= tokens.size() || !(tokens[at].is_number() || (is_joined && tokens[at].is_word()))) return;
  const auto second = single_measure(tokens, at);
  if (!second || second->dimension != measure.dimension || !second->up_to.empty()) return;
  if (!is_joined && second->is_metric != measure.is_metric) return;
  for (const std::string& sum : {measure.text + " " + second->text, second->text + " " + measure.text}) {
    const auto si = parse_quantity(sum, measure.dimension);
    if (!si) continue;
    measure.text = sum;
    measure.si = *si;
    measure.next = second->next;
    return;
  }
}

/// "100 g - 120 g", "1 tsp to 1 tbsp".
void add_range(const Tokens& tokens, SaidMeasure& measure) {
  if (!measure.up_to.empty() || !(sign_is(tokens, measure.next, '-') || word_is(tokens, measure.next, "to"))) return;
  const auto second = single_measure(tokens, measure.next + 1);
  if (!second || second->dimension != measure.dimension || !second->up_to.empty() || second->si <= measure.si) return;
  if (second->is_metric != measure.is_metric) return;
  measure.up_to = second->text;
  measure.next = second->next;
}

/// Of two ways to say how much, the one that is surer has the lower rank.
int rank_of(const SaidMeasure& measure) {
  return measure.dimension == Dimension::kMass ? (measure.is_metric ? 0 : 1) : (measure.is_metric ? 2 : 3);
}

int rank_of(const SaidAmount& amount) {
  const auto mass = parse_quantity(amount.amount, Dimension::kMass);
  const std::vector<Token> tokens = tokens_of(amount.amount);
  const auto measure = single_measure(tokens, 0);
  return measure ? rank_of(*measure) : mass ? 1 : 3;
}

/// Measures behind the first: "/4oz", "or 4 oz", "(120 g; 4 oz)". Words in brackets that are no measure become remarks.
void add_alternatives(std::string_view line, const Tokens& tokens, SaidAmount& amount) {
  while (amount.next < tokens.size()) {
    const Token& token = tokens[amount.next];
    if (token.is_sign('(') || token.is_sign('[')) {
      const char closing = token.is_sign('(') ? ')' : ']';
      std::size_t at = amount.next + 1, close = at;
      while (close < tokens.size() && !tokens[close].is_sign(closing)) ++close;
      if (word_is(tokens, at, "or|equals|equal")) ++at;
      auto measure = read_measure(tokens, at);
      if (!measure || measure->dimension == Dimension::kLength || measure->next > close) return;
      const std::string words = words_of(line, tokens, at, close);
      while (measure && measure->next <= close) {
        add_measure(amount, *measure, words);
        std::size_t behind = measure->next;
        while (behind < close && (tokens[behind].kind == Token::Kind::kSign || word_is(tokens, behind, "or"))) ++behind;
        measure = behind > measure->next && behind < close ? read_measure(tokens, behind) : std::nullopt;
      }
      amount.next = std::min(close + 1, tokens.size());
      continue;
    }
    const bool is_joined =
        token.is_sign('/') || token.is_sign('|') || token.is_sign('=') || token.is_sign('-') || token.is_word("or");
    if (!is_joined && !token.is_number()) return;
    const auto measure = read_measure(tokens, amount.next + (is_joined ? 1 : 0));
    if (!measure || measure->dimension == Dimension::kLength) return;
    add_measure(amount, *measure, words_of(line, tokens, measure->begin, measure->next));
    amount.next = measure->next;
  }
}

std::optional<SaidAmount> amount_of_measure(std::string_view line, const Tokens& tokens, std::size_t at) {
  const auto measure = read_measure(tokens, at);
  if (!measure || measure->dimension == Dimension::kLength) return std::nullopt;
  SaidAmount amount{.amount = measure->text,
                    .up_to = measure->up_to,
                    .said = words_of(line, tokens, measure->begin, measure->next),
                    .is_ounce = measure->is_ounce,
                    .next = measure->next};
  if (!measure->hedge.empty()) amount.remarks.push_back(measure->hedge);
  const std::size_t behind = amount.next + (sign_is(tokens, amount.next, '-') ? 1 : 0);
  if (behind < tokens.size() && is_packing(piece_word(tokens[behind].text)) && measure->up_to.empty()) {
    // "a 400g tin of plums"
    return SaidAmount{.amount = "1",
                      .size = piece_word(tokens[behind].text),
                      .each = measure->text,
                      .is_piece = true,
                      .next = behind + 1};
  }
  add_alternatives(line, tokens, amount);
  return amount;
}

/// "2 x 400g", "1 (14-ounce)", "1 14-oz", behind the number: the measure of each piece.
bool take_each(std::string_view line, const Tokens& tokens, SaidAmount& amount) {
  std::size_t at = amount.next;
  const bool is_times = word_is(tokens, at, "x|times");
  const bool is_bracketed = sign_is(tokens, at, '(') || sign_is(tokens, at, '[');
  if (is_times || is_bracketed) ++at;
  const auto measure = read_measure(tokens, at);
  if (!measure) return false;
  std::size_t behind = measure->next;
  std::string words;
  if (is_bracketed) {
    while (behind < tokens.size() && !tokens[behind].is_sign(')') && !tokens[behind].is_sign(']')) ++behind;
    words = words_of(line, tokens, at, behind);
    behind = std::min(behind + 1, tokens.size());
  } else {
    if (sign_is(tokens, behind, '/')) {  // "1 14-oz/400g can"
      if (const auto other = read_measure(tokens, behind + 1)) behind = other->next;
    }
    if (sign_is(tokens, behind, '-')) ++behind;
  }
  const std::size_t size = skip_hedges(tokens, behind);
  std::size_t at_piece = size;
  static_cast<void>(size_at(tokens, at_piece));
  const std::string piece = at_piece < tokens.size() ? piece_word(tokens[at_piece].text) : "";
  if (measure->dimension == Dimension::kLength) {  // "1 (9-inch) pie crust", "a 2 cm piece of ginger"
    if (is_times) return false;
    amount.remarks.push_back(is_bracketed ? words : words_of(line, tokens, at, measure->next));
    amount.next = behind;
    return true;
  }
  if (!is_times && !is_bracketed && piece.empty()) return false;  // "00 flour" and the like
  amount.each = measure->text;
  if (is_bracketed) {  // "(14-ounce/396 g)": the metric one is what the packing holds
    std::size_t next = measure->next;
    while (next < behind && (sign_is(tokens, next, '/') || sign_is(tokens, next, ',') || sign_is(tokens, next, ';') ||
                             word_is(tokens, next, "or"))) {
      ++next;
    }
    const auto other = next > measure->next ? read_measure(tokens, next) : std::nullopt;
    if (other && other->next < behind && rank_of(*other) < rank_of(*measure)) amount.each = other->text;
  }
  amount.next = piece.empty() ? behind : at_piece;
  return true;
}

/// Behind a number without a unit: size, packing, and what each piece holds.
SaidAmount amount_of_pieces(std::string_view line, const Tokens& tokens, const SaidCount& count) {
  SaidAmount amount{.amount = count.text, .up_to = count.up_to, .is_piece = true, .next = count.next};
  const bool has_each = take_each(line, tokens, amount);
  const std::size_t behind_hedges = skip_hedges(tokens, amount.next);
  std::size_t at = behind_hedges;
  const std::string size = size_at(tokens, at);
  while (word_is(tokens, at, "heaped|heaping|generous|good|level|thin|thick|whole|fresh") && at + 1 < tokens.size() &&
         !piece_word(tokens[at + 1].text).empty()) {
    ++at;
  }
  const std::string piece = at < tokens.size() && tokens[at].is_word() ? piece_word(tokens[at].text) : "";
  // "1 square tin" is no square, "2 leaf lettuces" rare enough; "3 squares" is.
  if (!piece.empty()) {
    if (behind_hedges > amount.next) amount.remarks.push_back(words_of(line, tokens, amount.next, behind_hedges));
    amount.size = size.empty() ? piece : size + " " + piece;
    amount.next = at + 1;
    if (sign_is(tokens, amount.next, '.')) ++amount.next;
  } else if (!size.empty()) {
    amount.size = size;
    amount.next = at;
  }
  amount.said = words_of(line, tokens, count.next - 1, amount.next);
  if (!has_each) add_alternatives(line, tokens, amount);
  return amount;
}

}  // namespace

std::optional<SaidMeasure> read_measure(const std::vector<Token>& tokens, std::size_t at) {
  auto measure = single_measure(tokens, at);
  if (!measure) return measure;
  add_part(tokens, *measure);
  add_range(tokens, *measure);
  return measure;
}

void add_measure(SaidAmount& amount, const SaidMeasure& second, std::string_view words) {
  const std::string said = one_line(words);
  if (!amount.is_piece) {
    if (rank_of(second) < rank_of(amount)) {
      amount.remarks.push_back(amount.said);
      amount.said = second.text;
      amount.amount = second.text;
      amount.up_to = second.up_to;
      amount.is_ounce = second.is_ounce;
    } else {
      amount.remarks.push_back(said);
    }
    return;
  }
  const bool is_total = has_any_word(lower_case(words), "total|altogether|combined|in all") || amount.size == "stick";
  const bool is_each = has_any_word(lower_case(words), "each|apiece|per");
  if (is_total) {
    amount.remarks.push_back(amount.said);
    amount.said = second.text;
    amount.amount = second.text;
    amount.up_to = second.up_to;
    amount.size.clear();
    amount.is_piece = false;
  } else if (is_each || amount.amount == "1") {
    const bool is_surer = amount.each.empty() || second.is_metric;
    if (is_surer) amount.each = second.text;
    if (!amount.each.empty() && !is_surer) amount.remarks.push_back(said);
  } else {
    amount.remarks.push_back(said);
    amount.doubt = "may be the weight of each or of all together: " + said;
  }
}

std::optional<SaidAmount> read_amount(std::string_view line, const std::vector<Token>& tokens, std::size_t at) {
  const std::size_t begin = skip_hedges(tokens, at);
  std::optional<SaidAmount> amount = amount_of_measure(line, tokens, begin);
  if (!amount) {
    const auto count = read_count(tokens, begin);
    if (!count) {
      // "pinch of salt", "handful of oats"; "a generous handful", "a good pinch"
      std::size_t piece = begin;
      while (word_is(tokens, piece, "a|an|generous|good|big|small|large|nice")) ++piece;
      const bool is_piece =
          piece < tokens.size() &&
          is_one_of(piece_word(tokens[piece].text), "pinch|dash|handful|knob|splash|drizzle|glug|sprig|drop");
      if (!is_piece) return std::nullopt;
      return SaidAmount{.amount = "1", .size = piece_word(tokens[piece].text), .is_piece = true, .next = piece + 1};
    }
    amount = amount_of_pieces(line, tokens, *count);
    amount->is_bad = count->is_bad || count->value <= 0.0;
    // A number whose unit was refused ("1.500 g", "2 dessertspoon") counts no pieces.
    amount->is_bad = amount->is_bad || (count->next < tokens.size() && unit_at(tokens, count->next).has_value());
    amount->is_bad = amount->is_bad || is_one_of(amount->size, "dessertspoon|spoonful") ||
                     word_is(tokens, count->next, "percent") || sign_is(tokens, count->next, '%');
  }
  if (begin > at) amount->remarks.insert(amount->remarks.begin(), words_of(line, tokens, at, begin));
  // "1 tsp plus a pinch of salt"
  const bool is_plus = word_is(tokens, amount->next, "plus|and") || sign_is(tokens, amount->next, '+');
  std::size_t extra = amount->next + 1;
  while (is_plus && word_is(tokens, extra, "a|an|good|generous|big|small|extra")) ++extra;
  if (is_plus && extra < tokens.size() &&
      is_one_of(piece_word(tokens[extra].text), "pinch|dash|splash|drizzle|knob|drop")) {
    amount->remarks.push_back(words_of(line, tokens, amount->next, extra + 1));
    amount->next = extra + 1;
  }
  // "minus", "less": not a sum that parse_quantity knows.
  amount->is_bad = amount->is_bad || word_is(tokens, amount->next, "minus|less");
  return amount;
}

}  // namespace tinwright
