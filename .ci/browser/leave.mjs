// When the page asks for the sensors: only from a rider's tap, and never with the
// page. sensing.js runs here in a browser made of doubles, since a real one's
// question cannot be seen from a script.
//   node leave.mjs
import assert from "node:assert";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import vm from "node:vm";
import { ROOT } from "./testpage.mjs";

const script = readFileSync(join(ROOT, "sensors/device/web/sensing.js"), "utf8");
const RECEIVER = 2, ASKING = 0, DENIED = 2;
const settle = () => new Promise((done) => setTimeout(done, 5));

// browser opens the script where the location's state is known (or is not, as in
// old browsers) and motion is asked for or comes without being asked.
function browser({ location, motionAsks }) {
  const did = { watched: 0, asked: 0 };
  class DeviceMotionEvent {}
  if (motionAsks) {
    DeviceMotionEvent.requestPermission = async () => {
      if (!did.tapping) throw new Error("not from a tap");
      did.asked++;
      return did.answer ?? "granted";
    };
  }
  const page = vm.createContext({
    isSecureContext: true, performance, DeviceMotionEvent, Date,
    addEventListener: () => {}, removeEventListener: () => {},
    document: { visibilityState: "visible", addEventListener: () => {}, removeEventListener: () => {} },
    navigator: {
      vendor: "", geolocation: { watchPosition: () => ++did.watched, clearWatch: () => {} },
      permissions: { query: async ({ name }) => { if (location === undefined) throw new Error("unknown"); return { state: name === "geolocation" ? location : "granted" }; } },
    },
  });
  vm.runInContext(script, page);
  const sensing = vm.runInContext("stillairSensing", page);
  const told = () => {
    const bytes = sensing.take(), out = [];
    const row = new Float64Array(bytes.slice().buffer);
    for (let i = 0; i < row.length; i += 10) if (row[i] === 3) out.push([row[i + 2], row[i + 3], row[i + 4]]);
    return out;
  };
  return { sensing, did, told };
}

for (const [name, set, watchedAtOnce] of [
  ["a first visit", { location: "prompt", motionAsks: false }, 0],
  ["a first visit on an iPhone", { location: "prompt", motionAsks: true }, 0],
  ["an old iPhone", { location: undefined, motionAsks: true }, 0],
  ["allowed before", { location: "granted", motionAsks: false }, 1],
  ["denied before, which the browser tells", { location: "denied", motionAsks: false }, 1],
]) {
  const { sensing, did, told } = browser(set);
  sensing.start();
  await settle();
  assert.equal(did.watched, watchedAtOnce, `${name}: with the page`);
  assert.equal(did.asked, 0, `${name}: motion with the page`);
  assert.equal(told().some(([s, c, why]) => s === RECEIVER && c === ASKING && why === 11), watchedAtOnce === 0, `${name}: it says that it will ask`);
  did.tapping = true;
  sensing.permit();
  await settle();
  assert.equal(did.watched, 1, `${name}: from the tap`);
  assert.equal(did.asked, set.motionAsks ? 1 : 0, `${name}: motion from the tap`);
  sensing.stop(); // the ride begins with a new start
  sensing.start();
  await settle();
  assert.equal(did.watched, 2, `${name}: the ride itself`);
}

const { sensing, did, told } = browser({ location: "granted", motionAsks: true });
Object.assign(did, { tapping: true, answer: "denied" });
sensing.start();
await settle();
assert(told().some(([s, c]) => s === 0 && c === DENIED), "a denial is reported");

for (const [name, set] of [["", { location: "prompt", motionAsks: false }], [" on an iPhone", { location: "prompt", motionAsks: true }]]) {
  const early = browser(set);
  early.did.tapping = true;
  early.sensing.startAhead();
  assert.deepEqual([early.did.watched, early.did.asked], [1, set.motionAsks ? 1 : 0], `started before the program is there${name}: asked for from the tap`);
  early.did.tapping = false;
  await settle();
  early.sensing.start(); // the program takes over
  assert.equal(early.sensing.ahead(), false);
  assert(early.told().some(([s, c]) => s === 0 && c === 1), `started before the program is there${name}: what was collected is handed over`);
  assert.deepEqual([early.did.watched, early.did.asked], [1, set.motionAsks ? 1 : 0], `started before the program is there${name}: nothing is asked for again`);
}

const left = browser({ location: "prompt", motionAsks: false });
left.sensing.start();
left.sensing.stop(); // before the browser has answered
await settle();
assert.equal(left.did.watched, 0, "stopped before it began");
console.log("ok   leave is asked for from a tap alone");
