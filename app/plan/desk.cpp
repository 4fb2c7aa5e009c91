// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See desk.h.
#include "app/plan/desk.h"

#include "app/plan/card.h"

namespace tinwright {
namespace {

constexpr std::size_t kLongestName = 60;

/// A field of RFC 4180. One that a spreadsheet would take for a formula gets a blank in front.
std::string csv(const std::string& text) {
  const bool is_formula = !text.empty() && std::string("=+-@\t\r").find(text[0]) != std::string::npos;
  std::string quoted = is_formula ? "\" " : "\"";
  for (const char c : text) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + "\"";
}

/// A cell of a Markdown table: what would end it or be taken for markup is written as itself.
std::string cell(const std::string& text) {
  std::string shown;
  for (const char c : text) {
    if (std::string("\\|`*_[]<>#").find(c) != std::string::npos) shown += '\\';
    shown += c == '\n' || c == '\r' ? ' ' : c;
  }
  return shown;
}

}  // namespace

const std::string_view kEmptyJob = R"({"version": 1, "recipe": {"parts": [{"name": "Filling", "role": "filling",
"ingredients": [{"food": "plain flour", "amount": "250 g"}]}], "oven": []},
"cupboard": [{"name": "23 cm springform", "pan": {"catalogue": "springform-23cm"}}]})";

std::string file_name(const JsonNode& document) {
  std::string name = text_at(document, "name");
  if (name.empty()) name = text_at(document, "recipe.name");
  std::string safe;
  for (const char c : name) {
    const bool is_plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    const bool is_capital = c >= 'A' && c <= 'Z';
    if (is_plain || is_capital) {
      safe += is_capital ? static_cast<char>(c - 'A' + 'a') : c;
    } else if (!safe.empty() && safe.back() != '-') {
      safe += '-';
    }
    if (safe.size() >= kLongestName) break;
  }
  while (!safe.empty() && safe.back() == '-') safe.pop_back();
  return safe.empty() ? "job" : safe;
}

std::string bench_card(const JobAnswer& answer) {
  return card_html(*answer.job, *answer.plan, answer.baked, answer.words, answer.units);
}

std::string amounts_csv(const JobAnswer& answer) {
  std::string text = "part,factor,ingredient,take,that is,grams\r\n";
  for (std::size_t i = 0; i < answer.words.parts.size(); ++i) {
    const PartWords& part = answer.words.parts[i];
    const auto& items = answer.plan->parts[i].items;
    for (std::size_t k = 0; k < part.items.size(); ++k) {
      const ItemLine& item = part.items[k];
      const double mass = k < items.size() ? items[k].mass : answer.plan->parts[i].factor * answer.job->parts[i].crumbs;
      text += csv(part.title) + "," + plain_number(answer.plan->parts[i].factor, 3) + "," + csv(item.food) + "," +
              csv(item.amount) + "," + csv(item.detail) + "," + (mass > 0.0 ? plain_number(mass * 1e3, 1) : "") +
              "\r\n";
    }
  }
  return text;
}

std::string amounts_markdown(const JobAnswer& answer) {
  std::string text = "# " + cell(title_of(*answer.job)) + "\n";
  for (const PartWords& part : answer.words.parts) {
    text +=
        "\n## " + cell(part.title) + ", " + cell(part.factor) + "\n\n| Ingredient | Take | That is |\n|---|---:|---|\n";
    for (const ItemLine& item : part.items) {
      text += "| " + cell(item.food) + " | " + cell(item.amount) + " | " + cell(item.detail) + " |\n";
    }
  }
  return text;
}

}  // namespace tinwright
