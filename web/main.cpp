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

constexpr web::Desk kDesk{
    .hand_wishes = hand_wishes,
    .take_in = take_in_text,
    .kept = []() -> const std::string& { return kept_text(page()); },
    .edition = [] { return page().workspace.edition; },
};

}  // namespace
}  // namespace tinwright

int main() {
  tinwright::page().utc_minutes = [] { return static_cast<std::int64_t>(std::time(nullptr) / 60); };
  tinwright::web::set_page([] { draw_page(tinwright::page()); }, &tinwright::kDesk);
}
