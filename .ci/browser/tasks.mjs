// Three riders' tasks from opening the app to the answer, in a phone's browser of
// 360 by 640, in English and German: how many taps and seconds each takes, and
// whether the answer is to be seen without scrolling.
//
//   node tasks.mjs DESK
//
// The seconds are the program's own: those that the driver waits so that a tap
// lands are taken off. MOST_TAPS and what must be seen are judged; seconds are
// told, since they are the machine's.
import { join, resolve } from "node:path";
import { tmpdir } from "node:os";
import { launch, profile } from "./chrome.mjs";
import { app, desk, drag, picture, scrollTo, see, things, touch } from "./phone.mjs";

const SCREEN = { width: 360, height: 640, deviceScaleFactor: 2, mobile: true };
const BAR = 560; // above the tabs
const LANGUAGES = [["en-IE", 0], ["de-DE", 1]];
const OPEN = ["Results", "Ergebnisse"];
const TASKS = [
  { who: "a tourer: did the tall screen cost something, and what?", taps: 2, at: [["Results", "Ergebnisse"], [/invented ride/, /^Erfundene Fahrt/]],
    answer: [[/more drag/, /mehr Luftwiderstand/], [/Sure \(95 %/, /Sicher \(95 %/], [/120 km\/h: \+/, /120 km\/h: \+/], [/l\/100 km/, /l\/100 km/]] },
  { who: "a rider with one free morning: how many pairs?", taps: 2, at: [["Compare", "Vergleich"], [/^Plan a test/, /^Versuch planen/]],
    answer: [[/6 pairs with each setup will do/, /6 Paare mit jedem Aufbau genügen/], [/will be known to ±/, /wird auf ±/]] },
  { who: "a novice with a stock bike: how well can I know it?", taps: 3, at: [["Compare", "Vergleich"], [/^Plan a test/, /^Versuch planen/], ["1", "1"]],
    answer: [[/pairs/, /Paare/], [/By noise alone/, /Vom Rauschen/]], scrolls: true },
];
const problems = [];
const check = (ok, what) => { console.log(`${ok ? "ok  " : "FAIL"} ${what}`); if (!ok) problems.push(what); };
const WAITS = 0.8; // s that a tap is waited for by the driver itself, see touch

const served = await desk(resolve(process.argv[2]));
for (const [locale, at] of LANGUAGES) {
  for (const [n, task] of TASKS.entries()) {
    const home = profile();
    const chrome = await launch(home.folder, [`--lang=${locale}`]);
    const began = performance.now();
    const phone = await app(chrome, served.origin, async (p) => {
      await p.send("Emulation.setLocaleOverride", { locale: locale.replace("-", "_") }).catch(() => {});
    }, SCREEN, locale);
    let taps = 0;
    for (const names of task.at) {
      await see(phone, OPEN[at], 120000); // it has opened
      await scrollTo(phone, names[at]);
      await touch(phone, names[at]);
      taps++;
    }
    for (let n = 0; task.scrolls && n < 4; n++) await drag(phone, 180, 200, 480); // the answer stands at the top
    for (const words of task.answer) await see(phone, words[at], 200000);
    const took = (performance.now() - began) / 1000 - WAITS * taps;
    const all = await things(phone);
    const high = task.answer.every((words) => all.some((t) => words[at].test(t.name) && t.y < BAR && t.y > 0));
    await picture(phone, join(process.env.SHOTS || tmpdir(), `task-${n + 1}-${locale.slice(0, 2)}.png`));
    check(taps <= task.taps && (high || task.scrolls), `${locale} ${task.who} ${taps} taps, ${took.toFixed(0)} s from opening to the answer, ${high ? "seen without scrolling" : "further down"}`);
    await chrome.kill();
    home.remove();
  }
}
await served.stop();
if (problems.length > 0) process.exit(1);

