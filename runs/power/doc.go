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
// All pulls of a setup show the same force F(v), so they are fitted together.
// The equation of motion, integrated once, is linear in the unknowns:
//
//	v(t) = v₀ + ∫[F(v) − R(v) − ρ·CdA·v·w − m·g·θ] dt/(m + m_rot)
//
// with R the road load in still air on the level. F is made of straight lines
// between knots. Its bending is a Gaussian process, a hump and white noise,
// which makes it a smoothing spline (Wahba, Spline Models for Observational Data,
// 1990); how much it bends is learned from the pulls by restricted maximum
// likelihood with a weak prior of what engines do. The bandwidth that follows,
// the frequency at which a ripple of the force comes through at 0.707 of its
// height, is stated with the curve.
//
// The data are the speed from the smoother of package fusion with its full
// covariance: its errors are correlated over a second or more, and where a line
// of the engine swept through a multiple of the sampling rate they are large.
// Gusts add the covariance of an integrated Gauss-Markov process. So a
// generalised least-squares fit weighs each second of each pull by its
// information, and its covariance is the band.
//
// The curve covers every speed that any pull went through. Where only some of
// them did, the fit has less data, wind and slope cancel less, and the band
// is wider: nothing is cut down to the speeds that all happen to share.
//
// # Wind and slope
//
// Both add to one direction of the road what they take from the other. Mean
// wind w and slope θ of each pair of pulls are unknowns of the fit, as large as
// such winds and slopes are, and cancel as far as the pulls allow. What is
// left, together with gusts, mass and road load, is in the band. Pulls in one
// direction only carry the whole uncertainty of wind and slope.
//
// # Differences
//
// Two setups are compared by the mean power of each pair of opposite pulls
// over the speeds they share, and by how much that scatters from pair to pair.
// For that each pair is fitted alone. Within the fit of a setup the pairs
// share how much the force bends and where on the curve each pull was, and so
// pull each other closer: their scatter is then about 11 % too small, and
// equal setups are called different in 6.7 % of comparisons instead of 5 %.
//
// # The bound
//
// The same fit over the true motion, with the least covariance that any
// smoother can reach (fusion.Bound) and the true sizes of wind, slope and
// gusts, has as its band the Cramér-Rao bound of power in its Bayesian form:
// Bound. The accuracy report shows measured power beside it, and package plan
// plans pulls by it.
package power
