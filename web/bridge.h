// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The seam between the browser and the views: a page is a function that draws one frame, and, where it keeps something,
// a few more that hand texts over and take them in. bridge.js calls the C functions that bridge.cpp exports; nothing
// else crosses.
#pragma once

#include <string>
#include <string_view>

namespace tinwright::web {

using DrawPage = void (*)();

/// Takes what a page wishes for: its kind (a number that page and web/desk.js agree on), name, media type and text.
using TakeWish = void (*)(int kind, const std::string& name, const std::string& type, const std::string& text);

/// Takes an errand, the bytes of app/plan/errand.h; `replaces` as in app/view/host.h.
using TakeErrand = void (*)(const std::string& bytes, bool replaces);

/// How much larger than usual everything is drawn [-].
using TextScale = float (*)();

/// What a page that keeps something has beside its drawing. The bridge does not look into the texts.
struct Desk {
  void (*hand_errands)(TakeErrand take);               // those since the last call, each once
  void (*take_outcome)(std::string_view bytes);        // of an errand
  void (*take_progress)(double done);                  // of the errand that is running, 0 to 1
  void (*errands_failed)();                            // there is nobody to do them
  void (*hand_wishes)(TakeWish take);                  // those since the last call, each once
  bool (*take_in)(int source, std::string_view text);  // false: refused, and the page says why
  bool (*is_refusal)();                                // the last text that came in was refused
  const std::string& (*kept)();                        // what is to be kept; it stays where it is until the next change
  long (*edition)();                                   // grows with every change of what is to be kept
};

/// Says what the page is; a page without a desk wishes for nothing. Call it from main(), before the browser asks for
/// the first frame. The desk has to outlive the page.
void set_page(DrawPage draw, const Desk* desk = nullptr, TextScale text_scale = nullptr);

}  // namespace tinwright::web
