// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The page as it is shipped: one Page, drawn by the views.
#include "app/view/page.h"
#include "web/bridge.h"

int main() {
  static tinwright::view::Page page;
  tinwright::web::set_page([] { draw_page(page); });
}
