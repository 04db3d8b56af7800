// Package marks measures the times, distances and speeds of one run (a launch,
// a roll-on or a stop), each with its standard uncertainty.
//
// # Start of a launch
//
// First movement is the instant at which the bike leaves standstill: the last
// zero of the speed. No sensor shows it directly. A threshold on the speed is
// passed late, by a delay that depends on how the rider engages the clutch. So
// the first metres are fitted with a model of a start, an acceleration that
// rises linearly while the clutch engages and then stays constant,
//
//	v(t) = a·(t−t₀)²/(2r) for t₀ < t < t₀+r, then a·(t−t₀−r/2)
//
// and t₀ is first movement. The fit is generalised least squares (GLS) with the
// covariance of the smoothed speed, by Gauss-Newton iteration; the ramp r has a
// wide prior around a third of a second. Riders may engage the clutch
// differently, so the uncertainty about the shape of the ramp is part of the
// standard error of first movement: times from there have wider intervals, and
// the rollout is the better figure.
//
// The rollout begins when the bike has moved 0.3048 m (one foot): about as far
// as a front wheel rolls before it clears the beam that starts the clock of a
// drag strip (common practice). Its time follows from the smoothed distance, in
// which the error of the speed from before the start accumulates, and from the
// same fit, which uses the standstill but assumes a shape of the start; the two
// are combined with weights from their covariance. Times from the rollout do
// not depend on the definition of first movement and compare better between
// riders; with an ordinary clutch they are some 0.4 s shorter.
//
// # Marks
//
// Distances are 60, 330, 660 (1/8 mile), 1000 and 1320 ft (1/4 mile,
// 402.336 m) and 1 km, with 1 ft = 0.3048 m (NIST SP 811). The speed at 1/8
// and 1/4 mile is the mean over the last 66 ft (20.1168 m), as on a drag strip
// (its rules, widely published); elsewhere it is the speed at the mark.
//
// # Uncertainty
//
// The error of a time is that of the speed or the distance there, divided by
// its rate of change: δt = −δv/a for a speed, −δs/v for a distance. Every
// figure is kept as such a linear form in the errors of the smoothed track
// until the end, so that errors common to two instants, such as the receiver's
// slow error, cancel in their difference (JCGM 100:2008, the "GUM", section
// 5.2). Near a gear change the speed is not linear within its own uncertainty:
// 120 km/h may have been reached just before it or only after. There the linear
// form is the best fit over the distribution of the speed's error, and the
// residual is added as a variance (statistical linearisation).
//
// # Between the fixes
//
// Once a second a fix determines the speed; in between there is only the
// accelerometer, in which engine vibration is far larger than the bike's
// acceleration. But the acceleration within one gear changes slowly with speed.
// This enters as a smoothness prior on the speed, released around gear changes
// and wherever the recording contradicts it; its strength is found by
// restricted maximum likelihood (REML). It reduces the error of 80-120 km/h by
// a third.
package marks
