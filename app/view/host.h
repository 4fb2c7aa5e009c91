// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What the page asks of whatever it runs in, and takes from it: files, the printer, the clipboard, storage. The page
// says what it wants; how it is done, and whether it can be, is the host's.
#pragma once

#include <string>

namespace tinwright::view {

/// The values are part of the agreement with web/desk.js; new ones go at the end.
enum class WishKind : int {
  kSaveFile,     // save `text` as a file called `name`, of the media type `type`
  kPrint,        // print `text`, a whole HTML page called `name`
  kShareLink,    // a link to this page that carries `text` (the document), put where the cook can pass it on
  kOpenFile,     // let the cook choose a file, and give its text to take_in(kJobFile)
  kPasteRecipe,  // let the cook paste or drop a recipe, or choose a saved page, and give it to take_in(kRecipe)
  kSavePicture,  // save `text`, a drawing in SVG, as a picture of the media type `type` called `name`
};

struct Wish {
  WishKind kind = WishKind::kSaveFile;
  std::string name, type, text;
};

/// What the page wants done elsewhere: bytes for run_errand (app/plan/errand.h). One that `replaces` takes the place of
/// an earlier such that is not done yet; empty bytes only take that away.
struct SentErrand {
  std::string bytes;
  bool replaces = false;
};

/// Where a text comes from; values shared likewise.
enum class Source : int {
  kJobFile,  // a file the cook opened
  kRecipe,   // somebody's recipe: a saved page, JSON-LD or plain text
  kKept,     // what this device kept from the last visit
  kLink,     // a link's fragment
};

}  // namespace tinwright::view
