// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The seam between the browser and the views: a page is a function that draws one frame. bridge.js calls the C
// functions that bridge.cpp exports; nothing else crosses.
#pragma once

namespace tinwright::web {

using DrawPage = void (*)();

/// Says what the page is. Call it from main(), before the browser asks for the first frame.
void set_page(DrawPage draw);

}  // namespace tinwright::web
