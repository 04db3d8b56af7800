// A Chromium driven over the pipe of its debugging protocol and by nothing else:
// what comes in between keeps every page visible and awake, and here pages are to
// be hidden and frozen as a phone does it.
import { spawn } from "node:child_process";

const PROGRAM = process.env.CHROMIUM || "/usr/bin/chromium";
const PATIENCE = 30000; // ms for an answer

// pipe sends messages to the browser and hands on what it says: answers to who
// asked, events to hear(method, params, session).
function pipe(child, hear) {
  const asked = new Map();
  let number = 0, held = [];
  child.stdio[4].on("data", (piece) => {
    for (let end; (end = piece.indexOf(0)) >= 0; piece = piece.subarray(end + 1)) {
      const said = JSON.parse(Buffer.concat([...held, piece.subarray(0, end)]).toString());
      held = [];
      if (said.id === undefined) { hear(said.method, said.params, said.sessionId); continue; }
      const who = asked.get(said.id);
      asked.delete(said.id);
      if (said.error) who?.reject(new Error(`${who.method}: ${said.error.message}`)); else who?.resolve(said.result);
    }
    if (piece.length > 0) held.push(piece);
  });
  child.stdio[3].on("error", () => {}); // the browser is gone, which close tells
  child.on("exit", () => { for (const { reject } of asked.values()) reject(new Error("the browser has been closed")); });
  return (method, params = {}, sessionId = undefined) => new Promise((resolve, reject) => {
    const id = ++number;
    const late = setTimeout(() => { asked.delete(id); reject(new Error(`${method} was not answered`)); }, PATIENCE);
    const done = (how) => (what) => { clearTimeout(late); how(what); };
    asked.set(id, { method, resolve: done(resolve), reject: done(reject) });
    child.stdio[3].write(`${JSON.stringify({ id, method, params, sessionId })}\0`);
  });
}

// launch starts a browser with one tab, which stays when the others close.
export async function launch(folder, extra = []) {
  const child = spawn(PROGRAM, ["--headless=new", "--no-sandbox", "--no-first-run", "--disable-background-networking",
    "--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--remote-debugging-pipe", `--user-data-dir=${folder}`, ...extra, "about:blank"],
  { detached: true, stdio: ["ignore", "ignore", "ignore", "pipe", "pipe"] });
  const heard = new Map(); // by session, what hears its events
  const send = pipe(child, (method, params, session) => heard.get(session)?.(method, params));
  const gone = new Promise((done) => child.on("exit", done));
  const end = () => { try { process.kill(-child.pid, "SIGKILL"); } catch { /* it is gone */ } };
  process.on("exit", end);
  gone.then(() => process.off("exit", end));
  const { targetInfos } = await send("Target.getTargets");
  const first = targetInfos.find((t) => t.type === "page").targetId;
  return {
    send,
    home: () => send("Target.activateTarget", { targetId: first }),
    tab: () => tab(send, heard),
    kill: async () => { end(); await gone; },
  };
}

// tab opens a tab. said are the lines of its console.
async function tab(send, heard) {
  const { targetId } = await send("Target.createTarget", { url: "about:blank" });
  const { sessionId } = await send("Target.attachToTarget", { targetId, flatten: true });
  const on = (session) => (method, params) => send(method, params, session);
  const said = [], waiting = new Set();
  let worker = null; // the session of the one that keeps files now
  heard.set(sessionId, (method, params) => {
    if (method === "Target.attachedToTarget" && /keeping-work/.test(params.targetInfo.url)) worker = on(params.sessionId);
    if (method === "Runtime.exceptionThrown") said.push(`page: ${params.exceptionDetails.exception?.description}`);
    if (method === "Runtime.consoleAPICalled") said.push(params.args.map((a) => a.value).join(" "));
    for (const look of waiting) look();
  });
  const page = { send: on(sessionId), said };
  await Promise.all([page.send("Page.enable"), page.send("Runtime.enable"),
    page.send("Target.setAutoAttach", { autoAttach: true, waitForDebuggerOnStart: false, flatten: true })]);
  return Object.assign(page, {
    evaluate: async (expression) => (await page.send("Runtime.evaluate", { expression, returnByValue: true, awaitPromise: true })).result.value,
    // inWorker has the worker that keeps files do something, which may be the end of it.
    inWorker: (expression) => { worker?.("Runtime.evaluate", { expression }).catch(() => {}); },
    front: () => send("Target.activateTarget", { targetId }),
    minimise: async (is) => {
      const { windowId } = await send("Browser.getWindowForTarget", { targetId });
      await send("Browser.setWindowBounds", { windowId, bounds: { windowState: is ? "minimized" : "normal" } });
    },
    // line waits for a line of the console that begins with a word, and gives its rest.
    line: (word, ms = 60000) => new Promise((resolve, reject) => {
      const look = () => {
        const found = said.find((s) => s.startsWith(`${word} `));
        if (found === undefined) return;
        clearTimeout(late);
        waiting.delete(look);
        resolve(JSON.parse(found.slice(word.length)));
      };
      const late = setTimeout(() => { waiting.delete(look); reject(new Error(`${word} was not said, but\n${said.join("\n")}`)); }, ms);
      waiting.add(look);
      look();
    }),
    close: async () => { await send("Target.closeTarget", { targetId }).catch(() => {}); heard.delete(sessionId); },
    // crash ends the tab's process, which never answers.
    crash: async () => {
      page.send("Page.crash").catch(() => {});
      await new Promise((done) => setTimeout(done, 100));
      await send("Target.closeTarget", { targetId }).catch(() => {});
      heard.delete(sessionId);
    },
  });
}
