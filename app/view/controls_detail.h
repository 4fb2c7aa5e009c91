// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Pieces that several controls share; not for pages.
#pragma once

#include "app/view/controls.h"

namespace tinwright::view {

inline constexpr float kRounding = 0.4f;   // [em] of fields and buttons
inline constexpr float kTextInset = 0.6f;  // [em] from the edge of a field to its text; web/page.css has the same
inline constexpr float kUnderGap = 0.15f;  // [em] from a control to what belongs to it

/// A key for a part of the control `key`.
std::string part_key(Key key, Text part);

/// Text over the full width, wrapped, with a node of that role.
std::size_t text_block(Key key, Role role, Text text, const Face& face, Colour colour, float gap);

/// The label above a control; `target` is the control's id, 0 when the control names itself to a screen reader.
void label_above(Key key, Text text, std::uint32_t target, bool enabled);

/// The number a text from the page names; -1 when it is none of `count`.
int option_number(const std::string& text, int count);

/// Help and problem beneath a control; links both to the node at `index`.
void explain_below(Key key, std::size_t index, Text help, Text problem);

/// The round, three-cornered or eight-cornered sign of a note, in a square of that side.
void draw_sign(NoteKind kind, float x, float y, float side);
Colour note_ink(NoteKind kind);
Colour note_tint(NoteKind kind);

}  // namespace tinwright::view
