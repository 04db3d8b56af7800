// The worker of analysing.js: runs the program once more, which finds here what it
// is to do and leaves its answer.
"use strict";
const OFTEN = 200; // ms between two words on how far it is
importScripts("wasm_exec.js", "keeping.js", "keeping-disk.js");

// The toolkit asks for the page's body when it is loaded, though nothing is drawn here.
globalThis.document = { body: { style: { setProperty() {} } }, getElementById: () => null };

onmessage = async ({ data: { program, parts } }) => {
  const answer = [];
  let told = 0, failed = "the program ended without an answer", whole = false;
  globalThis.stillairWork = {
    parts,
    tell: (share) => {
      if (performance.now() - told < OFTEN) return;
      told = performance.now();
      postMessage({ share });
    },
    add: (part) => { answer.push(part); },
    done: () => { whole = true; },
    fail: (why) => { failed = why; },
  };
  try {
    const go = new Go();
    go.argv = ["stillair", "work"];
    await go.run(await WebAssembly.instantiate(program, go.importObject));
  } catch (e) { failed = e.message; }
  if (whole) postMessage({ answer }, answer.map((p) => p.buffer)); else postMessage({ failed });
};
