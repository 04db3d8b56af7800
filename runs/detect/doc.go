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
// asked for. A pull is a push from rolling in one gear, without a break, over
// a ratio of speeds that is wide enough for a power curve. The same seconds
// may be both. That the throttle was fully open shows in the thrust: it is
// well above what holds the bike back, and changes slowly with speed.
//
// A coast-down is rolling with the clutch pulled and both brakes free, so
// that air and tyres alone hold the bike back:
//
//	dv/dt = −(c₀ + c₂·v²),  c₂ = ½ρ·CdA/mₑ,  c₀ = g·(Crr + slope)·m/mₑ
//
// The trajectory that solves this is fitted to the speed. It counts as a
// coast-down when the two coefficients are within what any motorcycle can
// have on a road that is not steep: CdA from 0.18 to 0.9 m², Crr from 0.006 to
// 0.04 (the lower drag area after Cossalter, Motorcycle Dynamics; the upper
// bound leaves room for a tourer with panniers). An engine that is dragged
// along adds a force that hardly changes with speed and shows as a c₀ several
// times too high; a brake shows as a step in the deceleration. Both ends of a
// run are such steps as well.
//
// A stop is braking to standstill from speed, harder than traffic asks for.
//
// # What is not counted
//
// A candidate that was meant as a run and cannot be used is kept with its
// reasons. What was never meant as one, such as every traffic light, is not
// listed at all.
package detect
