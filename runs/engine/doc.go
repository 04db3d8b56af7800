// Package engine estimates engine speed without a connection to the engine, by
// order tracking: from its vibration in an accelerometer, or from sound.
//
// # Method
//
// An engine shakes its mount at whole multiples of its own speed, the orders
// (Brandt, Noise and Vibration Analysis, on order tracking). In one gear, with
// the clutch fully engaged, engine speed is road speed times one ratio for the
// whole pull. So the crank angle is known except for that ratio: it is the
// distance travelled times q, in turns per metre. For each q of a fine grid the
// samples are multiplied by the rotating phase of every order at their own
// times, and summed over short frames (a periodogram over distance):
//
//	P(q, h, frame) = |Σ x(tᵢ)·exp(−2πi·h·q·s(tᵢ))|²
//
// The right q collects the power of all orders in all frames at once.
//
// # Aliasing
//
// A phone samples at 100 or 200 Hz, and an engine's second order at 9000 per
// minute is at 300 Hz: it is folded to another frequency. The sum above uses
// the phase at the true sample times, so an aliased line is collected as well
// as any other; the only loss is that two orders may fold onto one frequency
// for a moment. This needs true sample times: rounding to much more than a
// tenth of the period of an order blurs it.
//
// # Following
//
// The ratio times the road speed has the receiver's error. Follow searches near
// it for the lines themselves, frame by frame, and gives the uncertainty of
// each value.
//
// # Refusing
//
// One set of lines can be explained by a ratio and by its half or double. The
// search is limited to ratios that keep the engine inside its working range
// over the pull, and returns ErrNoLock if the best ratio does not stand out, if
// another one does nearly as well, or if the two halves of the pull disagree. A
// wrong answer would be worse than none: the power curve would be drawn at the
// wrong engine speed.
package engine
