// Three rides of 65 minutes each, measured one after the other in one page: what
// memory the page's program is left with, whether the workers that measured are
// gone, and whether the page draws on meanwhile.
//   node hours.mjs DESK [further flags of desk phone]
// The ride is two invented ones, the one behind the other; it is put into the page's
// storage three times as a session file. Before that a ride is measured whose worker
// breaks down at work.
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { launch, profile, sleep } from "./chrome.mjs";
import { app, back, desk, effort, see, things, touch } from "./phone.mjs";
import { enable } from "./sensors.mjs";

const MINUTES = 65, RIDES = 3;
const MOST = 80; // MB of memory, of the page's program
// The part of a core that the page's own thread takes while a worker measures, to
// draw how far it is. How often pictures come depends on the machine too, which
// draws by its processor here: that is reported but not judged.
const BUSY = 0.2;
const program = resolve(process.argv[2]);
const folder = mkdtempSync(join(tmpdir(), "hours-"));
const problems = [];
const check = (ok, what) => { console.log(`${ok ? "ok  " : "FAIL"} ${what}`); if (!ok) problems.push(what); };
const run = (...args) => execFileSync(program, args, { cwd: folder, encoding: "utf8", maxBuffer: 1 << 28 });

// longRide makes a session file of MINUTES: the invented ride with all kinds of runs,
// and behind it, after a minute, as much of town as is left.
function longRide() {
  for (const ride of ["demo", "town"]) run("simulate", "--ride", ride, "--browser", "--format", "plain", "--out", ride);
  const lines = (ride, name) => readFileSync(join(folder, ride, "ride", name), "utf8").split(/\r?\n/).filter(Boolean);
  const time = (line) => Number(line.split(",")[0]);
  const first = time(lines("demo", "motion.csv")[1]), pause = time(lines("demo", "motion.csv").at(-1)) + 60 - first;
  mkdirSync(join(folder, "long"));
  for (const name of ["motion.csv", "gnss.csv", "pressure.csv"]) {
    const [head, ...of] = lines("demo", name), utc = head.split(",").indexOf("utc_ms");
    const later = (line) => {
      const cells = line.split(",");
      cells[0] = time(line) + pause;
      if (utc > 0) cells[utc] = Number(cells[utc]) + 1000 * pause;
      return cells.join();
    };
    const after = lines("town", name).slice(1).filter((l) => time(l) + pause < first + 60 * MINUTES).map(later);
    writeFileSync(join(folder, "long", name), `${[head, ...of, ...after].join("\r\n")}\r\n`);
  }
  writeFileSync(join(folder, "long", "ride.json"), readFileSync(join(folder, "demo", "ride", "ride.json")));
  run("export", "long", "--as", "session", "--ends", "0", "--into", "kept");
  return readFileSync(join(folder, "kept", readdirSync(join(folder, "kept"))[0]));
}

// keep puts a session file into the storage of a page, some times.
const keep = (p, file) => p.evaluate(async ([text, times]) => {
  const bytes = Uint8Array.from(atob(text), (c) => c.charCodeAt(0));
  const dir = await (await navigator.storage.getDirectory()).getDirectoryHandle("stillair", { create: true });
  for (let n = 1; n <= times; n++) {
    const to = await (await dir.getFileHandle(`2026010${n}-100000-aaaa.jsonl.gz`, { create: true })).createWritable();
    await to.write(bytes);
    await to.close();
  }
}, [file.toString("base64"), RIDES]);

// watchDrawing has the page note how long it was from each picture to the next, in ms,
// while a worker measures.
const watchDrawing = ({ p }) => p.evaluate(() => {
  globalThis.pauses = [];
  let last = NaN;
  requestAnimationFrame(function look(now) {
    const at = globalThis.analyses.at(-1);
    if (last > 0 && at && !at.to) globalThis.pauses.push(now - last);
    last = now;
    requestAnimationFrame(look);
  });
});

// drawn tells of the pauses since it was asked last the middle one and that at 99 %.
async function drawn({ p }) {
  const all = (await p.evaluate(() => globalThis.pauses.splice(0))).sort((a, b) => a - b);
  const at = (part) => all[Math.floor(part * (all.length - 1))];
  return { count: all.length, middle: at(0.5), most: at(0.99) };
}

// measured waits until a ride is, and tells how many s it took.
async function measured(phone) {
  const began = performance.now();
  for (;;) {
    const names = (await things(phone)).map((t) => t.name);
    if (names.some((x) => /^(What was found|How your coast-downs went)|Drag area CdA/.test(x))) return (performance.now() - began) / 1000;
    if (performance.now() - began > 300000) throw new Error(`the ride is not measured: ${names.join(" | ")}`);
    await sleep(100);
  }
}

const megabytes = async ({ p }) => await p.evaluate(() => globalThis.memoryOf()) / 1e6;
const lives = ({ p }) => p.evaluate(() => globalThis.analyses);

const file = longRide();
console.log(`     a ride of ${MINUTES} minutes, ${(file.length / 1e6).toFixed(1)} MB as it is kept`);
const home = profile();
const served = await desk(program, ...process.argv.slice(3));
const chrome = await launch(home.folder);
const phone = await app(chrome, served.origin, (protocol) => enable(protocol));
await touch(phone, "Results");
await touch(phone, "Look at an invented ride");
await phone.p.waitForFunction(() => globalThis.analyses.at(-1)?.shares > 0);
await phone.p.evaluate(() => { globalThis.analysing.dispatchEvent(new ErrorEvent("error", { message: "broken by the test" })); });
check(await measured(phone) > 0 && (await lives(phone)).length === 1, `a ride whose worker breaks down is measured all the same, in the page: ${(await megabytes(phone)).toFixed(0)} MB`);
await keep(phone.p, file);
await phone.p.reload();
await see(phone, "Results");
await sleep(3000);
await watchDrawing(phone);
const before = await megabytes(phone);
console.log(`     ${before.toFixed(1)} MB before`);
for (let n = 1; n <= RIDES; n++) {
  await touch(phone, "Results");
  await touch(phone, /not measured yet/);
  const kept = await effort(phone);
  await measured(phone);
  const { most: held, longest: heldMost, share } = await kept();
  const all = await lives(phone), { count, middle, most } = await drawn(phone);
  const { from, to, shares } = all.at(-1);
  console.log(`     ride ${n} measured in ${((to - from) / 1000).toFixed(1)} s, ${(await megabytes(phone)).toFixed(1)} MB, progress shown ${shares} times`);
  console.log(`     ${count} pictures meanwhile, ${middle.toFixed(0)} ms apart in the middle, ${most.toFixed(0)} at 99 %; ` +
    `the program kept the page for ${held.toFixed(0)} ms at 99 %, ${heldMost.toFixed(0)} at most`);
  check(shares >= 3 && share < BUSY, `the page draws on, its thread busy for ${(100 * share).toFixed(0)} % (limit ${100 * BUSY})`);
  check(all.length === n && all.every((x) => x.to), `${all.length} workers for ${n} rides, all of them gone`);
  await back(phone);
}
await sleep(2000);
const after = await megabytes(phone);
check(after <= MOST, `${after.toFixed(1)} MB of memory after ${RIDES} rides of ${MINUTES} minutes (limit ${MOST})`);
check(phone.p.workers().every((w) => !/analysing/.test(w.url())), "no worker that measures is left");
await chrome.kill();
await served.stop();
home.remove();
if (!process.env.KEEP) rmSync(folder, { recursive: true }); else console.log(folder);
for (const p of problems) console.log(p);
process.exit(problems.length ? 1 : 0);
