// Listens to the engine through the microphone, where the rider gave leave, and
// keeps what listening-work.js makes of it until the program takes it.
//
// A row begins with how many numbers follow it. Of sound: when it was handed
// over (ms on the page's clock), the frames of its first value and of the
// present, how many readings were clipped, and the values from -1 to 1. Of a
// condition: -1 instead, and then the condition and why, numbers that microphone.go names.
globalThis.stillairListening = (() => {
  "use strict";
  const ASKING = 0, AVAILABLE = 1, DENIED = 2, MISSING = 3, SILENT = 4;
  const WANTED = { audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false, channelCount: 1 } };
  const ROOM = 600; // stretches, a minute
  let rows = [], lost = 0, context = null, stream = null, going = 0;

  const put = (row) => { if (rows.length === ROOM) lost++; else rows.push(row); };
  const tell = (condition, why) => put([3, -1, condition, why]);
  const can = () => !!(navigator.mediaDevices && navigator.mediaDevices.getUserMedia && globalThis.AudioWorkletNode);
  const quiet = (s) => s.getTracks().forEach((track) => track.stop());

  function refused(e) {
    if (e.name === "NotAllowedError" || e.name === "SecurityError") tell(DENIED, 1);
    else if (e.name === "NotFoundError" || e.name === "OverconstrainedError") tell(MISSING, 2);
    else tell(SILENT, 3);
  }

  // permit asks the rider, and lets go of the microphone at once.
  async function permit() {
    if (!can()) return "missing";
    try { quiet(await navigator.mediaDevices.getUserMedia(WANTED)); return "granted"; } catch (e) {
      return e.name === "NotFoundError" ? "missing" : "denied";
    }
  }

  async function listen(mine, design) {
    tell(ASKING, 4);
    const got = await navigator.mediaDevices.getUserMedia(WANTED);
    if (mine !== going) return quiet(got);
    stream = got;
    const track = stream.getAudioTracks()[0];
    track.onended = () => { if (mine === going) tell(SILENT, 3); };
    track.onmute = () => { if (mine === going) tell(SILENT, 5); };
    context = new AudioContext({ latencyHint: "playback" });
    await context.audioWorklet.addModule("listening-work.js");
    if (mine !== going) return;
    const { taps, factor, each } = design(context.sampleRate, track.getSettings().latency || 0);
    const node = new AudioWorkletNode(context, "stillair",
      { numberOfInputs: 1, numberOfOutputs: 1, channelCount: 1, channelCountMode: "explicit", processorOptions: { taps: Float32Array.from(taps), factor, each } });
    node.port.onmessage = ({ data }) => {
      if (mine === going) put([4 + data.levels.length, performance.now(), data.first, data.now, data.clipped, ...data.levels]);
    };
    context.createMediaStreamSource(stream).connect(node).connect(context.destination); // it gives silence: without a way out a browser runs nothing
    tell(AVAILABLE, 0);
    await context.resume();
  }

  return {
    permit,
    start(design) {
      rows = []; lost = 0;
      const mine = ++going;
      if (!isSecureContext || !can()) return tell(MISSING, isSecureContext ? 2 : 6);
      listen(mine, design).catch((e) => { if (mine === going) refused(e); });
    },
    stop() {
      going++;
      if (stream) quiet(stream);
      if (context) context.close().catch(() => {});
      stream = context = null;
    },
    take() {
      const flat = Float64Array.from(rows.flat());
      rows = [];
      return new Uint8Array(flat.buffer);
    },
    lost() { const n = lost; lost = 0; return n; },
  };
})();
