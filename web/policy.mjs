// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The content security policy, once: serve.mjs sends it as a header, assemble.mjs writes it into the page so that it also
// holds on a host that sends none. A <meta> may not say frame-ancestors, so only the header does.
const directives = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  'trusted-types tinwright',
  "require-trusted-types-for 'script'",
];

export const metaPolicy = directives.join('; ');
export const headerPolicy = [...directives, "frame-ancestors 'none'"].join('; ');
