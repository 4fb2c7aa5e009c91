// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Drawings to take away.
#include "app/plan/drawing_file.h"
#include "app/view/controls_detail.h"
#include "app/view/views.h"

namespace tinwright::view {
namespace {

/// Several drawings have these buttons; a screen reader also says which it is.
bool save_button(Key title, Text part, Text label) {
  Mirror& mirror = surface().mirror();
  const bool pressed = button(part_key(title, part), label, ButtonLook::kQuiet);
  mirror.at(mirror.nodes().size() - 1).help = mirror.id_of(title);
  return pressed;
}

}  // namespace

void offer_drawing(Key title, const std::string& name, std::vector<Wish>& wishes,
                   const std::function<std::string()>& file) {
  begin_flow();
  if (save_button(title, "svg", "Save as SVG")) {
    wishes.push_back({WishKind::kSaveFile, name + ".svg", std::string(kDrawingMediaType), file()});
  }
  if (save_button(title, "png", "Save as PNG")) {
    wishes.push_back({WishKind::kSavePicture, name + ".png", "image/png", file()});
  }
  end_flow();
}

}  // namespace tinwright::view
