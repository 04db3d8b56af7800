// The toolkit hears a mouse and no touch. This turns one finger into a mouse:
// a finger that does not travel clicks when it lifts, one that travels drags,
// and when it lets go while moving the list runs out as if wheeled. The button
// goes down and up again at once, so that a screen that is drawn anew under a
// resting finger does not lose the tap. The mouse stays where the finger left:
// the toolkit looks where it is when it gets round to the button.
(() => {
  "use strict";
  const TRAVEL = 8; // CSS pixels until a touch is a drag
  const DECAY = 0.95, STILL = 0.4; // of the run-out, per frame
  let finger = null, from = null, last = null, dragging = false, speed = { x: 0, y: 0 }, running = 0;

  function mouse(kind, at, moved) {
    document.dispatchEvent(new MouseEvent(kind, { bubbles: true, cancelable: true, clientX: at.x, clientY: at.y,
      movementX: moved ? moved.x : 0, movementY: moved ? moved.y : 0, button: 0, buttons: kind === "mouseup" ? 0 : 1 }));
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
    speed = { x: 0, y: 0 };
  }

  function press() {
    mouse("mousemove", from);
    mouse("mousedown", from);
  }

  function move(e) {
    const t = mine(e);
    if (!t) return;
    e.preventDefault();
    const at = point(t);
    if (!dragging && Math.hypot(at.x - from.x, at.y - from.y) <= TRAVEL) return;
    if (!dragging) press();
    dragging = true;
    const frames = Math.max(at.time - last.time, 1) / 16.7;
    speed = { x: (at.x - last.x) / frames, y: (at.y - last.y) / frames };
    mouse("mousemove", at, { x: at.x - last.x, y: at.y - last.y });
    last = at;
  }

  function end(e) {
    const t = mine(e);
    if (!t) return;
    e.preventDefault();
    finger = null;
    const at = dragging ? point(t) : from;
    if (!dragging) press();
    mouse("mouseup", at);
    if (dragging && performance.now() - last.time < 60) runOut(at, speed);
  }

  function cancel(e) {
    if (!mine(e)) return;
    finger = null;
    if (dragging) mouse("mouseup", last);
  }

  function runOut(at, v) {
    if (Math.hypot(v.x, v.y) < STILL) return;
    document.dispatchEvent(new WheelEvent("wheel", { bubbles: true, cancelable: true, clientX: at.x, clientY: at.y,
      deltaX: -v.x, deltaY: -v.y }));
    running = requestAnimationFrame(() => runOut(at, { x: v.x * DECAY, y: v.y * DECAY }));
  }

  const firm = { passive: false };
  document.addEventListener("touchstart", start, firm);
  document.addEventListener("touchmove", move, firm);
  document.addEventListener("touchend", end, firm);
  document.addEventListener("touchcancel", cancel, firm);
})();
