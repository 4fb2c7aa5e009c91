// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The page as it is shipped: one Page, drawn by the views, and its desk.
#include <ctime>
#include <utility>

#include "app/view/page.h"
#include "web/bridge.h"

namespace tinwright {
namespace {

view::Page& page() {
  static view::Page only;
  return only;
}

void hand_wishes(web::TakeWish take) {
  for (const view::Wish& wish : std::exchange(page().wishes, {})) {
    take(static_cast<int>(wish.kind), wish.name, wish.type, wish.text);
  }
}

bool take_in_text(int source, std::string_view text) {
  take_in(page(), static_cast<view::Source>(source), text);
  return !page().is_refusal;
}

void hand_errands(web::TakeErrand take) {
  for (const view::SentErrand& errand : std::exchange(page().errands, {})) take(errand.bytes, errand.replaces);
}

constexpr web::Desk kDesk{
    .hand_errands = hand_errands,
    .take_outcome = [](std::string_view bytes) { take_outcome(page(), bytes); },
    .take_progress = [](double done) { take_progress(page(), done); },
    .errands_failed = [] { errands_failed(page()); },
    .hand_wishes = hand_wishes,
    .take_in = take_in_text,
    .is_refusal = [] { return page().is_refusal; },
    .kept = []() -> const std::string& { return kept_text(page()); },
    .edition = [] { return page().workspace.edition; },
};

}  // namespace
}  // namespace tinwright

int main() {
  tinwright::page().utc_minutes = [] { return static_cast<std::int64_t>(std::time(nullptr) / 60); };
  tinwright::web::set_page([] { draw_page(tinwright::page()); }, &tinwright::kDesk,
                           [] { return text_scale(tinwright::page()); });
}
