// Files in IndexedDB. A file is an entry in "files" (name, size, when changed)
// and its parts in "parts", each under [name, where it starts]. Every change
// is one strict transaction over both, so that a crash leaves the file as it
// was before or after, and a part that another page wrote at the same place
// makes the addition fail and destroys nothing.
globalThis.stillairKeeping = (() => {
  "use strict";
  const STRICT = { durability: "strict" };
  const MANY = 64; // parts read at a time
  const done = (request) => new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

  function open(name) {
    const request = indexedDB.open(name, 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore("files", { keyPath: "name" });
      request.result.createObjectStore("parts");
    };
    return done(request);
  }

  const partsOf = (name, from, to) => IDBKeyRange.bound([name, from], [name, to], false, true);

  // change runs what inside one transaction and resolves when it is on the
  // disk. An error that what throws undoes it all.
  function change(db, what) {
    return new Promise((resolve, reject) => {
      const tx = db.transaction(["files", "parts"], "readwrite", STRICT);
      let why = null;
      tx.oncomplete = () => resolve();
      tx.onabort = () => reject(why || tx.error || new DOMException("the storage gave up", "AbortError"));
      const give = (error) => { why = error; tx.abort(); };
      try { what(tx.objectStore("files"), tx.objectStore("parts"), give); } catch (error) { give(error); }
    });
  }

  const missing = () => new DOMException("there is no such file", "NotFoundError");
  const entry = (name, size) => ({ name, size, modified: Date.now() });

  return {
    open,
    create: (db, name) => change(db, (files) => { files.add(entry(name, 0)); }),
    append: (db, name, at, bytes) => change(db, (files, parts, give) => {
      files.get(name).onsuccess = (e) => {
        const file = e.target.result;
        if (!file) return give(missing());
        if (file.size !== at) return give(new DOMException("the file grew under another hand", "InvalidStateError"));
        parts.add(bytes, [name, at]);
        files.put(entry(name, at + bytes.length));
      };
    }),
    replace: (db, name, bytes) => change(db, (files, parts) => {
      parts.delete(partsOf(name, 0, Infinity));
      if (bytes.length > 0) parts.add(bytes, [name, 0]);
      files.put(entry(name, bytes.length));
    }),
    remove: (db, name) => change(db, (files, parts, give) => {
      files.get(name).onsuccess = (e) => {
        if (!e.target.result) return give(missing());
        parts.delete(partsOf(name, 0, Infinity));
        files.delete(name);
      };
    }),
    size: async (db, name) => {
      const file = await done(db.transaction("files").objectStore("files").get(name));
      if (!file) throw missing();
      return file.size;
    },
    read: (db, name, from, to) => done(db.transaction("parts").objectStore("parts").getAll(partsOf(name, from, to), MANY)),
    list: (db) => done(db.transaction("files").objectStore("files").getAll()),
    free: async () => {
      const { quota, usage } = await navigator.storage.estimate();
      return quota - usage;
    },
    // persist asks the browser not to clear the storage when the phone is full.
    persist: () => navigator.storage.persist(),
    // lock resolves with a function that unlocks and resolves when it is done,
    // or with null where the lock is held. The browser unlocks when the page
    // ends in whatever way.
    lock: (name) => new Promise((resolve, reject) => {
      const over = navigator.locks.request(name, { ifAvailable: true }, (lock) => {
        if (!lock) return resolve(null);
        return new Promise((release) => resolve(() => { release(); return over; }));
      });
      over.catch(reject);
    }),
  };
})();
