// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The bench card's style sheet: black on white, two columns at most, read from a metre away.
#pragma once

#include <string_view>

namespace tinwright {

std::string_view card_style();

}  // namespace tinwright
