// The toolkit hears a mouse and no touch, and its lists run by the wheel alone.
// This turns one finger into a mouse: a finger that does not travel clicks when
// it lifts, one that travels turns the wheel by as much, and when it lets go
// while moving the list runs out. The button goes down and up again at once, so
// that a screen that is redrawn under a resting finger does not lose the tap;
// but on what is to be held it goes down while the finger rests.
// The mouse stays where the finger left: the toolkit looks where it is when it
// gets round to the button.
(() => {
  "use strict";
  const REST = 350; // ms until a finger rests
  const TRAVEL = 8; // CSS pixels until a touch is a drag
  const LINGER = 120; // ms for which what was pressed stays shaded
  const ROOM = 24; // CSS pixels between a field and the keyboard
  const DECAY = 0.95, STILL = 0.4; // of the run-out, per frame
  // The toolkit moves a list by twice a turn of the wheel that is EDGE or more,
  // and by a fifth of a smaller one.
  const EDGE = 5, LARGE = 2, SMALL = 0.2;
  const calm = matchMedia("(prefers-reduced-motion: reduce)"); // nothing moves by itself
  let finger = null, from = null, last = null, dragging = false, speed = 0, running = 0, resting = 0, down = false;

  function mouse(kind, at, buttons) {
    document.dispatchEvent(new MouseEvent(kind, { bubbles: true, cancelable: true, clientX: at.x, clientY: at.y, button: 0, buttons }));
  }

  // roll moves the list under the mouse down by this many CSS pixels.
  function roll(at, by) {
    const large = Math.abs(by) >= LARGE * EDGE;
    const turns = large ? 1 : Math.floor(Math.abs(by) / (SMALL * EDGE)) + 1;
    const turn = large ? by / LARGE : by / SMALL / turns;
    for (let n = 0; n < turns; n++) {
      document.dispatchEvent(new WheelEvent("wheel", { bubbles: true, cancelable: true, clientX: at.x, clientY: at.y, deltaY: -turn }));
    }
  }

  function rest() {
    if (!globalThis.stillairReading.heldAt(from.x, from.y)) return;
    down = true;
    mouse("mousemove", from, 0);
    mouse("mousedown", from, 1);
  }

  // lift reports whether the finger rested, and lets the button go.
  function lift() {
    clearTimeout(resting);
    const was = down;
    if (down) mouse("mouseup", from, 0);
    down = false;
    return was;
  }

  const onCanvas = (e) => e.target instanceof HTMLCanvasElement;
  const point = (t) => ({ x: t.clientX, y: t.clientY, time: performance.now() });
  const mine = (e) => [...e.changedTouches].find((t) => t.identifier === finger);

  function start(e) {
    if (!onCanvas(e)) return;
    e.preventDefault();
    cancelAnimationFrame(running);
    if (finger !== null) return;
    const t = e.changedTouches[0];
    finger = t.identifier;
    from = last = point(t);
    dragging = false;
    speed = 0;
    globalThis.stillairReading.shade(from.x, from.y);
    resting = setTimeout(rest, REST);
  }

  function move(e) {
    const t = mine(e);
    if (!t) return;
    e.preventDefault();
    const at = point(t);
    if (!dragging && Math.hypot(at.x - from.x, at.y - from.y) <= TRAVEL) return;
    lift();
    if (!dragging) begin();
    const frames = Math.max(at.time - last.time, 1) / 16.7;
    speed = (at.y - last.y) / frames;
    roll(at, at.y - last.y);
    last = at;
  }

  // begin makes a touch a drag: it presses nothing, and what was typed into
  // moves away under it.
  function begin() {
    dragging = true;
    globalThis.stillairReading.shade();
    document.activeElement.blur();
    mouse("mousemove", from, 0);
  }

  function end(e) {
    const t = mine(e);
    if (!t) return;
    e.preventDefault();
    finger = null;
    setTimeout(() => globalThis.stillairReading.shade(), LINGER);
    if (lift()) return;
    if (!dragging) return tap(from);
    if (performance.now() - last.time < 60 && !calm.matches) runOut(last, speed);
  }

  // tap goes to a field of the page, which the phone then brings its keyboard
  // for, or clicks.
  function tap(at) {
    const field = globalThis.stillairReading.fieldAt(at.x, at.y);
    if (field) return field.focus();
    document.activeElement.blur();
    click(at);
  }

  function click(at) {
    mouse("mousemove", at, 0);
    mouse("mousedown", at, 1);
    mouse("mouseup", at, 0);
  }

  function cancel(e) {
    if (!mine(e)) return;
    finger = null;
    globalThis.stillairReading.shade();
    lift();
  }

  // Where the keyboard leaves less room, the field that is typed into moves
  // above it.
  function uncover() {
    const field = document.activeElement;
    if (!field.matches("#reading > input, #reading > textarea")) return;
    const r = field.getBoundingClientRect(), bottom = visualViewport.offsetTop + visualViewport.height;
    if (r.bottom + ROOM <= bottom) return;
    const at = { x: r.left + r.width / 2, y: bottom / 2 };
    mouse("mousemove", at, 0);
    roll(at, bottom - r.bottom - ROOM);
  }

  function runOut(at, by) {
    if (Math.abs(by) < STILL) return;
    roll(at, by);
    running = requestAnimationFrame(() => runOut(at, by * DECAY));
  }

  const firm = { passive: false };
  document.addEventListener("touchstart", start, firm);
  document.addEventListener("touchmove", move, firm);
  document.addEventListener("touchend", end, firm);
  document.addEventListener("touchcancel", cancel, firm);
  // The program redraws first, and then the reader's layer follows it.
  visualViewport.addEventListener("resize", () => setTimeout(uncover, 500));
})();
