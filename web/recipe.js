// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The dialog that takes somebody's recipe: pasted, dropped, or from a file. What is read out of it is decided in C++.
import { ask, make } from './elements.js';
import { readFile } from './files.js';

let typed = '';  // the last time, to be put right should it not have been read

/** Gives the recipe's text to `read`; nothing when the cook leaves. `isRefusal` says whether the last one could not be read. */
export async function askForRecipe(read, isRefusal) {
  const field = make('textarea', { id: 'recipe-text', rows: '10', spellcheck: 'false',
    'aria-describedby': 'recipe-wrong' });
  const file = make('input', { id: 'recipe-file', type: 'file',
    accept: '.html,.htm,.json,.txt,text/html,application/json,application/ld+json,text/plain' });
  const wrong = make('p', { id: 'recipe-wrong', class: 'wrong', role: 'alert' });
  field.value = isRefusal() ? typed : '';
  let close = () => {};
  let bytes = null;
  const takeFile = async (chosen) => {
    bytes = chosen && await readFile(chosen, (why) => { wrong.textContent = why; });
    if (bytes) close('read');
  };
  file.addEventListener('change', () => takeFile(file.files[0]));
  const takeDropped = (event) => {
    const files = (event.dataTransfer ?? event.clipboardData).files;
    if (!files.length) return;  // text goes into the field by itself
    event.preventDefault();
    takeFile(files[0]);
  };
  field.addEventListener('paste', takeDropped);
  const answer = await ask('Read a recipe', [
    make('label', { for: 'recipe-text' }, 'The recipe’s text, with amounts and steps'),
    field,
    wrong,
    make('label', { for: 'recipe-file' }, 'Or a file: a saved page, JSON or plain text. It is read at once.'),
    file,
  ], [['read', 'Read'], ['', 'Cancel']], (closeWith, [readButton]) => {
    close = closeWith;
    const dialog = readButton.closest('dialog');
    dialog.addEventListener('dragover', (event) => event.preventDefault());
    dialog.addEventListener('drop', takeDropped);
    field.focus();
    readButton.addEventListener('click', (event) => {
      if (field.value.trim()) return;
      event.stopImmediatePropagation();
      wrong.textContent = 'There is nothing to read yet: paste the recipe, or choose a file.';
      field.focus();
    }, { capture: true });
  });
  if (answer !== 'read') return;
  typed = bytes ? '' : field.value;
  read(bytes ?? new TextEncoder().encode(field.value));
}
