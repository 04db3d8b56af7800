// Tells a screen reader what is on the canvas, of which it sees nothing: for
// each thing a name, whether it can be pressed, and where it is. The elements
// lie invisible over the canvas and let touches through; a reader that presses
// one presses the canvas there.
globalThis.stillairReading = (() => {
  "use strict";
  let layer = null, shown = [];

  function press(element) {
    const r = element.getBoundingClientRect();
    const at = { bubbles: true, cancelable: true, clientX: r.left + r.width / 2, clientY: r.top + r.height / 2, button: 0 };
    for (const kind of ["mousemove", "mousedown", "mouseup"]) document.dispatchEvent(new MouseEvent(kind, at));
  }

  function make(thing) {
    const e = document.createElement(thing.press ? "button" : "p");
    if (thing.press) e.addEventListener("click", (event) => { event.stopPropagation(); press(e); });
    return e;
  }

  // place writes what differs only: while a bike moves its speed is all that does.
  function place(e, thing) {
    if (e.textContent !== thing.name) e.textContent = thing.name;
    for (const [side, key] of [["left", "x"], ["top", "y"], ["width", "w"], ["height", "h"]]) {
      if (e.at?.[key] !== thing[key]) e.style[side] = `${thing[key]}px`;
    }
    e.at = thing;
  }

  return {
    // show takes the things of a screen as JSON, in the order of reading.
    show: (json) => {
      const things = JSON.parse(json);
      if (!layer) {
        layer = document.createElement("div");
        layer.id = "reading";
        document.body.append(layer);
      }
      for (let i = things.length; i < shown.length; i++) shown[i].remove();
      shown.length = Math.min(shown.length, things.length);
      things.forEach((thing, i) => {
        const old = shown[i];
        if (!old || (old.tagName === "BUTTON") !== thing.press) {
          shown[i] = make(thing);
          if (old) old.replaceWith(shown[i]); else layer.append(shown[i]);
        }
        place(shown[i], thing);
      });
    },
  };
})();
