// The way back, from every screen that a rider reaches: it goes up exactly one, and
// leaves a recording going on, with the page and its program as they were.
//
//   node returning.mjs DESK [all] [further flags of desk phone]
//
// DESK is the compiled command line. From each screen one of the ways back is taken,
// in turn; with all, each of them from the deepest screen of every path.
//
// Not tried: a phone's own gesture from the edge of the screen and Android's back
// button, which the system turns into the same step of the history, and the browser's
// touch overscroll, which does nothing in a browser without a window, not even on a
// page without a script.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { launch, profile, sleep } from "./chrome.mjs";
import { store } from "./kept.mjs";
import { app, desk, see, things, touch } from "./phone.mjs";
import { enable, rest } from "./sensors.mjs";

const ALL = process.argv.includes("all");
const more = process.argv.slice(3).filter((flag) => flag !== "all");
const program = resolve(process.argv[2]);
const HIGH = { width: 390, height: 4000, deviceScaleFactor: 1, mobile: true }; // nothing has to be scrolled to
const PATIENCE = 8000; // ms for a screen to change
const RIDE = /^Two screens/;
const problems = [];
const check = (ok, what) => { console.log(`${ok ? "ok  " : "FAIL"} ${what}`); if (!ok) problems.push(what); };

const GUIDE = Array(5).fill("Next");
const PATHS = [
  [/^Air today/], // of the first screen
  [/^Your first coast-down/, ...GUIDE],
  ["Compare", /^Guide to the first coast-down/], // not offered once a ride with two setups is open
  ["Results", /^Season/],
  ["Results", RIDE, /^Launch/],
  ["Results", RIDE, /^Coast-down/],
  ["Results", RIDE, /^short screen, /],
  ["Results", RIDE, /^How your coast-downs went/],
  ["Results", RIDE, /^Power at the road/],
  ["Results", RIDE, "Name, notes, share", /^For other programs/],
  ["Results", RIDE, "Name, notes, share", /^Values used in the calculation/],
  ["Results", RIDE, "Name, notes, share", /^Setups of this ride/, /^Another setup from a given time/],
  ["Results", /^Deleted rides/],
  ["Bikes", /^Blue/],
  ["Bikes", "Setup tall screen"],
  ["Bikes", "Add a setup"],
  ["Bikes", "Add a bike"],
  ["Compare", /^Plan a test/],
  ["Compare", /^Rides compared/],
  ["More", /^Guide to the first coast-down/],
];

// kept is a bike, a ride with two setups and one that was deleted.
function kept() {
  const folder = mkdtempSync(join(tmpdir(), "returning-"));
  execFileSync(program, ["simulate", "--browser", "--out", folder], { stdio: ["ignore", "ignore", "pipe"] });
  const recording = readFileSync(join(folder, "ride.jsonl.gz"));
  rmSync(folder, { recursive: true });
  const about = (started, more) => JSON.stringify({ version: 1, started, stage: "closed", bike: "Blue", seconds: 2670, found: {}, ...more });
  const now = new Date(), today = now.toISOString(), stamp = `${today.slice(0, 10).replaceAll("-", "")}-000000`;
  return {
    "ride-20260810-090000.jsonl.gz": recording,
    "ride-20260810-090000.about.json": about("2026-08-10T09:00:00Z", { name: "Two screens" }),
    [`ride-${stamp}.jsonl.gz`]: "never read",
    [`ride-${stamp}.about.json`]: about(today, { name: "Deleted", deleted: today }),
    "bike-1.json": JSON.stringify({ version: 1, id: "1", name: "Blue", mass_kg: 290, setups: [{ name: "short screen" }, { name: "tall screen" }] }),
  };
}

const key = (name, code, modifiers) => async ({ protocol }) => {
  const event = { key: name, code: name, windowsVirtualKeyCode: code, nativeVirtualKeyCode: code, modifiers };
  await protocol.send("Input.dispatchKeyEvent", { type: "rawKeyDown", ...event });
  await protocol.send("Input.dispatchKeyEvent", { type: "keyUp", ...event });
};
const ALT = 1; // of the protocol's modifiers
const WAYS = {
  "a step of the history by a script": ({ p }) => p.evaluate(() => history.back()),
  "a step of the history by the browser": async ({ protocol }) => {
    const { currentIndex, entries } = await protocol.send("Page.getNavigationHistory");
    await protocol.send("Page.navigateToHistoryEntry", { entryId: entries[currentIndex - 1].id });
  },
  "the left arrow with Alt": key("ArrowLeft", 37, ALT),
  "a keyboard's back key": key("BrowserBack", 166, 0),
};
const names = Object.keys(WAYS);
let turn = 0;

const brief = (screen) => screen.slice(0, 40);
const deep = ({ p }) => p.evaluate(() => history.state?.deep ?? 0);
// shown names the screen: its title, and the place among those below.
const shown = async (phone) => (await things(phone)).filter((t) => t.name !== "Back").slice(0, 2).map((t) => t.name)
  .concat((await things(phone)).filter((t) => t.on === "page").map((t) => t.name)).join(" | ");

// until waits for the screen and the history to be as they should, and tells what they are.
async function until(phone, title, depth) {
  for (const end = performance.now() + PATIENCE; ; await sleep(150)) {
    const is = [await shown(phone), await deep(phone)];
    if ((is[0] === title && is[1] === depth) || performance.now() > end) return is;
  }
}

async function goBack(phone, way, from, to, depth) {
  await WAYS[way](phone);
  await until(phone, to, depth);
  await sleep(400); // for a second step, which there must not be
  const [title, is] = [await shown(phone), await deep(phone)];
  check(title === to && is === depth && await phone.p.evaluate("globalThis.same"),
    `${brief(from)}: ${way} leads to ${title === to ? brief(to) : `${title}, and not to ${to}`}, ${is} deep`);
}

// settled is the screen once it no longer changes.
async function settled(phone, before) {
  const end = performance.now() + 60000;
  for (let last = ""; ;) {
    await sleep(500);
    const is = await shown(phone);
    if (is === last && is !== before) return is;
    if (performance.now() > end) throw new Error(`${before} leads nowhere`);
    last = is;
  }
}

// atRide is the stack of screens with the first screen alone.
async function atRide(phone) {
  await touch(phone, "More");
  await see(phone, /^Guide to the first coast-down/);
  await touch(phone, "Ride");
  await see(phone, "Before the ride");
  return [await shown(phone)];
}

async function up(phone, seen) {
  const from = seen.pop();
  await goBack(phone, names[turn++ % names.length], from, seen.at(-1), seen.length - 1);
}

// walk goes on from the end of one path to the end of the next, over the screen at which
// they part. seen are the screens from the first to the present one.
async function walk(phone, seen, before, path) {
  const common = path.findIndex((name, i) => name !== before[i]);
  while (seen.length > 1 + common) await up(phone, seen);
  for (const name of path.slice(common)) {
    await touch(phone, name, 30000);
    if (name === RIDE) await see(phone, "What was found", 120000);
    seen.push(await settled(phone, seen.at(-1)));
  }
  if (!ALL) return;
  for (const way of names) {
    await goBack(phone, way, seen.at(-1), seen.at(-2), seen.length - 2);
    await touch(phone, path.at(-1));
    await settled(phone, seen.at(-2));
  }
}

async function walkAll(phone) {
  let seen = await atRide(phone), before = [];
  for (const path of PATHS) {
    try {
      await walk(phone, seen, before, path);
      before = path;
    } catch (e) {
      check(false, `${path.join(", ")}: ${e.message}`);
      seen = await atRide(phone);
      before = [];
    }
  }
  while (seen.length > 1) await up(phone, seen);
}

// recording takes every way back while it records: at a halt, with a question open, and
// with the screen locked in a pocket.
async function recording(phone) {
  await touch(phone, "Start recording");
  await see(phone, /recorded/);
  const seconds = async () => Number(/^(\d+) s recorded/.exec((await see(phone, /recorded/)).name)?.[1]);
  const went = async (way, where, to) => {
    const was = where === "at a halt" ? await seconds() : 0;
    await WAYS[way](phone);
    await sleep(1500);
    const on = await see(phone, to, 5000).catch(() => false);
    check(on && (was === 0 || await seconds() > was) && await phone.p.evaluate("globalThis.same"), `recording, ${where}: ${way} leaves it going on`);
  };
  for (const way of names) {
    await went(way, "at a halt", /recorded/);
    await touch(phone, /^Other setup now/);
    await see(phone, /^tall screen/);
    await went(way, "choosing a setup", /^Pocket mode/);
  }
  await touch(phone, "Pocket mode");
  await see(phone, "Recording in your pocket");
  for (const way of names) await went(way, "in a pocket", "Recording in your pocket");
}

const home = profile();
const served = await desk(program, ...more);
const chrome = await launch(home.folder);
const files = kept();
const phone = await app(chrome, served.origin, async (protocol) => {
  await store(protocol, served.origin, files);
  await enable(protocol);
}, HIGH);
const still = rest(phone.protocol);
await see(phone, "Results", 120000);
await phone.p.evaluate("globalThis.same = true"); // gone with the page
await walkAll(phone);
await phone.p.evaluate(() => history.forward());
await sleep(700);
check(await deep(phone) === 0 && await see(phone, "Start recording", 3000).catch(() => false), "the way forward leads nowhere");
await touch(phone, "More");
await touch(phone, "Ride");
await recording(phone);
await still.stop();
await chrome.kill();
await served.stop();
home.remove();
process.exit(problems.length > 0 ? 1 : 0);
