// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The page's colours can be told apart by those who see little contrast.
#include <doctest/doctest.h>

#include "app/view/theme.h"

using namespace tinwright::view;

namespace {

constexpr double kTextContrast = 4.5;     // WCAG 2.2, success criterion 1.4.3 (AA)
constexpr double kControlContrast = 3.0;  // WCAG 2.2, success criterion 1.4.11 (AA)

}  // namespace

TEST_CASE("contrast of black on white is 21 and of a colour on itself 1") {
  // WCAG 2.2, definition of "contrast ratio": the range is 1 to 21.
  CHECK(contrast_ratio({0, 0, 0}, {255, 255, 255}) == doctest::Approx(21.0));
  CHECK(contrast_ratio({90, 90, 90}, {90, 90, 90}) == doctest::Approx(1.0));
}

TEST_CASE("contrast does not depend on which colour is in front") {
  CHECK(contrast_ratio({31, 101, 94}, {255, 252, 246}) ==
        doctest::Approx(contrast_ratio({255, 252, 246}, {31, 101, 94})));
}

TEST_CASE("every text of both palettes can be read on what it stands on") {
  for (const Palette* palette : {&day_palette(), &night_palette()}) {
    const Palette& p = *palette;
    CAPTURE(palette == &day_palette());
    for (const Colour& ground : {p.page, p.card, p.well, p.tint, p.caution_tint, p.error_tint}) {
      CHECK(contrast_ratio(p.ink, ground) >= kTextContrast);
    }
    for (const Colour& ground : {p.page, p.card, p.well, p.tint}) {
      CHECK(contrast_ratio(p.soft_ink, ground) >= kTextContrast);
      CHECK(contrast_ratio(p.accent, ground) >= kTextContrast);
      CHECK(contrast_ratio(p.error, ground) >= kTextContrast);
    }
    CHECK(contrast_ratio(p.accent, p.rule) >= kTextContrast);
    CHECK(contrast_ratio(p.on_accent, p.accent) >= kTextContrast);
    CHECK(contrast_ratio(p.on_accent, p.accent_over) >= kTextContrast);
    CHECK(contrast_ratio(p.caution, p.caution_tint) >= kTextContrast);
    CHECK(contrast_ratio(p.error, p.error_tint) >= kTextContrast);
  }
}

TEST_CASE("the outline of every control stands out from its surroundings") {
  for (const Palette* palette : {&day_palette(), &night_palette()}) {
    const Palette& p = *palette;
    CAPTURE(palette == &day_palette());
    for (const Colour& ground : {p.page, p.card, p.well}) {
      CHECK(contrast_ratio(p.line, ground) >= kControlContrast);
      CHECK(contrast_ratio(p.disabled_ink, ground) >= kControlContrast);
    }
  }
}
