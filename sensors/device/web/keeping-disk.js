// Files in the private folder that a browser gives a page (WHATWG, File System
// Standard), for what grows: keeping-work.js, a worker, holds each file by a
// synchronous handle, so that a busy page holds no write up. Reading, listing
// and deleting need no handle and are done here, with the functions that
// keeping.js has for the same.
globalThis.stillairDisk = (() => {
  "use strict";
  // How long the worker may take for an answer, ms: at first as long as a ride may
  // lose, since browsers end workers without a word; twice as long after each that
  // took too long, since a disk may be slow.
  const PATIENCE = 1000, MOST_PATIENCE = 8000;
  const BUSY = 100; // ms in which a page that was busy hears an answer that is there
  const MOST = 1 << 20; // bytes read at a time
  const waiting = new Map(); // by number, who asked the worker
  let worker = null, asked = 0, patience = PATIENCE;

  // give ends the worker, whose handles the browser then frees, and refuses all
  // that wait for it. The next question starts another.
  function give(error) {
    worker?.terminate();
    worker = null;
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
  }

  function start() {
    worker = new Worker("keeping-work.js");
    worker.onmessage = ({ data: [id, error, value] }) => {
      const { resolve, reject } = waiting.get(id);
      waiting.delete(id);
      patience = PATIENCE;
      if (error) reject(new DOMException(error.message, error.name)); else resolve(value);
    };
    worker.onerror = (e) => { e.preventDefault(); give(new DOMException("the worker does not run", "NotSupportedError")); };
  }

  async function ask(...what) {
    if (!worker) start();
    const id = ++asked;
    const tooLate = () => {
      patience = Math.min(2 * patience, MOST_PATIENCE);
      give(new DOMException("the storage does not answer", "TimeoutError"));
    };
    let late = setTimeout(() => { late = setTimeout(tooLate, BUSY); }, patience);
    try {
      return await new Promise((resolve, reject) => {
        waiting.set(id, { resolve, reject });
        worker.postMessage([id, ...what]);
      });
    } finally { clearTimeout(late); }
  }

  const folder = async (storage) => (await navigator.storage.getDirectory()).getDirectoryHandle(storage, { create: true });
  const file = async (storage, name) => (await (await folder(storage)).getFileHandle(name)).getFile();

  // part gives bytes of a file. One that grows meanwhile is another file to the
  // browser, which then gives nothing.
  async function part(storage, name, from, to) {
    for (let again = 0; ; again++) {
      try {
        return new Uint8Array(await (await file(storage, name)).slice(from, to).arrayBuffer());
      } catch (error) {
        if (error.name !== "NotReadableError" || again === 5) throw error;
      }
    }
  }

  return {
    // open is refused where the browser has no such folder, or not now.
    open: async (name) => { await folder(name); return name; },
    create: (storage, name) => ask("create", storage, name),
    append: (storage, name, at, bytes) => ask("append", storage, name, at, bytes),
    close: (storage, name) => ask("close", storage, name),
    remove: async (storage, name) => (await folder(storage)).removeEntry(name),
    size: async (storage, name) => (await file(storage, name)).size,
    read: async (storage, name, from, to) => {
      const bytes = await part(storage, name, from, Math.min(to, from + MOST));
      return bytes.length > 0 ? [bytes] : [];
    },
    list: async (storage) => {
      const found = [];
      for await (const [name, handle] of (await folder(storage)).entries()) {
        const { size, lastModified: modified } = await handle.getFile();
        found.push({ name, size, modified });
      }
      return found;
    },
  };
})();
