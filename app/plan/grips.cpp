// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See grips.h.
#include "app/plan/grips.h"

#include <algorithm>
#include <cmath>

#include "app/files/pan_reader.h"
#include "app/quantity/parse.h"

namespace tinwright {
namespace {

constexpr double kMillimetre = 1e-3;                   // [m]
constexpr double kSixteenth = 0.0254 / 16.0;           // [m] of an inch of 25.4 mm (NIST SP 811, B.8)
constexpr double kLeast = 0.02, kMost = 1.0;           // [m] of a pan's sizes across; wider than any household oven
constexpr double kLeastDeep = 0.005, kMostDeep = 0.3;  // [m]
constexpr double kSame = 1e-9;                         // [steps] what a way through texts may add to a whole step

/// The entry with its own texts, whether it names a catalogue pan or not.
PanEntry with_own_sizes(const PanEntry& entry) {
  PanEntry own = entry;
  if (!own.catalogue.empty()) take_own_sizes(own);
  return own;
}

/// The text that holds this size; null where the shape has none.
const char* path_of(const PanEntry& own, Grip grip) {
  const std::string_view kind = outline_kinds()[own.outline];
  const bool has_two = kind == "rectangle" || kind == "oval";
  switch (grip) {
    case Grip::kDepth:
      return own.wall == WallEntry::kMeasured ? nullptr : "profile.depth";
    case Grip::kWidth:
      return has_two ? "outline.width" : nullptr;
    case Grip::kLength:
      if (has_two) return "outline.length";
      if (kind == "polygon") return "outline.across_flats";
      if (kind == "ring") return "outline.outer_diameter";
      return kind == "freeform" ? nullptr : "outline.diameter";
    case Grip::kLevel:
      break;
  }
  return nullptr;
}

int whole_steps(double metres, double step) {
  return static_cast<int>(std::lround(metres / step));
}

std::optional<GripState> size_state(const Bench& bench, const BenchAnswer& answer, Grip grip) {
  if (!answer.picture) return std::nullopt;
  const PanEntry own = with_own_sizes(bench.my_pan);
  const char* const path = path_of(own, grip);
  if (path == nullptr) return std::nullopt;
  const auto value = parse_quantity(text_of(own.texts, path), Dimension::kLength);
  if (!value) return std::nullopt;
  const double step = grip_step(bench.units);
  const bool is_deep = grip == Grip::kDepth;
  GripState state;
  state.value = *value;
  state.at = whole_steps(*value, step);
  state.first = std::min(state.at, static_cast<int>(std::ceil((is_deep ? kLeastDeep : kLeast) / step)));
  state.last = std::max(state.at, static_cast<int>((is_deep ? kMostDeep : kMost) / step));
  const std::string size = state.figure = format_both_lengths(*value, bench.units);
  if (is_deep) {
    state.name = "My pan's depth";
    state.words = size + " deep";
    state.drawn = answer.picture->depth;
  } else if (grip == Grip::kWidth) {
    state.name = "My pan's width";
    state.words = size + " wide";
    state.drawn = answer.picture->width;
  } else {
    const bool has_two = path_of(own, Grip::kWidth) != nullptr;
    state.name = has_two ? "My pan's length" : "My pan's size across";
    state.words = size + (has_two ? " long" : " across");
    state.drawn = answer.picture->length;
  }
  return state;
}

/// How far below the cavity's top each step is: step `last` of a level is the top itself, or as far up as there is
/// filling for.
std::optional<GripState> level_state(const Bench& bench, const BenchAnswer& answer) {
  if (!answer.picture || !answer.fill) return std::nullopt;
  const double step = grip_step(bench.units);
  const double deep = answer.fill->height + answer.fill->below_rim;
  const int lowest =
      static_cast<int>(std::ceil(deep / step - kSame)) - 1;  // of the steps below the top; holds a little
  if (lowest < 1) return std::nullopt;
  GripState state;
  state.name = "The fill line";
  state.value = state.drawn = answer.fill->height;
  state.last = lowest;
  state.at = std::clamp(lowest - whole_steps(answer.fill->below_rim, step), 0, lowest);
  const bool has_both = answer.fill_job->question.level && answer.fill_job->question.amount;
  if (has_both) {  // it goes no higher than there is filling for
    const double all = *answer.fill_job->question.amount;
    const auto reaches = fill_height(answer.fill_job->cavity, std::min(all, brim_volume(answer.fill_job->cavity)));
    if (reaches) {
      const int highest = lowest - static_cast<int>(std::ceil((deep - *reaches) / step - kSame));
      state.last = std::max(state.at, highest);
    }
  }
  const std::string rim = answer.fill_job->lining ? "the crust's top" : "the rim";
  const bool is_full = whole_steps(answer.fill->below_rim, step) == 0;
  state.figure = is_full ? "level with " + rim : format_both_lengths(answer.fill->below_rim, bench.units);
  state.words = is_full ? state.figure : state.figure + " below " + rim;
  return state;
}

/// `amount` [m³, of all cavities] in the unit `typed` was in; in grams or millilitres where that is not plain.
std::string amount_like(const std::string& typed, double amount, const std::optional<double>& density) {
  const bool is_volume = static_cast<bool>(parse_quantity(typed, Dimension::kVolume));
  const auto is_of_unit = [](char c) { return c == ' ' || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z'); };
  const auto unit_at = std::find_if_not(typed.rbegin(), typed.rend(), is_of_unit).base();
  const bool is_plain = unit_at != typed.begin() && unit_at[-1] >= '0' && unit_at[-1] <= '9';
  const std::string unit(is_plain ? unit_at : typed.end(), typed.end());
  const auto one = parse_quantity("1" + unit, is_volume ? Dimension::kVolume : Dimension::kMass);
  const double all = is_volume || !density ? amount : amount * *density;
  if (one && *one > 0.0) {
    const double number = all / *one;
    const int decimals = number < 10.0 ? 3 : number < 100.0 ? 2 : number < 1000.0 ? 1 : 0;
    return format_number(number, decimals) + unit;
  }
  return is_volume ? format_number(1e6 * all, 1) + " ml" : format_number(1e3 * all, 1) + " g";
}

bool move_level(Bench& bench, const BenchAnswer& answer, const GripState& state, int to) {
  const FillAnswer& fill = *answer.fill;
  const double deep = fill.height + fill.below_rim;
  const int lowest = static_cast<int>(std::ceil(deep / grip_step(bench.units) - kSame)) - 1;
  to = std::clamp(to, state.first, state.last);
  const double height = deep - (lowest - to) * grip_step(bench.units);
  Texts& texts = bench.filling.texts;
  const std::string typed = text_of(texts, "amount");
  if (!text_of(texts, "level").empty() || typed.empty()) {
    texts["level"] = format_number(100.0 * height / deep, 2) + " %";
  } else {
    const FillJob& job = *answer.fill_job;
    texts["amount"] = amount_like(typed, job.pan.count * volume(job.cavity, height), job.density);
  }
  return true;
}

bool is_pan(const PanEntry& entry) {
  const Fields fields = pan_fields(entry, "");
  FieldReader reader(fields);
  return read_pan(reader, "").has_value();
}

}  // namespace

double grip_step(UnitChoice units) {
  return units == UnitChoice::kMetric ? kMillimetre : kSixteenth;
}

std::optional<GripState> grip_state(const Bench& bench, const BenchAnswer& answer, Grip grip) {
  return grip == Grip::kLevel ? level_state(bench, answer) : size_state(bench, answer, grip);
}

int dragged_to(const GripState& from, Grip grip, double metres, UnitChoice units) {
  // A rim is drawn about its middle, so that pulling one side moves both.
  const double grown = grip == Grip::kLength || grip == Grip::kWidth ? 2.0 * metres : metres;
  const double share = from.drawn > 0.0 ? from.value / from.drawn : 1.0;
  const double steps = grown * share / grip_step(units);
  // A level's steps are counted from the top, where its value is not; what it stands beside the step is little.
  const double start = grip == Grip::kLevel ? from.at : from.value / grip_step(units);
  const double wanted = std::clamp(start + steps, static_cast<double>(from.first), static_cast<double>(from.last));
  return static_cast<int>(std::lround(wanted));
}

bool move_grip(Bench& bench, const BenchAnswer& answer, Grip grip, int to) {
  const auto state = grip_state(bench, answer, grip);
  if (!state) return false;
  to = std::clamp(to, state->first, state->last);
  if (to == state->at) return false;
  if (grip == Grip::kLevel) return move_level(bench, answer, *state, to);
  PanEntry own = with_own_sizes(bench.my_pan);
  const char* const path = path_of(own, grip);
  for (; to != state->at; to = state->at + (to - state->at) / 2) {
    own.texts[path] = format_length(to * grip_step(bench.units), bench.units);
    if (!is_pan(own)) continue;
    bench.my_pan = own;
    return true;
  }
  return false;
}

}  // namespace tinwright
