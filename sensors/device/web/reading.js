// Tells a screen reader what is on the canvas, of which it sees nothing: for
// each thing a name, its role, and where it is. The elements lie invisible over
// the canvas and let touches through; a reader that presses one presses the
// canvas there. A field is one of the page's own, which is seen while it is
// typed into: keyboard, selection and correction are then the phone's. What is
// under a finger is shaded at once.
globalThis.stillairReading = (() => {
  "use strict";
  let layer = null, shown = [], taken = () => {};
  const HOLD_ON = 500; // ms, for a program that is slow to count
  const TAGS = { button: "button", checkbox: "button", radio: "button" };

  function press(element) {
    const r = element.getBoundingClientRect();
    const at = { bubbles: true, cancelable: true, clientX: r.left + r.width / 2, clientY: r.top + r.height / 2, button: 0 };
    const send = (kind) => document.dispatchEvent(new MouseEvent(kind, at));
    send("mousemove");
    send("mousedown");
    if (element.at.held) setTimeout(send, element.at.held + HOLD_ON, "mouseup"); else send("mouseup");
  }

  // kindOf tells which things need another element.
  const kindOf = (t) => (t.role === "textbox" ? `textbox ${t.lines}` : t.role || (t.level ? `h${t.level}` : "p"));

  function make(thing) {
    const kind = kindOf(thing);
    if (thing.role === "textbox") return makeField(thing, kind);
    const e = document.createElement(TAGS[kind] ?? kind);
    e.dataset.kind = kind;
    if (thing.role) e.addEventListener("click", (event) => { event.stopPropagation(); press(e); });
    if (thing.role && thing.role !== "button") e.setAttribute("role", thing.role);
    return e;
  }

  function makeField(thing, kind) {
    const e = document.createElement(thing.lines ? "textarea" : "input");
    e.dataset.kind = kind;
    Object.assign(e, { autocomplete: "off", spellcheck: false });
    e.setAttribute("autocorrect", "off");
    // The toolkit hears keys and clicks of the whole page and keeps them from
    // what they are meant for.
    for (const heard of ["keydown", "keyup", "mousedown", "mouseup", "contextmenu"]) e.addEventListener(heard, (event) => event.stopPropagation());
    e.addEventListener("input", () => taken(e.at.key, e.value));
    e.addEventListener("keydown", (event) => { if (event.key === "Enter" && !event.isComposing && !e.at.lines) follow(e); });
    return e;
  }

  const fields = () => shown.filter((e) => e.at.role === "textbox");

  // follow goes to the next field; after the last the keyboard closes.
  function follow(e) {
    const all = fields(), next = all[all.indexOf(e) + 1];
    if (next) next.focus(); else e.blur();
  }

  const set = (e, name, value) => { if (e.getAttribute(name) !== value) e.setAttribute(name, value); };

  // place writes what differs only: while a bike moves its speed is all that does.
  function place(e, thing) {
    if (thing.role === "textbox") placeField(e, thing);
    else if (e.textContent !== thing.name) e.textContent = thing.name;
    if (thing.role === "checkbox" || thing.role === "radio") set(e, "aria-checked", String(thing.on));
    if (thing.role === "button") { if (thing.on) set(e, "aria-current", "page"); else e.removeAttribute("aria-current"); }
    for (const [side, key] of [["left", "x"], ["top", "y"], ["width", "w"], ["height", "h"]]) {
      if (e.at?.[key] !== thing[key]) e.style[side] = `${thing[key]}px`;
    }
    e.at = thing;
  }

  function placeField(e, thing) {
    // What is being typed is the rider's: the program follows.
    if (e !== document.activeElement && e.value !== thing.value) e.value = thing.value;
    set(e, "aria-label", thing.name);
    if (thing.note) set(e, "aria-description", thing.note); else e.removeAttribute("aria-description");
    set(e, "inputmode", thing.keys || "text");
    set(e, "autocapitalize", thing.keys ? "off" : "sentences");
    if (e.at?.points !== thing.points) e.style.fontSize = `${thing.points}px`;
    if (e.at?.ink !== thing.ink) e.style.color = thing.ink;
    if (e.at?.ground !== thing.ground) e.style.backgroundColor = thing.ground;
  }

  const holds = (e, x, y) => { const r = e.getBoundingClientRect(); return x >= r.left && x <= r.right && y >= r.top && y <= r.bottom; };

  // fieldAt gives the field at a place of the page.
  const fieldAt = (x, y) => fields().find((e) => holds(e, x, y));

  // heldAt tells whether what lies at a place answers only to being held.
  const heldAt = (x, y) => shown.some((e) => e.at.held && holds(e, x, y));

  // shade marks what would be pressed at a place; without one, nothing.
  function shade(x, y) {
    for (const e of shown) e.classList.toggle("pressed", x !== undefined && e.tagName === "BUTTON" && holds(e, x, y));
  }

  return {
    fieldAt,
    heldAt,
    shade,
    // typed has take called with a field's key and what stands in it.
    typed: (take) => { taken = take; },
    // show takes the things of a screen as JSON, in the order of reading.
    show: (json) => {
      const things = JSON.parse(json);
      if (!layer) {
        layer = document.createElement("main");
        layer.id = "reading";
        document.body.append(layer);
      }
      for (let i = things.length; i < shown.length; i++) shown[i].remove();
      shown.length = Math.min(shown.length, things.length);
      things.forEach((thing, i) => {
        const old = shown[i];
        if (!old || old.dataset.kind !== kindOf(thing)) {
          shown[i] = make(thing);
          if (old) old.replaceWith(shown[i]); else layer.append(shown[i]);
        }
        place(shown[i], thing);
      });
      const all = fields();
      all.forEach((e, i) => set(e, "enterkeyhint", e.at.lines ? "enter" : i + 1 < all.length ? "next" : "done"));
    },
  };
})();
