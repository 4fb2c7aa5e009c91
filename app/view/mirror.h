// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The page a second time, as a list of nodes: what a screen reader, the keyboard and the browser's own editing work on.
// Every control records one node while it is drawn; the host turns the list into real elements lying over the canvas
// and posts what the cook did to them back as actions. Nodes stand in reading order.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace tinwright::view {

/// The values are part of the agreement with web/mirror.js; new ones go at the end.
enum class Role : std::uint32_t {
  kRegion,
  kHeading,
  kText,
  kNote,
  kLabel,
  kButton,
  kField,
  kChoice,
  kToggle,
  kRadioGroup,
  kRadio,
  kAnswer,
  kTable,
  kPicture,
  kSlider,
  kProgress,
  kGrip,
};

/// Bits of Node::flags, likewise shared with web/mirror.js.
namespace node_flag {
inline constexpr std::uint32_t kDisabled = 1;
inline constexpr std::uint32_t kChecked = 2;
inline constexpr std::uint32_t kInvalid = 4;
inline constexpr std::uint32_t kDecimal = 8;   // a phone shows its number keyboard
inline constexpr std::uint32_t kLive = 16;     // a change is read out
inline constexpr std::uint32_t kStrong = 32;   // drawn in the semi-bold face
inline constexpr std::uint32_t kUpright = 64;  // a grip that moves up and down
inline constexpr std::uint32_t kAtFoot = 128;  // stays at the window's foot, from which its y is counted
inline constexpr std::uint32_t kTurns = 256;   // a picture: a drag over it is an edit, see web/turning.js
}  // namespace node_flag

/// One element. Strings are offsets into Mirror::strings(), each ending in a zero; 0 is the empty string. All members
/// are four bytes wide, so that the host can read the array as words.
struct Node {
  std::uint32_t id = 0;
  std::uint32_t parent = 0;  // id of the enclosing region or group, 0 for the page
  Role role = Role::kText;
  std::uint32_t flags = 0;
  float x = 0, y = 0, width = 0, height = 0;  // [css px] from the top left of the content; see kAtFoot
  float text_size = 0;                        // [em]
  std::uint32_t level = 0;                    // of a heading
  std::uint32_t key = 0;                      // the stable key, for tests and styles
  std::uint32_t label = 0;
  std::uint32_t value = 0;
  std::uint32_t extra =
      0;  // choice: options; field: hint; answer: explanation; table: measures; slider, grip: their limits
  std::uint32_t help = 0;     // id of the node that explains this one; for a label, of the control it names
  std::uint32_t problem = 0;  // id of the node that says what is wrong
  std::uint32_t hash = 0;     // of all but the place: as long as it stays, so do the element's words and state
};

/// Separators inside one string of a node.
inline constexpr char kBetweenCells = '\x1f';
inline constexpr char kBetweenRows = '\x1e';
inline constexpr char kGroupMark = '\x1d';  // starts an option that is a group's title

/// What the cook did, as the host posts it.
enum class ActionKind : int { kPress = 1, kEdit = 2, kFocus = 3, kBlur = 4, kDrag = 5 };

class Mirror {
 public:
  void begin_frame();

  /// The id of `key` inside the open key scopes. Never 0.
  std::uint32_t id_of(std::string_view key) const;

  /// Records a node and returns its index; edit it through at(), for a later node may move it in memory.
  std::size_t add(std::string_view key, Role role, std::string_view label, std::string_view value = {});
  Node& at(std::size_t index) { return nodes_[index]; }

  /// Copies `text` to the string pool and returns its place.
  std::uint32_t put(std::string_view text);

  /// Nodes added between open() and close() are children of that node.
  void open(std::size_t index) { parents_.push_back(nodes_[index].id); }
  void close() { parents_.pop_back(); }

  /// Keys between push_scope() and pop_scope() may repeat those outside.
  void push_scope(std::string_view key) { scopes_.push_back(id_of(key)); }
  void pop_scope() { scopes_.pop_back(); }

  /// Called by the host. Of several edits (or drags) of one control before a frame, the last wins.
  void post(std::uint32_t id, ActionKind kind, std::string_view text);

  /// True once if that action waits for `id`; for an edit, `text` becomes what the cook entered.
  bool take(std::uint32_t id, ActionKind kind, std::string* text = nullptr);

  /// Of several actions that wait, the later has the larger turn; 0 when none waits for `id`.
  std::size_t turn_of(std::uint32_t id, ActionKind kind) const;

  /// True while the keyboard is on `id`; `shows_ring` also asks whether the browser would show where it is.
  bool is_focused(std::uint32_t id) const { return id == focused_; }
  bool shows_ring(std::uint32_t id) const { return id == focused_ && focus_visible_; }

  /// Ends the frame and tells whether the host has to look at the nodes. Actions on controls that took none are
  /// dropped; a second press of the same button waits for the next frame.
  bool end_frame();
  /// True when this frame answered an action, so what was drawn before it may be out of date.
  bool was_acted_on() const { return !taken_.empty(); }

  const std::vector<Node>& nodes() const { return nodes_; }
  const std::string& strings() const { return strings_; }
  std::string_view text_at(std::uint32_t place) const { return strings_.c_str() + place; }
  /// How many nodes carry an id that an earlier one carries already; anything but 0 is a caller's bug.
  std::size_t duplicate_count() const;

 private:
  struct Action {
    std::uint32_t id;
    ActionKind kind;
    std::string text;
  };

  std::vector<Node> nodes_;
  std::string strings_;
  std::vector<std::uint32_t> parents_, scopes_;
  std::vector<Action> actions_;
  std::vector<std::uint32_t> taken_;  // ids that took an action this frame
  std::uint32_t focused_ = 0;
  bool focus_visible_ = false;
  bool posted_ = false;
  std::uint64_t shown_hash_ = 0;
};

}  // namespace tinwright::view
