// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Gives a folder that is put together its version: a hash over every file in it, the service worker's own code among them.
// It is written into index.html, and with the list of files and their hashes into the first line of sw.js. Stamping again
// after a change gives the next version. Tests call stamp() too.
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const kWorker = 'sw.js', kPage = 'index.html';
const kVersionLetters = 12;  // 48 bits, plenty for the versions of one page
const kMark = /data-version="[^"]*"/;
const kFirstLine = /^const kVersion=.*\n/;

const sha256 = (bytes) => createHash('sha256').update(bytes);

/** Stamps the folder; gives its version. */
export function stamp(folder) {
  const at = (name) => join(folder, name);
  const html = readFileSync(at(kPage), 'utf8'), code = readFileSync(at(kWorker), 'utf8').replace(kFirstLine, '');
  if (!kMark.test(html)) throw new Error(`${at(kPage)} has no place for its version`);
  writeFileSync(at(kPage), html.replace(kMark, 'data-version=""'));
  const names = readdirSync(folder).filter((name) => name !== kWorker).sort();
  const whole = sha256(code);
  for (const name of names) whole.update(`${name} ${sha256(readFileSync(at(name))).digest('hex')}\n`);
  const version = whole.digest('hex').slice(0, kVersionLetters);
  writeFileSync(at(kPage), html.replace(kMark, `data-version="${version}"`));
  const files = names.map((name) => [name, `sha256-${sha256(readFileSync(at(name))).digest('base64')}`]);
  writeFileSync(at(kWorker), `const kVersion=${JSON.stringify(version)},kFiles=new Map(${JSON.stringify(files)});\n${code}`);
  return version;
}
