// Package power estimates the power of a bike at the road, over speed or engine
// speed, from full-throttle pulls in one gear.
//
// # Physics
//
// At the contact patch the engine has to accelerate the bike's inertia and
// overcome the road load:
//
//	P = v·[(m + m_rot)·a + ½·ρ·CdA·u·|u| + m·g·Crr·(1 + k·v) + m·g·sin θ]
//
// with u the air speed. m_rot is the equivalent mass of the wheels and, in the
// gear of the pull, of clutch and crankshaft. This is power at the road. It is
// less than the engine's power by the losses of gearbox, chain and tyre, and it
// is no replacement for a dynamometer: air, slope and the bike's weight are
// known only as well as they were measured.
//
// # Method
//
// All pulls of a setup have the same force F(v), so they are fitted together.
// The equation of motion, integrated once, is linear in the unknowns:
//
//	v(t) = v₀ + ∫[F(v) − R(v) − ρ·CdA·v·w − m·g·θ] dt/(m + m_rot)
//
// with R the road load in still air on the level. F is piecewise linear between
// knots. Its curvature is a Gaussian process, a hump plus white noise, which
// makes it a smoothing spline (Wahba, Spline Models for Observational Data,
// 1990); the strength of the curvature is learned from the pulls by restricted
// maximum likelihood (REML) with a weak prior for engines. The resulting
// bandwidth, the frequency at which a ripple of the force is attenuated to
// 0.707 of its amplitude (−3 dB), is stated with the curve.
//
// The data are the speed from the smoother of package fusion with its full
// covariance: its errors are correlated over a second or more, and large where
// an engine order swept through a multiple of the sampling rate. Gusts add the
// covariance of an integrated Gauss-Markov process. A generalised least-squares
// (GLS) fit weights each second of each pull by its information, and its
// covariance gives the band.
//
// The curve covers every speed that any pull went through. Where only some of
// them did, the fit has less data, wind and slope cancel less, and the band is
// wider.
//
// # Wind and slope
//
// Both add in one direction of the road what they subtract in the other. Mean
// wind w and slope θ of each pair of pulls are random effects of the fit, with
// the variances of such winds and slopes, and cancel as far as the pulls allow.
// The remainder, together with gusts, mass and road load, is in the band. Pulls
// in one direction only carry the whole uncertainty of wind and slope.
//
// # Differences
//
// Two setups are compared by the mean power of each pair of opposite pulls over
// their common speeds, and by its scatter from pair to pair. For that each pair
// is fitted alone. In the joint fit of a setup the pairs share the curvature of
// the force and the positions on the curve, which shrinks them towards each
// other: their scatter is then about 11 % too small, and equal setups are
// called different in 6.7 % of comparisons instead of 5 %.
//
// # The bound
//
// The same fit over the true motion, with the least covariance that any
// smoother can reach (fusion.Bound) and the true sizes of wind, slope and
// gusts, has as its band the Cramér-Rao bound of power in its Bayesian form:
// Bound. The accuracy report shows measured power beside it, and package plan
// plans pulls by it.
package power
