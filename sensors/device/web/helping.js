// Keeps the screen and what records awake, hands files over, speaks, and shakes
// the phone.
globalThis.stillairHelping = (() => {
  "use strict";
  let held = null, wanted = 0;

  async function hold() {
    if (!wanted || held || document.visibilityState !== "visible") return;
    held = await navigator.wakeLock.request("screen");
    held.addEventListener("release", () => { held = null; });
    if (!wanted) held.release();
  }

  // The browser takes the lock away when the page is hidden.
  document.addEventListener("visibilitychange", () => { hold().catch(() => {}); });

  // What a recording waits for, by number. Browsers slow the timers of a hidden page
  // down to one a second, after minutes to one a minute, and not those of a worker;
  // so a worker has them meanwhile. What waits when the page is hidden is not waited
  // for, since it may be frozen or ended there and then.
  const due = new Map();
  let timers = 0, clock = null;

  function ring(id) {
    const timer = due.get(id);
    if (!timer) return;
    due.delete(id);
    clearTimeout(timer.page);
    timer.tell();
  }

  function after(ms, tell) {
    const id = ++timers;
    due.set(id, { tell, page: setTimeout(ring, ms, id) });
    if (!wanted || document.visibilityState !== "hidden") return;
    if (!clock) {
      clock = new Worker("helping-work.js");
      clock.onmessage = ({ data }) => ring(data);
    }
    clock.postMessage([id, ms]);
  }

  const hurry = () => { if (wanted && document.visibilityState === "hidden") [...due.keys()].forEach(ring); };
  document.addEventListener("visibilitychange", hurry);
  document.addEventListener("freeze", hurry);

  function download(file) {
    const a = document.createElement("a");
    a.href = URL.createObjectURL(file);
    a.download = file.name;
    document.body.append(a);
    a.click();
    a.remove();
    setTimeout(() => URL.revokeObjectURL(a.href), 60000);
  }

  // share opens the share sheet where there is one that takes the file, and
  // otherwise downloads it. A rider who closes the sheet has decided.
  async function share(name, type, bytes) {
    const file = new File([bytes], name, { type });
    if (navigator.canShare && navigator.canShare({ files: [file] })) {
      try { await navigator.share({ files: [file] }); return; } catch (e) {
        if (e.name === "AbortError") return;
      }
    }
    download(file);
  }

  function say(text, language) {
    const words = new SpeechSynthesisUtterance(text);
    if (language) words.lang = language;
    speechSynthesis.speak(words);
  }

  return {
    canWake: () => "wakeLock" in navigator,
    canSay: () => "speechSynthesis" in globalThis,
    canBuzz: () => "vibrate" in navigator,
    wake: () => { wanted++; return hold(); },
    // after calls tell once ms are over, or sooner where the page is hidden.
    after,
    rest: () => { if (--wanted === 0 && held) held.release(); },
    share,
    say,
    buzz: (ms) => navigator.vibrate(ms),
    // phone tells what kind of phone or tablet this is: "apple", whose tablets
    // call themselves desks, "other", or "" for none.
    phone: () => (navigator.vendor.startsWith("Apple") && navigator.maxTouchPoints > 1 ? "apple" : /Android|Mobile/.test(navigator.userAgent) ? "other" : ""),
    language: () => navigator.language || "",
    dark: () => matchMedia("(prefers-color-scheme: dark)").matches,
    // text is the size of the system's text beside the usual 16 pixels.
    text: () => parseFloat(getComputedStyle(document.documentElement).fontSize) / 16,
    // announce gives words to the screen reader, which sees nothing of a canvas.
    announce: (text) => {
      const place = document.getElementById("spoken");
      if (place) place.textContent = text;
    },
  };
})();
