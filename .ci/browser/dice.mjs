// What tests that take their instants from chance share.

// dice gives the numbers of one ride: mulberry32, a small generator with a seed.
export function dice(of) {
  let state = of;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export const MOST_LATE = 400; // ms by which a test is woken late at most on a machine that has time for it

// lateness follows by how many ms this program is woken late at most, until it is
// asked.
export function lateness() {
  let before = performance.now(), most = 0;
  const look = setInterval(() => { most = Math.max(most, performance.now() - before - 50); before = performance.now(); }, 50);
  return () => { clearInterval(look); return most; };
}
