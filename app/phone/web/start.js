// Starts the program, and says in words what keeps it from starting.
(() => {
  "use strict";
  const WORDS = {
    en: { loading: "Loading…", wasm: "This browser is too old to run the program (it has no WebAssembly).",
      gl: "This browser cannot draw the program (it has no WebGL).", failed: "The program could not be loaded: ", unkept: "Nothing was recorded.",
      ended: "The program has ended. Reload the page to start it again; what was recorded is kept." },
    de: { loading: "Lädt…", wasm: "Dieser Browser ist zu alt für das Programm (er kennt kein WebAssembly).",
      gl: "Dieser Browser kann das Programm nicht zeichnen (er kennt kein WebGL).", failed: "Das Programm ließ sich nicht laden: ", unkept: "Es wurde nichts aufgezeichnet.",
      ended: "Das Programm ist beendet. Die Seite neu laden startet es wieder; Aufgezeichnetes bleibt erhalten." },
  };
  const LATER = 5000; // ms after the program began
  const language = (navigator.language || "en").slice(0, 2);
  const words = WORDS[language] || WORDS.en;
  const before = document.getElementById("before");
  const say = (text) => { before.hidden = false; document.getElementById("word").textContent = text; };

  // hideWhenDrawn leaves the page's own words over the canvas until the program has
  // said what is on its first screen and drawn it, which it does before it lets the
  // browser show the next frame.
  function hideWhenDrawn() {
    const seen = new MutationObserver(() => {
      if (!document.querySelector("#reading > *")) return;
      seen.disconnect();
      requestAnimationFrame(() => { before.hidden = true; });
    });
    seen.observe(document.body, { childList: true, subtree: true });
  }

  // fail tells a rider who started ahead of the program that it failed.
  function fail(why) {
    const begun = globalThis.stillairSensing.ahead();
    globalThis.stillairSensing.stop();
    for (const id of ["early", "hint"]) document.getElementById(id).hidden = true;
    say(`${why}${begun ? ` ${words.unkept}` : ""}`);
  }

  // keep has a worker keep the files for a start without a network. It loads all of
  // them again, and would take the network and the processor from the start, which is
  // over by LATER. A browser refuses it where it does not trust the certificate; the
  // page then works, but only with the network.
  function keep() {
    if (!("serviceWorker" in navigator)) return;
    navigator.serviceWorker.register("worker.js").catch((e) => console.warn(`no start without a network: ${e.message}`));
  }

  async function start() {
    if (!globalThis.stillairProgram) return say(words.wasm);
    say(words.loading);
    if (!document.createElement("canvas").getContext("webgl")) return fail(words.gl); // found out while the program is compiled
    hideWhenDrawn();
    const go = new Go();
    let instance;
    try {
      instance = await WebAssembly.instantiate(await globalThis.stillairProgram, go.importObject);
    } catch (e) { return fail(words.failed + e.message); }
    const over = go.run(instance);
    setTimeout(keep, LATER);
    await over;
    document.querySelectorAll("canvas").forEach((c) => c.remove());
    say(words.ended);
  }

  start();
})();
