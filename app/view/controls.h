// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Every control of the page. Each call takes the next place in the layout, draws there, and records a node in the
// mirror; what the cook did to that node since the last frame comes back as the return value. `key` names the control
// for good: it stays when the label's wording changes, and is unique on the page (inside its KeyScope). Call them
// between Surface::begin() and Surface::end(). A text passed in may end when the call returns.
#pragma once

#include <functional>
#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "app/view/surface.h"

struct ImDrawList;

namespace tinwright::view {

using Key = std::string_view;
using Text = std::string_view;

/// A list of labels, from a braced list or from any container of strings. Refers to them, does not copy.
class Labels {
 public:
  Labels(std::initializer_list<Text> labels) : labels_(labels) {}
  template <class Container>
  Labels(const Container& labels) : labels_(labels.begin(), labels.end()) {}
  int size() const { return static_cast<int>(labels_.size()); }
  Text operator[](int index) const { return labels_[static_cast<std::size_t>(index)]; }

 private:
  std::vector<Text> labels_;
};

/// Keys inside may repeat those outside: one scope for each pan of a list, say.
class KeyScope {
 public:
  explicit KeyScope(Key key) { surface().mirror().push_scope(key); }
  ~KeyScope() { surface().mirror().pop_scope(); }
  KeyScope(const KeyScope&) = delete;
  KeyScope& operator=(const KeyScope&) = delete;
};

// Words.
// ----------------------------------------------------------------------------------------------------------------
/// Level 1 names the page, 2 a part of it, 3 a piece of a part.
void heading(Key key, Text text, int level);
/// Wraps, and can be selected and copied.
void paragraph(Key key, Text text);
/// The same in the small, soft letters of an explanation.
void remark(Key key, Text text);

enum class NoteKind { kPlain, kCaution, kError };
/// A boxed sentence with a sign of its own for each kind, so that it does not depend on colour. A change is read out.
void note(Key key, NoteKind kind, Text text);

/// A result: what it is, the value in large letters, and a short explanation (may be empty). A change is read out, once
/// the cook has stopped typing.
void answer(Key key, Text label, Text value, Text explanation = {});

/// A figure of less weight than an answer: label and value on one line. A change is not read out by itself.
void fact(Key key, Text label, Text value, Text explanation = {});

// Doing and filling in.
// -------------------------------------------------------------------------------------------------
enum class ButtonLook { kPlain, kPrimary, kQuiet };
/// True when it was pressed. Buttons take their natural width; several stand side by side inside a Flow.
bool button(Key key, Text label, ButtonLook look = ButtonLook::kPlain, bool enabled = true);

enum class Keyboard { kText, kDecimal };
struct FieldOptions {
  Text hint = {};                       // an example, shown while the field is empty
  Text help = {};                       // one line beneath, always shown
  Text problem = {};                    // what is wrong with the text, shown beneath with a sign
  Keyboard keyboard = Keyboard::kText;  // which one a phone brings up
  float width_em = 0;                   // 0: as wide as the column
  bool enabled = true;
};
/// True when the cook changed `text`. It holds exactly what was typed, valid or not: keep it as text, judge it
/// elsewhere, and say so in `problem`. Writing another text into it while the cook types moves the cursor; do that on a
/// press only.
bool field(Key key, Text label, std::string& text, const FieldOptions& options = {});

/// Options from `first` on, up to the next group, stand under this title.
struct ChoiceGroup {
  Text title;
  int first = 0;
};
/// One of many, in the list the device itself opens. True when `index` changed.
bool choice(Key key, Text label, int& index, const Labels& labels, std::span<const ChoiceGroup> groups = {},
            bool enabled = true);

/// One of few, all in sight. True when `index` changed.
bool segments(Key key, Text label, int& index, const Labels& labels, bool enabled = true);

/// The same as a bar at the foot of the window, where a thumb reaches it: for the parts of a page. Drawn before them,
/// so that it is read before them. Not there while a keyboard takes its place.
bool foot_bar(Key key, Text label, int& index, const Labels& labels);

/// One of `count` steps in a row, by dragging or by the arrow keys; `words` says where it stands. True when `index`
/// changed.
bool slider(Key key, Text label, int& index, int count, Text words, bool enabled = true);

/// What a grip stands on: step `at` of `first` to `last`, the same in words, and its figure alone.
struct GripValue {
  int at = 0, first = 0, last = 0;
  Text words, figure;
  bool is_upright = false;  // it moves up and down
};
/// What the cook did to it.
struct GripMove {
  bool is_begun = false;      // a finger or the mouse came down on it
  bool is_dragged = false;    // and is now `right` and `down` of where it came down
  float right = 0, down = 0;  // [device px]
  std::optional<int> step;    // chosen by a key
};
/// A grip with its middle at that place of the content, to be dragged or moved by keys: for drawings. While `is_held`
/// its figure stands beside it, clear of the finger.
GripMove grip(Key key, Text label, float x, float y, const GripValue& value, bool is_held);

/// On or off. True when `value` changed.
bool toggle(Key key, Text label, bool& value, bool enabled = true);

// Showing.
// --------------------------------------------------------------------------------------------------------------
enum class Align { kLeft, kRight };
struct TableColumn {
  std::string title;
  Align align = Align::kLeft;
};
/// A small table to read; the first cell of a row names it. A cell may hold '\n'.
void table(Key key, Text caption, std::span<const TableColumn> columns, std::span<const std::vector<std::string>> rows);

/// A drawing `height_em` high (and `width_em` wide; 0: the column). `draw` gets a rectangle in window pixels to draw
/// into, clipped to it; `description` says in words what it shows. Returns its place in the content.
using Drawing = std::function<void(ImDrawList&, const Rect&)>;
Rect picture(Key key, Text description, float width_em, float height_em, const Drawing& draw);

/// From where a body is seen. [°]
struct Turn {
  float round = 0.0f;                              // 0 to 360, to the right
  float above = 0.0f;                              // 0: from the side; 90: from straight above
  long drag = 0;                                   // the one that set them last, and where they stood before it
  float round_before = 0.0f, above_before = 0.0f;  // [°]
};
/// A picture as wide as the column; dragging it sets `turn`.
void turning_picture(Key key, Text description, float height_em, Turn& turn, const Drawing& draw);

/// How far something has come that takes a while, 0 to 1.
void progress(Key key, Text label, double done);

// Layout.
// ---------------------------------------------------------------------------------------------------------------
enum class RegionLook { kPlain, kCard };
/// A named part of the page, which a screen reader can jump to; as a card it lies on a panel.
void begin_region(Key key, Text label, RegionLook look = RegionLook::kCard);
void end_region();

/// How many columns of at least `least_em` fit side by side here, from 1 to `most`.
int columns_that_fit(float least_em, int most);
/// What follows fills columns, one after another; reading order is column by column. After the last column,
/// next_column() goes on beneath what stands in the first. Nests.
void begin_columns(int count, float gap_em = 1.0f);
void next_column();
/// Goes to whichever column is least full: for panels of unlike heights, whose order does not matter to the eye.
void next_panel();
void end_columns();

/// Inside, buttons and toggles stand side by side at their natural width and wrap. For fields side by side use columns.
void begin_flow();
void end_flow();

/// Empty space.
void space(float em);

}  // namespace tinwright::view
