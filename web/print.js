// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The bench card on paper. The card is a whole HTML page; its elements go into a shadow root and its rules into a
// constructed style sheet, so that neither meets those of this page and the policy stays as strict as it is. page.css
// shows it in print only, in place of everything else.
import { trustedMarkup } from './trusted.js';

const kNeverWanted = 'script, iframe, frame, object, embed, link, meta, base, form, template';
const kPrefix = 'data-card-';
const ownTitle = document.title;

/**
 * The card's element tree and its style. Inline styles are put by under another name, for the policy refuses them when they
 * are parsed. A card has no scripts; should it ever, nothing of them is left.
 */
function parsed(html) {
  const styles = [];
  const plain = html
    .replace(/<style[^>]*>([^]*?)<\/style>/gi, (_, style) => { styles.push(style); return ''; })
    .replace(/<[^>]*>/g, (tag) => tag.replace(/\s(style|on\w+)\s*=/gi, ` ${kPrefix}$1=`));
  const card = new DOMParser().parseFromString(trustedMarkup(plain), 'text/html');
  for (const element of card.querySelectorAll(kNeverWanted)) element.remove();
  const root = document.importNode(card.documentElement, true);
  for (const styled of root.querySelectorAll(`[${kPrefix}style]`)) {
    styled.style.cssText = styled.getAttribute(`${kPrefix}style`);  // which by script is allowed
  }
  return { root, style: styles.join('\n') };
}

/** The rules of the card's pages (@page) hold in the document only. A shadow root has no :root, but an html in it. */
function rulesOf(style) {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(style.replaceAll(':root', 'html'));
  return { sheet, pages: [...sheet.cssRules].filter(isPage).map((rule) => rule.cssText) };
}

const isPage = (rule) => rule instanceof CSSPageRule;
const ownSheet = () => document.styleSheets[0];

function takeAway() {
  document.getElementById('card')?.remove();
  document.documentElement.classList.remove('prints-card');
  document.title = ownTitle;
  const own = ownSheet();
  for (let i = own.cssRules.length - 1; i >= 0; --i) if (isPage(own.cssRules[i])) own.deleteRule(i);
}

export function printCard({ name, text }) {
  takeAway();
  const card = parsed(new TextDecoder().decode(text));
  const { sheet, pages } = rulesOf(card.style);
  const host = document.createElement('div');
  host.id = 'card';
  const shadow = host.attachShadow({ mode: 'open' });
  shadow.adoptedStyleSheets = [sheet];
  shadow.append(card.root);
  document.body.append(host);
  document.documentElement.classList.add('prints-card');
  document.title = name;  // printers and PDF files are named after it
  for (const rule of pages) ownSheet().insertRule(rule, ownSheet().cssRules.length);
  window.print();
  // Some devices return at once and print later. What comes back for certain is the cook.
  for (const kind of ['pointerdown', 'keydown']) window.addEventListener(kind, takeAway, { once: true, capture: true });
}
