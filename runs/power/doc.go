// Package power finds the power a bike puts to the road, over speed or engine
// speed, from full-throttle pulls in one gear.
//
// # Physics
//
// At the contact patch the engine has to push the bike's inertia and hold the
// road load:
//
//	P = v·[(m + m_rot)·a + ½·ρ·CdA·u·|u| + m·g·Crr·(1 + k·v) + m·g·sin θ]
//
// with u the speed of the air past the bike. m_rot holds the wheels and, in
// the gear of the pull, what clutch and crank add. This is power at the road.
// It is less than the engine gives by what gearbox, chain and tyre take, and
// it is no replacement for a dynamometer: air, slope and the bike's own weight
// are known only as well as they were measured.
//
// # Method
//
// Speed from the smoother of package fusion comes with a full covariance C: its
// errors hang together over a second or more. Acceleration is its derivative,
// found as a Gaussian process: a(t) is a Wiener process integrated once, v(t)
// its integral, which makes the estimate a smoothing spline (Wahba, Spline
// Models for Observational Data, 1990; Rasmussen and Williams, Gaussian
// Processes for Machine Learning, 2006, sections 2.7 and 6.3). How smooth is
// learned from the pull itself by restricted maximum likelihood; the bandwidth
// that follows, the frequency at which a ripple of acceleration comes through
// at 0.707 of its height, is stated with the curve.
//
// # Wind and slope
//
// Both add to one direction of the road what they take from the other, so
// pulls are averaged by direction first. What is left, together with gusts,
// mass and road load, goes into the band. Pulls in one direction only carry
// the whole uncertainty of wind and slope.
package power
