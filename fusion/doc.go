// Package fusion turns the samples of a phone into the motion of the bike.
//
// A phone senses two things that complement each other. Its satellite receiver
// gives the speed over ground, accurate to a tenth of a metre a second or better,
// but only once to ten times a second, late, and with errors that are correlated
// for seconds. Its accelerometer gives a hundred readings a second that show
// exactly when something happens, but with an unknown bias, along axes that
// depend on how the phone sits, with gravity mixed in wherever the road or the
// chassis tilts, and shaken by the engine. This package estimates all of that
// together, from the ride alone, after the ride: Smooth. For a screen while
// riding there is package live.
//
// # How the phone sits
//
// At rest an accelerometer feels the push of its mount against gravity: up.
// When the bike changes speed it feels that too: forward. Package mount finds
// both directions by regressing the measured force on the changes of the
// satellite speed, notices when the phone slips, and gives a first estimate of
// the receiver's lag. From then on only three numbers of each sample count:
// the force along the road, and the turn rates about up and about the left.
//
// # Slope, pitch and bias
//
// The forward force is f = a + g·sin θ + bias, θ the pitch of the chassis
// against the horizontal: the slope of the road and the squat under
// acceleration. The gyroscope sees changes of θ; integrated and taken off,
// they leave only what is slow. On a leaning bike the gyroscope's axes lean
// too, so in a turn of rate Ω at speed v, where a bike in balance leans by
// tan φ = v·Ω/g (Cossalter, Motorcycle Dynamics), part of the turn shows as
// pitch; in turns the pitch is kept and the bias is freed instead.
// Without a gyroscope, squat that follows the acceleration looks like an
// accelerometer that reads a few per cent too much, and a scale in the state
// takes its place.
//
// # Vibration and aliasing
//
// An engine shakes the phone with multiples ("orders") of its speed. A sensor
// that is read f_s times a second cannot tell a frequency f from |f - n·f_s|:
// 100 Hz read 100 times a second looks like a constant acceleration. While the
// engine revs through such a speed, an order sweeps through zero frequency and
// kicks the integrated speed by some tenths of a metre a second, and broadband
// shaking above f_s/2 that no filter removed lands in the band below it and
// acts as white noise. That cannot be undone afterwards, except in one case
// (below). What can be done is
// to know how strong it is: its density is measured around each moment in the
// band of 3 to 12 Hz, just above what a rider does, and how much of that
// reaches down to zero is learned from how well the speed predicted in this way matches
// the next fix. An engine that is held close to a multiple of f_s, as while the
// clutch slips, swings across the road and upwards as well, where nothing else
// does so: what is seen there is added to what may lie along the road. At a
// start more is known: the bike stood, so the shares that the swing has along
// the road, across it and upwards are found, and what the two others show is
// subtracted from the first. That needs no knowledge of the engine, and where the
// directions of two lines cannot be told apart what is left counts as noise. A phone
// whose sensor is filtered before it is read, or read faster, does better, as
// the figures of TestLaunches show.
//
// # The receiver
//
// A fix arrives late. Its lag is a constant of the ride that wanders a little,
// and a state of the smoother like any other: whenever the bike accelerates, a
// lag shows as a speed that is too low. Receivers also smooth their speed. A
// first-order smoothing of time constant τ delays by τ, which is part of the
// lag, and beyond that adds half of τ² times the jerk: the state is τ², in
// which the reading is linear. Where the receiver's own time comes with the
// fixes it removes the jitter of their arrival. The error itself is part
// white, part a first-order Gauss-Markov process (Brown and Hwang,
// Introduction to Random Signals and Applied Kalman Filtering, chapter 5),
// since the errors of satellite speeds last for seconds. Near standstill a
// receiver reports the size of a velocity that is mostly error, and counts
// for little; where the sensors find the bike standing, the speed is zero.
//
// # The smoother
//
// State (package internal/kalman): distance, speed, bias with slope, the
// receiver's correlated error, scale, deviation of the lag, deviation of τ².
// The speed follows the measured force; an extended Kalman filter runs forward
// over nodes ten a second and at each fix, and the adjoint recursion of Bryson
// and Frazier ("Smoothing for linear and nonlinear dynamic systems", 1963)
// back, which gives what the recursion of Rauch, Tung and Striebel gives
// without solving a system of equations at each node. Between nodes the force carries the speed, and
// what is missing at the next node is distributed: the mean of a Brownian
// bridge, which is what the model itself says. Several passes are made, each
// linearised about the one before; what multiplies an unknown (lag, scale, τ²)
// is taken from that smoothed reference and not from the raw force, because
// the vibration in both would multiply to a bias. A fix far off the outcome of
// a pass loses its weight in the next. How far off a fix is, is judged by all
// the others: the adjoint recursion gives the error of each when it is left out
// (de Jong's cross-validation filter), where the residual after smoothing
// would hide a wrong fix between two good ones.
//
// # Noise is learned
//
// How strong vibration, slope changes and the receiver's errors are is found
// for each ride by maximum likelihood: the innovations of the forward filter
// are independent, so their densities multiply (prediction error
// decomposition: Schweppe, IEEE Trans. Information Theory 11 (1965) 61). Weak
// priors, a factor of two to seven wide, steady it when a ride is short. A ride says little about
// the size of the receiver's lasting error, so its expected variance is used
// rather than the most probable one. This is what makes the standard uncertainties
// of the track true; TestLaunches compares them with a simulator's truth, where
// they are 0.8 to 1.15 times the errors found.
//
// # Satellites alone
//
// An accelerometer may be absent, too slow, on another clock, or see no change of
// speed; a phone may be in a hand for a while. The same filter then runs over the
// fixes alone, with the acceleration as a random walk in place of the
// bias. It always runs: leaving out each fix in turn, both ways, shows where the
// accelerometer makes the speed worse, and there, or for the whole ride, the track
// does without it (Track.Deaf). A lag cannot be found this way, and when a start began
// within a second is not known.
//
// # Lags that step
//
// Lags up to five seconds are looked for. Where a phone switches to another source
// of its position, the lag steps: the force along the road is compared with every
// lag, second by second, and the cheapest path through them is taken (package
// mount). The steps are first removed from the times of the fixes.
//
// # What goes with a Track
//
// Errors of a smoothed ride are strongly correlated in time. Between two marks
// of a launch most of the lag's and the receiver's error cancels. Track.Joint,
// Cov, SD, SpeedCov and the Crossings carry the full covariance across any
// stretch of time: Cov(x_i, x_j) = P_i·Ψᵀ·(1 - Λ_j·P_j), with P the filter's
// covariances, Ψ what the filter makes at j of an error at i, and Λ what was
// seen after j.
package fusion
