// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What the wasm modules call in the page and in the worker; linked in by emcc (--js-library).
mergeInto(LibraryManager.library, {
  page_mirror: function (nodes, count, strings) {
    Module['onMirror'](nodes, count, strings);
  },
  page_wish: function (kind, name, type, text, size) {
    Module['onWish'](kind, name, type, text, size);
  },
  page_errand: function (bytes, size, replaces) {
    Module['onErrand'](bytes, size, replaces);
  },
  errand_progress: function (done) {
    Module['onProgress'](done);
  },
});
