// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What the wasm module calls in the page; linked in by emcc (--js-library).
mergeInto(LibraryManager.library, {
  page_mirror: function (nodes, count, strings) {
    Module['onMirror'](nodes, count, strings);
  },
  page_wish: function (kind, name, type, text, size) {
    Module['onWish'](kind, name, type, text, size);
  },
});
