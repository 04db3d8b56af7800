// Package marks measures the times, distances and speeds of one run: what a
// launch, a roll-on or a stop took, each with its standard uncertainty.
//
// # When a launch begins
//
// First movement is the instant at which the bike leaves standstill: the
// speed's last zero. No sensor shows it directly. A threshold on the speed
// comes late by as long as the clutch takes to reach it, and how late depends
// on the rider. So the first metres are fitted with the model of a start, an
// acceleration that rises evenly while the clutch takes hold and then stays,
//
//	v(t) = a·(t−t₀)²/(2r) for t₀ < t < t₀+r, then a·(t−t₀−r/2)
//
// and t₀ is first movement. The fit is generalised least squares with the
// covariance of the smoothed speed; the ramp r has a wide prior around a third
// of a second. A rider may let the clutch out in another way, so what the shape of
// the take-up leaves open is part of the standard error of first movement: times
// from there have the wider band, and the rollout is the better figure.
//
// The rollout begins when the bike has moved 0.3048 m (one foot): about as far
// as a front wheel rolls before it clears the beam that starts the clock of a
// drag strip (common practice). When that was follows from the smoothed distance,
// in which the error of the speed from before the start adds up, and by the
// same fit, which knows that the bike stood but not every way to start; the
// two are weighed by their covariance. Times from the rollout do not depend on the
// definition of first movement and compare better between riders; on an
// ordinary clutch they are some 0.4 s shorter.
//
// # Marks
//
// Distances are 60, 330, 660 (1/8 mile), 1000 and 1320 ft (1/4 mile,
// 402.336 m) and 1 km, with 1 ft = 0.3048 m (NIST SP 811). The speed at 1/8
// and 1/4 mile is the mean over the last 66 ft (20.1168 m), as on a drag strip
// (its rules, widely published); elsewhere it is the speed at the mark.
//
// # How uncertain they are
//
// The error of a time is that of the speed or the distance there, divided by
// how fast it changes: δt = −δv/a for a speed, −δs/v for a distance. Every
// figure is kept as such a linear form in the errors of the smoothed track
// until the end, so that what two instants share, such as the receiver's slow
// error, cancels in their difference (JCGM 100:2008, the "GUM", section 5.2).
// Near a gear change the speed is not a straight line within its own uncertainty:
// 120 km/h may have been reached just before it or only after. There the line
// is the one that fits best over all that the speed's error may be, and the
// residual from the line is added as a variance.
//
// # Between the fixes
//
// Once a second a fix pins the speed down; in between there is only the
// accelerometer, into which the engine shakes far more than the push of the
// bike. But a push within one gear changes slowly with speed. That knowledge
// enters as a smoothness prior on the speed, released around gear changes and
// wherever the recording speaks against it; its strength is found by
// restricted maximum likelihood. It takes a third off the error of 80-120 km/h.
package marks
