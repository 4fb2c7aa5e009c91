// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See match_words.h.
#include "app/plan/match_words.h"

#include <algorithm>
#include <cmath>

namespace tinwright {
namespace {

bool is_before(const ChosenPan& a, const ChosenPan& b) {
  return a.bake_factor < b.bake_factor;
}

/// How the set's bake compares with the recipe's: by its bake factors, or by its depth where they are not known.
std::string bake_words(const MatchQuestion& question, const PanSet& set) {
  const auto [first, last] = std::minmax_element(set.pans.begin(), set.pans.end(), is_before);
  const double ratio = set.depth / question.depth;
  const bool is_known = question.bake_scale > 0.0;
  const double shortest = is_known ? first->bake_factor : ratio * ratio;
  const double longest = is_known ? last->bake_factor : ratio * ratio;
  const bool some_sooner = shortest < 1.0 / kSameBake;
  const bool some_later = longest > kSameBake;
  if (some_sooner && some_later) return "some of it done sooner, some later";
  if (some_sooner) return longest < 1.0 ? "done sooner" : "some of it done sooner";
  if (some_later) return shortest > 1.0 ? "takes longer" : "some of it takes longer";
  return "about the recipe's time";
}

/// A depth or difference to the millimetre, in centimetres from 1 cm, so that two of them can be compared.
std::string depth_text(double metres, UnitChoice choice) {
  if (choice == UnitChoice::kUs) return format_length(metres, choice);
  const double rounded = std::round(metres * 1e3) / 1e3;
  return rounded < 0.01 ? format_mm(rounded) : format_cm(rounded);
}

std::string depth_words(const MatchQuestion& question, const PanSet& set, UnitChoice choice) {
  const std::string result = ": " + bake_words(question, set);
  const double more = set.depth - question.depth;
  if (std::abs(more) < kSameDepth) return "as deep as in the recipe" + result;
  return depth_text(std::abs(more), choice) + (more < 0.0 ? " shallower" : " deeper") + " than the recipe (" +
         depth_text(set.depth, choice) + " instead of " + depth_text(question.depth, choice) + ")" + result;
}

std::string leftover_words(const MatchQuestion& question, const PanSet& set, UnitChoice choice) {
  const std::string amount = format_volume(set.leftover, choice) + " left over: ";
  const auto small = pans_for_leftover(question, set);
  if (!small) return amount + "no other pan is free for it";
  const PanSet& best = small->sets.front();
  int pans = 0;
  for (const ChosenPan& pan : best.pans) pans += pan.count;
  const std::string takes = set_name(question, best) + (pans == 1 ? " takes " : " take ");
  if (best.leftover < kSpatula) return amount + takes + "it";
  return amount + takes + format_volume(set.leftover - best.leftover, choice) + " of it";
}

}  // namespace

std::string set_name(const MatchQuestion& question, const PanSet& set) {
  std::string name;
  for (std::size_t i = 0; i < set.pans.size(); ++i) {
    const ChosenPan& pan = set.pans[i];
    if (i > 0) name += i + 1 == set.pans.size() ? " and " : ", ";
    name += pan.count == 1 ? "one " : std::to_string(pan.count) + " × ";
    name += question.pans[pan.kind].name;
  }
  return name;
}

std::vector<std::string> match_words(const MatchQuestion& question, const PanSet& set, UnitChoice choice) {
  std::vector<std::string> words{depth_words(question, set, choice)};
  int pans = 0;
  for (const ChosenPan& pan : set.pans) {
    pans += pan.count;
    if (pan.depth < set.depth - kSameDepth) {
      words.push_back("the " + question.pans[pan.kind].name + " is full at " + depth_text(pan.depth, choice));
    }
  }
  if (set.leftover >= kSpatula) words.push_back(leftover_words(question, set, choice));
  const auto bake = [&](const ChosenPan& pan) { return bake_scale_at(question.pans[pan.kind].table, set.depth); };
  const auto [first, last] = std::minmax_element(
      set.pans.begin(), set.pans.end(), [&](const ChosenPan& a, const ChosenPan& b) { return bake(a) < bake(b); });
  if (bake(*last) > kSameBake * bake(*first)) {
    words.push_back("look at the " + question.pans[first->kind].name + " first, the " + question.pans[last->kind].name +
                    " takes longest");
  }
  if (pans > 1) words.push_back(std::to_string(pans) + " pans to prepare");
  return words;
}

}  // namespace tinwright
