// Gives every screen of the program its own entry in the browser's history, so
// that the phone's way back goes up one screen and does not leave the page, and
// asks before the page is left while it records.
globalThis.stillairReturning = (() => {
  "use strict";
  const deepAt = () => history.state?.deep ?? 0;
  let at = deepAt(), want = at, moving = false, held = false, back = () => {};

  // settle brings the history to where the program is. Going back in it takes a
  // while, in which nothing else is done.
  function settle() {
    if (moving) return;
    while (at < want) history.pushState({ deep: ++at }, "");
    if (at > want) { moving = true; history.go(want - at); }
  }

  addEventListener("popstate", () => {
    const by = at - deepAt();
    at -= by;
    if (moving) moving = false;
    else {
      // Until the program says where it is. It knows no way forward, which settle undoes.
      if (!held && by > 0) want = at;
      for (let n = 0; n < by; n++) back();
    }
    settle();
  });

  // The toolkit takes every key for itself and would leave the browser none to go back by.
  const ways = (e) => ((e.altKey || e.metaKey) && /^Arrow(Left|Right)$/.test(e.key)) || /^Browser(Back|Forward)$/.test(e.key);
  for (const kind of ["keydown", "keyup"]) addEventListener(kind, (e) => { if (ways(e)) e.stopImmediatePropagation(); }, true);

  const ask = (e) => e.preventDefault();

  return {
    // went has f called for each screen that the rider goes back.
    went: (f) => { back = f; },
    // deep tells how many screens there are to go back, and whether leaving the
    // page loses something.
    deep(n, recording) {
      want = n;
      held = recording;
      settle();
      if (recording) addEventListener("beforeunload", ask); else removeEventListener("beforeunload", ask);
    },
  };
})();
