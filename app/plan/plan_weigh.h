// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The plan on the scale: what each bowl should read as it is filled, and what a reading that is off means.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/plan/plan.h"
#include "app/plan/weigh.h"

namespace tinwright {

/// The bowl of one part, in the order things go in.
struct Bowl {
  std::size_t part = 0;
  WeighQuestion question;                           // its readings are still to come
  std::vector<std::size_t> items;                   // of the part, behind each of the question's steps
  std::vector<std::optional<std::size_t>> in_step;  // the recipe's step that adds it, where one says so
};

/// A bowl for each part that has something to weigh. Items go in as the recipe's steps say, the others after them in
/// the list's order; what has no weight is left out.
std::vector<Bowl> bowls_of(const Job& job, const Plan& plan);

/// Where a reading was taken: a bowl, and the last item in it.
struct ReadingPlace {
  std::size_t bowl = 0;
  std::size_t after = 0;  // among the bowl's items
};

/// `after` is a step of the recipe by its number where the recipe's steps say what they add, else the number of an
/// item, counted through the bowls; or the name of a food. `part` names the bowl, where more than one fits. Problem at
/// "after" or "part".
Result<ReadingPlace> find_place(const Job& job, const std::vector<Bowl>& bowls, const std::string& after,
                                const std::string& part);

/// What a bowl's readings say.
struct BowlCheck {
  std::vector<std::string> expected;  // of each item: "should read 930 g"
  std::vector<std::string> wrong;     // of each item: why its reading cannot be used; mostly empty
  std::string words;                  // of the last reading; empty without one
  bool is_fine = false;               // it says that all is there
};

/// `typed` are the readings as typed after each item, empty where there was none.
BowlCheck check_bowl(const Bowl& bowl, const std::vector<std::string>& typed);

}  // namespace tinwright
