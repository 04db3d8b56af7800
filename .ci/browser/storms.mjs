// Short rides in a browser whose storage is taken away at random instants: its
// connection closed, its room gone, the tab hidden and frozen, a second tab
// opened; each ends as the rider ends it, or with the death of its tab.
//   node storms.mjs [how many [seed [at a time]]]
// What the page's own listener heard is held against what is read afterwards.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { profile, sleep } from "./chrome.mjs";
import { dice, lateness, MOST_LATE } from "./dice.mjs";
import { launch } from "./raw.mjs";
import { enable, rest } from "./sensors.mjs";
import { address, compile, serve } from "./testpage.mjs";

const rides = Number(process.argv[2] || 200), seed = Number(process.argv[3] || 20261129), lanes = Number(process.argv[4] || 2);
const MOST_LOST = 1; // s
const MOST_UNSAID = 2; // s
const HERTZ = 30;

// The page's own listener, and ways to take its storage away that the protocol
// does not have. seen are the readings: when on the page's clock, µs, and force
// along x; fixes are when they came, µs, and their time of day, ms.
const LISTENER = `globalThis.seen = [];
  globalThis.fixes = [];
  addEventListener("devicemotion", (e) => {
    const f = e.accelerationIncludingGravity;
    if (f && f.x !== null) seen.push([e.timeStamp * 1000, f.x]);
  });
  const watch = Geolocation.prototype.watchPosition;
  Geolocation.prototype.watchPosition = function (given, ...more) { // each watch gets fixes at its own times
    return watch.call(this, (p) => { fixes.push([performance.now() * 1000, p.timestamp]); given(p); }, ...more);
  };
  const add = IDBObjectStore.prototype.add;
  IDBObjectStore.prototype.add = function (...a) {
    if (globalThis.noRoom) throw new DOMException("no room", "QuotaExceededError");
    return add.apply(this, a);
  };`;

// Browsers close a connection to a database by asking for it; here by a newer
// version, which then is not made.
const CLOSE_TABLES = `new Promise((done) => {
  const ask = indexedDB.open("stillair", 99);
  ask.onupgradeneeded = () => ask.transaction.abort();
  ask.onsuccess = ask.onerror = done;
}).then(() => 0)`;

// What can happen to the storage of a ride. Each returns when on the page's clock
// (ms) it began to take nothing more, where it still does.
const happenings = {
  async closed({ page, tables, random }) {
    for (let n = 1 + 2 * random(); n > 0; n--) {
      if (tables) await page.evaluate(CLOSE_TABLES);
      else page.inWorker("for (const h of held.values()) h.close()");
      await sleep(1500 * random());
    }
  },
  async ended({ page, random }) { // the disk's worker, without a word
    const at = await page.evaluate("performance.now()");
    page.inWorker("close()");
    await sleep(4000 * random());
    return at;
  },
  async full({ page, origin, tables, random }) {
    const set = (gone) => (tables ? page.evaluate(`noRoom = ${gone}; 0`)
      : page.send("Storage.overrideQuotaForOrigin", gone ? { origin, quotaSize: 1 } : { origin }));
    await set(true);
    const at = await page.evaluate("stormBulk = true; performance.now()");
    await sleep(1000 + 3000 * random());
    await page.evaluate("stormBulk = false");
    if (random() < 0.5) return at;
    await set(false);
    await sleep(2500 * random());
    return at;
  },
  async frozen({ page, chrome, random }) {
    await chrome.home();
    await sleep(1000 * random());
    const at = await page.evaluate("performance.now()");
    await page.send("Page.setWebLifecycleState", { state: "frozen" });
    await sleep(2500 * random());
    if (random() < 0.5) return at; // it is never woken again, unless to end
    await page.send("Page.setWebLifecycleState", { state: "active" });
    await page.front();
    await sleep(1500 * random());
  },
  async tabs({ chrome, origin, random }) {
    const second = await ready(chrome, origin, false);
    await second.send("Page.navigate", { url: address(origin, ["-test.run", "^TestASecondTab$", "-surviving"]) });
    await second.line("SECOND");
    await sleep(2500 * random());
    const wrong = second.said.filter((s) => /storm_js_test|began|page:/.test(s));
    await second.close();
    if (wrong.length > 0) throw new Error(`the second tab said ${wrong.join("; ")}`);
  },
};

// ready opens a tab with sensors, which keeps to the tables or not.
async function ready(chrome, origin, tables) {
  const page = await chrome.tab();
  await page.send("Page.addScriptToEvaluateOnNewDocument", { source: `${LISTENER} globalThis.stormTables = ${tables};` });
  await enable(page);
  return page;
}

// end has the rider end the ride, or its tab die; it returns what was delivered
// and what is read of it, and when on the page's clock it ended.
async function end({ page, chrome, origin, dies }) {
  if (!dies) {
    await page.front();
    await page.send("Page.setWebLifecycleState", { state: "active" });
    const at = await page.evaluate("globalThis.stormEnd = true; performance.now()");
    const left = await page.line("ENDED");
    const [seen, fixes] = await page.evaluate("[seen, fixes]");
    await page.close();
    return { at, seen, fixes, left };
  }
  const [at, seen, fixes] = await page.evaluate("[performance.now(), seen, fixes]");
  if (dies < 0.5) await page.crash(); else await page.close();
  const next = await ready(chrome, origin, false);
  await next.send("Storage.overrideQuotaForOrigin", { origin });
  await next.send("Page.navigate", { url: address(origin, ["-test.run", "^TestWhatAStormLeft$", "-surviving"]) });
  const found = await next.line("LEFT");
  await next.close();
  if (found.length !== 1) throw new Error(`${found.length} rides were found, want 1: ${next.said.join("; ")}`);
  return { at, seen, fixes, left: found[0] };
}

// judge holds what was read against what was delivered. lost is how long before
// the end, or before the storage took nothing more, the first was delivered that
// is not there. (Of readings that the page was given with the same time, which says
// that it was busy, the program keeps one.)
function judge({ at, seen, fixes, left }, since) {
  const wrong = [], there = new Set(), heard = new Map();
  for (const [t, x] of seen) heard.set(Math.round(t), [...(heard.get(Math.round(t)) ?? []), Math.abs(x)]);
  const newest = seen.at(-1)[0], first = left.motion[0]?.[0] ?? 0;
  let before = -Infinity;
  for (const [t, x] of left.motion) {
    if (t <= before) wrong.push(`the reading at ${t} µs comes twice`);
    before = t;
    if (t > newest + 1) continue; // it was made after the listener was asked
    const made = heard.get(Math.round(t)) ?? [];
    if (!made.some((y) => Math.abs(y - Math.abs(x)) < 1e-3)) wrong.push(`the reading at ${t} µs of ${x} m/s² was never made; around it ${JSON.stringify(seen.filter(([s]) => Math.abs(s - t) < 50000))}`);
    there.add(Math.round(t));
  }
  const made = new Set(fixes.map(([, time]) => time)), kept = new Set(left.fixes);
  for (const time of left.fixes) if (!made.has(time) && time < fixes.at(-1)[1]) wrong.push(`the fix of ${time} was never made`);
  if (left.motion.length < 10 || left.fixes.length < 1) wrong.push(`${left.motion.length} readings, ${left.fixes.length} fixes`);
  if (left.missing > 0) wrong.push(`${left.missing} spans are named missing`);
  const until = Math.min(at, since ?? Infinity) * 1000;
  const gone = [seen.find(([t]) => t >= first - 1 && t <= until && !there.has(Math.round(t))),
    fixes.find(([t, time]) => t >= first + 1.5e6 && t <= until && !kept.has(time))]; // the first fix may be of before
  const lost = Math.max(0, ...gone.map((g) => (g ? (until - g[0]) / 1e6 : 0)));
  return { wrong, lost, what: lost > MOST_LOST ? `${JSON.stringify(gone)} µs of ${JSON.stringify({ first, until, fixes, kept: left.fixes })}` : "" };
}

const shown = [], lost = {}, unsaid = [], problems = [], unjudged = [];

async function ride(n, chrome, origin) {
  const random = dice(seed + 7919 * n), late = lateness();
  const kinds = ["closed/disk", "full/disk", "frozen/disk", "tabs/disk", "closed/tables", "full/tables", "frozen/tables", "tabs/tables", "ended/disk"];
  const kind = kinds[n % kinds.length], [what, where] = kind.split("/"), tables = where === "tables";
  const dies = random() < 0.5 ? random() : 0;
  const page = await ready(chrome, origin, tables);
  const phone = rest(page, HERTZ);
  await page.front();
  await page.send("Page.navigate", { url: address(origin, ["-test.run", "^TestRecordThroughAStorm$", "-surviving"]) });
  await page.line("RECORDING");
  await sleep(1500 * random());
  const since = await happenings[what]({ page, chrome, origin, tables, random });
  const result = await end({ page, chrome, origin, dies });
  await phone.stop();
  if (!dies) { // the next ride begins with an empty storage
    const next = await ready(chrome, origin, false);
    await next.send("Storage.overrideQuotaForOrigin", { origin });
    await next.send("Page.navigate", { url: address(origin, ["-test.run", "^TestWhatAStormLeft$", "-surviving"]) });
    await next.line("LEFT");
    await next.close();
  }
  const { wrong, lost: s, what: gone } = judge(result, dies ? since : undefined), behind = late();
  const { left } = result;
  const name = `ride ${n}, ${kind}, ${dies ? "its tab died" : "ended by the rider"}`;
  (lost[`${what}, ${dies ? "tab died" : "ended"}`] ??= []).push(s);
  if (!dies) { unsaid.push(left.unsaid); if (left.letdown) shown.push(left.said_at); }
  const slow = behind > MOST_LATE ? unjudged : wrong; // what depends on time says nothing where the machine had none
  if (s > MOST_LOST) slow.push(`lost ${s.toFixed(2)} s: ${gone}`);
  if (left.unsaid > MOST_UNSAID || left.said_at > MOST_UNSAID) slow.push(`${left.unsaid.toFixed(2)} s unsaved and not shown, shown after ${left.said_at.toFixed(2)} s`);
  for (const w of wrong.slice(0, 5)) problems.push(`${name}: ${w}`);
  if (process.env.STORMS_TELL) console.log(`${name}: ${left.motion.length} of ${result.seen.length} readings, lost ${s.toFixed(3)} s, shown at ${left.said_at}, unsaid ${left.unsaid}, ${left.letdown} times; ${left.why}; ${left.err}; ${left.rescued}`);
}

const folder = mkdtempSync(join(tmpdir(), "storms-"));
compile("./app/device", join(folder, "test.wasm"));
let next = 0;
async function lane() {
  const server = await serve(join(folder, "test.wasm"));
  const kept = profile();
  let chrome = null;
  while (next < rides) {
    const n = next++;
    if (!chrome) {
      chrome = await launch(kept.folder);
      await chrome.send("Browser.grantPermissions", { origin: server.origin, permissions: ["geolocation", "sensors", "wakeLockScreen"] });
    }
    try { await ride(n, chrome, server.origin); } catch (e) {
      problems.push(`ride ${n}: ${e.message}`);
      await chrome.kill();
      chrome = null;
    }
  }
  await chrome?.kill();
  server.close();
  kept.remove();
}
const began = performance.now();
await Promise.all(Array.from({ length: lanes }, lane));
rmSync(folder, { recursive: true });

console.log(`${rides} rides of seed ${seed} in ${((performance.now() - began) / 1000).toFixed(0)} s`);
for (const [what, list] of Object.entries(lost).sort()) {
  list.sort((a, b) => a - b);
  console.log(`  ${what}: ${list.length} rides, lost ${list[Math.floor(list.length / 2)].toFixed(3)} s in the middle, ${list.at(-1).toFixed(3)} s at most`);
}
const most = (list) => Math.max(0, ...list).toFixed(2);
console.log(`  shown after ${most(shown)} s at most (${shown.length} rides); never more than ${most(unsaid)} s unsaved without the screen saying so`);
for (const u of unjudged) console.log(`  not judged on an overloaded machine: ${u}`);
for (const p of problems) console.log(p);
process.exit(problems.length ? 1 : 0);
