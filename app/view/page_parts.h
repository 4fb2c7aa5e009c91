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

/// Has somebody's recipe read into the open job.
void take_in_recipe(Page& page, std::string_view text);

/// Starts the pause again where something changed, and asks for the frame at its end.
void put_off(Pending& pending, bool changed);
/// Whether the pause is over.
bool is_due(const Pending& pending);

/// Has something worked out elsewhere in place of what was asked before; `document` is that of the errand.
void send_away(Page& page, Pending& pending, Errand errand);
/// Has a file made of the job, of its pan of that number, or of the single pan; when it has come, the host gets it.
void send_for_file(Page& page, ErrandKind kind, std::size_t pan = 0);

/// How far it has come with a button that stops it, or one that starts it anew; nothing while all goes well and soon.
void draw_pending(Page& page, const std::string& key, Pending& pending);

/// Answers the job as it stands now; what the oven said stays as long as it holds.
void answer_anew(Page& page);

/// Takes everything from page.workspace.document anew.
void follow_document(Page& page);

}  // namespace tinwright::view
