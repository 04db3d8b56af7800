// Package engine finds engine speed without a wire: from the shaking that the
// engine leaves in an accelerometer, or from sound.
//
// # Method
//
// An engine shakes its mount at whole multiples of its own speed, the orders
// (Brandt, Noise and Vibration Analysis, on order tracking). In one gear, with
// the clutch home, engine speed is road speed times one ratio for the whole
// pull. So the engine's angle is known except for that one number: it is the
// distance travelled times q, in turns per metre. For each q of a fine grid
// the samples are multiplied by the turning phase of every order at their own
// times, and summed over short frames:
//
//	P(q, h, frame) = |Σ x(tᵢ)·exp(−2πi·h·q·s(tᵢ))|²
//
// The right q collects the power of all orders in all frames at once.
//
// # Aliasing
//
// A phone samples at 100 or 200 Hz, and an engine's second order at 9000 per
// minute is at 300 Hz: it is folded to another frequency. The sum above takes
// the phase at the times when the samples were really taken, so a folded line
// is collected as well as any other; nothing is lost but the certainty that
// two orders do not fold onto one frequency for a moment. This wants true
// sample times: stamps that are rounded to much more than a tenth of the
// period of an order blur it.
//
// # Following
//
// The ratio times the road speed errs with the receiver. Follow looks beside it
// for the lines themselves, frame by frame, and tells how certain each value is.
//
// # Refusing
//
// One set of lines can be explained by a ratio and by its half or double. The
// search is held to the ratios that keep the engine inside its working range
// over the pull, and refuses to answer, with ErrNoLock, when the best ratio does not
// stand out, when another one does nearly as well, or when the two halves of
// the pull disagree. A guess would be worse than none: power over engine speed
// would be drawn at the wrong place.
package engine
