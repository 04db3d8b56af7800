// The worker of keeping-disk.js. It holds files by their synchronous handles,
// which only a worker may have and of which each file has one among all pages:
// while one page appends, no other can.
"use strict";
const held = new Map(); // by storage and name
const PAUSE = 50, TRIES = 10; // ms: a worker that was ended lets go of its files a little later

const key = (storage, name) => `${storage}/${name}`;
const folder = async (storage) => (await navigator.storage.getDirectory()).getDirectoryHandle(storage, { create: true });

async function there(storage, name) {
  try { return await (await folder(storage)).getFileHandle(name); } catch (error) {
    if (error.name === "NotFoundError") return null;
    throw error;
  }
}

// Some browsers had the methods of a handle other than read and write answer
// later, so each is waited for.
async function hold(storage, name, file) {
  for (let again = 1; ; again++) {
    try {
      const handle = await file.createSyncAccessHandle();
      held.set(key(storage, name), handle);
      return handle;
    } catch (error) {
      if (error.name !== "NoModificationAllowedError" || again === TRIES) throw error;
      await new Promise((done) => setTimeout(done, PAUSE));
    }
  }
}

async function drop(storage, name) {
  const handle = held.get(key(storage, name));
  held.delete(key(storage, name));
  if (handle) await handle.close();
}

// create makes a file that no page has, and holds it.
const create = (storage, name) => navigator.locks.request(`${storage}/create`, async () => {
  if (await there(storage, name)) throw new DOMException("the file is there", "ConstraintError");
  const dir = await folder(storage);
  const file = await dir.getFileHandle(name, { create: true });
  try { await hold(storage, name, file); } catch (error) {
    await dir.removeEntry(name);
    throw error;
  }
});

// stands reports whether what the file has from a place on is how the bytes
// begin, since they were written before and the answer never came.
async function stands(handle, at, bytes) {
  const size = await handle.getSize();
  if (size < at || size > at + bytes.length) return false;
  const old = new Uint8Array(size - at);
  return handle.read(old, { at }) === old.length && old.every((x, i) => x === bytes[i]);
}

// put writes bytes and has them on the disk, or leaves the file as long as it was.
// What an earlier try left is written again: after a flush that failed nobody
// knows what of it the disk has.
async function put(handle, at, bytes) {
  const size = await handle.getSize();
  try {
    for (let done = 0; done < bytes.length;) {
      const n = handle.write(bytes.subarray(done), { at: at + done });
      if (n === 0) throw new DOMException("the disk takes no more", "QuotaExceededError");
      done += n;
    }
    await handle.flush();
  } catch (error) {
    try { await handle.truncate(size); } catch { /* the next try begins at the same place */ }
    throw error;
  }
}

// add adds bytes at a place of the file, once however often it is asked to.
// A handle goes on taking bytes after somebody cleared the site's data, so whether
// the file still has its name is looked at behind every write.
async function add(storage, name, at, bytes) {
  let handle = held.get(key(storage, name));
  if (!handle) {
    const file = await there(storage, name);
    if (!file) throw new DOMException("there is no such file", "NotFoundError");
    handle = await hold(storage, name, file);
  }
  if (!await stands(handle, at, bytes)) throw new DOMException("the file grew under another hand", "ConstraintError");
  await put(handle, at, bytes);
  if (await there(storage, name)) return;
  await drop(storage, name);
  throw new DOMException("the file is gone", "NotFoundError");
}

// A handle that gave one of these is not used again.
const BROKEN = new Set(["InvalidStateError", "InvalidAccessError", "UnknownError", "NotReadableError"]);

// append is add, a second time with a new handle where the first one was broken.
async function append(storage, name, at, bytes) {
  for (let again = 0; ; again++) {
    try { return await add(storage, name, at, bytes); } catch (error) {
      if (!BROKEN.has(error.name)) throw error;
      await drop(storage, name).catch(() => {});
      if (again > 0) throw error;
    }
  }
}

async function answer(id, what, storage, name, ...args) {
  try {
    postMessage([id, null, await { create, append, close: drop }[what](storage, name, ...args)]);
  } catch (error) {
    postMessage([id, { name: error.name, message: error.message }]);
  }
}

let last = Promise.resolve(); // one thing after another
onmessage = ({ data }) => { last = last.then(() => answer(...data)); };
