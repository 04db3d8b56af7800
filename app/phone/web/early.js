// Lets a rider start the recording while the program still loads: the sensors are
// listened to from the tap on, and the program takes over what they gave.
(() => {
  "use strict";
  const WORDS = {
    en: { start: "Start recording", hint: "Everything else is still loading. Start while you stand, then put the phone away. The bike and the setup are those chosen last.",
      asking: "Waiting for the sensors…", runs: "Recording. The rest is loading…" },
    de: { start: "Aufzeichnung starten", hint: "Alles andere lädt noch. Im Stand starten und das Telefon dann wegstecken. Maschine und Aufbau sind die zuletzt gewählten.",
      asking: "Wartet auf die Sensoren…", runs: "Die Aufzeichnung läuft. Der Rest lädt noch…" },
  };
  const LOOK = 200; // ms
  const words = WORDS[(navigator.language || "en").slice(0, 2)] || WORDS.en;
  const sensing = globalThis.stillairSensing;
  const [before, word, button, hint] = ["before", "word", "early", "hint"].map((id) => document.getElementById(id));
  const able = isSecureContext && globalThis.stillairProgram && globalThis.stillairHelping.phone() &&
    typeof DeviceMotionEvent !== "undefined" && navigator.geolocation;

  function offer() {
    button.textContent = words.start;
    hint.textContent = words.hint;
    button.hidden = hint.hidden = false;
  }

  // follow says that it records only once a reading has come.
  function follow() {
    if (before.hidden || !sensing.ahead()) return;
    word.textContent = sensing.felt() > 0 ? words.runs : words.asking;
    setTimeout(follow, LOOK);
  }

  addEventListener("stillair-taken", () => { button.hidden = hint.hidden = true; });
  button.addEventListener("click", () => {
    button.hidden = hint.hidden = true;
    sensing.startAhead();
    follow();
  });
  if (able) offer();
})();
