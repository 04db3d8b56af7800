// Has the program fetched and compiled from the first moment on, while the page loads all
// else; start.js takes it.
(() => {
  "use strict";
  if (typeof WebAssembly === "undefined" || !WebAssembly.compileStreaming) return;
  const program = fetch("stillair.wasm", { credentials: "same-origin" }).then((answer) => {
    if (!answer.ok) throw new Error(`${answer.status} ${answer.statusText}`);
    return WebAssembly.compileStreaming(answer);
  });
  program.catch(() => {}); // start.js tells of it
  globalThis.stillairProgram = program;
})();
