// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Runs in the worker, before the module's own script: bytes of an errand in, bytes of its outcome out.

let module = null;
const early = [];

function run(bytes) {
  const place = module._errand_alloc(bytes.length);
  module.HEAPU8.set(bytes, place);
  const size = module._errand_run(place, bytes.length);
  const at = module._errand_outcome();
  const outcome = module.HEAPU8.slice(at, at + size);
  self.postMessage({ outcome }, [outcome.buffer]);
}

self.addEventListener('message', ({ data }) => {
  if (module) run(data);
  else early.push(data);
});

self.Module = {
  onProgress: (done) => self.postMessage({ progress: done }),
  onRuntimeInitialized() {
    module = self.Module;
    early.splice(0).forEach(run);
  },
  onAbort(reason) { throw new Error(String(reason)); },
};
