// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Character references: the names of HTML's table of named character references (WHATWG HTML, 13.5) that occur in
// recipes.
#include <algorithm>
#include <array>

#include "app/quantity/utf8.h"
#include "app/recipe/markup.h"
#include "app/recipe/plain_text.h"

namespace tinwright {
namespace {

struct Entity {
  std::string_view name;
  char32_t code;
};

constexpr std::array kEntities{
    Entity{"amp", '&'},       Entity{"lt", '<'},        Entity{"gt", '>'},        Entity{"quot", '"'},
    Entity{"apos", '\''},     Entity{"nbsp", ' '},      Entity{"frac12", 0xBD},   Entity{"half", 0xBD},
    Entity{"frac14", 0xBC},   Entity{"frac34", 0xBE},   Entity{"frac13", 0x2153}, Entity{"frac23", 0x2154},
    Entity{"frac15", 0x2155}, Entity{"frac25", 0x2156}, Entity{"frac35", 0x2157}, Entity{"frac45", 0x2158},
    Entity{"frac16", 0x2159}, Entity{"frac56", 0x215A}, Entity{"frac18", 0x215B}, Entity{"frac38", 0x215C},
    Entity{"frac58", 0x215D}, Entity{"frac78", 0x215E}, Entity{"deg", 0xB0},      Entity{"ordm", 0xBA},
    Entity{"times", 0xD7},    Entity{"divide", 0xF7},   Entity{"plusmn", 0xB1},   Entity{"minus", 0x2212},
    Entity{"frasl", 0x2044},  Entity{"ndash", 0x2013},  Entity{"mdash", 0x2014},  Entity{"hyphen", '-'},
    Entity{"lsquo", 0x2018},  Entity{"rsquo", 0x2019},  Entity{"ldquo", 0x201C},  Entity{"rdquo", 0x201D},
    Entity{"sbquo", 0x201A},  Entity{"bdquo", 0x201E},  Entity{"laquo", 0xAB},    Entity{"raquo", 0xBB},
    Entity{"prime", 0x2032},  Entity{"Prime", 0x2033},  Entity{"hellip", 0x2026}, Entity{"bull", 0x2022},
    Entity{"middot", 0xB7},   Entity{"copy", 0xA9},     Entity{"reg", 0xAE},      Entity{"trade", 0x2122},
    Entity{"euro", 0x20AC},   Entity{"pound", 0xA3},    Entity{"sup1", 0xB9},     Entity{"sup2", 0xB2},
    Entity{"sup3", 0xB3},     Entity{"shy", 0},         Entity{"zwj", 0},         Entity{"zwnj", 0},
    Entity{"lrm", 0},         Entity{"rlm", 0},         Entity{"ensp", ' '},      Entity{"emsp", ' '},
    Entity{"thinsp", ' '},    Entity{"tab", ' '},       Entity{"Tab", ' '},       Entity{"NewLine", '\n'},
    Entity{"sol", '/'},       Entity{"comma", ','},     Entity{"period", '.'},    Entity{"colon", ':'},
    Entity{"semi", ';'},      Entity{"lpar", '('},      Entity{"rpar", ')'},      Entity{"plus", '+'},
    Entity{"percnt", '%'},    Entity{"num", '#'},       Entity{"excl", '!'},      Entity{"quest", '?'},
    Entity{"agrave", 0xE0},   Entity{"aacute", 0xE1},   Entity{"acirc", 0xE2},    Entity{"atilde", 0xE3},
    Entity{"auml", 0xE4},     Entity{"aring", 0xE5},    Entity{"aelig", 0xE6},    Entity{"ccedil", 0xE7},
    Entity{"egrave", 0xE8},   Entity{"eacute", 0xE9},   Entity{"ecirc", 0xEA},    Entity{"euml", 0xEB},
    Entity{"igrave", 0xEC},   Entity{"iacute", 0xED},   Entity{"icirc", 0xEE},    Entity{"iuml", 0xEF},
    Entity{"ntilde", 0xF1},   Entity{"ograve", 0xF2},   Entity{"oacute", 0xF3},   Entity{"ocirc", 0xF4},
    Entity{"otilde", 0xF5},   Entity{"ouml", 0xF6},     Entity{"oslash", 0xF8},   Entity{"ugrave", 0xF9},
    Entity{"uacute", 0xFA},   Entity{"ucirc", 0xFB},    Entity{"uuml", 0xFC},     Entity{"szlig", 0xDF},
    Entity{"Agrave", 0xC0},   Entity{"Auml", 0xC4},     Entity{"Aring", 0xC5},    Entity{"Ccedil", 0xC7},
    Entity{"Egrave", 0xC8},   Entity{"Eacute", 0xC9},   Entity{"Ecirc", 0xCA},    Entity{"Ntilde", 0xD1},
    Entity{"Ouml", 0xD6},     Entity{"Oslash", 0xD8},   Entity{"Uuml", 0xDC},     Entity{"oelig", 0x153},
    Entity{"OElig", 0x152},   Entity{"aelig", 0xE6},    Entity{"Acirc", 0xC2},    Entity{"Aacute", 0xC1},
};

constexpr std::size_t kLongestName = 10;

int digit_of(char c, int base) {
  if (c >= '0' && c <= '9') return c - '0';
  if (base == 16 && c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (base == 16 && c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

/// What stands behind "&#" as a letter; the number of bytes taken, 0 if it is no number.
std::size_t take_number(std::string_view text, std::string& out) {
  std::size_t at = 2;
  const int base = at < text.size() && (text[at] == 'x' || text[at] == 'X') ? 16 : 10;
  if (base == 16) ++at;
  const std::size_t first = at;
  char32_t code = 0;
  for (; at < text.size() && digit_of(text[at], base) >= 0; ++at) {
    code = std::min<char32_t>(code * static_cast<char32_t>(base) + static_cast<char32_t>(digit_of(text[at], base)),
                              0x110000);
  }
  if (at == first) return 0;
  if (at < text.size() && text[at] == ';') ++at;
  const bool is_letter = code != 0 && code < 0x110000 && (code < 0xD800 || code > 0xDFFF);
  if (code >= 0x80 && code < 0xA0) {
    out += clean_text(std::string(1, static_cast<char>(code)));  // browsers read these as Windows-1252 too
  } else if (is_letter) {
    std::string letter;
    append_utf8(letter, code);
    out += clean_text(letter);
  }
  return at;
}

std::size_t take_name(std::string_view text, std::string& out) {
  const std::size_t end = text.substr(0, kLongestName + 2).find(';');
  if (end == std::string_view::npos) return 0;
  const std::string_view name = text.substr(1, end - 1);
  const auto* found =
      std::find_if(kEntities.begin(), kEntities.end(), [name](const Entity& e) { return e.name == name; });
  if (found == kEntities.end()) return 0;
  if (found->code != 0) append_utf8(out, found->code);
  return end + 1;
}

}  // namespace

std::string decode_entities(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    std::size_t taken = 0;
    if (text[at] == '&' && at + 1 < text.size()) {
      const std::string_view rest = text.substr(at);
      taken = rest[1] == '#' ? take_number(rest, out) : take_name(rest, out);
    }
    if (taken == 0) {
      out += text[at];
      taken = 1;
    }
    at += taken;
  }
  return out;
}

}  // namespace tinwright
