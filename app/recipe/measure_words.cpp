// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The units themselves are those of app/quantity/units.cpp; here are only the spellings that are clear in a list of
// ingredients and nowhere else (a "c" is a cup, not a degree).
#include "app/recipe/measure_words.h"

#include <algorithm>
#include <array>

#include "app/recipe/plain_text.h"

namespace tinwright {
namespace {

constexpr std::size_t kMostWords = 3;

struct Alias {
  std::string_view spellings;  // separated by '|', small letters, '_' for a gap
  std::string_view name;       // of units.cpp
};

constexpr std::array kAliases{
    Alias{"c|us_cup|us_cups|american_cup|american_cups|cupful|cupfuls|cups_us|cup_us", "cup"},
    Alias{"tb|tbl|tbls|tblsp|tblsps|tbsn|tbspn|tbspns|tabsp|table_spoon|table_spoons|tablespoonful|tablespoonfuls|us_"
          "tbsp|"
          "tbsp_us|tablesp",
          "tbsp"},
    Alias{"tspn|tspns|teasp|tea_spoon|tea_spoons|teaspoonful|teaspoonfuls|us_tsp|ts", "tsp"},
    Alias{"fl_ozs|fluid_oz|fluid_ozs|flozs|us_fl_oz|fl_ounce|fl_ounces|fl", "fl_oz"},
    Alias{"ozs|onz", "oz"},
    Alias{"gm|gms|grm|grms|grs|gramms|gramm", "g"},
    Alias{"kilogramm|kgm", "kg"},
    Alias{"ltr|ltrs|lt|lts", "l"},
    Alias{"pnd|pnds|pd", "lb"},
    Alias{"us_pint|us_pints|pint_us", "pt"},
    Alias{"uk_pint|uk_pints|british_pint|british_pints", "imperial_pt"},
    Alias{"uk_fl_oz|uk_fluid_ounces|uk_fluid_ounce", "imperial_fl_oz"},
    Alias{"australian_cup|australian_cups|canadian_cup|canadian_cups", "metric_cup"},
    Alias{"el|cuill\u00E8re_\u00E0_soupe|cuill\u00E8res_\u00E0_soupe|c_\u00E0_s|c_\u00E0_soupe", "metric_tbsp"},
    Alias{"tl|cuill\u00E8re_\u00E0_caf\u00E9|cuill\u00E8res_\u00E0_caf\u00E9|c_\u00E0_c|c_\u00E0_caf\u00E9",
          "metric_tsp"},
};

struct Piece {
  std::string_view spellings;
  std::string_view name;
  bool is_packing = false;
};

constexpr std::array kPieces{
    Piece{"tin|tins", "tin", true},
    Piece{"can|cans", "can", true},
    Piece{"jar|jars", "jar", true},
    Piece{"packet|packets|pkt|pkts|pckt|pck|p\u00E4ckchen", "packet", true},
    Piece{"package|packages|pkg|pkgs|pkge", "package", true},
    Piece{"pack|packs|pk", "pack", true},
    Piece{"box|boxes", "box", true},
    Piece{"bag|bags", "bag", true},
    Piece{"carton|cartons", "carton", true},
    Piece{"container|containers", "container", true},
    Piece{"tub|tubs", "tub", true},
    Piece{"pot|pots", "pot", true},
    Piece{"bottle|bottles", "bottle", true},
    Piece{"sachet|sachets", "sachet", true},
    Piece{"envelope|envelopes", "envelope", true},
    Piece{"block|blocks", "block", true},
    Piece{"bar|bars", "bar", true},
    Piece{"brick|bricks", "brick", true},
    Piece{"tube|tubes", "tube", true},
    Piece{"roll|rolls", "roll", true},
    Piece{"log|logs", "log", true},
    Piece{"tablet|tablets", "tablet", true},
    Piece{"stick|sticks", "stick"},
    Piece{"pinch|pinches|prise|prisen", "pinch"},
    Piece{"dash|dashes", "dash"},
    Piece{"splash|splashes", "splash"},
    Piece{"drop|drops", "drop"},
    Piece{"drizzle|drizzles", "drizzle"},
    Piece{"glug|glugs", "glug"},
    Piece{"handful|handfuls", "handful"},
    Piece{"knob|knobs", "knob"},
    Piece{"pat|pats", "pat"},
    Piece{"grating|gratings", "grating"},
    Piece{"grind|grinds", "grind"},
    Piece{"twist|twists", "twist"},
    Piece{"clove|cloves", "clove"},
    Piece{"sheet|sheets", "sheet"},
    Piece{"slice|slices", "slice"},
    Piece{"piece|pieces|pc|pcs", "piece"},
    Piece{"sprig|sprigs", "sprig"},
    Piece{"bunch|bunches", "bunch"},
    Piece{"head|heads", "head"},
    Piece{"stalk|stalks", "stalk"},
    Piece{"stem|stems", "stem"},
    Piece{"leaf|leaves", "leaf"},
    Piece{"cube|cubes", "cube"},
    Piece{"square|squares", "square"},
    Piece{"ball|balls", "ball"},
    Piece{"scoop|scoops", "scoop"},
    Piece{"strip|strips", "strip"},
    Piece{"wedge|wedges", "wedge"},
    Piece{"rasher|rashers", "rasher"},
    Piece{"punnet|punnets", "punnet", true},
    Piece{"dessertspoon|dessertspoons|dsp|dstsp", "dessertspoon"},
    Piece{"spoonful|spoonfuls", "spoonful"},
};

const Piece* find_piece(const std::string& word) {
  const auto* found = std::find_if(kPieces.begin(), kPieces.end(),
                                   [&word](const Piece& piece) { return is_one_of(word, piece.spellings); });
  return found == kPieces.end() ? nullptr : found;
}

const Unit* named(Dimension dimension, const std::string& spelling, const std::string& small) {
  if (const Unit* unit = find_unit(dimension, spelling)) return unit;
  for (const Alias& alias : kAliases) {
    if (is_one_of(small, alias.spellings)) return find_unit(dimension, alias.name);
  }
  return nullptr;
}

std::string shown(std::string_view name) {
  std::string text(name);
  std::replace(text.begin(), text.end(), '_', ' ');
  return text;
}

std::optional<UnitWords> unit_of(const std::vector<Token>& tokens, std::size_t at, bool is_length) {
  std::size_t next = at;
  const bool has_hyphen = next + 1 < tokens.size() && tokens[next].is_sign('-') && tokens[next + 1].is_word();
  if (has_hyphen) ++next;
  std::string spelling, small;
  std::optional<UnitWords> best;
  for (std::size_t words = 0; words < kMostWords && next < tokens.size() && tokens[next].is_word(); ++words) {
    if (words > 0) {
      spelling += '_';
      small += '_';
    }
    spelling += tokens[next].as_is;
    small += tokens[next].text;
    ++next;
    if (next < tokens.size() && tokens[next].is_sign('.')) ++next;
    const Unit* unit = nullptr;
    if (is_length) {
      unit = named(Dimension::kLength, spelling, small);
    } else {
      unit = named(Dimension::kMass, spelling, small);
      if (unit == nullptr) unit = named(Dimension::kVolume, spelling, small);
    }
    if (unit != nullptr) best = UnitWords{unit, shown(unit->name), next - at};
  }
  return best;
}

}  // namespace

std::optional<UnitWords> unit_at(const std::vector<Token>& tokens, std::size_t at) {
  return unit_of(tokens, at, false);
}

std::optional<UnitWords> length_unit_at(const std::vector<Token>& tokens, std::size_t at) {
  if (at < tokens.size() && (tokens[at].is_sign('"') || tokens[at].is_sign('\''))) {
    const std::size_t both = tokens[at].is_sign('\'') ? 1 : 0;  // '' typed for "
    if (both == 1 && (at + 1 >= tokens.size() || !tokens[at + 1].is_sign('\''))) return std::nullopt;
    return UnitWords{find_unit(Dimension::kLength, "in"), "in", both + 1};
  }
  return unit_of(tokens, at, true);
}

bool is_metric(const Unit& unit) {
  return is_one_of(unit.name, "g|kg|mg|ml|cl|dl|l|cm3|dm3|m3|metric_cup|metric_tbsp|metric_tsp|mm|cm|dm|m");
}

std::string piece_word(const std::string& word) {
  const Piece* piece = find_piece(word);
  return piece == nullptr ? "" : std::string(piece->name);
}

bool is_packing(const std::string& piece) {
  const Piece* found = find_piece(piece);
  return found != nullptr && found->is_packing;
}

std::string size_at(const std::vector<Token>& tokens, std::size_t& at) {
  if (at >= tokens.size() || !tokens[at].is_word()) return "";
  const std::string& word = tokens[at].text;
  const auto word_at = [&tokens](std::size_t i) { return i < tokens.size() ? tokens[i].text : std::string(); };
  if (word == "extra" || word == "x") {
    const std::size_t next = word_at(at + 1) == "-" ? at + 2 : at + 1;
    if (!is_one_of(word_at(next), "large|small|big")) return "";
    at = next + 1;
    return "extra " + tokens[next].text;
  }
  if (!is_one_of(word, "large|medium|small|jumbo|big|lg|med|sm|lge|tiny|huge")) return "";
  ++at;
  if (word_at(at) == "-" && is_one_of(word_at(at + 1), "sized|size")) {
    at += 2;
  } else if (is_one_of(word_at(at), "sized|size")) {
    ++at;
  } else if (is_one_of(word_at(at), "to|or|-") && is_one_of(word_at(at + 1), "large|medium|small")) {
    const std::string both = word + " to " + tokens[at + 1].text;
    at += 2;
    return both;
  }
  if (is_one_of(word, "lg|lge")) return "large";
  if (word == "med") return "medium";
  return word == "sm" ? "small" : word;
}

bool is_hedge(const std::string& word) {
  return is_one_of(
      word,
      "about|approx|approximately|around|roughly|circa|ca|heaped|heaping|level|levelled|rounded|scant|scanty|"
      "generous|good|full|packed|lightly|firmly|loosely|nearly|almost|over|just|under|overflowing|slightly|"
      "brimming|leveled|exactly");
}

double number_word(const std::string& word) {
  static constexpr std::array<std::string_view, 13> kWords{"",      "one",   "two",  "three", "four",   "five",  "six",
                                                           "seven", "eight", "nine", "ten",   "eleven", "twelve"};
  for (std::size_t i = 1; i < kWords.size(); ++i) {
    if (word == kWords[i]) return static_cast<double>(i);
  }
  if (word == "a" || word == "an") return 1.0;
  if (word == "half") return 0.5;
  if (word == "quarter") return 0.25;
  if (word == "dozen") return 12.0;
  return 0.0;
}

}  // namespace tinwright
