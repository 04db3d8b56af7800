// The app as a rider has it: a phone's browser on a page that app/desk serves,
// touched by fingers. What is on the screen is found by the words that the app
// tells a screen reader.
import { spawn } from "node:child_process";
import { writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { page, sleep } from "./chrome.mjs";
import { ROOT } from "./testpage.mjs";

export const AGENT = "Mozilla/5.0 (Linux; Android 14; Phone) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/156.0.0.0 Mobile Safari/537.36";

function freePort() {
  return new Promise((done) => {
    const s = createServer().listen(0, "127.0.0.1", () => { const { port } = s.address(); s.close(() => done(port)); });
  });
}

// desk serves the page as a rider's laptop does, until stop.
export async function desk(program, ...more) {
  const port = await freePort();
  const child = spawn(program, ["phone", "--here", "--port", String(port), ...more], { cwd: ROOT, stdio: ["ignore", "pipe", "inherit"] });
  const gone = new Promise((done) => child.on("exit", done));
  const end = () => child.kill();
  process.on("exit", end);
  gone.then(() => process.off("exit", end));
  await new Promise((resolve, reject) => {
    let said = "";
    child.stdout.on("data", (d) => { said += d; if (said.includes("https://")) resolve(); });
    child.on("exit", (code) => reject(new Error(`desk phone ended with ${code}`)));
  });
  return { origin: `https://127.0.0.1:${port}`, stop: async () => { child.kill("SIGINT"); await gone; } };
}

// What a test looks at beside the screen: the memory of the program, in bytes, and of
// each worker that analyses from when to when it lived, in ms on the page's clock, and
// how often it said how far it is; and the worker that began last.
const LOOK_ON = () => {
  const make = WebAssembly.instantiate;
  WebAssembly.instantiate = async (...a) => {
    const made = await make.apply(WebAssembly, a);
    globalThis.memoryOf = () => made.exports.mem.buffer.byteLength;
    return made;
  };
  globalThis.analyses = [];
  const Usual = globalThis.Worker;
  globalThis.Worker = class extends Usual {
    constructor(name) {
      super(name);
      if (name !== "analysing-work.js") return;
      this.life = { from: performance.now(), to: null, shares: 0 };
      this.addEventListener("message", ({ data }) => { if (data.share !== undefined) this.life.shares++; });
      globalThis.analyses.push(this.life);
      globalThis.analysing = this;
    }
    terminate() {
      super.terminate();
      if (this.life) this.life.to = performance.now();
    }
  };
};

// app opens the app in a browser; before is called with the protocol before
// the page loads.
export async function app(chrome, origin, before, screen, language = "en-IE") {
  const { page: p, protocol } = await page(chrome, origin, screen);
  await protocol.send("Emulation.setUserAgentOverride", { userAgent: AGENT, platform: "Linux armv81", acceptLanguage: language });
  const said = [];
  p.on("console", (m) => said.push(m.text()));
  p.on("pageerror", (e) => said.push(`page: ${e.message}`));
  await p.addInitScript(() => {
    // The first picture is the first one with words or signs, each of which is a
    // texture: the empty window that comes before it tells a rider nothing.
    let filled = false;
    for (const kind of [globalThis.WebGLRenderingContext, globalThis.WebGL2RenderingContext]) {
      const fill = kind.prototype.texImage2D;
      kind.prototype.texImage2D = function (...a) { filled = true; return fill.apply(this, a); };
      const draw = kind.prototype.drawArrays;
      kind.prototype.drawArrays = function (...a) {
        if (filled && !globalThis.drawn) { globalThis.drawn = true; requestAnimationFrame(() => { globalThis.firstFrame = performance.now(); }); }
        return draw.apply(this, a);
      };
    }
  });
  await p.addInitScript(() => {
    globalThis.stretches = [];
    let made;
    Object.defineProperty(globalThis, "Go", { get: () => made, set(go) {
      made = go;
      const resume = go.prototype._resume;
      go.prototype._resume = function () {
        const began = performance.now();
        resume.call(this);
        globalThis.stretches.push(performance.now() - began);
      };
    } });
  });
  await p.addInitScript(LOOK_ON);
  await protocol.send("Performance.enable", { timeDomain: "threadTicks" });
  await before(protocol);
  await p.goto(`${origin}/`);
  return { p, protocol, said };
}

// effort starts to measure what the page costs and returns what tells it: the
// share of a core that the page's own thread takes, and how long in ms the
// program keeps the page each time it is woken, be it to draw or to compute.
export async function effort({ p, protocol }) {
  const busy = async () => (await protocol.send("Performance.getMetrics")).metrics.find((m) => m.name === "TaskDuration").value;
  const before = await busy(), began = performance.now();
  await p.evaluate(() => { globalThis.stretches.length = 0; });
  return async () => {
    const share = (await busy() - before) / ((performance.now() - began) / 1000);
    const sorted = (await p.evaluate("globalThis.stretches")).sort((a, b) => a - b);
    const at = (part) => sorted[Math.floor(part * (sorted.length - 1))];
    return { share, woken: sorted.length, middle: at(0.5), most: at(0.99), longest: at(1) };
  };
}

// firstPicture is when the page's first picture stood, ms: what a screen reader gets can
// be there a moment earlier.
export const firstPicture = ({ p }) => p.evaluate(() => new Promise((done) => {
  const look = () => (globalThis.firstFrame ? done(globalThis.firstFrame) : setTimeout(look, 20));
  look();
}));

// foreign has the page try to load what is not its own and to run a script that
// is written into it. It returns what the browser refused, once for the policy
// in the answer's header and once for that in the page, and whether any ran.
export const foreign = ({ p }) => p.evaluate(async () => {
  const refused = new Set();
  document.addEventListener("securitypolicyviolation", (e) =>
    refused.add(`${/frame-ancestors/.test(e.originalPolicy) ? "header" : "page"} ${e.effectiveDirective}`));
  const add = (kind, what) => document.body.append(Object.assign(document.createElement(kind), what));
  const elsewhere = "https://localhost:9";
  add("script", { src: `${elsewhere}/a.js` });
  add("script", { textContent: "globalThis.ran = true" });
  add("img", { src: `${elsewhere}/a.png` });
  await fetch(elsewhere).catch(() => {});
  await new Promise((done) => setTimeout(done, 500));
  return { refused: [...refused].sort(), ran: globalThis.ran === true };
});

// things lists what the screen reader gets.
export const things = ({ p }) => p.evaluate(() => [...document.querySelectorAll("#reading > *")].map((e) => {
  const r = e.getBoundingClientRect();
  const field = e.matches("input, textarea");
  return { name: field ? e.getAttribute("aria-label") : e.textContent, value: field ? e.value : undefined, note: e.getAttribute("aria-description"),
    keys: e.inputMode, on: e.ariaChecked ?? e.ariaCurrent, kind: e.dataset.kind,
    press: field || e.tagName === "BUTTON", x: r.left + r.width / 2, y: r.top + r.height / 2 };
}));

// matches holds a name against a thing's, or an expression against its name and,
// of a field, its value.
const matches = (thing, name) => (name instanceof RegExp ? name.test(thing.value ? `${thing.name}: ${thing.value}` : thing.name) : thing.name === name);
const find = (list, name) => list.find((t) => t.press && matches(t, name)) || list.find((t) => matches(t, name));

// picture saves what is on the screen. (The page's own way to do so would change
// the size of the screen.)
export async function picture({ protocol }, path) {
  const { data } = await protocol.send("Page.captureScreenshot", { format: "png" });
  writeFileSync(path, Buffer.from(data, "base64"));
}

// see waits until something with this name is on the screen.
export async function see(phone, name, ms = 60000) {
  const until = performance.now() + ms;
  for (;;) {
    const found = find(await things(phone), name);
    if (found) return found;
    if (performance.now() > until) {
      throw new Error(`${name} is not on the screen, but ${(await things(phone)).map((t) => t.name).join(" | ")}\n${phone.said.join("\n")}`);
    }
    await sleep(200);
  }
}

const finger = (x, y) => [{ x, y, radiusX: 8, radiusY: 8, force: 0.5, id: 1 }];

// touch taps what has this name with a finger, after it has stood still.
export async function touch(phone, name, ms) {
  let at = await see(phone, name, ms);
  for (let n = 0; n < 10; n++) {
    await sleep(450);
    const now = await see(phone, name, ms);
    if (now.x === at.x && now.y === at.y) break;
    at = now;
  }
  await phone.protocol.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: finger(at.x, at.y) });
  await sleep(60);
  await phone.protocol.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  await sleep(300);
  await frames(phone, 4);
}

// pressed lays a finger on what has this name, takes it away before it counts, and tells
// after how long, in ms, the page shows that it is pressed: the middle of five.
export async function pressed(phone, name) {
  const { x, y } = await see(phone, name), took = [];
  const send = (type) => phone.protocol.send("Input.dispatchTouchEvent", { type, touchPoints: type === "touchStart" ? finger(x, y) : [] });
  while (took.length < 5) {
    await phone.p.evaluate(() => {
      globalThis.shaded = new Promise((done) => document.addEventListener("touchstart", (e) => requestAnimationFrame(() =>
        done(document.querySelector("#reading > .pressed") ? performance.now() - e.timeStamp : null)), { once: true }));
    });
    await send("touchStart");
    took.push(await phone.p.evaluate("globalThis.shaded") ?? Infinity);
    await send("touchCancel");
  }
  return took.toSorted((a, b) => a - b)[2];
}

// back goes back as the phone's gesture does, and waits until the program has
// answered: the browser's history is then as deep as it says.
export async function back(phone) {
  await phone.p.evaluate(() => history.back());
  await sleep(700);
  return phone.p.evaluate(() => history.state?.deep ?? 0);
}

// frames waits until the page has drawn. The toolkit takes a tap when it draws
// and a letter at once, so where drawing is slow letters would overtake a tap.
const frames = ({ p }, many) => p.evaluate((n) => new Promise((done) => {
  const next = () => (n-- > 0 ? requestAnimationFrame(next) : done());
  next();
}), many);

// drag moves a finger from one place to another.
export async function drag(phone, x, from, to) {
  const send = (type, y) => phone.protocol.send("Input.dispatchTouchEvent", { type, touchPoints: type === "touchEnd" ? [] : finger(x, y) });
  await send("touchStart", from);
  for (let n = 1; n <= 10; n++) { await send("touchMove", from + ((to - from) * n) / 10); await sleep(30); }
  await sleep(120); // the finger rests, so that the list does not run on
  await send("touchEnd", to);
  await sleep(700);
}

// scrollTo drags the page upwards until the name is to be seen.
export async function scrollTo(phone, name) {
  for (let n = 0; n < 12; n++) {
    const found = find(await things(phone), name);
    if (found && found.y < 540) return; // above the tabs of the smallest screen
    await drag(phone, 180, 480, 200);
  }
  await see(phone, name, 1000);
}

// type enters words as a phone's keyboard does.
export async function type(phone, words) {
  await phone.protocol.send("Input.insertText", { text: words });
  await sleep(400);
}

// receive waits for the file that the app hands over, after act, saves it in
// folder under the name that the app gave it, and returns its path.
export async function receive(phone, act, folder) {
  const coming = phone.p.waitForEvent("download", { timeout: 120000 });
  await act();
  const file = await coming;
  const path = join(folder, file.suggestedFilename());
  await file.saveAs(path);
  return path;
}
