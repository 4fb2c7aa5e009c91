// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The document the page has open: a job file's tree with everything the cook has entered, and what it was before. Every
// edit can be taken back. What only the page needs (which view is open, the single-pan bench) stands under "page".
#pragma once

#include <deque>
#include <string>
#include <string_view>

#include "app/files/document.h"
#include "geometry/problem.h"

namespace tinwright {

struct Workspace {
  JsonNode document = make_object();
  std::string text;                      // of the document as it was last noted
  std::deque<std::string> past, future;  // texts to go back and forward to, the nearest last
  std::string last_edit;                 // key of the field edited last: its next letters join that step
  long edition = 0;                      // grows with every change
};

/// Steps kept, and bytes of them: typing is cheap to keep, a cupboard of two thousand pans is not.
inline constexpr std::size_t kMostSteps = 200;
inline constexpr std::size_t kMostStepBytes = 8U << 20U;

/// Opens a job file's text. Refused (the workspace stays as it was): no JSON, no object, no version or a newer one, a
/// recipe that is no object. The Problem's place is "line N".
Result<bool> open_document(Workspace& workspace, std::string_view text);

/// Takes note of what an edit did to workspace.document. Edits with the same key, one after another, are one step; an
/// empty key is always a step of its own. True when anything had changed.
bool note_edit(Workspace& workspace, std::string_view key);

/// One step back, or forward again; false where there is none.
bool undo(Workspace& workspace);
bool redo(Workspace& workspace);

/// The document as a job file.
std::string job_file(const Workspace& workspace);

}  // namespace tinwright
