// Kills the browser at random instants of a recording, and holds that everything
// kept can be read each time, and how much is lost:
//   node kills.mjs [how many]
// The instants come from a fixed seed.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { launch, page, profile, sleep } from "./chrome.mjs";
import { dice } from "./dice.mjs";
import { enable, rest } from "./sensors.mjs";
import { address, compile, serve } from "./testpage.mjs";

const times = Number(process.argv[2] || 100);
// What nine kills in ten may lose, s. On a machine without a graphics card the
// browser itself is late at times; every longer loss is printed.
const MOST_LOST = 1;
const LONGEST = 3000; // ms of recording after the first sync

const random = dice(20260503);
const problems = [];
const lost = [];

// told waits for a word at the beginning of a line of the page's console.
function told(p, word) {
  return new Promise((resolve, reject) => {
    p.on("console", (m) => { if (m.text().startsWith(word)) resolve(m.text().slice(word.length)); });
    p.on("close", () => reject(new Error(`the page closed before it said ${word}`)));
  });
}

async function open(chrome, origin, test) {
  const { page: p, protocol } = await page(chrome, origin);
  await enable(protocol);
  const said = [];
  p.on("console", (m) => said.push(m.text()));
  return { p, protocol, said, go: () => p.goto(address(origin, ["-test.run", `^${test}$`, "-surviving"])) };
}

// examine reads what the last kill left and holds it against when it came.
async function examine(chrome, origin, killed) {
  const { p, said, go } = await open(chrome, origin, "TestWhatAKillLeft");
  await go();
  await p.waitForFunction("window.code !== undefined", undefined, { timeout: 60000 });
  if (await p.evaluate("window.code") !== 0) problems.push(said.join("\n"));
  const left = said.filter((s) => s.startsWith("LEFT ")).map((s) => JSON.parse(s.slice(5)));
  await p.close();
  if (killed === null) return;
  if (left.length !== 1) return problems.push(`${left.length} sessions were found after a kill, want 1`);
  const [l] = left;
  if (l.stage !== "cut off" || l.missing !== 0) problems.push(`session is ${JSON.stringify(l)}`);
  lost.push(killed - l.last);
}

// pageZero is what our clock showed when the page's was 0: by the quickest of
// several answers, since half of a slow one would count as lost.
async function pageZero(p) {
  let quickest = Infinity, zero;
  for (let n = 0; n < 8; n++) {
    const began = performance.now();
    const onPage = await p.evaluate("performance.now()");
    const took = performance.now() - began;
    if (took < quickest) [quickest, zero] = [took, began + took / 2 - onPage];
  }
  return zero;
}

// record records until a random instant and returns when on the page's clock
// the browser was killed.
async function record(chrome, origin) {
  const { p, protocol, go } = await open(chrome, origin, "TestRecordUntilKilled");
  const phone = rest(protocol);
  const recording = told(p, "RECORDING");
  await go();
  await recording;
  const zero = await pageZero(p);
  await sleep(random() * LONGEST);
  const at = performance.now();
  await chrome.kill();
  const { refused } = await phone.stop();
  if (refused.length > 0) problems.push(`the browser refused what was played: ${refused[0]}`);
  return (at - zero) / 1000;
}

const folder = mkdtempSync(join(tmpdir(), "kills-"));
const kept = profile();
compile("./app/device", join(folder, "test.wasm"));
const server = await serve(join(folder, "test.wasm"));
let killed = null;
for (let i = 0; i <= times; i++) {
  const chrome = await launch(kept.folder);
  await examine(chrome, server.origin, killed);
  if (i < times) killed = await record(chrome, server.origin);
  else await chrome.kill();
}
server.close();
kept.remove();
rmSync(folder, { recursive: true });

lost.sort((a, b) => a - b);
const at = (q) => lost[Math.min(lost.length - 1, Math.floor(q * lost.length))]?.toFixed(3);
console.log(`${lost.length} kills: lost ${at(0.5)} s in the middle, ${at(0.95)} s at 95 %, ${at(1)} s at most`);
const longer = lost.filter((s) => s > MOST_LOST);
console.log(`${longer.length} of them lost more than ${MOST_LOST} s: ${longer.map((s) => s.toFixed(2)).join(", ")}`);
if (longer.length > lost.length / 20) problems.push(`more than one kill in twenty lost over ${MOST_LOST} s`);
for (const p of problems) console.log(p);
process.exit(problems.length ? 1 : 0);
