// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The page's one Trusted Types policy: what may become markup or a script's address.

const kOwnScripts = ['worker.js', 'sw.js'];
const policy = window.trustedTypes?.createPolicy('tinwright', {
  createHTML: (html) => html,
  createScriptURL: (name) => {
    if (!kOwnScripts.includes(name)) throw new TypeError(`${name} is none of the page's scripts`);
    return name;
  },
});

/** Markup for a DOMParser, which runs nothing of it. */
export const trustedMarkup = (html) => (policy ? policy.createHTML(html) : html);

/** The address of one of the page's own workers. */
export const trustedScript = (name) => (policy ? policy.createScriptURL(name) : name);
