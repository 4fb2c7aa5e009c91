// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The pieces of page.cpp: the single pan, the whole recipe, and what they share.
#pragma once

#include "app/view/page.h"

namespace tinwright::view {

void draw_bench(Page& page, int columns);
void draw_job(Page& page, int columns);
/// Taking back, recipes, files in, links, the card.
void draw_desk(Page& page);
/// Files out.
void draw_files(Page& page);

/// Reads somebody's recipe into the open job.
void take_in_recipe(Page& page, std::string_view text);

/// Starts the pause again where something changed, and asks for the frame at its end.
void put_off(Pending& pending, bool changed);

/// Takes everything from page.workspace.document anew.
void follow_document(Page& page);

}  // namespace tinwright::view
