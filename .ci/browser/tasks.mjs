// Riders' tasks from opening the app to the answer, in a phone's browser of 360 by
// 640, in English and German: how many taps and seconds each takes, and whether
// the answer is to be seen without scrolling. The season is that of two invented
// rides whose results are kept.
//
//   node tasks.mjs DESK [quick]
//
// Quick is the season alone, in English; all of it takes some minutes.
// The seconds are the program's own, opening it included: those that the driver
// waits so that a tap lands are taken off. Taps and what must be seen are judged;
// seconds are reported, since they are the machine's.
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { join, resolve } from "node:path";
import { tmpdir } from "node:os";
import { launch, profile } from "./chrome.mjs";
import { store } from "./kept.mjs";
import { app, back, desk, drag, picture, scrollTo, see, things, touch } from "./phone.mjs";

const SCREEN = { width: 360, height: 640, deviceScaleFactor: 2, mobile: true };
const BAR = 560; // above the tabs
const QUICK = process.argv[3] === "quick";
const LANGUAGES = QUICK ? [["en-IE", 0]] : [["en-IE", 0], ["de-DE", 1]];
const OPEN = ["Results", "Ergebnisse"];
const TASKS = [
  { who: "a rider with one free morning: how many pairs?", taps: 2, at: [["Compare", "Vergleich"], [/^Plan a test/, /^Versuch planen/]],
    answer: [[/6 pairs with each setup will do/, /6 Paare mit jedem Aufbau genügen/], [/will be known to ±/, /danach auf ±/]] },
  { who: "a novice with a stock bike: how well can I know it?", taps: 3, at: [["Compare", "Vergleich"], [/^Plan a test/, /^Versuch planen/], ["1", "1"]],
    answer: [[/pairs/, /Paare/], [/From noise alone/, /Rauschen/]], scrolls: true },
  { who: "a tourer: did the tall screen cost something, and what?", taps: 2, at: [["Results", "Ergebnisse"], [/invented ride/, /^Erfundene Fahrt/]],
    answer: [[/more drag/, /mehr Luftwiderstand/], [/Sure \(95 %/, /Sicher \(95 %/], [/120 km\/h: \+/, /120 km\/h: \+/], [/l\/100 km/, /l\/100 km/]] },
  { who: "an owner after two months: what do my panniers cost?", taps: 2, at: [["Results", "Ergebnisse"], [/^Season/, /^Saison/]],
    quick: true, answer: [[/^panniers: [\d.]+ % more drag/, /^panniers: [\d,]+ % mehr Luftwiderstand/], [/^Sure \(95 %/, /^Sicher \(95 %/]], up: [/^May/, /^May/] },
];
const problems = [];
const check = (ok, what) => { console.log(`${ok ? "ok  " : "FAIL"} ${what}`); if (!ok) problems.push(what); };
const WAITS = 0.8; // s that a tap is waited for by the driver itself, see touch
const program = resolve(process.argv[2]);

// kept are the files of two rides that were measured: all that a season reads.
function kept() {
  const folder = mkdtempSync(join(tmpdir(), "tasks-")), files = {};
  const run = (...args) => execFileSync(program, args, { cwd: folder, encoding: "utf8", maxBuffer: 1 << 28, stdio: ["ignore", "pipe", "ignore"] });
  for (const [i, [name, other]] of [["May", "short screen + panniers"], ["June", "tall screen"]].entries()) {
    const started = `2026-0${5 + i}-10T09:00:00Z`, id = `ride-20260${5 + i}10-090000`;
    run("simulate", "--setup", "short screen", "--setup", other, "--browser", "--seed", String(i + 1));
    const results = JSON.parse(run("analyse", "out/ride.jsonl.gz", "--json"));
    files[`${id}.jsonl.gz`] = "never read";
    files[`${id}.about.json`] = JSON.stringify({ version: 1, started, stage: "closed", name, bike: results.bike, found: { coast_downs: 8, pairs: 4 }, measured: started });
    files[`${id}.season.json`] = JSON.stringify({ version: 1, by: "Stillair 1.0, metric", results });
  }
  rmSync(folder, { recursive: true });
  return files;
}

// seconds since the program was last tapped or opened, without the driver's.
async function ride(phone, task, at, opening) {
  const began = performance.now();
  for (const names of task.at) {
    await scrollTo(phone, names[at]);
    await touch(phone, names[at]);
  }
  for (let n = 0; task.scrolls && n < 4; n++) await drag(phone, 180, 200, 480); // the answer stands at the top
  for (const words of task.answer) await see(phone, words[at], 200000);
  const took = opening + (performance.now() - began) / 1000 - WAITS * task.at.length;
  const all = await things(phone);
  const high = task.answer.every((words) => all.some((t) => words[at].test(t.name) && t.y < BAR && t.y > 0));
  check(task.at.length <= task.taps && (high || task.scrolls), `${LANGUAGES[at][0]} ${task.who} ${task.at.length} taps, ${took.toFixed(0)} s from opening to the answer, ${high ? "seen without scrolling" : "further down"}`);
}

const files = kept();
const served = await desk(program);
for (const [locale, at] of LANGUAGES) {
  const home = profile();
  const chrome = await launch(home.folder, [`--lang=${locale}`]);
  let began;
  const phone = await app(chrome, served.origin, async (p) => {
    await p.send("Emulation.setLocaleOverride", { locale: locale.replace("-", "_") }).catch(() => {});
    await store(p, served.origin, files);
    began = performance.now();
  }, SCREEN, locale);
  await see(phone, OPEN[at], 120000); // it has opened
  const opening = (performance.now() - began) / 1000;
  for (const [n, task] of TASKS.entries()) {
    if (QUICK && !task.quick) continue;
    await ride(phone, task, at, opening);
    await picture(phone, join(process.env.SHOTS || tmpdir(), `task-${n + 1}-${locale.slice(0, 2)}.png`));
    if (!task.up) continue;
    await back(phone);
    check(await see(phone, task.up[at], 5000).catch(() => false), `${locale} the way back leads up to the list`);
  }
  await chrome.kill();
  home.remove();
}
await served.stop();
process.exit(problems.length > 0 ? 1 : 0);
