// Package pass finds flying passes and measures them: a stretch of road ridden at a
// steady speed with a flying start, in both directions soon after each other, and the
// mean of the two.
//
// # What counts
//
// A leg is a part of a ride of 200 m or more whose speed stays within 3 % of its own
// fastest second, with no coast-down, stop or gap in the recording. Two legs make a
// pass if they have the same setup, run in opposite directions over at least 200 m of
// the same road and begin within an hour of each other. Speed records are measured in
// this way (common practice: a measured kilometre or mile, both directions within one
// or two hours).
//
// Any road ridden there and back has such legs, so only those are considered that are
// about as fast as anything in the ride: the faster leg within a tenth of the fastest
// steady stretch with its setup, and each leg within 3 % of the fastest in its own
// direction. Each setup has one stretch of road, the fastest, with every pair of legs
// over it.
//
// # Whether the bike was at its limit
//
// A bike that gives all it has approaches its top speed more and more slowly. With
// constant power P and a drag of ½·ρ·CdA·v² the distance over which it gains speed is
//
//	s = (m·v₁³/3P)·ln[(1 − x₀³)/(1 − x₁³)],  x = v/v₁, v₁ the top speed
//
// (textbook mechanics: m·v·dv/ds = P/v − ½·ρ·CdA·v²). From 92 to 98 % of the top speed
// it needs 3.3 times the distance from 75 to 85 %, whatever the bike. If the rider
// eases the throttle once the speed is right, it is 1.4 times on a bike that could
// go a tenth faster, and 0.85 times on one that could go very much faster.
//
// From 92 to 98 % a bike needs 1.33·2m/3ρCdA, at least some hundred metres. Less than
// half of that is ordinary riding and is not listed. A pass that took longer, but does
// not show the pattern of full throttle, carries a reason and does not count; its
// figures are kept. A bike held by a limiter looks as if the throttle had been eased,
// and no recording can distinguish the two. All legs over the road are judged
// together: a bike that once reached the speed in no time was not at its limit.
//
// Nothing more is claimed than that the speed was ridden, and that the bike approached
// it like a limit. It does so at a constant part throttle too, just like a weaker bike;
// no recording shows whether the throttle was fully open. The run-up to a coast-down
// is often ridden like that, so a leg that ends in one does not count.
//
// # What is measured
//
// The speed over a distance is the distance divided by the time. Both directions are
// measured over the same metres of road, so that its slope takes from one direction
// what it gives the other: over the longest distance that fits, where the mean of both
// directions is highest, and over shorter distances in the middle of it.
//
// The mean is that of the two speeds, not of the two times. Both are in use. At
// constant power a wind w along the road changes the speed v by about −⅔·w, and in
// second order by w²/9v. So the mean of the speeds is too high by w²/9v, 0.05 m/s for
// a wind of 5 m/s at 50 m/s; the mean of the times would be too low by w²/3v. Half the
// difference is what wind and slope gave one direction and took from the other. It is
// not the wind: at constant power and on the level, the wind is about one and a half
// times as strong.
package pass
