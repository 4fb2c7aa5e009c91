// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A sheet of paper templates drawn in SVG, one user unit a millimetre.
#pragma once

#include <string>

#include "app/plan/paper_layout.h"

namespace tinwright {

inline constexpr double kCheckBar = 100.0;  // [mm] on every sheet, to measure what the printer made of it

/// Sheet `number` (from 0) of a layout. `pan_name` is anyone's; `left_out` are sentences for its foot.
PaperSheet draw_sheet(const PaperLayout& layout, std::size_t number, PaperSize size, const std::string& pan_name,
                      const std::vector<std::string>& left_out);

}  // namespace tinwright
