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

/// One size of letters, baked at exactly the device's pixels.
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

/// The bytes of the font files; they must outlive the atlas. Empty ones give Dear ImGui's built-in font (tests).
struct FontFiles {
  std::span<const std::byte> regular, strong, signs;
};

/// Fills the font atlas of the current ImGui context for a body text of `em` [device px], replacing what it held.
Faces bake_faces(const FontFiles& files, float em);

}  // namespace tinwright::view
