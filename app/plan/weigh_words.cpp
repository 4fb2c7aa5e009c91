// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What is said to and by the weigh check: faults of a question, and its answer in words. See weigh.h.
#include <cmath>

#include "app/plan/weigh.h"
#include "app/quantity/print.h"

namespace tinwright {
namespace {

bool is_size(double value) {
  return std::isfinite(value) && value > 0.0;
}

std::string slip_words(const WeighQuestion& question, const Slip& slip) {
  switch (slip.kind) {
    case SlipKind::kLeftOut:
      return question.steps[slip.step].label + " left out";
    case SlipKind::kTwice:
      return question.steps[slip.step].label + " added twice";
    case SlipKind::kHalf:
      return "only half of " + question.steps[slip.step].label;
    case SlipKind::kBowl:
      break;
  }
  return question.is_tared ? "the scale not set to zero with the bowl on it"
                           : "the scale set to zero with the bowl on it";
}

std::string explanation_words(const WeighQuestion& question, const Explanation& explanation) {
  if (explanation.slips.empty()) return "nothing wrong";
  std::string words;
  for (const Slip& slip : explanation.slips) {
    if (!words.empty()) words += " and ";
    words += slip_words(question, slip);
  }
  return words;
}

/// "A", "A or B", "A, B or C".
std::string alternatives(const WeighQuestion& question, const std::vector<Explanation>& explanations) {
  std::string words;
  for (std::size_t i = 0; i < explanations.size(); ++i) {
    if (i > 0) words += i + 1 == explanations.size() ? " or " : ", ";
    words += explanation_words(question, explanations[i]);
  }
  return words;
}

std::string all_there_words(const WeighQuestion& question, const WeighAnswer& answer) {
  std::string words = "all there";
  for (std::size_t i = 0; i < answer.unseen.size(); ++i) {
    words += i == 0 ? "; too light to show here: " : ", ";
    words += question.steps[answer.unseen[i]].label;
  }
  return words;
}

}  // namespace

Problem weigh_fault(const WeighQuestion& question) {
  const auto refused = [](ProblemCode code, std::string message, std::string place) {
    return Problem{code, std::move(message), std::move(place)};
  };
  const auto numbered = [](const char* list, std::size_t i) { return list + ("[" + std::to_string(i) + "]"); };
  using enum ProblemCode;
  for (std::size_t i = 0; i < question.steps.size(); ++i) {
    const std::string place = numbered("steps", i);
    const WeighStep& step = question.steps[i];
    if (!is_size(step.mass)) return refused(kOutOfRange, "A step has to add some weight.", place + ".mass");
    if (!std::isfinite(step.uncertainty) || step.uncertainty < 0.0) {
      return refused(kOutOfRange, "An uncertainty is zero or more.", place + ".uncertainty");
    }
  }
  if (!is_size(question.resolution)) return refused(kOutOfRange, "The scale counts in steps above zero.", "resolution");
  if (question.bowl && !is_size(*question.bowl)) return refused(kOutOfRange, "A bowl weighs something.", "bowl");
  if (!question.is_tared && !question.bowl) {
    return refused(kMissing, "Weigh the empty bowl, or set the scale to zero with the bowl on it.", "bowl");
  }
  if (question.readings.empty())
    return refused(kMissing, "Say what the scale shows, and after which step.", "readings");
  for (std::size_t i = 0; i < question.readings.size(); ++i) {
    const ScaleReading& reading = question.readings[i];
    const bool in_order = i == 0 || reading.after >= question.readings[i - 1].after;
    if (reading.after >= question.steps.size() || !in_order || !std::isfinite(reading.mass)) {
      return refused(kOutOfRange, "A reading belongs to a step, later ones to the same or a later step.",
                     numbered("readings", i));
    }
  }
  return {};
}

std::string weigh_words(const WeighQuestion& question, const WeighAnswer& answer) {
  const std::string off =
      format_grams(std::abs(answer.difference)) + (answer.difference < 0.0 ? " short" : " too much");
  switch (answer.verdict) {
    case WeighVerdict::kAllThere:
      return all_there_words(question, answer);
    case WeighVerdict::kLikely:
      return off + ": " + explanation_words(question, answer.explanations.front()) + ", most likely";
    case WeighVerdict::kCannotTell:
      return off + ": the scale cannot tell which of these: " + alternatives(question, answer.explanations);
    case WeighVerdict::kNothingExplains:
      break;
  }
  return off + ", and no slip with these weights explains it: weigh again, and look at the amounts";
}

}  // namespace tinwright
