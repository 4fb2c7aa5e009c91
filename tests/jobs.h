// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Jobs for tests: a job file's text worked out, with its faults.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/files/fields.h"
#include "app/plan/plan.h"

namespace tinwright {

struct Worked {
  std::optional<Job> job;
  std::optional<Plan> plan;
  std::vector<Fault> faults;

  /// Whether a fault stands at that place.
  bool has_fault(const std::string& place) const {
    for (const Fault& fault : faults) {
      if (fault.place == place) return true;
    }
    return false;
  }
};

inline Worked work_out(const std::string& text) {
  Worked worked;
  const auto tree = read_json(text);
  if (!tree) {
    worked.faults.push_back({tree.problem().code, tree.problem().place, tree.problem().message, 0});
    return worked;
  }
  const Fields fields = fields_of(*tree);
  FieldReader reader(fields);
  worked.job = read_job(reader);
  if (worked.job) worked.plan = make_plan(reader, *worked.job);
  worked.faults = reader.faults();
  return worked;
}

/// An upright round tin: {"outline": …, "profile": …}, sizes in cm.
inline std::string round_tin(double diameter, double depth) {
  return R"({"outline": {"kind": "round", "diameter": ")" + std::to_string(diameter) +
         R"( cm"}, "profile": {"depth": ")" + std::to_string(depth) + R"( cm"}})";
}

}  // namespace tinwright
