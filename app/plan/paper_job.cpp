// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See paper_job.h.
#include "app/plan/paper_job.h"

#include "app/files/catalogue.h"
#include "app/files/pan_reader.h"
#include "app/plan/fill_job.h"
#include "geometry/limits.h"

namespace tinwright {
namespace {

std::string name_of(FieldReader& reader, const std::string& prefix) {
  if (const auto name = reader.text(prefix + "name")) return *name;
  if (!reader.has(prefix + "catalogue")) return "";
  const CataloguePan* entry = find_catalogue_pan(reader.text(prefix + "catalogue").value_or(""));
  return entry == nullptr ? "" : entry->name;
}

/// The filling's height above the cavity's floor, where one is asked about.
std::optional<double> read_pour_height(FieldReader& reader, const Pan& pan, const std::optional<Lining>& lining) {
  std::string prefix;
  if (reader.has("fill")) {
    prefix = "fill.";
  } else if (!reader.has("mass") && !reader.has("volume") && !reader.has("level")) {
    return std::nullopt;
  }
  if (prefix.empty() || !reader.has("fill.height")) {
    const auto job = read_fill_job(reader, prefix, pan, lining);
    if (!job) return std::nullopt;
    const auto answer = solve_fill(reader, *job, prefix);
    return answer ? std::optional<double>(answer->height) : std::nullopt;
  }
  const auto height = reader.quantity("fill.height", Dimension::kLength);
  if (!height) return std::nullopt;
  double most = depth(pan);
  if (lining) {
    const auto cavity = line_pan(pan, *lining);
    if (cavity) most = depth(*cavity);
  }
  if (*height <= most + kLengthTolerance) return height;
  reader.fault(ProblemCode::kTooMuch, "fill.height",
               "a filling that high stands over the top; it can be at most " + at_most_text(most));
  return std::nullopt;
}

}  // namespace

std::optional<PaperOrder> read_paper_order(FieldReader& reader) {
  const std::string prefix = reader.has("pan") ? "pan." : "";
  const auto pan = read_pan(reader, prefix);
  PaperOrder order;
  order.pan_name = name_of(reader, prefix);
  order.lining = read_lining(reader, "lining");
  if (pan && order.lining) {
    const auto cavity = line_pan(*pan, *order.lining);
    if (!cavity) reader.fault(cavity.problem(), "");
  }
  if (pan && reader.faults().empty()) order.pour_height = read_pour_height(reader, *pan, order.lining);
  if (!reader.faults().empty()) reader.skip("fill");
  reader.refuse_unread();
  if (!pan || !reader.faults().empty()) return std::nullopt;
  order.pan = *pan;
  return order;
}

}  // namespace tinwright
