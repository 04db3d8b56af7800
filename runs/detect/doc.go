// Package detect finds the deliberate runs in a smoothed ride: launches,
// roll-ons, pulls in one gear, coast-downs and hard stops. Nobody presses a
// button while riding, so they are recognised from the motion alone.
//
// # How each is recognised
//
// A launch starts at standstill and is hard: the kinetic energy gained per
// second and kilogram up to 60 km/h, v²/(2t), is higher than in ordinary
// traffic, and not far below the best launch of the same ride. Interruptions of
// the acceleration of up to about a second are gear changes and belong to it.
//
// A roll-on is an acceleration from rolling through at least one of the
// requested speed pairs, in one gear or, with nearly all the power that the
// bike showed in the ride, through several. A pull is an acceleration from
// rolling in one gear over a ratio of speeds that is wide enough for a power
// curve. The same seconds may be both. A fully open throttle can be recognised
// only partly from the thrust: it is well above the road load, not far below
// the best of the ride, and changes slowly with speed. One acceleration cannot
// distinguish a half-open throttle from a taller gear; package runs evaluates
// all of a ride together.
//
// A coast-down is rolling with the clutch pulled and both brakes free, so that
// only air drag and rolling resistance slow the bike:
//
//	dv/dt = −(c₀ + c₂·v²),  c₂ = ½ρ·CdA/mₑ,  c₀ = g·(Crr + slope)·m/mₑ
//
// Its beginning and end, and a touch of the brake, are steps of the
// deceleration that wind and road cannot cause. Between two steps the solution
// of the equation is fitted to the speed. It counts as a coast-down if its mean
// deceleration is within 3.3 standard deviations of what motorcycles have: drag
// area, rolling resistance and slope as in package usual, with the mass that
// was entered. Engine braking adds a force that hardly changes with speed and
// makes the deceleration several times too high.
//
// In between the cause is ambiguous: strong wind and a rising road, or a big
// single-cylinder engine in top gear. So all decelerations of the ride that
// look like coast-downs are classified together. Each is explained either by
// free rolling or by an additional retarding force; drag area, rolling
// resistance, slope and wind by compass direction and the size of that force
// are common to all of them and integrated out, with priors from package usual,
// and the explanations of the whole ride are weighted by Bayes' rule (a mixture
// of two linear models with binary labels; Bishop, Pattern Recognition and
// Machine Learning, chapters 3 and 9). Slope and wind change sign with the
// direction of travel; engine braking does not. A run with a probability above
// one half of an additional force is rejected, with that probability.
//
// A stop is braking to standstill from speed, harder than in ordinary traffic.
//
// # What is not counted
//
// A candidate that was meant as a run and cannot be used is kept with its
// reasons. Motion that was never meant as one, such as every start at a traffic
// light, is not listed at all. Samples missing for up to a second do not
// invalidate a launch, a roll-on or a coast-down: the fixes determine the speed
// on both sides, and the gap is part of the uncertainty. A gap at the start of
// a launch leaves its time unknown, and the launch is rejected.
package detect
