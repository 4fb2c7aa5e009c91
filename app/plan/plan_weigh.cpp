// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See plan_weigh.h.
#include "app/plan/plan_weigh.h"

#include <algorithm>

#include "app/files/document.h"
#include "app/quantity/parse.h"
#include "app/quantity/print.h"

namespace tinwright {
namespace {

/// The item of that food; nothing where the part has none.
std::optional<std::size_t> item_called(const RecipePart& part, const std::string& food) {
  for (std::size_t i = 0; i < part.items.size(); ++i) {
    if (part.items[i].food == food) return i;
  }
  const Ingredient* known = nullptr;
  if (const auto match = match_ingredient(food)) known = match->ingredient;
  for (std::size_t i = 0; i < part.items.size() && known != nullptr; ++i) {
    if (part.items[i].known == known) return i;
  }
  return std::nullopt;
}

bool is_liquid(const RecipeItem& item) {
  return item.known != nullptr && item.known->composition && item.known->composition->water > 0.5;
}

double uncertainty(const RecipeItem& item, double mass, double resolution) {
  if (item.measure == Measure::kVolume) return measured_uncertainty(mass, is_liquid(item));
  return weighed_uncertainty(mass, resolution);
}

void add_item(Bowl& bowl, const RecipePart& part, const PartPlan& plan, std::size_t item,
              std::optional<std::size_t> step) {
  const double mass = plan.items[item].mass;
  const bool is_in = std::find(bowl.items.begin(), bowl.items.end(), item) != bowl.items.end();
  if (mass <= 0.0 || is_in) return;
  const RecipeItem& said = part.items[item];
  bowl.question.steps.push_back({"the " + said.food, mass, uncertainty(said, mass, bowl.question.resolution)});
  bowl.items.push_back(item);
  bowl.in_step.push_back(step);
}

/// The last item that is in a bowl once the recipe's step is done.
std::optional<ReadingPlace> after_step(const std::vector<Bowl>& bowls, std::size_t step) {
  std::optional<ReadingPlace> place;
  for (std::size_t b = 0; b < bowls.size(); ++b) {
    for (std::size_t i = 0; i < bowls[b].in_step.size(); ++i) {
      if (bowls[b].in_step[i] && *bowls[b].in_step[i] == step) place = ReadingPlace{b, i};
    }
  }
  return place;
}

}  // namespace

std::vector<Bowl> bowls_of(const Job& job, const Plan& plan) {
  std::vector<Bowl> bowls;
  for (std::size_t p = 0; p < job.parts.size(); ++p) {
    const RecipePart& part = job.parts[p];
    Bowl bowl;
    bowl.part = p;
    bowl.question.bowl = job.bowl;
    bowl.question.is_tared = !job.bowl.has_value();
    bowl.question.resolution = job.scale_step;
    for (std::size_t s = 0; s < job.steps.size(); ++s) {
      if (job.steps[s].part != p) continue;
      for (const std::string& food : job.steps[s].adds) {
        if (const auto item = item_called(part, food)) add_item(bowl, part, plan.parts[p], *item, s);
      }
    }
    for (std::size_t i = 0; i < part.items.size(); ++i) add_item(bowl, part, plan.parts[p], i, std::nullopt);
    if (!bowl.items.empty()) bowls.push_back(std::move(bowl));
  }
  return bowls;
}

Result<ReadingPlace> find_place(const Job& job, const std::vector<Bowl>& bowls, const std::string& after,
                                const std::string& part) {
  std::vector<std::size_t> fitting;
  for (std::size_t b = 0; b < bowls.size(); ++b) {
    if (part.empty() || job.parts[bowls[b].part].name == part) fitting.push_back(b);
  }
  if (fitting.empty()) {
    return Problem{ProblemCode::kUnknown, "there is no part called \"" + part + "\" with anything to weigh", "part"};
  }
  if (const auto number = index_of(after)) {
    const bool has_steps =
        std::any_of(job.steps.begin(), job.steps.end(), [](const RecipeStep& step) { return !step.adds.empty(); });
    if (has_steps && part.empty()) {
      if (*number >= 1) {
        if (const auto place = after_step(bowls, *number - 1)) return *place;
      }
      return Problem{ProblemCode::kUnknown, "step " + after + " of the recipe puts nothing into a bowl", "after"};
    }
    std::size_t before = 0;  // things that went into the bowls before
    for (const std::size_t b : fitting) {
      if (*number > before && *number <= before + bowls[b].items.size()) return ReadingPlace{b, *number - before - 1};
      before += bowls[b].items.size();
    }
    return Problem{ProblemCode::kOutOfRange, "only " + std::to_string(before) + " things are weighed", "after"};
  }
  std::vector<ReadingPlace> places;
  for (const std::size_t b : fitting) {
    const auto item = item_called(job.parts[bowls[b].part], after);
    const auto& items = bowls[b].items;
    const auto found = item ? std::find(items.begin(), items.end(), *item) : items.end();
    if (found != items.end()) places.push_back({b, static_cast<std::size_t>(found - items.begin())});
  }
  if (places.size() == 1) return places.front();
  return Problem{ProblemCode::kUnknown,
                 places.empty() ? "nothing called \"" + after + "\" is weighed into a bowl"
                                : "\"" + after + "\" goes into more than one bowl; name the part too",
                 "after"};
}

BowlCheck check_bowl(const Bowl& bowl, const std::vector<std::string>& typed) {
  BowlCheck check;
  check.wrong.resize(bowl.items.size());
  WeighQuestion question = bowl.question;
  for (const double mass : expected_readings(question)) check.expected.push_back("should read " + format_grams(mass));
  for (std::size_t i = 0; i < typed.size() && i < bowl.items.size(); ++i) {
    if (typed[i].empty()) continue;
    const auto reading = parse_quantity(typed[i], Dimension::kMass);
    if (reading) {
      question.readings.push_back({i, *reading});
    } else {
      check.wrong[i] = reading.problem().message;
    }
  }
  if (question.readings.empty()) return check;
  const auto answer = weigh_check(question);
  if (!answer) {
    check.wrong[question.readings.back().after] = answer.problem().message;
    return check;
  }
  check.words = "After " + question.steps[question.readings.back().after].label + ": " + weigh_words(question, *answer);
  check.is_fine = answer->verdict == WeighVerdict::kAllThere;
  return check;
}

}  // namespace tinwright
