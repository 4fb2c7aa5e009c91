// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See card.h.
#include "app/plan/card.h"

namespace tinwright {

std::string card_html(const Job& job, const Plan&, const std::vector<PanBake>&, const PlanWords&, UnitChoice) {
  return "<!doctype html><title>" + job.name + "</title>";
}

}  // namespace tinwright
