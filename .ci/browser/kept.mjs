// Puts files where the app keeps its own, before it is opened for the first time.

const encoded = (what) => Buffer.from(what).toString("base64");

// store takes files by name, as text or bytes (sensors/device/web/keeping.js), from a
// page of the origin that is not the app.
export async function store(protocol, origin, files) {
  await protocol.send("Page.enable");
  const loaded = new Promise((done) => protocol.once("Page.loadEventFired", done));
  await protocol.send("Page.navigate", { url: `${origin}/no-such-page` });
  await loaded;
  const all = Object.fromEntries(Object.entries(files).map(([name, what]) => [name, encoded(what)]));
  const { exceptionDetails } = await protocol.send("Runtime.evaluate", { awaitPromise: true, expression: `new Promise((done, fail) => {
    const request = indexedDB.open("stillair", 1);
    request.onupgradeneeded = () => { request.result.createObjectStore("files", { keyPath: "name" }); request.result.createObjectStore("parts"); };
    request.onerror = fail;
    request.onsuccess = () => {
      const tx = request.result.transaction(["files", "parts"], "readwrite");
      for (const [name, text] of Object.entries(${JSON.stringify(all)})) {
        const bytes = Uint8Array.from(atob(text), (c) => c.charCodeAt(0));
        tx.objectStore("files").put({ name, size: bytes.length, modified: Date.now() });
        tx.objectStore("parts").put(bytes, [name, 0]);
      }
      tx.onerror = fail;
      tx.oncomplete = () => { request.result.close(); done(); };
    };
  })` });
  if (exceptionDetails) throw new Error(exceptionDetails.text);
}
