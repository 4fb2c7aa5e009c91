// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Paper templates as the answer of `tinwright paper`: figures as JSON, sheets as files.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "app/command/answers.h"
#include "app/plan/paper.h"

namespace tinwright {

/// {pan, paper, sheets, floor_piece_area_cm2, wall_piece_area_cm2 (a ring's core included), core_piece_area_cm2,
/// left_out_area_cm2, dough_piece_area_cm2, dough_reach_mm, pieces: [{name, cut, area_cm2, length_mm, width_mm}],
/// left_out: [words]}. Areas are for one cavity and without tabs and overlaps; sizes are of a piece as cut.
Json json_of(const PaperOrder& order, std::size_t sheets);

/// How many sheets, and what no piece covers.
Report describe_paper(const PaperOrder& order, std::size_t sheets);

/// The files that -o NAME asks for: one page, or the sheets as NAME-1.svg, NAME-2.svg, … (NAME.svg where there is one).
std::vector<std::pair<std::string, std::string>> paper_files(const PaperOrder& order,
                                                             const std::vector<PaperSheet>& sheets,
                                                             const std::string& target);

}  // namespace tinwright
