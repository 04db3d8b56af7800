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

  const PATIENCE = 8000; // ms that one operation may take

  // A storage is a name and the connection to its database, which browsers close
  // when they like: in the background, when site data are cleared, after an error
  // of their own. It is opened again with the next operation.
  const open = async (name) => {
    const storage = { name, db: null };
    await connected(storage);
    return storage;
  };

  async function connected(storage) {
    if (storage.db) return storage.db;
    const request = indexedDB.open(storage.name, 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore("files", { keyPath: "name" });
      request.result.createObjectStore("parts");
    };
    const db = await done(request);
    db.onclose = () => { if (storage.db === db) storage.db = null; };
    db.onversionchange = () => drop(storage, db);
    storage.db = db;
    return db;
  }

  function drop(storage, db) {
    if (storage.db === db) storage.db = null;
    db.close();
  }

  // What an error of the storage itself is called, and none of a file in it. A
  // connection that gave one is not used again.
  const BROKEN = new Set(["InvalidStateError", "UnknownError", "AbortError", "TimeoutError", "TransactionInactiveError"]);

  const within = (ms, work) => new Promise((resolve, reject) => {
    const late = setTimeout(() => reject(new DOMException("the storage does not answer", "TimeoutError")), ms);
    work.then(resolve, reject).finally(() => clearTimeout(late));
  });

  // on does something with a storage, a second time on a new connection where the
  // first one was broken. What was done may then be done twice.
  async function on(storage, what) {
    for (let again = 0; ; again++) {
      let db = null;
      try {
        db = await within(PATIENCE, connected(storage));
        return await within(PATIENCE, what(db));
      } catch (error) {
        if (!BROKEN.has(error.name)) throw error;
        if (db) drop(storage, db);
        if (again > 0 || error.name === "TimeoutError") throw error;
      }
    }
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
  // begins reports whether the bytes begin with those of all parts, n together.
  function begins(bytes, parts, n) {
    let at = 0;
    for (const part of parts) {
      for (const x of part) if (bytes[at++] !== x) return false;
    }
    return at === n && n <= bytes.length;
  }

  const entry = (name, size) => ({ name, size, modified: Date.now() });

  return {
    open,
    create: (storage, name) => on(storage, (db) => change(db, (files) => { files.add(entry(name, 0)); })),
    // append adds bytes at a place of the file. What is there already, since an
    // append was done whose answer never came, is passed over.
    append: (storage, name, at, bytes) => on(storage, (db) => change(db, (files, parts, give) => {
      files.get(name).onsuccess = (e) => {
        const file = e.target.result;
        if (!file) return give(missing());
        const add = (from) => {
          if (from >= at + bytes.length) return;
          try {
            parts.add(bytes.subarray(from - at), [name, from]);
            files.put(entry(name, at + bytes.length));
          } catch (error) { give(error); }
        };
        if (file.size === at) return add(at);
        parts.getAll(partsOf(name, at, Infinity)).onsuccess = (e) => {
          if (file.size > at && begins(bytes, e.target.result, file.size - at)) return add(file.size);
          give(new DOMException("the file grew under another hand", "ConstraintError"));
        };
      };
    })),
    replace: (storage, name, bytes) => on(storage, (db) => change(db, (files, parts) => {
      parts.delete(partsOf(name, 0, Infinity));
      if (bytes.length > 0) parts.add(bytes, [name, 0]);
      files.put(entry(name, bytes.length));
    })),
    close: async () => {}, // nothing is held between two appends
    remove: (storage, name) => on(storage, (db) => change(db, (files, parts, give) => {
      files.get(name).onsuccess = (e) => {
        if (!e.target.result) return give(missing());
        parts.delete(partsOf(name, 0, Infinity));
        files.delete(name);
      };
    })),
    size: async (storage, name) => {
      const file = await on(storage, (db) => done(db.transaction("files").objectStore("files").get(name)));
      if (!file) throw missing();
      return file.size;
    },
    read: (storage, name, from, to) => on(storage, (db) => done(db.transaction("parts").objectStore("parts").getAll(partsOf(name, from, to), MANY))),
    list: (storage) => on(storage, (db) => done(db.transaction("files").objectStore("files").getAll())),
    free: async () => {
      const { quota, usage } = await navigator.storage.estimate();
      return quota - usage;
    },
    // persist asks the browser not to clear the storage when the phone is full.
    persist: () => navigator.storage.persist?.(), // which no worker may ask
    // persisted resolves with the browser's answer as it stands.
    persisted: () => navigator.storage.persisted(),
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
