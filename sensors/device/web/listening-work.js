// Brings sound down to a low rate where the browser hands it over, so that
// nothing above the band ever leaves the audio thread. The filter comes from the
// program; it is symmetric, so what comes out is late by half its length.
class Stillair extends AudioWorkletProcessor {
  constructor({ processorOptions: { taps, factor, each } }) {
    super();
    this.taps = taps; this.factor = factor;
    this.past = new Float32Array(taps.length + 128);
    this.out = new Float32Array(each);
    this.filled = 0; this.until = factor; this.clipped = 0; this.first = 0;
  }
  process([input]) {
    const x = input && input[0];
    if (!x) return true; // no sound comes now
    const { past, taps } = this, n = taps.length;
    past.copyWithin(0, x.length);
    past.set(x, past.length - x.length);
    for (let i = 0; i < x.length; i++) {
      if (Math.abs(x[i]) >= 0.999) this.clipped++;
      if (--this.until > 0) continue;
      this.until = this.factor;
      const at = past.length - x.length + i - n + 1;
      let sum = 0;
      for (let k = 0; k < n; k++) sum += taps[k] * past[at + k];
      if (this.filled === 0) this.first = currentFrame + i - (n - 1) / 2;
      this.out[this.filled++] = sum;
      if (this.filled === this.out.length) this.send(currentFrame + x.length);
    }
    return true;
  }
  send(now) {
    this.port.postMessage({ first: this.first, now, clipped: this.clipped, levels: this.out.slice() });
    this.filled = 0; this.clipped = 0;
  }
}
registerProcessor("stillair", Stillair);
