// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Files: saved by the browser's own download, opened by its own chooser. Nothing leaves the device.
import { make, tell } from './elements.js';

const kMostBytes = 16 * 1024 * 1024;
const kSharp = 3;
const kDownloadStarted = 60000;  // [ms] after which the saved bytes are no longer needed

function save(name, blob) {
  const address = URL.createObjectURL(blob);
  const link = make('a', { href: address, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), kDownloadStarted);
}

export function saveFile({ name, type, text }) {
  save(name, new Blob([text], { type: `${type};charset=utf-8` }));
}

/** A drawing in SVG as a picture, with kSharp pixels for each css px. */
export async function savePicture({ name, type, text }) {
  const image = new Image();
  image.src = `data:image/svg+xml,${encodeURIComponent(new TextDecoder().decode(text))}`;
  await image.decode();
  const canvas = make('canvas', { width: kSharp * image.naturalWidth, height: kSharp * image.naturalHeight });
  canvas.getContext('2d').drawImage(image, 0, 0, canvas.width, canvas.height);
  save(name, await new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('no picture'))), type);
  }));
}

/** The file's text as UTF-8. Null when it is refused; `refuse` is told why. */
export async function readFile(file, refuse = tell) {
  if (file.size > kMostBytes) {
    const megabytes = Math.ceil(file.size / 1024 / 1024);
    refuse(`“${file.name}” is too large: ${megabytes} MB, where at most ${kMostBytes / 1024 / 1024} MB are read. ` +
      'Choose another file.');
    return null;
  }
  try {
    return asUtf8(new Uint8Array(await file.arrayBuffer()));
  } catch {
    refuse(`“${file.name}” could not be read. It may have been moved or changed since; choose it again.`);
    return null;
  }
}

/** Old editors write two bytes a letter, with a mark in front; old pages one byte a letter. */
function asUtf8(bytes) {
  const encoded = (name, options) => new TextDecoder(name, options).decode(bytes);
  let text;
  if (bytes[0] === 0xff && bytes[1] === 0xfe) text = encoded('utf-16le');
  else if (bytes[0] === 0xfe && bytes[1] === 0xff) text = encoded('utf-16be');
  else {
    try {
      text = encoded('utf-8', { fatal: true });
    } catch {
      text = encoded('windows-1252');
    }
  }
  return new TextEncoder().encode(text);
}

/** Lets the cook choose a file; it comes as readFile() gives it. Not at all when none is chosen. */
export function chooseFile(accept, read) {
  const input = make('input', { type: 'file', accept, class: 'unseen', tabindex: '-1', 'aria-hidden': 'true' });
  const done = async () => {
    const [file] = input.files;
    input.remove();
    const text = file && await readFile(file);
    if (text) read(text);
  };
  input.addEventListener('change', done);
  input.addEventListener('cancel', () => input.remove());
  document.body.append(input);
  input.click();
}
