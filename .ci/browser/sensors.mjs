// Plays readings into the browser's own sensor interfaces. What the browser
// refuses is counted and reported: a test whose readings never arrived shows nothing.
const KINDS = ["accelerometer", "linear-acceleration", "gyroscope"];
const G = 9.80665;
const LATE = 10; // ms; what plays a ride wakes within 2 ms on a machine that has time for it

// refusals gathers what the browser would not take. A message that its end cut
// off is none.
function refusals() {
  const list = [];
  return { list, note: (e) => { if (!/has been closed/.test(e.message)) list.push(e.message); } };
}

// enable puts the sensors under our hand; call it before the page loads.
export async function enable(protocol, at = {}) {
  for (const type of KINDS) {
    await protocol.send("Emulation.setSensorOverrideEnabled",
      { type, enabled: true, metadata: { available: true, minimumFrequency: 1, maximumFrequency: 60 } });
  }
  await motion(protocol, { x: 0, y: 0, z: G }, { x: 0, y: 0, z: 0 });
  await fix(protocol, at);
}

// motion sets specific force (m/s2) and turn rate (rad/s). Three messages.
export function motion(protocol, force, turn) {
  const set = (type, xyz) => protocol.send("Emulation.setSensorOverrideReadings", { type, reading: { xyz } });
  return Promise.all([set("accelerometer", force),
    set("linear-acceleration", { x: force.x, y: force.y, z: force.z - G }), set("gyroscope", turn)]);
}

// fix sets what the receiver reports next: degrees, m (accuracy with 95 %
// probability) and m/s. The page gets null for what is NaN here.
export function fix(protocol, { latitude = 48, longitude = 11, accuracy = 5, speed = 0, heading = 0, altitude = 500 }) {
  const known = Object.entries({ latitude, longitude, accuracy, speed, heading, altitude }).filter(([, x]) => !Number.isNaN(x));
  return protocol.send("Emulation.setGeolocationOverride", Object.fromEntries(known));
}

// rest plays a phone lying still, with a fix every second, until stop is
// called. offered counts what was played.
export function rest(protocol, hertz = 60) {
  const refused = refusals();
  const offered = { motion: 0, fix: 0, refused: refused.list };
  let going = true;
  const began = performance.now();
  const loop = (async () => {
    while (going) {
      const wait = began + (offered.motion * 1000) / hertz - performance.now();
      if (wait > 1) await new Promise((done) => setTimeout(done, wait));
      const wobble = 0.2 * Math.sin(offered.motion);
      await motion(protocol, { x: wobble, y: 0, z: G }, { x: 0.01, y: 0.002, z: wobble / 10 });
      if (offered.motion % hertz === 0) {
        await fix(protocol, { longitude: 11 + offered.fix * 1e-7, speed: 0 });
        offered.fix++;
      }
      offered.motion++;
    }
  })().catch(refused.note);
  return { offered, stop: async () => { going = false; await loop; return offered; } };
}

// ride plays a plain log in real time from when it is called; onset is what its
// clock shows then. played counts, late and behind among it: by how many ms the
// latest event came late, and how many came later than a machine with time to
// spare lets them. over resolves when the ride is over, or stop was called.
export function ride(protocol, { motions, fixes }, onset = motions[0].t_s) {
  const began = performance.now();
  const events = [...motions.map((m) => ({ at: m.t_s, m })), ...fixes.map((f) => ({ at: f.t_s, f }))]
    .filter((e) => e.at >= onset).sort((a, b) => a.at - b.at);
  const refused = refusals();
  const played = { motion: 0, fix: 0, late: 0, behind: 0, until: onset, refused: refused.list };
  let going = true;
  const over = (async () => {
    for (const e of events) {
      const wait = began + (e.at - onset) * 1000 - performance.now();
      if (wait > 1) await new Promise((done) => setTimeout(done, wait));
      if (!going) return;
      played.late = Math.max(played.late, -wait);
      if (-wait > LATE) played.behind++;
      played.until = e.at;
      if (e.m) {
        played.motion++;
        motion(protocol, { x: e.m.ax_mps2, y: e.m.ay_mps2, z: e.m.az_mps2 },
          { x: e.m.gx_radps, y: e.m.gy_radps, z: e.m.gz_radps }).catch(refused.note);
      } else {
        played.fix++;
        fix(protocol, { latitude: e.f.lat_deg, longitude: e.f.lon_deg, accuracy: 2.4477 * e.f.h_sd_m,
          speed: e.f.speed_mps, heading: e.f.bearing_deg, altitude: e.f.alt_m }).catch(refused.note);
      }
    }
  })();
  return { played, over, began, onset, stop: () => { going = false; } };
}
