// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// An answer in words, for the command line and the page alike: figures with their labels, remarks, cautions.
#pragma once

#include <string>
#include <vector>

namespace tinwright {

struct ReportLine {
  enum class Kind { kFigure, kRemark, kCaution };
  Kind kind = Kind::kFigure;
  std::string label;   // of a figure: "Pour up to"
  std::string value;   // of a figure: "6 mm (¼ in) below the rim"; else the sentence
  std::string detail;  // of a figure: one line more, or empty
};

using Report = std::vector<ReportLine>;

}  // namespace tinwright
