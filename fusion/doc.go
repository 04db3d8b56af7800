// Package fusion turns the samples of a phone into the motion of the bike.
//
// A phone senses two things that complement each other. Its satellite receiver
// gives the speed over ground, accurate to a tenth of a metre a second or
// better, but only once to ten times a second, late, and with errors that are
// correlated for seconds. Its accelerometer gives a hundred readings a second
// that show exactly when something happens, but with an unknown bias, along
// axes that depend on how the phone sits, with gravity mixed in wherever the
// road or the chassis tilts, and shaken by the engine. Smooth estimates all of
// that together, after the ride and from the ride alone: a sensor fusion by
// fixed-interval smoothing. Package live serves the screen while riding.
//
// # Mounting of the phone
//
// At rest an accelerometer measures the push of its mount against gravity,
// which points up; when the bike changes speed it also measures the forward
// acceleration. Package mount finds both directions by regressing the measured
// force on the changes of the satellite speed, detects when the phone slips,
// and gives a first estimate of the receiver's lag. From then on three numbers
// of each sample are used: the force along the road, the yaw rate about up and
// the pitch rate about the left axis.
//
// # Slope, pitch and bias
//
// The forward force is f = a + g·sin θ + bias, θ the pitch of the chassis
// against the horizontal: the slope of the road and the squat under
// acceleration. The gyroscope measures changes of θ; once these are integrated
// and subtracted, only slow errors remain. On a leaning bike the gyroscope's
// axes lean too, so in a turn of rate Ω at speed v, where a bike in balance
// leans by tan φ = v·Ω/g (Cossalter, Motorcycle Dynamics), part of the turn
// appears as pitch; in turns the pitch is therefore held constant and the bias
// is allowed to vary instead. Without a gyroscope, squat in proportion to the
// acceleration looks like an accelerometer that reads a few per cent too much;
// a scale factor in the state absorbs it.
//
// # Vibration and aliasing
//
// An engine shakes the phone at multiples ("orders") of its speed. A sensor
// that is read f_s times a second cannot distinguish a frequency f from |f -
// n·f_s|: 100 Hz read 100 times a second looks like a constant acceleration.
// While the engine revs through such a speed, an order sweeps through zero
// frequency and disturbs the integrated speed by some tenths of a metre a
// second, and broadband vibration above f_s/2 that no anti-alias filter removed
// folds into the band below it and acts as white noise. With one exception
// (below) this cannot be undone afterwards. Its strength can be estimated,
// though: its spectral density is measured around each moment in the band of 3
// to 12 Hz, just above the rider's own inputs, and how much of that reaches
// down to zero frequency is learned from how well the predicted speed matches
// the next fix. An engine that is held close to a multiple of f_s, as while the
// clutch slips, also causes a slow swing across the road and upwards, where
// nothing else moves slowly: the density found there is added to that along the
// road. At a start more is known, because the bike was standing: the shares of
// the swing along the road, across it and upwards are estimated, and the swing
// predicted from the other two directions is subtracted from the first. This
// needs no knowledge of the engine; where the directions of two lines cannot be
// separated, the remainder counts as noise. A phone whose sensor is filtered
// before it is read, or read faster, does better, as the figures of
// TestLaunches show.
//
// # The receiver
//
// A fix arrives late. The lag is nearly constant over a ride and is estimated
// as a state of the smoother: whenever the bike accelerates, a lag appears as a
// speed that is too low. Receivers also smooth their speed. A first-order
// smoothing of time constant τ delays by τ, which is part of the lag, and
// beyond that adds half of τ² times the jerk: the state is τ², in which the
// reading is linear. Where fixes carry the receiver's own time, it removes the
// jitter of their arrival. The measurement error is part white, part a
// first-order Gauss-Markov process (Brown and Hwang, Introduction to Random
// Signals and Applied Kalman Filtering, chapter 5), since the errors of
// satellite speeds last for seconds. Near standstill a receiver reports the
// magnitude of a velocity that is mostly error, so such fixes get little
// weight; where the sensors show that the bike is standing, the speed is zero
// (zero-velocity update).
//
// # The smoother
//
// State (package internal/kalman): distance, speed, bias with slope, the
// receiver's correlated error, scale, deviation of the lag, deviation of τ².
// The measured force drives the speed. An extended Kalman filter runs forward
// over nodes ten times a second and at each fix, and the adjoint recursion of
// Bryson and Frazier ("Smoothing for linear and nonlinear dynamic systems",
// 1963) runs backward; it gives the same result as the recursion of Rauch, Tung
// and Striebel without solving a system of equations at each node. Between
// nodes the force is integrated to give the speed, and the remaining difference
// at the next node is spread over the interval: the mean of a Brownian bridge,
// which the model implies. Several passes are made, each linearised about the
// result of the last (iterated extended Kalman smoother). The factors of an
// unknown (lag, scale, τ²) are taken from that smoothed reference rather than
// from the raw force, since vibration common to both would cause a bias. A fix
// that is far from the result of one pass loses weight in the next (a
// redescending M-estimator). Each fix is judged by all the others: the adjoint
// recursion gives its leave-one-out error (de Jong's cross-validation filter),
// whereas the residual after smoothing would hide a wrong fix between two good
// ones.
//
// # Learning the noise
//
// The strengths of vibration, slope changes and receiver errors are estimated
// for each ride by maximum likelihood: the innovations of the forward filter
// are independent, so their densities multiply (prediction error decomposition:
// Schweppe, IEEE Trans. Information Theory 11 (1965) 61). Weak priors, a factor
// of two to seven wide, stabilise the estimate when a ride is short. A ride
// contains little information about the size of the receiver's correlated
// error, so its expected variance is used rather than the most probable one.
// This is what makes the standard uncertainties of the track true; TestLaunches
// compares them with a simulator's truth, where they are 0.8 to 1.15 times the
// errors found.
//
// # Satellites alone
//
// An accelerometer may be absent, too slow or on another clock, or the ride may
// have no change of speed to calibrate it with; a phone may be in a hand for a
// while. The same filter then runs over the fixes alone, with the acceleration
// as a random walk in place of the bias. Both filters are always run:
// leave-one-out cross-validation of the fixes shows where the accelerometer
// makes the speed worse, and there, or for the whole ride, the track does
// without it (Track.GNSSOnly). In this mode the lag cannot be estimated, and the
// beginning of a start is known only to about a second.
//
// # Steps of the lag
//
// Lags up to five seconds are searched. Where a phone switches to another
// source of its position, the lag changes in a step: the force along the road
// is compared with the change of speed at every lag, second by second, and the
// path of least cost through the lags is found by the Viterbi algorithm
// (package mount). The steps are removed from the times of the fixes before
// smoothing.
//
// # Covariances of a Track
//
// Errors of a smoothed ride are strongly correlated in time. Between two marks
// of a launch most of the lag's and the receiver's error cancels. Track.Joint,
// Cov, SD, SpeedCov and the Crossings carry the full covariance across any
// stretch of time: Cov(x_i, x_j) = P_i·Ψᵀ·(1 - Λ_j·P_j), with P the filter's
// covariances, Ψ the filter's transition of an error from i to j, and Λ the
// information from all observations after j.
package fusion
