// Tells a screen reader what is on the canvas, of which it sees nothing: for
// each thing a name, its role, and where it is; for a field what stands in it and
// what there is to say of it besides. The elements lie invisible over the canvas
// and let touches through; a reader that presses one presses the canvas there.
globalThis.stillairReading = (() => {
  "use strict";
  let layer = null, shown = [];

  function press(element) {
    const r = element.getBoundingClientRect();
    const at = { bubbles: true, cancelable: true, clientX: r.left + r.width / 2, clientY: r.top + r.height / 2, button: 0 };
    for (const kind of ["mousemove", "mousedown", "mouseup"]) document.dispatchEvent(new MouseEvent(kind, at));
  }

  // A field that is pressed has the toolkit focus its hidden one, which then
  // answers to the same name.
  function enter(e) {
    document.getElementById("dummyEntry")?.setAttribute("aria-label", e.getAttribute("aria-label"));
  }

  function make(thing) {
    const e = document.createElement({ button: "button", textbox: "div" }[thing.role] ?? "p");
    e.dataset.role = thing.role;
    if (thing.role === "textbox") { e.setAttribute("role", "textbox"); e.tabIndex = 0; }
    if (thing.role) e.addEventListener("click", (event) => { event.stopPropagation(); if (thing.role === "textbox") enter(e); press(e); });
    return e;
  }

  const set = (e, name, value) => { if (e.getAttribute(name) !== value) e.setAttribute(name, value); };

  // place writes what differs only: while a bike moves its speed is all that does.
  function place(e, thing) {
    const words = thing.role === "textbox" ? thing.value : thing.name;
    if (e.textContent !== words) e.textContent = words;
    if (thing.role === "textbox") {
      set(e, "aria-label", thing.name);
      set(e, "aria-description", thing.note);
      set(e, "aria-multiline", String(thing.lines));
    }
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
        if (!old || old.dataset.role !== thing.role) {
          shown[i] = make(thing);
          if (old) old.replaceWith(shown[i]); else layer.append(shown[i]);
        }
        place(shown[i], thing);
      });
    },
  };
})();
