// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A job in a link: compressed and written behind the address's #, which browsers never send anywhere.
import { ask, make, tell } from './elements.js';

const kMark = '#job=';
const kMostBytes = 2 * 1024 * 1024;  // of a job that comes in a link; it may have been made to unpack without end
const kLong = 8000;                  // [characters] some programs cut longer links

async function readAll(stream, most) {
  const reader = stream.getReader();
  const chunks = [];
  let size = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.length;
    if (size > most) {
      await reader.cancel();
      throw new Error('too large');
    }
    chunks.push(value);
  }
  return new Uint8Array(await new Blob(chunks).arrayBuffer());
}

function packed(bytes) {
  return readAll(new Blob([bytes]).stream().pipeThrough(new CompressionStream('deflate-raw')), Infinity);
}

function unpacked(bytes) {
  return readAll(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw')), kMostBytes);
}

function toLetters(bytes) {
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

function fromLetters(letters) {
  return Uint8Array.from(atob(letters.replaceAll('-', '+').replaceAll('_', '/')), (letter) => letter.charCodeAt(0));
}

/** The job in the address, if there is one: its text, or null when it is damaged and the page has said so. */
export async function jobInAddress() {
  const { hash, pathname, search } = location;
  if (!hash.startsWith(kMark)) return undefined;
  history.replaceState(null, '', pathname + search);  // it is taken in once; the page keeps it from now on
  if (!('DecompressionStream' in window)) {
    tell('This browser is too old to open a job from a link. Ask for the job as a file. What was here is still here.');
    return null;
  }
  try {
    return await unpacked(fromLetters(hash.slice(kMark.length)));
  } catch (error) {
    tell(error.message === 'too large' ? 'The job in this link is too large to open. What was here is still here.'
      : 'This link is damaged: it was probably cut or changed on its way. Ask for it again, or for the job as a file. ' +
        'What was here is still here.');
    return null;
  }
}

async function handOver(name, url) {
  if (navigator.share) {
    try {
      await navigator.share({ title: name, url });
      return 'It is passed on.';
    } catch (error) {
      if (error.name === 'AbortError') return '';  // the cook thought better of it
    }
  }
  try {
    await navigator.clipboard.writeText(url);
    return 'The link is copied.';
  } catch {
    const field = make('textarea', { readonly: '', rows: '5', 'aria-label': 'The link' });
    field.value = url;
    await ask('The link to this job', [make('p', {}, 'Copy it from here.'), field], [['', 'Close']],
      () => field.select());
    return 'The link holds the whole job.';
  }
}

export async function shareLink({ name, text }) {
  if (!('CompressionStream' in window)) {
    tell('This browser is too old to make a link. Save the job as a file and pass that on.');
    return;
  }
  const url = location.href.split('#')[0] + kMark + toLetters(await packed(text));
  const outcome = await handOver(name, url);
  if (!outcome) return;
  tell(url.length <= kLong ? `${outcome} It holds the whole job; nothing is stored anywhere else.`
    : `${outcome} It is ${url.length.toLocaleString('en')} characters long, and some programs cut links of more than ` +
      `${kLong.toLocaleString('en')}. If it does not open, pass the job on as a file.`);
}
