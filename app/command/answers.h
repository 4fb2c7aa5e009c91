// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The answers as JSON, with the keys that other programs rely on.
#pragma once

#include <nlohmann/json.hpp>

#include "app/plan/bake_job.h"
#include "app/plan/fill_job.h"
#include "app/plan/pan_job.h"
#include "app/plan/press_job.h"

namespace tinwright {

using Json = nlohmann::ordered_json;

Json json_of(const PanJob& job);
Json json_of(const PressJob& job, const PressAnswer& answer);
Json json_of(const FillJob& job, const FillAnswer& answer);
Json json_of(const BakeJob& job, const BakeJobAnswer& answer);

}  // namespace tinwright
