// Has long work done by the program itself, once more in a worker: it is started
// from what the page compiled already, and all its memory is gone when it ends,
// where the page's own memory never shrinks.
globalThis.stillairAnalysing = (() => {
  "use strict";
  // A worker that says nothing for so many looks is given up: browsers end some
  // silently. Looks, and not time, since a phone may sleep meanwhile, and the worker
  // with it.
  const LOOK = 10000, LOOKS = 12; // ms

  // begin returns one piece of work: what is to be done is added part by part,
  // go has it done. tell is called with the share that is done, over once, with
  // the parts of the answer, or with null and why there is none.
  function begin(tell, over) {
    const parts = [];
    let worker = null, looking = 0, silent = 0, ended = false;

    function end(answer, why) {
      if (ended) return;
      ended = true;
      clearInterval(looking);
      worker?.terminate();
      over(answer, why);
    }

    async function go() {
      try {
        const program = await globalThis.stillairProgram;
        if (!program) throw new Error("there is no program");
        if (ended) return;
        worker = new Worker("analysing-work.js");
        worker.onmessage = ({ data: { share, answer, failed } }) => {
          if (ended) return;
          if (share === undefined) return end(answer ?? null, failed);
          silent = 0;
          tell(share);
        };
        worker.onerror = (e) => { e.preventDefault(); end(null, e.message || "the worker does not run"); };
        worker.onmessageerror = () => end(null, "the worker is not understood");
        looking = setInterval(() => { if (++silent === LOOKS) end(null, "the worker does not answer"); }, LOOK);
        worker.postMessage({ program, parts }, parts.map((p) => p.buffer));
      } catch (e) { end(null, e.message); }
    }

    return { add: (part) => { parts.push(part); }, go, stop: () => end(null, "stopped") };
  }

  return { begin };
})();
