// Package detect finds, in a smoothed ride, what the rider did on purpose:
// launches, roll-ons, pulls in one gear, coast-downs and hard stops. Nobody
// presses a button while riding, so the motion itself has to tell.
//
// # How each is recognised
//
// A launch starts at standstill and is hard: the kinetic energy gained per
// second and kilogram up to 60 km/h, v²/(2t), is above what riding in traffic
// asks for, and not far below the best launch of the same ride. Breaks in the
// push of up to about a second are gear changes and belong to it.
//
// A roll-on is a push from rolling through at least one of the pairs of speed
// asked for, in one gear or, with nearly all the power that the bike showed in
// the ride, through several. A pull is a push from rolling in one gear over a
// ratio of speeds that is wide enough for a power curve. The same seconds may
// be both. That the throttle was fully open shows in the thrust only so far: it
// is well above what holds the bike back, not far below the best of the ride, and
// changes slowly with speed. One push cannot tell a half-open throttle from a
// taller gear; package runs judges all pushes of a ride together.
//
// A coast-down is rolling with the clutch pulled and both brakes free, so
// that air and tyres alone hold the bike back:
//
//	dv/dt = −(c₀ + c₂·v²),  c₂ = ½ρ·CdA/mₑ,  c₀ = g·(Crr + slope)·m/mₑ
//
// The beginning and the end of it, and a brush of the brake, are steps of the
// deceleration that wind and road cannot make. Between two steps the
// trajectory that solves the equation is fitted to the speed. It counts as a
// coast-down when its mean deceleration is what motorcycles have, give or take
// 3.3 standard deviations: drag area, rolling resistance of tyres and slope as in
// package usual, with the mass that was entered. An engine that is dragged along
// adds a force that hardly changes with speed and shows as a
// deceleration several times too high.
//
// Between the two lies what may be either: much wind and a rising road, or a big
// single in top gear. So all slowings of the ride that look like coast-downs are
// judged together. Each is explained either by free rolling or by something that
// holds the bike back besides; drag area, rolling resistance, the slope and the
// wind by compass direction and the size of that hold are common to all
// of them and averaged over, with what package usual holds of motorcycles, and
// the explanations of the whole ride are weighed by Bayes' rule (a mixture of two
// linear models with binary labels; Bishop, Pattern Recognition and Machine
// Learning, chapters 3 and 9). A road that rises one way falls the other way, and
// a wind turns with it; an engine does not. A run that was more likely held back
// than not is refused with that chance.
//
// A stop is braking to standstill from speed, harder than traffic asks for.
//
// # What is not counted
//
// A candidate that was meant as a run and cannot be used is kept with its
// reasons. What was never meant as one, such as every traffic light, is not
// listed at all. Readings that are missing for up to a second do not spoil a
// launch, a roll-on or a coast-down: the fixes pin the speed down on both sides, and what may
// have happened in between is part of the uncertainty. About the start of a
// launch nothing does so, and it is rejected.
package detect
