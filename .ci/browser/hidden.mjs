// Rides in the app's own page, which is truly hidden and frozen on the way, as a
// phone does it when its screen goes off: another tab comes to the front, or the
// window is minimised, and nothing keeps the page awake.
//   node hidden.mjs DESK [how many [brief]]
// DESK is the compiled command line, which invents the ride, serves the app and
// analyses what the page kept. A brief ride has one launch, the others have two.
// Judged are the file (the hole, its cause, all that was delivered outside it), the
// words on the screen on return, and the launches: one outside the hole is measured,
// and what is said of one that the hole reaches into is true.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { gunzipSync } from "node:zlib";
import { PHONE, profile, sleep } from "./chrome.mjs";
import { table } from "./csv.mjs";
import { dice, lateness, MOST_LATE } from "./dice.mjs";
import { AGENT, desk, see, things, touch } from "./phone.mjs";
import { launch } from "./raw.mjs";
import { enable, ride as play } from "./sensors.mjs";

const program = resolve(process.argv[2]), rides = Number(process.argv[3] || 20), brief = process.argv[4] === "brief";
const LANES = 2, SEED = 20261130;
const [ONSET, END] = brief ? [86, 107] : [46.5, 112]; // s of the invented ride, which begins at a halt
const SHORTEST = 2, LONGEST = brief ? 4 : 15; // s hidden
const CLOCKS = 0.5; // s by which the hole may begin and end other than the page was hidden and shown
const SHOWN = 3; // s after the return at which the screen tells it
const KEPT = 0.99; // of the readings outside the hole
const UNSAVED = 1; // s, the youngest of a file that is being written

const CAUSES = {
  hidden: { code: "browser.was_hidden", words: /the screen was off or another app was in front\.$/i },
  frozen: { code: "browser.was_frozen", words: /the browser froze this page\.$/i },
};
// How a page gets out of sight, and back.
const ways = {
  tab: { hide: ({ chrome }) => chrome.home(), show: ({ page }) => page.front() },
  window: {
    hide: ({ page }) => page.minimise(true),
    show: ({ page }) => page.minimise(false),
  },
};

const folder = mkdtempSync(join(tmpdir(), "hidden-"));
const run = (...args) => execFileSync(program, args, { cwd: folder, encoding: "utf8", maxBuffer: 1 << 28, stdio: ["ignore", "pipe", "pipe"] });
run("simulate", "--ride", "short", "--browser", "--format", "plain", "--out", folder);
const within = (row) => row.t_s <= END;
const log = { motions: table(join(folder, "ride/motion.csv")).filter(within), fixes: table(join(folder, "ride/gnss.csv")).filter(within) };
const launches = JSON.parse(readFileSync(join(folder, "truth.json"), "utf8")).deeds
  .filter((d) => d.kind === "launch" && d.start_s > ONSET && d.end_s < END);

// What the page was given, heard by ears of our own. seen are the times of readings
// in ms on the page's clock, fixes when one came and the time of day it bears.
const LISTENER = `globalThis.seen = []; globalThis.fixes = [];
  addEventListener("devicemotion", (e) => { if (e.accelerationIncludingGravity?.x != null) seen.push(e.timeStamp); });
  const watch = Geolocation.prototype.watchPosition;
  Geolocation.prototype.watchPosition = function (given, ...more) {
    return watch.call(this, (p) => { fixes.push([performance.now(), p.timestamp]); given(p); }, ...more);
  };`;

// KEEPS gives the newest session of the page's storage, in base64.
const KEEPS = `(async () => {
  const found = [];
  for await (const dir of (await navigator.storage.getDirectory()).values()) {
    for await (const [name, handle] of dir.entries()) if (name.endsWith(".jsonl.gz")) found.push([name, handle]);
  }
  const read = async (handle, again = 5) => {
    try {
      return new Uint8Array(await (await handle.getFile()).arrayBuffer());
    } catch (e) { // a file that has grown since cannot be read
      if (again === 0) throw e;
      return read(handle, again - 1);
    }
  };
  const bytes = await read(found.sort().at(-1)[1]);
  let text = "";
  for (let at = 0; at < bytes.length; at += 8192) text += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return btoa(text);
})()`;

// open has the app in a tab of its own, with sensors that say it stands.
async function open(chrome, origin) {
  const page = await chrome.tab();
  await page.send("Page.addScriptToEvaluateOnNewDocument", { source: LISTENER });
  await page.send("Emulation.setDeviceMetricsOverride", PHONE);
  await page.send("Emulation.setTouchEmulationEnabled", { enabled: true, maxTouchPoints: 2 });
  await page.send("Emulation.setUserAgentOverride", { userAgent: AGENT, platform: "Linux armv81", acceptLanguage: "en-IE" });
  const f = log.fixes[0];
  await enable(page, { latitude: f.lat_deg, longitude: f.lon_deg, speed: 0 });
  await page.front();
  await page.send("Page.navigate", { url: `${origin}/` });
  const p = { evaluate: (f, ...args) => page.evaluate(`(${f})(${args.map((a) => JSON.stringify(a)).join()})`) };
  return { page, phone: { p, protocol: page, said: page.said } };
}

// zeroOf is what our clock showed, in ms, when the page's was 0.
async function zeroOf(page) {
  let quickest = Infinity, zero;
  for (let n = 0; n < 5; n++) {
    const began = performance.now(), on = await page.evaluate("performance.now()"), took = performance.now() - began;
    if (took < quickest) [quickest, zero] = [took, began + took / 2 - on];
  }
  return zero;
}

// away hides the page for a while and tells from when to when, on our clock.
async function away(at, way, cause, seconds) {
  await way.hide(at);
  const from = performance.now();
  if (cause === "frozen") {
    await sleep(300);
    await at.page.send("Page.setWebLifecycleState", { state: "frozen" });
  }
  await sleep(from + 1000 * seconds - performance.now());
  if (cause === "frozen") await at.page.send("Page.setWebLifecycleState", { state: "active" });
  await way.show(at);
  return { from, to: performance.now() };
}

// card waits for what the screen says of the hole, and tells after how long, in s.
async function card(phone, wanted) {
  const began = performance.now();
  let names = [];
  while (performance.now() - began < 10000) {
    names = (await things(phone)).map((t) => t.name);
    const missing = names.find((n) => / missing$/.test(n)), why = names.find((n) => wanted.test(n));
    if (missing && why) return { after: (performance.now() - began) / 1000, missing, why };
    await sleep(100);
  }
  return { after: Infinity, names };
}

// ridden plays one ride into the app and returns all there is to judge.
async function ridden(chrome, origin, { way, cause, pocket, at, seconds }) {
  const { page, phone } = await open(chrome, origin);
  await touch(phone, "Start recording");
  await see(phone, /recorded$/);
  if (pocket) await touch(phone, "Pocket mode");
  const zero = await zeroOf(page), playing = play(page, log, ONSET);
  const clock = (ours) => (ours - zero) / 1000; // s on the page's clock
  await sleep(1000 * (at - ONSET));
  const hole = await away({ page, chrome }, ways[way], cause, seconds);
  const told = await card(phone, CAUSES[cause].words);
  await playing.over;
  const still = (await things(phone)).some((t) => / missing$/.test(t.name));
  const until = await page.evaluate("performance.now() / 1000");
  const file = join(folder, `ride-${process.hrtime.bigint()}.jsonl.gz`);
  writeFileSync(file, Buffer.from(await page.evaluate(KEEPS), "base64"));
  const [seen, fixes] = await page.evaluate("[seen, fixes]");
  await page.close();
  return { file, seen, fixes, told, still, until, hole: { from: clock(hole.from), to: clock(hole.to) }, played: playing.played,
    shift: clock(playing.began) - ONSET }; // from the ride's clock to the page's
}

// lines are those of a session that has no end yet.
function lines(file) {
  const text = gunzipSync(readFileSync(file), { finishFlush: 2 }).toString(); // Z_SYNC_FLUSH
  return text.slice(0, text.lastIndexOf("\n")).split("\n").map((line) => JSON.parse(line));
}

// holesOf are those that the file marks, each once for all sensors.
function holesOf(all) {
  const marks = all.filter((l) => l.type === "state" && l.code === "sensor.hole");
  return [...new Map(marks.map(({ t_s: to, args }) => {
    const arg = (name) => args.find((a) => a.name === name);
    return [to, { from: to - arg("for").x, to, why: arg("why").code }];
  })).values()];
}

// ofHole judges the hole in the file: one, with its cause. Others are told apart
// from it, and are true of a machine that let the page wait.
function ofHole(all, { hole }, cause, wrong, late) {
  const holes = holesOf(all), meet = holes.filter((h) => h.from < hole.to && h.to > hole.from);
  const says = holes.map((h) => `${h.why} from ${h.from.toFixed(2)} to ${h.to.toFixed(2)} s`).join(", ");
  if (meet.length !== 1) return wrong.push(`${meet.length} marks of the hole: ${says}`);
  const [{ from, to, why }] = meet;
  if (why !== CAUSES[cause].code) wrong.push(`the cause of the hole is ${why}`);
  if (Math.abs(from - hole.from) > CLOCKS || Math.abs(to - hole.to) > CLOCKS) {
    late.push(`the hole is from ${from.toFixed(2)} to ${to.toFixed(2)} s, hidden from ${hole.from.toFixed(2)} to ${hole.to.toFixed(2)}`);
  }
  if (holes.length > 1) late.push(`more than one hole: ${says}`);
}

// ofRest judges what is there of all that the page was given outside the hole: the
// part of the readings, and how long the file has none, at most.
function ofRest(all, { seen, fixes, hole, until }, wrong, late) {
  const times = all.filter((l) => l.type === "motion").flatMap((l) => l.t_s);
  const there = new Set(times.map((t) => Math.round(1000 * t))), first = times[0];
  const given = [...new Set(seen.map(Math.round))].filter((t) => t / 1000 >= first && t / 1000 < until - UNSAVED);
  const kept = given.filter((t) => there.has(t) || there.has(t - 1) || there.has(t + 1)).length / given.length;
  if (!(kept >= KEPT)) wrong.push(`${(100 * kept).toFixed(2)} % of ${given.length} readings kept`);
  const gap = Math.max(...times.slice(1).map((t, i) => (t > hole.from - CLOCKS && times[i] < hole.to + CLOCKS ? 0 : t - times[i])));
  if (gap > CLOCKS) late.push(`${gap.toFixed(2)} s without motion outside the hole`);
  const had = new Set(all.filter((l) => l.type === "fix").map((l) => l.utc_ms));
  const lost = fixes.filter(([at, time]) => at / 1000 > first + 1.5 && at / 1000 < until - UNSAVED && !had.has(time));
  if (lost.length > 0) wrong.push(`${lost.length} of ${fixes.length} fixes lost`);
  return { kept, gap };
}

// ofScreen judges what the rider reads on return.
function ofScreen({ told, still, hole }, wrong, late) {
  if (told.after > SHOWN) late.push(`the screen tells it after ${told.after.toFixed(1)} s`);
  if (told.after === Infinity) return late.push(`the screen does not tell it: ${told.names.join(" | ")}`);
  const says = Number(/^(\d+) s missing/.exec(told.missing)?.[1]);
  if (!(Math.abs(says - (hole.to - hole.from)) <= CLOCKS + 0.5)) late.push(`the screen says "${told.missing}" of ${(hole.to - hole.from).toFixed(2)} s`);
  if (!still) wrong.push("the screen tells it no more, though nobody has read it");
}

// ofLaunches judges what is found in the file: each launch that the hole stays clear
// of, and nothing that is not true. It returns how many were outside and found.
function ofLaunches({ file, shift, hole }, wrong, late) {
  const all = JSON.parse(run("analyse", file, "--mass", "290", "--json")).runs.filter((r) => r.kind === "launch");
  const found = all.filter((r) => r.accepted);
  let outside = 0, kept = 0;
  for (const l of launches) {
    const clear = l.start_s + shift > hole.to + CLOCKS || l.end_s + shift < hole.from - CLOCKS;
    const meets = (r) => r.start_s < l.end_s + shift && r.end_s > l.start_s + shift;
    const got = found.find(meets), refused = all.filter(meets).flatMap((r) => r.reasons).join(", ");
    outside += clear;
    kept += clear && got !== undefined;
    if (clear && !got) late.push(`the launch at ${l.start_s} s is ${refused ? `rejected: ${refused}` : "not found"}`);
    for (const m of got?.marks ?? []) {
      const truth = l.marks.find((t) => t.mark === m.mark);
      if (truth && Math.abs(m.s - truth.s) > 3 * m.se_s) wrong.push(`${m.mark} is ${m.s.toFixed(2)} ± ${(2 * m.se_s).toFixed(2)} s, in truth ${truth.s.toFixed(2)}`);
    }
  }
  const invented = found.filter((r) => !launches.some((l) => r.start_s < l.end_s + shift && r.end_s > l.start_s + shift));
  if (invented.length > 0) wrong.push(`${invented.length} launches found that were not ridden`);
  return { outside, kept };
}

const problems = [], unjudged = [], sums = { outside: 0, kept: 0, least: 1, gap: 0, after: 0 };

// whenHidden is when ride n is hidden, s: of the first two before and behind the
// launches, so that few rides judge both, and of the others anywhere.
function whenHidden(n, seconds, chance) {
  const [from, to] = [[ONSET + 1.5, launches[0].start_s - 1], [launches.at(-1).end_s + 1, END - 3]][n] ?? [ONSET + 1.5, END - 3];
  return from + Math.max(0, to - seconds - from) * chance;
}

async function one(n, chrome, origin, slow) {
  const random = dice(SEED + 7919 * n);
  const set = { way: n % 4 < 2 ? "tab" : "window", cause: n % 2 ? "frozen" : "hidden", pocket: random() < 0.5,
    seconds: SHORTEST + (LONGEST - SHORTEST) * random() };
  set.at = whenHidden(n, set.seconds, random());
  const got = await ridden(chrome, origin, set), wrong = [], late = [], all = lines(got.file);
  ofHole(all, got, set.cause, wrong, late);
  const { kept, gap } = ofRest(all, got, wrong, late);
  ofScreen(got, wrong, late);
  const { outside, kept: launched } = ofLaunches(got, wrong, late);
  const name = `ride ${n}, ${set.cause} by its ${set.way}${set.pocket ? ", dark" : ""}, ${set.seconds.toFixed(1)} s at ${set.at.toFixed(1)}`;
  console.log(`${wrong.length || late.length && !slow() ? "FAIL" : "ok  "} ${name}: ${launched} of ${outside} launches outside it measured, ` +
    `${(100 * kept).toFixed(2)} % of the readings kept, shown after ${got.told.after.toFixed(1)} s${slow() ? "; this machine is overloaded" : ""}`);
  sums.outside += outside;
  sums.kept += launched;
  sums.least = Math.min(sums.least, kept);
  sums.gap = Math.max(sums.gap, gap);
  sums.after = Math.max(sums.after, got.told.after);
  for (const w of wrong) problems.push(`${name}: ${w}`);
  for (const l of late) (slow() ? unjudged : problems).push(`${name}: ${l}`);
}

const served = await desk(program);
let next = 0;
async function lane() {
  const kept = profile(), chrome = await launch(kept.folder, ["--ignore-certificate-errors"]);
  await chrome.send("Browser.grantPermissions", { origin: served.origin, permissions: ["geolocation", "sensors", "wakeLockScreen"] });
  while (next < rides) {
    const n = next++, behind = lateness();
    let most = 0; // what depends on time says nothing where the machine had none
    const slow = () => (most ||= behind()) > MOST_LATE;
    try { await one(n, chrome, served.origin, slow); } catch (e) { (slow() ? unjudged : problems).push(`ride ${n}: ${e.message}`); }
  }
  await chrome.kill();
  kept.remove();
}
await Promise.all(Array.from({ length: LANES }, lane));
await served.stop();
if (!process.env.KEEP) rmSync(folder, { recursive: true }); else console.log(folder);
console.log(`${rides} rides of seed ${SEED}: ${sums.kept} of ${sums.outside} launches outside the hole measured, ` +
  `${(100 * sums.least).toFixed(2)} % of the readings outside it kept at least, ${sums.gap.toFixed(2)} s between two at most, shown after ${sums.after.toFixed(1)} s at most`);
for (const u of unjudged) console.log(`not judged on an overloaded machine: ${u}`);
for (const p of problems) console.log(p);
process.exit(problems.length ? 1 : 0);
