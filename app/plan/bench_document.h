// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The bench as part of the page's document, so that it is kept, shared and taken back like everything else.
#pragma once

#include "app/files/document.h"
#include "app/plan/bench.h"

namespace tinwright {

JsonNode document_of(const Bench& bench);

/// The bench a document holds. What is missing, or of another kind than it should be, is as in an empty bench.
Bench bench_of(const JsonNode& document);

}  // namespace tinwright
