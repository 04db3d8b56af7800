// Collects what the browser's sensors tell where the page receives it, as rows
// of numbers, so that the program is woken ten times a second to take them all
// and not once for every event. rows.go reads the rows.
//
// A row: what it is, time in ms on the page's clock, then up to eight numbers.
//   1 motion  accelerationIncludingGravity x y z (m/s2), rotationRate alpha beta gamma (deg/s)
//   2 fix     timestamp (ms, wall clock), speed, latitude, longitude, accuracy, altitude, heading
//   3 told    sensor, condition, why: numbers that rows.go names
//   4 hole    since when, and why: a number that rows.go names; told when it is over
//
// The page's clock may stand while a phone sleeps, which the time of day shows:
// what was slept while hidden is added to all times.
// What the browser gives as null is NaN.
globalThis.stillairSensing = (() => {
  "use strict";
  const WIDTH = 10;
  let room = 6000; // rows; at 60 Hz a minute and a half without being emptied
  const MOST = 16 * room; // while the program loads, which may take long where the network is slow
  const MOTION = 1, FIX = 2, TOLD = 3, HOLE = 4;
  const TURN = 1, RECEIVER = 2; // sensors; motion itself is 0
  const ASKING = 0, AVAILABLE = 1, DENIED = 2, MISSING = 3, SILENT = 4;
  let rows = new Float64Array(WIDTH * room);
  let filled = 0, lost = 0, felt = 0, watching = null, waiting = null;
  let ahead = false; // collecting for a program that is not there yet
  let turn = 0, running = false, asked = false; // by a tap of the rider
  const HIDDEN = 0, FROZEN = 1, ASLEEP = 2; // why there is a hole
  const SLEPT = 1000; // ms by which the clocks part when a phone slept; the time of day is corrected by less
  let slept = 0, apart = NaN; // ms; time of day less the page's clock
  let hiddenAt = NaN, frozen = false, asleep = false;
  const now = () => performance.now() + slept;
  const number = (x) => (typeof x === "number" ? x : NaN);

  // grow makes room for rows that no program is there to take.
  function grow() {
    if (!ahead || room >= MOST) return false;
    const more = new Float64Array(2 * rows.length);
    more.set(rows);
    rows = more;
    room *= 2;
    return true;
  }

  function put(what, time, a, b, c, d, e, f, g, h) {
    if (filled === room && !grow()) { lost++; return; }
    const i = filled++ * WIDTH;
    rows[i] = what; rows[i + 1] = time;
    rows[i + 2] = a; rows[i + 3] = b; rows[i + 4] = c; rows[i + 5] = d;
    rows[i + 6] = e; rows[i + 7] = f; rows[i + 8] = g; rows[i + 9] = h;
  }

  const tell = (sensor, condition, why) => put(TOLD, now(), sensor, condition, why);

  function onMotion(e) {
    const f = e.accelerationIncludingGravity, r = e.rotationRate;
    if (!f || f.x === null) return; // a browser without the sensor fires one empty event
    felt++;
    put(MOTION, e.timeStamp + slept, f.x, number(f.y), number(f.z),
      r ? number(r.alpha) : NaN, r ? number(r.beta) : NaN, r ? number(r.gamma) : NaN);
  }

  function onPlace(p) {
    const c = p.coords;
    put(FIX, now(), p.timestamp, number(c.speed), c.latitude, c.longitude,
      c.accuracy, number(c.altitude), number(c.heading));
  }

  const onNoPlace = (e) => tell(RECEIVER, e.code === e.PERMISSION_DENIED ? DENIED : SILENT, e.code);

  // compare looks at both clocks.
  function compare() {
    const differ = Date.now() - performance.now();
    if (differ - apart > SLEPT && !Number.isNaN(hiddenAt)) { slept += differ - apart; asleep = true; }
    apart = differ;
  }

  function onVisibility() {
    compare();
    if (document.visibilityState === "hidden") hide(); else back();
  }

  function onFreeze() {
    frozen = true;
    hide();
  }

  function onResume() {
    compare();
    if (document.visibilityState !== "hidden") back();
  }

  function hide() {
    if (!Number.isNaN(hiddenAt)) return;
    hiddenAt = now();
    tell(0, SILENT, 4);
    tell(RECEIVER, SILENT, 4);
  }

  function back() {
    if (Number.isNaN(hiddenAt)) return;
    put(HOLE, now(), hiddenAt, asleep ? ASLEEP : frozen ? FROZEN : HIDDEN);
    hiddenAt = NaN;
    frozen = asleep = false;
  }

  const CYCLE = [["visibilitychange", onVisibility], ["freeze", onFreeze], ["resume", onResume]];

  // leave says what the browser answers to a question it may not know.
  async function leave(name) {
    try { return (await navigator.permissions.query({ name })).state; } catch { return "unknown"; }
  }

  const asks = () => typeof DeviceMotionEvent !== "undefined" && typeof DeviceMotionEvent.requestPermission === "function";

  function listen() {
    addEventListener("devicemotion", onMotion, { passive: true });
  }

  async function ask() {
    try {
      const granted = (await DeviceMotionEvent.requestPermission()) === "granted";
      tell(0, granted ? AVAILABLE : DENIED, granted ? 0 : 5);
      if (granted) listen();
      return true;
    } catch {
      return false; // not from a tap
    }
  }

  // permit asks for place and motion. A browser that wants to ask the rider takes the
  // question only from a tap; the program hears of a tap later, so when it is
  // too late the next tap anywhere on the page asks.
  async function permit() {
    asked = true;
    if (running && watching === null && navigator.geolocation) watchPlace();
    if (!asks() || await ask() || waiting) return;
    waiting = () => { removeEventListener("touchend", waiting, true); waiting = null; ask(); };
    addEventListener("touchend", waiting, true);
    tell(0, ASKING, 6);
  }

  async function startMotion() {
    if (typeof DeviceMotionEvent === "undefined") return tell(0, MISSING, 7);
    if (asks()) { if (!await ask()) tell(0, ASKING, 11); return; }
    listen();
    const denied = (await leave("accelerometer")) === "denied";
    tell(0, denied ? DENIED : AVAILABLE, denied ? 5 : 0);
    if ((await leave("gyroscope")) === "denied") tell(TURN, DENIED, 5);
  }

  async function startPlace() {
    if (!navigator.geolocation) return tell(RECEIVER, MISSING, 8);
    if (asked) watchPlace();
    const mine = turn, state = await leave("geolocation");
    if (mine !== turn || !running) return;
    if (state === "granted") tell(RECEIVER, AVAILABLE, 0);
    if (asked) { if (state === "prompt") tell(RECEIVER, ASKING, 9); return; }
    // A question that comes with the page, before the rider knows what it is
    // for, is denied for good.
    if (state === "prompt" || (state === "unknown" && asks())) tell(RECEIVER, ASKING, 11);
    else watchPlace();
  }

  function watchPlace() {
    if (watching !== null) return;
    watching = navigator.geolocation.watchPosition(onPlace, onNoPlace, { enableHighAccuracy: true, maximumAge: 0 });
  }

  function begin() {
    filled = lost = felt = 0;
    if (!isSecureContext) { tell(0, MISSING, 10); tell(RECEIVER, MISSING, 10); return; }
    turn++;
    running = true;
    hiddenAt = apart = NaN;
    frozen = asleep = false;
    CYCLE.forEach(([what, then]) => document.addEventListener(what, then));
    if (document.visibilityState === "hidden") hide();
    startMotion();
    startPlace();
  }

  return {
    // turned says that this browser gives forces the other way round, as all
    // browsers on iPhones and iPads do.
    turned: () => navigator.vendor.startsWith("Apple"),
    permit,
    now: () => { compare(); return now(); },
    // startAhead begins to collect from a rider's tap, before the program is there;
    // its own start then takes over what was collected.
    startAhead() {
      asked = ahead = true;
      begin();
    },
    ahead: () => ahead,
    // handOver tells the program whether that was done. It is asked once: from then on
    // the page may not offer it any more, since nobody would take what was collected.
    handOver() {
      dispatchEvent(new Event("stillair-taken"));
      return ahead;
    },
    // felt counts the readings of motion since the start.
    felt: () => felt,
    start() {
      if (ahead) ahead = false; else begin();
    },
    stop() {
      running = ahead = false;
      CYCLE.forEach(([what, then]) => document.removeEventListener(what, then));
      removeEventListener("devicemotion", onMotion);
      if (watching !== null) navigator.geolocation.clearWatch(watching);
      watching = null;
    },
    // take gives the bytes of the rows so far, which stay valid until the
    // program lets the page run again.
    take() {
      const view = new Uint8Array(rows.buffer, 0, filled * WIDTH * 8);
      filled = 0;
      return view;
    },
    lost() { const n = lost; lost = 0; return n; },
  };
})();
