// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A job as files to take away.
#pragma once

#include <string>
#include <string_view>

#include "app/plan/job_answer.h"

namespace tinwright {

/// A job with nothing in it but one empty part and one pan.
extern const std::string_view kEmptyJob;

/// The job's name as a file may be called, without a suffix: "plum-tart"; "job" where it has none.
std::string file_name(const JsonNode& document);

/// The plan for print, a whole HTML page; see card.h. The answer has to have a plan.
std::string bench_card(const JobAnswer& answer);

/// The amounts of all parts: RFC 4180 with a header line, and a Markdown table for each part.
std::string amounts_csv(const JobAnswer& answer);
std::string amounts_markdown(const JobAnswer& answer);

}  // namespace tinwright
