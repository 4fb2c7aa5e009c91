// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See substance_reader.h.
#include "app/files/substance_reader.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <numeric>
#include <string_view>
#include <utility>
#include <vector>

#include "app/quantity/parse.h"

namespace tinwright {
namespace {

/// How many names are offered for an unknown one.
constexpr std::size_t kOffered = 3;
/// [bytes] More of an unknown name does not help to guess what was meant.
constexpr std::size_t kLongestGuess = 64;

struct Share {
  const char* name;
  double Composition::*field;
};
constexpr std::array<Share, 7> kShares{{{"water", &Composition::water},
                                        {"protein", &Composition::protein},
                                        {"fat", &Composition::fat},
                                        {"carbohydrate", &Composition::carbohydrate},
                                        {"fibre", &Composition::fibre},
                                        {"ash", &Composition::ash},
                                        {"air", &Composition::air}}};

double fraction(FieldReader& reader, const std::string& path) {
  const auto text = reader.text(path);
  if (!text) return 0.0;
  const auto value = parse_quantity(*text, Dimension::kRatio);
  if (value) return *value;
  reader.fault(ProblemCode::kNotANumber, path, "this has to be a share, like 0.3");
  return 0.0;
}

std::optional<SubstanceChoice> read_constants(FieldReader& reader, const std::string& in) {
  const auto conductivity = reader.required(in + "conductivity", Dimension::kConductivity, "conductivity");
  const auto density = reader.required(in + "density", Dimension::kDensity, "density");
  const auto heat_capacity = reader.required(in + "heat_capacity", Dimension::kHeatCapacity, "heat capacity");
  if (!conductivity || !density || !heat_capacity) return std::nullopt;
  SubstanceChoice choice;
  choice.constants = Properties{*conductivity, *density, *heat_capacity};
  return choice;
}

std::optional<SubstanceChoice> read_composition(FieldReader& reader, const std::string& in) {
  const std::size_t faults_before = reader.faults().size();
  Composition asked;
  for (const Share& share : kShares) asked.*share.field = fraction(reader, in + share.name);
  if (reader.has(in + "sugar")) asked.sugar = fraction(reader, in + "sugar");
  asked.freezing_point = reader.quantity(in + "freezing_point", Dimension::kTemperature);
  if (reader.faults().size() > faults_before) return std::nullopt;
  const auto food = make_composition(asked);
  if (!food) {
    reader.fault(food.problem(), in);
    return std::nullopt;
  }
  SubstanceChoice choice;
  choice.food = *food;
  return choice;
}

/// Without capitals (of ASCII), hyphens, and blanks that say nothing.
std::string folded(std::string_view name) {
  std::string plain;
  for (const char c : name) {
    const bool is_blank = c == ' ' || c == '-' || c == '_' || c == '\t';
    if (is_blank && (plain.empty() || plain.back() == ' ')) continue;
    plain += is_blank ? ' ' : c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  if (!plain.empty() && plain.back() == ' ') plain.pop_back();
  return plain;
}

/// Letters to change, add or take out to make `wanted` of any piece of `name` (Sellers 1980): "cheescake" lies one off
/// "baked cheesecake filling".
std::size_t letters_off(const std::string& wanted, const std::string& name) {
  std::vector<std::size_t> off(wanted.size() + 1);  // of each beginning of `wanted`, its piece ending at this letter
  std::iota(off.begin(), off.end(), std::size_t{0});
  std::size_t best = off.back();
  for (const char letter : name) {
    std::size_t diagonal = off[0];
    for (std::size_t i = 1; i < off.size(); ++i) {
      const std::size_t changed = diagonal + (wanted[i - 1] == letter ? 0 : 1);
      diagonal = off[i];
      off[i] = std::min({changed, off[i] + 1, off[i - 1] + 1});
    }
    best = std::min(best, off.back());
  }
  return best;
}

/// "did you mean "Jam", "Ganache, equal parts" or "Pastry cream"?": of equally near names the shorter first.
std::string nearest_names(const std::string& wanted) {
  const std::string start = wanted.substr(0, kLongestGuess);
  std::vector<std::pair<std::size_t, const Mixture*>> ranked;
  for (const Mixture& mixture : catalogue_mixtures()) {
    ranked.emplace_back(std::min(letters_off(start, folded(mixture.name)), letters_off(start, folded(mixture.id))),
                        &mixture);
  }
  std::stable_sort(ranked.begin(), ranked.end(), [](const auto& a, const auto& b) {
    return a.first != b.first ? a.first < b.first : a.second->name.size() < b.second->name.size();
  });
  const std::size_t count = std::min(kOffered, ranked.size());
  std::string list = "did you mean ";
  for (std::size_t i = 0; i < count; ++i) {
    list += (i == 0 ? "\"" : i + 1 == count ? " or \"" : ", \"") + ranked[i].second->name + "\"";
  }
  return list + "?";
}

std::optional<SubstanceChoice> read_name(FieldReader& reader, const std::string& path) {
  const auto name = reader.text(path);
  if (!name) return std::nullopt;
  const std::string wanted = folded(*name);
  for (const Mixture& mixture : catalogue_mixtures()) {
    if (!mixture.composition || (folded(mixture.id) != wanted && folded(mixture.name) != wanted)) continue;
    SubstanceChoice choice;
    choice.food = mixture.composition;
    choice.mixture = &mixture;
    return choice;
  }
  reader.fault(ProblemCode::kUnknown, path,
               "the catalogue knows nothing called that; " + nearest_names(wanted) +
                   " Or give its conductivity, density and heat_capacity, or a composition like {\"water\": 0.3, "
                   "\"fat\": 0.2, \"carbohydrate\": 0.5}");
  return std::nullopt;
}

}  // namespace

std::optional<SubstanceChoice> read_substance(FieldReader& reader, const std::string& path, const std::string& what) {
  if (!reader.has(path)) {
    reader.fault(ProblemCode::kMissing, path,
                 "say what the " + what +
                     " is: its name in the catalogue, its conductivity, density and heat_capacity, or its composition");
    return std::nullopt;
  }
  const std::string in = path + ".";
  if (reader.has(in + "conductivity") || reader.has(in + "heat_capacity")) return read_constants(reader, in);
  const bool is_composition =
      std::any_of(kShares.begin(), kShares.end(), [&](const Share& share) { return reader.has(in + share.name); });
  if (is_composition) return read_composition(reader, in);
  return reader.has(in + "density") ? read_constants(reader, in) : read_name(reader, path);
}

}  // namespace tinwright
