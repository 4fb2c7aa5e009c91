// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// How the page looks: its colours by day and by night, and its letters. Sizes are in em, the height of the body text.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>

struct ImFont;

namespace tinwright::view {

struct Colour {
  std::uint8_t red = 0, green = 0, blue = 0;

  bool operator==(const Colour&) const = default;
};

/// The colour as Dear ImGui packs it; `opacity` 0 to 1.
std::uint32_t packed(Colour colour, float opacity = 1.0f);

/// Contrast of two colours, 1 to 21. Source: WCAG 2.2, "relative luminance" and "contrast ratio". Text needs 4.5
/// (success criterion 1.4.3), the outline of a control 3 (1.4.11).
double contrast_ratio(Colour a, Colour b);

struct Palette {
  Colour page;         // behind everything
  Colour card;         // panels
  Colour well;         // fields and other things to fill in
  Colour line;         // outline of a control
  Colour rule;         // decorative lines; carries no meaning
  Colour ink;          // text
  Colour soft_ink;     // explanations and labels
  Colour accent;       // the one colour that says "press here" or "chosen"
  Colour accent_over;  // the same under the pointer
  Colour on_accent;    // text on it
  Colour tint;         // a quiet area in the accent's hue: answers, plain notes
  Colour caution, caution_tint;
  Colour error, error_tint;
  Colour disabled_ink;  // exempt from the contrast rule, kept above 3 all the same
};

const Palette& day_palette();
const Palette& night_palette();

/// One size of letters, baked at exactly the device's pixels, or where they are very large, at fewer.
struct Face {
  ImFont* font = nullptr;
  float size = 0;  // [device px]
};

struct Faces {
  Face small, body, strong, head, big;
};

/// Sizes of the faces [em].
inline constexpr float kSmallText = 0.875f;
inline constexpr float kHeadText = 1.25f;
inline constexpr float kBigText = 1.6f;

/// How much larger the letters are that are read from a metre away, with the page on the worktop. Their capitals should
/// fill 16 minutes of arc at least, 20 to 22 for reading (ISO 9241-3; the same in NUREG-0700 rev. 2, 1.3.1-4). Body
/// text of 18 css px has capitals of 0.727 em (Inter's OS/2 table), and a css px is 1/96 in (CSS Values and Units
/// 4, 6.2): 3.46 mm, which is 11.9 minutes at 1 m. Times 1.7 it is 5.9 mm and 20.2 minutes, small text 17.7. On a
/// phone, whose css px is nearer 0.16 mm, the same holds at 60 cm.
inline constexpr float kLargeText = 1.7f;

/// The bytes of the font files; they must outlive the atlas. Empty ones give Dear ImGui's built-in font (tests).
struct FontFiles {
  std::span<const std::byte> regular, strong, signs;
};

/// Fills the font atlas of the current ImGui context for a body text of `em` [device px], replacing what it held. From
/// kMostBaked on, letters are drawn larger than they were baked, which bounds the atlas.
inline constexpr float kMostBaked = 80.0f;  // [device px]
Faces bake_faces(const FontFiles& files, float em);

}  // namespace tinwright::view
