// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The oven's part of a job's answer, pan by pan: each takes some tenths of a second.
#pragma once

#include <optional>

#include "app/plan/job_answer.h"

namespace tinwright {

/// Bakes the next pan; only while is_baking(). Words, clock, pictures and problems follow.
void bake_next(JobAnswer& answer, const Progress& progress = {});

/// Puts what job, plan and baked come to into words and on the clock. A Problem, at "plan.table_at", where the clock
/// cannot be; the words are there all the same.
std::optional<Problem> describe_job(JobAnswer& answer);

}  // namespace tinwright
