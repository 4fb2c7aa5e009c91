// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A recipe that was read, as a job's document.
#pragma once

#include "app/files/document.h"
#include "app/recipe/draft.h"

namespace tinwright {

/// Puts the draft in as the job's recipe. My cupboard and what I want stay; pans that were chosen for another recipe do
/// not.
void put_recipe(JsonNode& document, const RecipeDraft& draft);

/// A job file of it with an empty cupboard.
JsonNode job_of(const RecipeDraft& draft);

}  // namespace tinwright
